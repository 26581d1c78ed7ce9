import type { Analysis } from '../../plan/analysis.ts';
import { countOf } from '../parts/format.ts';
import { bayThing, findingKey, jointThing, type Thing } from './thing.ts';

/** What one analysis has that the one before had not. */
export interface Changes {
  readonly things: readonly Thing[];
  /** In words; empty where nothing changed that a person would look for. */
  readonly words: string;
}

const none: Changes = { things: [], words: '' };

export function changesOf(before: Analysis, now: Analysis): Changes {
  const bays = appeared(before.bays, now.bays, (bay) => bay.key);
  const joints = appeared(before.joints, now.joints, (joint) => joint.key);
  const came = appeared(before.findings, now.findings, findingKey);
  const went = appeared(now.findings, before.findings, findingKey);
  const words = [
    before.bays.length === now.bays.length ? null : countOf(now.bays.length, 'bay', 'bays'),
    came.length === 0 ? null : countOf(came.length, 'new finding', 'new findings'),
    went.length === 0 ? null : `${countOf(went.length, 'finding', 'findings')} gone`,
  ].filter((part) => part !== null);
  if (bays.length + joints.length + words.length === 0) return none;
  return {
    things: [...bays.map(bayThing), ...joints.map(jointThing)],
    words: words.length === 0 ? '' : `Now: ${words.join(', ')}.`,
  };
}

function appeared<Item>(before: readonly Item[], now: readonly Item[], key: (item: Item) => string): readonly Item[] {
  const known = new Set(before.map(key));
  return now.filter((item) => !known.has(key(item)));
}
