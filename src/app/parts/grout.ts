import { groutText, tilesAtText, whyOffText } from '../../documents/grout-words.ts';
import { type Analysis, type Joint, jointIsInRoom } from '../../plan/analysis.ts';
import { decimalMark } from './format.ts';

/** How a joint lies in the grout lines, for its card and for the lists. */
export interface GroutWords {
  /** "on a grout line", "off by 12 mm". */
  readonly place: string;
  /** What the tiles do there, and why it is not on a grout line. */
  readonly more: string;
}

/** Null where no tiles lie over the joint. */
export function groutWords(joint: Joint): GroutWords | null {
  const place = groutText(joint, decimalMark);
  if (place === null) return null;
  // How far it is from a line that runs another way says nothing.
  const isLineless = groutIsLineless(joint);
  const why = isLineless ? null : whyOffText(joint);
  return {
    place: isLineless ? 'no grout line this way' : place,
    more: [tilesAtText(joint), why].filter((part) => part !== null).join('; '),
  };
}

/** Whether no grout line runs the joint's way that it could be off by some figure. */
function groutIsLineless({ onGroutLine, bondLets }: Joint): boolean {
  return onGroutLine === false && bondLets === false;
}

/** The joints that are furthest off come first, those that no grout line runs along last. */
export function groutFurthest(joints: readonly Joint[]): readonly Joint[] {
  const off = (joint: Joint) => (groutIsLineless(joint) ? -1 : (joint.offGroutMm ?? -1));
  return [...joints].sort((a, b) => off(b) - off(a));
}

/** Joints off the grout lines at which no field restarts: the tiles over them are cut. */
export function groutMisses({ joints }: Pick<Analysis, 'joints'>): readonly Joint[] {
  return joints.filter(({ onGroutLine, tilesAt }) => onGroutLine === false && tilesAt !== 'restart');
}

/** Length of the joints within rooms that lie under tiles and in grout, m. */
export function groutLengths({ joints }: Pick<Analysis, 'joints'>): { readonly onM: number; readonly allM: number } {
  const found = joints.filter((joint) => jointIsInRoom(joint) && joint.onGroutLine !== null);
  const lengthM = (some: readonly Joint[]) => some.reduce((sum, joint) => sum + joint.lengthM, 0);
  return { onM: lengthM(found.filter(({ onGroutLine }) => onGroutLine === true)), allM: lengthM(found) };
}

/** Whether a joint may be moved on to a grout line: one that was found or drawn, where such a line runs its way. */
export function groutIsNear(joint: Joint): boolean {
  const isFree = jointIsInRoom(joint);
  return isFree && joint.onGroutLine === false && joint.bondLets === true;
}
