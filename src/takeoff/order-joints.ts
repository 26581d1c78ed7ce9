import { EQUAL_LENGTH_MM } from '../geometry/tolerance.ts';
import { type Joint, type JointKind, jointKinds } from '../plan/analysis.ts';
import { roundedText } from '../plan/figure-words.ts';
import { orderStarts, type Papers } from '../plan/papers.ts';
import { rules } from '../plan/reference.ts';
import type { TakeOffCell, TakeOffRef } from '../plan/take-off.ts';
import type { OrderFloor } from './order-floor.ts';
import { figureWords, type OrderDraft, orderOfCount, packCount, shareWords } from './order-line.ts';
import { jointRoomShares } from './room-share.ts';
import { jointIsSealed, sealantDeepNotes, sealantDepth } from './sealant.ts';
import { jointSleeves } from './sleeves.ts';

const kindItems: Readonly<Record<JointKind, string>> = {
  doorway: 'Joint profile, doorways',
  neck: 'Joint profile, across necks',
  field: 'Joint profile, intermediate joints',
  structural: 'Joint profile, joints of the building',
  zone: 'Joint profile, between heating zones',
  drawn: 'Joint profile, joints drawn by hand',
};

/** Joint profile, a line for each kind and width. */
export function profileDrafts(of: OrderFloor): readonly OrderDraft[] {
  return jointKinds.flatMap((kind) => {
    const own = of.analysis.joints.filter((joint) => joint.kind === kind);
    const widths = [...new Set(own.map(({ profileMm }) => profileMm))].sort((a, b) => a - b);
    return widths.map((widthMm) =>
      profileDraft(
        of,
        kind,
        widthMm,
        own.filter(({ profileMm }) => profileMm === widthMm),
      ),
    );
  });
}

function profileDraft(of: OrderFloor, kind: JointKind, widthMm: number, joints: readonly Joint[]): OrderDraft {
  const { profileBarM, profileSpares } = of.ordering;
  const bars = joints.map(({ lengthM }) => barCount(lengthM, profileBarM));
  const count = bars.reduce<number | null>(
    (sum, each) => (sum === null || each === null ? null : sum + each),
    profileSpares,
  );
  const net = lengthOf(joints);
  return {
    key: `profile:${kind}:${roundedText(widthMm, 1)}`,
    group: 'profile',
    item: kindItems[kind],
    spec: `${roundedText(widthMm, 1)} mm wide, for ${roundedText(of.plan.screed.thicknessMm, 1)} mm of screed${kind === 'structural' ? ', for movement in three directions' : ''}`,
    unit: 'm',
    net,
    allowance: `whole bars joint by joint, the rest of a bar not used on; ${profileSpares} to spare`,
    gross: count === null ? net : count * profileBarM,
    order: orderOfCount(count, 'bars', figureWords(profileBarM, 'm')),
    paid: { key: 'profileBar', per: 'bar', amount: count },
    cells: jointCells(of, joints, ({ lengthM }) => lengthM),
    refs: jointRefs(joints, of),
    notes: [],
    sources: kind === 'structural' ? ['structural-joint', 'order-practice'] : ['profile-width', 'order-practice'],
  };
}

/** Bars of one joint. A joint that is a bar long but for rounding takes one. */
function barCount(lengthM: number, barM: number): number | null {
  const count = packCount(lengthM - EQUAL_LENGTH_MM / 1000, barM);
  return count === null ? null : Math.max(1, count);
}

/** Sealant and the backer below it. */
export function sealantDrafts(of: OrderFloor): readonly OrderDraft[] {
  const { plan, analysis, ordering, rooms, bays } = of;
  const joints = analysis.joints.filter((joint) => jointIsSealed(joint, bays, rooms));
  if (joints.length === 0) return [];
  const { widthMm } = plan.sealant;
  const { sealantAllowance, cartridgeMl, backerAllowance } = ordering;
  const litres = analysis.quantities.sealantLitres;
  const lengthM = lengthOf(joints);
  const cartridges = packCount(litres * (1 + sealantAllowance) * 1000, cartridgeMl);
  const backerM = lengthM * (1 + backerAllowance);
  const wholeM = packCount(backerM, 1);
  const depthMm = sealantDepth(widthMm);
  return [
    {
      key: `sealant:${roundedText(widthMm, 1)}`,
      group: 'sealant',
      item: 'Sealant',
      spec: `${roundedText(widthMm, 1)} mm wide, ${roundedText(depthMm, 1)} mm deep`,
      unit: 'l',
      net: litres,
      allowance: shareWords(sealantAllowance, 'left in tubes and tools'),
      gross: litres * (1 + sealantAllowance),
      order: orderOfCount(cartridges, 'cartridges', figureWords(cartridgeMl, 'ml')),
      paid: { key: 'sealantCartridge', per: 'cartridge', amount: cartridges },
      cells: jointCells(of, joints, (joint) => (litres * joint.lengthM) / lengthM),
      refs: jointRefs(joints, of),
      notes: [
        `Joints that come up through stone or ceramic. The perimeter joint ${ordering.perimeterShare === 0 ? 'is not counted' : 'stands in a line of its own'}.`,
        ...sealantDeepNotes(lengthM, widthMm),
      ],
      sources: ['sealant-depth', 'order-practice'],
    },
    {
      key: `backer:${roundedText(widthMm, 1)}`,
      group: 'backer',
      item: 'Backer',
      spec: `for joints ${roundedText(widthMm, 1)} mm wide`,
      unit: 'm',
      net: lengthM,
      allowance: shareWords(backerAllowance, 'cut to waste'),
      gross: backerM,
      order: orderOfCount(wholeM, 'm', ''),
      paid: { key: 'backerM', per: 'm', amount: wholeM },
      cells: jointCells(of, joints, (joint) => joint.lengthM),
      refs: jointRefs(joints, of),
      notes: [
        'Size to suit the width of the joint by the maker\u2019s table; release tape where the depth leaves no room for it.',
      ],
      sources: ['order-practice'],
    },
  ];
}

