import { oneLine } from '../../documents/words.ts';
import { pointDistance } from '../../geometry/point.ts';
import { boxOf } from '../../geometry/ring.ts';
import type { Outlined, Plan } from '../../plan/plan.ts';
import { figure, movement } from '../parts/format.ts';
import type { Result } from '../state/analysisStore.ts';
import { CardFindings } from './CardFindings.tsx';
import { type FigureRow, FiguresTable } from './FiguresTable.tsx';

/** What an object of the plan is called; null where the plan has none of that id. */
export function objectTitle(plan: Plan, id: string): string | null {
  const is = (object: { readonly id: string }) => object.id === id;
  const joinery = plan.joinery.find(is);
  if (joinery !== undefined) return oneLine(joinery.name);
  const kinds: readonly (readonly [string, readonly { readonly id: string }[]])[] = [
    ['Doorway', plan.doorways],
    ['Column', plan.columns],
    ['Pipe', plan.pipes],
    ['Slab contact', plan.slabContacts],
    ['Structural joint', plan.structuralJoints],
    ['Sun on the floor', plan.sunZones],
    ['Drawn joint', plan.drawnJoints],
    ['Joint taken away', plan.noJoint],
    ['Keep clear of joints', plan.keepClear],
  ];
  const kind = kinds.find(([, objects]) => objects.some(is));
  return kind === undefined ? null : `${kind[0]} ${id}`;
}

/** The figures of a doorway, column, pipe or piece of joinery. */
export function ObjectFigures({ id, result }: { readonly id: string; readonly result: Result }) {
  const joints = result.analysis.joints.filter((joint) => joint.sources.includes(id));
  const rows: readonly FigureRow[] = [
    ...objectRows(result.plan, id),
    ...joints.map((joint) => ({ name: `Joint ${joint.id} closes`, value: movement(joint.closingMm) })),
  ];
  return (
    <>
      <FiguresTable rows={rows} />
      <CardFindings id={id} result={result} />
    </>
  );
}

const mm = (value: number) => `${figure(value, 0)} mm`;

function objectRows(plan: Plan, id: string): readonly FigureRow[] {
  const is = (object: { readonly id: string }) => object.id === id;
  const doorway = plan.doorways.find(is);
  if (doorway !== undefined) {
    return [
      { name: 'Width', value: mm(pointDistance(doorway.line[0], doorway.line[1])) },
      { name: 'Depth of the opening', value: mm(doorway.wallMm) },
      { name: 'Door leaf', value: doorway.leaf ? 'yes' : 'no' },
    ];
  }
  const pipe = plan.pipes.find(is);
  if (pipe !== undefined) return [{ name: 'Diameter', value: mm(pipe.diameterMm) }];
  const structural = plan.structuralJoints.find(is);
  if (structural !== undefined) return [{ name: 'Width', value: mm(structural.widthMm) }];
  const joinery = plan.joinery.find(is);
  if (joinery !== undefined) {
    return [
      ...sizeRows(joinery),
      { name: 'Insulation below', value: joinery.under === 'insulated' ? 'yes' : 'no' },
      { name: 'Fixed through to the slab', value: joinery.fixedThrough ? 'yes' : 'no' },
    ];
  }
  const sun = plan.sunZones.find(is);
  if (sun !== undefined) return [...sizeRows(sun), { name: 'Highest', value: `${figure(sun.highestC, 0)} °C` }];
  const outlined = [...plan.columns, ...plan.slabContacts, ...plan.keepClear].find(is);
  return outlined === undefined ? [] : sizeRows(outlined);
}

function sizeRows({ outline }: Outlined): readonly FigureRow[] {
  const { minX, minY, maxX, maxY } = boxOf(outline);
  return [{ name: 'Extent', value: `${figure(maxX - minX, 0)} × ${mm(maxY - minY)}` }];
}
