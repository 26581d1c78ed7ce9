import type { DecimalMark } from '../../documents/words.ts';
import { findingText, oneLine } from '../../documents/words.ts';
import type { Plan } from '../../plan/plan.ts';
import { decimalMark, nameText } from './format.ts';

/** Sentences of the analysis as the screen shows them: with the reader's own decimal mark, long names cut, and names of
 *  another direction of writing closed in, so that none turns the rest of its sentence round. What the plan calls its
 *  things is otherwise left as it is: a room may be called "Store 1.5". */
export function messagesOf(plan: Plan, mark: DecimalMark = decimalMark): (text: string) => string {
  const names = namesIn(plan).map(oneLine).filter(isOdd);
  const kept = [...new Set(names)].sort((a, b) => b.length - a.length).map(patternOf);
  const parts = new RegExp(`("[^"]*"${kept.map((name) => `|${name}`).join('')})`, 'gu');
  return (text) =>
    findingText({ message: text })
      .split(parts)
      .map((part, i) => (i % 2 === 1 ? nameText(part) : part.replace(decimalPoint, `$1${mark}$2`)))
      .join('');
}

const decimalPoint = /(?<![\p{L}\d.])(\d+)\.(\d+)(?![\p{L}\d]|\.\d)/gu;

/** Whether a name needs care within a sentence. */
function isOdd(name: string): boolean {
  return /\d\.\d|\p{Script=Hebrew}|\p{Script=Arabic}/u.test(name) || name !== nameText(name);
}

/** A finding may hold the spaces of a name together. */
function patternOf(name: string): string {
  return name.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replaceAll(' ', '[ \u00a0]');
}

function namesIn(plan: Plan): readonly string[] {
  const named = [...plan.rooms, ...plan.joinery].map(({ name }) => name);
  const numbered = [
    ...plan.doorways,
    ...plan.columns,
    ...plan.pipes,
    ...plan.joinery,
    ...plan.slabContacts,
    ...plan.structuralJoints,
    ...plan.sunZones,
    ...plan.drawnJoints,
    ...plan.noJoint,
    ...plan.keepClear,
  ].map(({ id }) => id);
  return [...named, ...numbered];
}