/** Sleeves on heating pipes where they cross joints. */
export function sleeveDrafts(of: OrderFloor, papers: Pick<Papers, 'joints'>): readonly OrderDraft[] {
  const { analysis, ordering } = of;
  const crossed = analysis.joints
    .map((joint) => ({ joint, ...jointSleeves(joint, { ...of, papers }) }))
    .filter(({ count }) => count > 0);
  if (crossed.length === 0) return [];
  const sum = (assumed: boolean) =>
    crossed.filter((each) => each.assumed === assumed).reduce((all, { count }) => all + count, 0);
  const counts = new Map(crossed.map(({ joint, count }) => [joint, count]));
  const joints = crossed.map(({ joint }) => joint);
  const net = sum(true) + sum(false);
  const count = net + ordering.sleeveSpares;
  const assumed = crossed.filter((each) => each.assumed).length;
  return [
    {
      key: 'sleeves',
      group: 'sleeves',
      item: 'Sleeves on heating pipes',
      spec: `at least ${figureWords(rules.sleeveMm.value, 'mm')} long, centred on the joint`,
      unit: 'pieces',
      net,
      parts: [
        { name: 'entered', amount: sum(false) },
        { name: 'assumed', amount: sum(true) },
      ],
      allowance: ordering.sleeveSpares === 0 ? 'none' : `${ordering.sleeveSpares} to spare`,
      gross: count,
      order: orderOfCount(count, 'sleeves', ''),
      paid: { key: 'sleeve', per: 'sleeve', amount: count },
      cells: jointCells(of, joints, (joint) => counts.get(joint) ?? 0),
      refs: jointRefs(joints, of),
      notes: [
        ...(assumed === 0 ? [] : [sleevesAssumed(ordering.sleevesPerJoint, assumed)]),
        ...(analysis.joints.some(({ kind }) => kind === 'structural')
          ? ['None assumed at joints of the building: pipes cross these only by the engineer\u2019s detail.']
          : []),
      ],
      sources: ['sleeve-length', 'sleeve-pipes'],
    },
  ];
}

/** The plan has no circuits: EN 1264-4 lets flow and return of a circuit cross a joint, and how many circuits do is seen on the heating plan only. */
function sleevesAssumed(perJoint: number, joints: number): string {
  const isStart = perJoint === orderStarts.sleevesPerJoint.value;
  const pipes = isStart ? 'flow and return of one circuit' : `${perJoint} ${perJoint === 1 ? 'pipe' : 'pipes'}`;
  const across = joints === 1 ? 'the one joint' : `each of ${joints} joints`;
  return `Assumed: ${pipes} across ${across} within heated floor for which none are entered; count them on the heating plan.`;
}

function lengthOf(joints: readonly Joint[]): number {
  return joints.reduce((sum, { lengthM }) => sum + lengthM, 0);
}

function jointCells(
  of: OrderFloor,
  joints: readonly Joint[],
  amount: (joint: Joint) => number,
): readonly TakeOffCell[] {
  return joints.flatMap((joint) =>
    jointRoomShares(joint, of.shares).map(({ bay, room, share }) => ({ bay, room, amount: amount(joint) * share })),
  );
}

function jointRefs(joints: readonly Joint[], { shares }: OrderFloor): readonly TakeOffRef[] {
  return joints.map((joint) => ({
    kind: 'joint',
    id: joint.id,
    rooms: [...new Set(jointRoomShares(joint, shares).map(({ room }) => room))],
  }));
}
