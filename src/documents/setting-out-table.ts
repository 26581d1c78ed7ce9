import { setOutTolerance } from '../plan/papers.ts';
import type { PaperSource } from './paper-source.ts';
import { jointPlaces } from './set-out-joint-text.ts';
import { type JointSetting, jointSettings, originIsOnSheet } from './setting-out.ts';
import { frameFaceText, settingOutNotes } from './setting-out-words.ts';
import { type ColumnOf, plain, type Table, tableOf } from './table.ts';
import { figureText, namesOf } from './words.ts';

const liesNames: Readonly<Record<JointSetting['lies'], string>> = {
  x: 'at one x',
  y: 'at one y',
  askew: 'askew, by its ends',
  bent: 'bent, by ends and bends',
};

/** Where every joint lies, one row a joint. */
export function setOutTable(source: PaperSource): Table {
  const { plan, analysis } = source;
  const settings = jointSettings(source);
  const names = namesOf(plan, analysis);
  const walls = jointPlaces(plan, analysis);
  const running = (axis: 'x' | 'y') =>
    mm(`Running ${axis}`, ({ lies, runningMm }) => (lies === axis ? runningMm : null));
  const end = (which: 'first' | 'last', axis: 0 | 1) =>
    mm(
      `${which === 'first' ? 'Near' : 'Far'} end ${axis === 0 ? 'x' : 'y'}`,
      ({ points }) => points.at(which === 'first' ? 0 : -1)?.[axis] ?? null,
    );
  const columns: readonly ColumnOf<JointSetting>[] = [
    text('Joint', ({ joint }) => joint.id),
    text('Run', ({ joint }) => joint.run),
    text('Between', ({ joint }) => names.joint(joint)),
    text('From', ({ frame }) => frame?.fromInFull ?? ''),
    { ...text('x and y', ({ frame }) => frame?.ways ?? ''), unprinted: true },
    text('Measured from', ({ frame }) => (frame === null ? '' : frameFaceText(source, frame))),
    text('Lies', ({ lies }) => liesNames[lies]),
    running('x'),
    running('y'),
    end('first', 0),
    end('first', 1),
    end('last', 0),
    end('last', 1),
    text('Bends', bendsText),
    mm('Length', ({ joint }) => Math.round(joint.lengthM * 1000)),
    // no tape reaches an origin off the sheet
    mm('Check: origin to far end', ({ checkMm, frame }) =>
      frame !== null && originIsOnSheet(source, frame) ? checkMm : null,
    ),
    mm('Tolerance \u00b1', () => setOutTolerance.value),
    text('From finished walls, square to the joint at its middle', ({ joint }) => plain(walls.get(joint.id) ?? '')),
  ];
  return tableOf(
    { name: 'setting-out', title: 'Setting out of joints', notes: settingOutNotes(source).map(plain) },
    columns,
    settings,
    ({ joint }) => [{ kind: 'joint', id: joint.id }],
  );
}

/** Example: "x 1200 y 300, x 1800 y 900" */
function bendsText({ points }: JointSetting): string {
  return plain(
    points
      .slice(1, -1)
      .map(([x, y]) => `x ${figureText(x, 0)} y ${figureText(y, 0)}`)
      .join(', '),
  );
}

function text(head: string, cell: ColumnOf<JointSetting>['cell']): ColumnOf<JointSetting> {
  return { head, unit: null, decimals: null, cell };
}

function mm(head: string, cell: ColumnOf<JointSetting>['cell']): ColumnOf<JointSetting> {
  return { head, unit: 'mm', decimals: 0, cell };
}
