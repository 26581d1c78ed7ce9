import { type JointEntry, noJointEntry, papersOf } from '../plan/papers.ts';
import { jointEntryKeys } from './entry-keys.ts';
import { followedWords, keyWords } from './entry-words.ts';
import { type PaperSource, perSource } from './paper-source.ts';

/** What is entered of the joints of a floor, wherever they were moved to since: for the register, the doorways, the take-off and the screen. */
export interface RegisterEntries {
  /** By the keys that joints have now. */
  readonly joints: ReadonlyMap<string, JointEntry>;
  /** By the keys that joints have now: those whose entry stands under another key in the file. */
  readonly followed: ReadonlyMap<string, FollowedEntry>;
  readonly gone: readonly GoneEntry[];
}

export interface FollowedEntry {
  /** As the file has it. */
  readonly key: string;
  /** Example: "entered for a joint about half a metre away" */
  readonly words: string;
}

export interface GoneEntry {
  /** As the file has it. */
  readonly key: string;
  /** Example: "a joint of Hall near 1, 6 m" */
  readonly words: string;
  readonly entry: JointEntry;
}

export const registerEntries = perSource((source: Pick<PaperSource, 'file' | 'plan' | 'analysis'>): RegisterEntries => {
  const entered = papersOf(source.file).joints;
  const { now, gone } = jointEntryKeys(entered.keys(), source);
  const places = [...now].map(([key, place]) => ({ entered: key, ...place }));
  const moved = places.filter((place) => place.key !== place.entered);
  const entryOf = (key: string) => entered.get(key) ?? noJointEntry;
  return {
    joints: new Map(places.map((place) => [place.key, entryOf(place.entered)])),
    followed: new Map(
      moved.map(({ key, entered: from, awayMm }) => [
        key,
        { key: from, words: `entered for a joint ${followedWords(awayMm)}` },
      ]),
    ),
    gone: gone.map((key) => ({ key, words: keyWords('joint', key, source), entry: entryOf(key) })),
  };
});
