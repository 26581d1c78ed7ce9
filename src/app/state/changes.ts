import type { Analysis, Finding } from '../../plan/analysis.ts';
import { countOf } from '../parts/format.ts';
import { bayThing, jointThing, type Thing } from './thing.ts';

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
  const came = findingsMore(before.findings, now.findings);
  const went = findingsMore(now.findings, before.findings);
  const words = [
    before.bays.length === now.bays.length ? null : countOf(now.bays.length, 'bay', 'bays'),
    came === 0 ? null : countOf(came, 'new finding', 'new findings'),
    went === 0 ? null : `${countOf(went, 'finding', 'findings')} gone`,
  ].filter((part) => part !== null);
  if (bays.length + joints.length + words.length === 0) return none;
  return {
    things: [...bays.map(bayThing), ...joints.map(jointThing)],
    words: words.length === 0 ? '' : `Now: ${words.join(', ')}.`,
  };
}

/** How many findings there are more than before, kind by kind: one that only moved, or names another bay, is the same. */
function findingsMore(before: readonly Finding[], now: readonly Finding[]): number {
  const counts = new Map<string, number>();
  for (const { code } of now) counts.set(code, (counts.get(code) ?? 0) + 1);
  for (const { code } of before) counts.set(code, (counts.get(code) ?? 0) - 1);
  return [...counts.values()].reduce((sum, count) => sum + Math.max(0, count), 0);
}

function appeared<Item>(before: readonly Item[], now: readonly Item[], key: (item: Item) => string): readonly Item[] {
  const known = new Set(before.map(key));
  return now.filter((item) => !known.has(key(item)));
}
