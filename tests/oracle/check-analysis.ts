import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { bayFaults } from './check-bays.ts';
import { edgeFaults } from './check-edges.ts';
import { jointFaults } from './check-joints.ts';
import { movementFaults } from './check-movement.ts';
import { neckFaults } from './check-necks.ts';
import { quantityFaults } from './check-quantities.ts';
import { shapeFaults } from './check-shape.ts';
import { tileFaults } from './check-tiles.ts';
import { tilingFaults } from './check-tiling.ts';
import { tongueFaults } from './check-tongues.ts';
import { isCrossing } from './expected-floor.ts';
import { createScene } from './scene.ts';

/** Everything in which an analysis departs from the contract, in words; empty where it keeps it.
 *
 *  Works from the plan and the printed result alone and shares no code with what it checks: plain arithmetic, and an
 *  outside library for polygon overlay. Where the contract leaves two readings open, both are accepted. */
export function analysisFaults(plan: Plan, analysis: Analysis): string[] {
  const shape = shapeFaults(plan, analysis);
  if (shape.some((fault) => fault.includes(' is no ') || fault.includes('that is not there'))) return shape;
  const crossing = analysis.bays.filter(
    ({ outline, measured, holes }) =>
      isCrossing([{ outline, holes }]) || isCrossing([{ outline: measured, holes: [] }]),
  );
  if (crossing.length > 0)
    return [...shape, ...crossing.map((bay) => `the outline of ${bay.id} crosses or touches itself`)];
  const scene = createScene(plan, analysis);
  return [
    ...shape,
    ...tilingFaults(scene),
    ...bayFaults(scene),
    ...jointFaults(scene),
    ...tongueFaults(scene),
    ...neckFaults(scene),
    ...edgeFaults(scene),
    ...movementFaults(scene),
    ...quantityFaults(scene),
    ...tileFaults(scene),
  ];
}
