import { movementOf } from '../../src/movement/movement.ts';
import { type Analysis, type Split, untiledJoint } from '../../src/plan/analysis.ts';
import { type Ordering, orderingOf, type Papers, papersOf } from '../../src/plan/papers.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { type TakeOff, type TakeOffLine, takeOffUnit } from '../../src/plan/take-off.ts';
import { bayFloors } from '../../src/takeoff/bay-floors.ts';
import { orderOf } from '../../src/takeoff/order.ts';
import { takeoffOf } from '../../src/takeoff/takeoff.ts';
import { gridSplit, type PlanFields, planOf, rectangle } from '../movement/grid-split.ts';

/** A hall of 8 x 5 m and a study of 4 x 5 m beside it, a joint of 5 m between them and no wall: 60 m2, walls of 21 and 13 m. */
export const twoRooms: Split = gridSplit([0, 8000, 12_000], [0, 5000], (column) => (column === 0 ? 'hall' : 'study'));

/** 60 + 65 + 5 + 10 = 140 mm of floor. */
export const twoRoomsFields: PlanFields = {
  screed: { class: 'CT-C25-F4', thicknessMm: 65 },
  sealant: { widthMm: 8, capability: 0.25 },
  buildUp: { insulationMm: 60, adhesiveMm: 5, coveringMm: 10 },
  rooms: [
    { id: 'hall', name: 'Hall', outline: rectangle(0, 0, 8000, 5000) },
    { id: 'study', name: 'Study', outline: rectangle(8000, 0, 4000, 5000) },
  ],
};

/** A floor split by hand, analysed as far as orders read it. */
export function analysisOf(plan: Plan, split: Split, tiles: Analysis['tiles'] = null): Analysis {
  const movement = movementOf(plan, split);
  const floors = bayFloors(plan, split, movement.held);
  return {
    format: 'screed-bays/analysis',
    version: 1,
    plan: plan.name,
    bays: split.bays.map((bay) => {
      const own = floors.get(bay.id) ?? [];
      return { ...bay, stillPoint: [0, 0], floors: own, bareM2: own.reduce((sum, { bareM2 }) => sum + bareM2, 0) };
    }),
    joints: split.joints.map((joint) => {
      const moves = movement.joints.get(joint.id);
      if (moves === undefined) throw new Error(`no movement of ${joint.id}`);
      return { ...joint, ...moves, ...untiledJoint };
    }),
    edges: split.edges.map((edge) => ({ ...edge, movementMm: 0 })),
    findings: [],
    quantities: takeoffOf(plan, split, movement.held),
    proof: { fieldJointM: 0, atLeastM: null },
    tiles,
  };
}

export interface OrderOver {
  readonly fields?: PlanFields;
  readonly split?: Split;
  readonly order?: PlanFile['order'];
  readonly joints?: NonNullable<PlanFile['papers']>['joints'];
  readonly tiles?: Analysis['tiles'];
}

export function takeOffOfTwoRooms({
  fields = {},
  split = twoRooms,
  order,
  joints = [],
  tiles,
}: OrderOver = {}): TakeOff {
  const plan = planOf({ ...twoRoomsFields, ...fields });
  const file: PlanFile = { format: 'screed-bays/plan', version: 1, name: '', rooms: [], order, papers: { joints } };
  const [ordering, papers]: [Ordering, Papers] = [orderingOf(file), papersOf(file)];
  return orderOf(plan, analysisOf(plan, split, tiles), ordering, papers);
}

export function lineOf({ lines }: TakeOff, key: string): TakeOffLine {
  const line = lines.find((each) => each.key === key);
  if (line === undefined) throw new Error(`no line ${key} among ${lines.map((each) => each.key).join(', ')}`);
  return line;
}

/** What a line reads: net, allowance, with it, and the order. */
export function lineText({ net, allowance, gross, decimals, unit, order }: TakeOffLine): string {
  const ordered =
    order === null
      ? ''
      : `: ${order.count} ${takeOffUnit(order.count, order.unit)}${order.content && ` of ${order.content}`}`;
  const [shownNet, shownGross] = [net, gross].map((figure) => figure.toFixed(decimals));
  return `${shownNet} + ${allowance.amount.toFixed(decimals)} = ${shownGross} ${unit}${ordered}`;
}
