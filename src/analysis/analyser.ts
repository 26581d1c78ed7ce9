import type { Solved } from '../bays/solve.ts';
import { floorSplit } from '../bays/split.ts';
import { floorPlanOf } from '../floor/floor.ts';
import { movementOf } from '../movement/movement.ts';
import type { Analysis, Joint, Split } from '../plan/analysis.ts';
import { findingDescribe, findingsSort } from '../plan/finding-words.ts';
import { inputFindings } from '../plan/input-findings.ts';
import type { Plan } from '../plan/plan.ts';
import { bayFloors } from '../takeoff/bay-floors.ts';
import { takeoffOf } from '../takeoff/takeoff.ts';
import { tilingOf } from '../tiling/tiling.ts';

export interface AnalyseOptions {
  /** How much search to spend, in steps and not in seconds, so that the same plan gives the same bytes. */
  readonly effort?: 'quick' | 'full';
  /** Called with the share of the work done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  readonly cancelled?: () => boolean;
}

export interface Analyser {
  /** @returns the analysis, or null where `cancelled` said so */
  analyse(plan: Plan, options?: AnalyseOptions): Analysis | null;
}

/** An analyser remembers the parts of the last plan that it split: an edit solves again only what it touched. */
export function createAnalyser(): Analyser {
  const known = new Map<string, Solved>();
  return {
    analyse(plan, { onProgress = () => {}, cancelled = () => false } = {}) {
      const floorPlan = floorPlanOf(plan);
      const report = floorSplit(plan, floorPlan, { known, onProgress, cancelled });
      if (!report || cancelled()) return null;
      const { split, fieldJointM } = report;
      const movement = movementOf(plan, split);
      const tiling = tilingOf(plan, split);
      const quantities = takeoffOf(plan, split, movement.held);
      const facts = [
        ...floorPlan.findings,
        ...inputFindings(plan, floorPlan.offFloor),
        ...report.findings,
        ...movement.findings,
        ...tiling.findings,
      ];
      return {
        format: 'screed-bays/analysis',
        version: 1,
        plan: plan.name,
        ...joined(plan, split, movement, tiling),
        findings: findingsSort(facts.map(findingDescribe)),
        quantities,
        proof: { fieldJointM, atLeastM: null },
        tiles: tiling.tiles,
      };
    },
  };
}

/** Bays, joints and edges with their movement, joints in the grid of the tiles. */
function joined(
  plan: Plan,
  split: Split,
  movement: ReturnType<typeof movementOf>,
  tiling: ReturnType<typeof tilingOf>,
): Pick<Analysis, 'bays' | 'joints' | 'edges'> {
  const floors = bayFloors(plan, split, movement.held);
  return {
    bays: split.bays.map((bay) => {
      const own = floors.get(bay.id) ?? [];
      const bareM2 = own.reduce((sum, floor) => sum + floor.bareM2, 0);
      return { ...bay, stillPoint: required(movement.stillPoints.get(bay.id)), floors: own, bareM2 };
    }),
    joints: split.joints.map(
      (joint): Joint => ({
        ...joint,
        ...required(movement.joints.get(joint.id)),
        ...required(tiling.joints.get(joint.id)),
      }),
    ),
    edges: split.edges.map((edge) => ({ ...edge, movementMm: required(movement.edges.get(edge.id)) })),
  };
}

function required<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('movement or tiling left out a bay, joint or edge of the split');
  return value;
}
