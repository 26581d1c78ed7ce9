import { lineMiddle } from '../geometry/line.ts';
import { type Point, pointBetween, pointDistance } from '../geometry/point.ts';
import { ringContains } from '../geometry/ring.ts';
import { intervalsMeet, lineInside } from '../geometry/scanline.ts';
import type { JointLine } from '../plan/analysis.ts';
import { limitExceeded } from '../plan/exceed.ts';
import type { FindingFact, FindingValues } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { rules } from '../plan/reference.ts';
import type { BayBody } from './bay-shapes.ts';
import { frameOf } from './frame.ts';
import type { Breach } from './measure.ts';
import type { Neck } from './necks.ts';

/** Joints through joinery for less than this only touch it, mm. */
const THROUGH_MM = 10;
const BESIDE_MM = 1;

/** What the bays break, each with the figure, the limit and the place. */
export function bayFindings(plan: Plan, bays: readonly BayBody[]): FindingFact[] {
  return bays.flatMap((bay) => [...breachFindings(plan, bay), ...allowanceFinding(plan, bay), ...narrowFinding(bay)]);
}

function breachFindings(plan: Plan, bay: BayBody): FindingFact[] {
  return bay.figures.breaches.map((breach) => ({
    at: breach.at ?? bay.centre,
    refs: [bay.shape.id],
    ...breachValues(plan, bay, breach),
  }));
}

function breachValues(
  plan: Plan,
  { shape }: BayBody,
  { rule, value, limit }: Breach,
): FindingValues & { source?: string } {
  const figures = { bay: shape.id, value, limit };
  switch (rule) {
    case 'area':
      return { code: 'bay-area', ...figures, ...limitSource(plan, shape.rooms, 'areaM2', limit) };
    case 'length':
      return { code: 'bay-length', ...figures, ...limitSource(plan, shape.rooms, 'lengthM', limit) };
    case 'aspect':
      return { code: 'bay-aspect', ...figures, ...limitSource(plan, shape.rooms, 'aspect', limit) };
    case 'reentrant':
      return { code: 'bay-reentrant', ...figures };
    case 'core':
      return { code: 'bay-core', bay: shape.id, sideMm: value, limitMm: limit };
  }
}

function allowanceFinding(plan: Plan, { shape, figures, rules, centre }: BayBody): FindingFact[] {
  if (!figures.byAllowance) return [];
  const { aspect, aspectFromM } = rules.limits;
  return [
    {
      code: 'bay-aspect-allowance',
      bay: shape.id,
      value: figures.aspect,
      limit: aspect,
      fromM: aspectFromM,
      at: centre,
      refs: [shape.id],
      ...limitSource(plan, shape.rooms, 'aspectFromM', aspectFromM),
    },
  ];
}

/** A bay too narrow to be laid well. Floor of a doorway between two joints is what the opening makes it. */
function narrowFinding({ shape, figures, centre, isInDoorway }: BayBody): FindingFact[] {
  const leastMm = rules.bayLeastWidthMm.value;
  const widthMm = figures.widthM * 1000;
  if (isInDoorway || !limitExceeded(leastMm, widthMm)) return [];
  return [{ code: 'bay-narrow', bay: shape.id, widthMm, leastMm, at: centre, refs: [shape.id] }];
}

/** Where the limit that was broken comes from: the rule set, or the document that the user named. */
function limitSource(
  plan: Plan,
  rooms: readonly string[],
  which: 'areaM2' | 'lengthM' | 'aspect' | 'aspectFromM',
  limit: number,
): { source?: string } {
  const room = plan.rooms.find((r) => rooms.includes(r.id) && r.limits[which] === limit);
  return room ? { source: room.limitSources[which] } : {};
}

/** Joints that run where none should: through joinery or through an area to be kept clear. */
export function crossingFindings(plan: Plan, joints: readonly JointLine[]): FindingFact[] {
  return joints.flatMap((joint) => [
    ...plan.joinery.flatMap((item): FindingFact[] => {
      const at = item.under === 'built-off-slab' ? null : throughPlace(joint.line, item.outline);
      return at
        ? [
            {
              code: 'joint-through-joinery',
              joint: joint.id,
              name: item.name || item.id,
              at,
              refs: [joint.id, item.id],
            },
          ]
        : [];
    }),
    ...plan.keepClear.flatMap((area): FindingFact[] => {
      const at =
        joint.kind === 'doorway' || joint.kind === 'structural' ? null : throughPlace(joint.line, area.outline);
      return at
        ? [{ code: 'joint-through-keep-clear', joint: joint.id, area: area.id, at, refs: [joint.id, area.id] }]
        : [];
    }),
  ]);
}

/** The middle of the first stretch of the line inside the ring. */
function throughPlace(line: readonly Point[], ring: readonly Point[]): Point | null {
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1] as Point, line[i] as Point];
    const frame = frameOf(Math.atan2(b[1] - a[1], b[0] - a[0]));
    const [x0, y] = frame.toFrame(a);
    const x1 = x0 + pointDistance(a, b);
    const turned = [ring.map(frame.toFrame)];
    // Inside on both sides of the line: one that follows an edge of the ring runs beside it.
    for (const [from, to] of intervalsMeet(
      lineInside(turned, 1, y - BESIDE_MM),
      lineInside(turned, 1, y + BESIDE_MM),
    )) {
      const [p, q] = [Math.max(from, x0), Math.min(to, x1)];
      if (q - p > THROUGH_MM) return pointBetween(a, b, ((p + q) / 2 - x0) / (x1 - x0));
    }
  }
  return null;
}

/** Passages that no joint crosses. */
export function neckFindings(plan: Plan, necks: readonly Neck[], bays: readonly BayBody[]): FindingFact[] {
  const limit = plan.layout.neckRatio;
  return necks.flatMap((neck): FindingFact[] => {
    const at = lineMiddle([neck.from, neck.to]);
    const bay = bays.find(({ shape }) => ringContains(shape.outline, at))?.shape.id;
    const { widthMm, besideMm } = neck;
    return bay ? [{ code: 'neck-unjointed', bay, widthMm, besideMm, limit, at, refs: [bay] }] : [];
  });
}
