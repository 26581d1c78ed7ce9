import type { Point } from '../geometry/point.ts';
import type { HeldPlace, JointLine, JointMovement, Split } from '../plan/analysis.ts';
import type { FindingFact } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { bayBody } from './bay-body.ts';
import { bayStrain, planClimate } from './bay-strain.ts';
import { edgeMovement } from './edge-movement.ts';
import { edgeFindings, stripTravelFindings } from './edge-provision.ts';
import { bayHeldGround, type HeldGround, heldPlaceFindings, planHolders } from './held-place.ts';
import { jointDisplacement, type MovingBay } from './joint-movement.ts';
import { jointMovement, profileFindings } from './joint-provision.ts';
import { restraintFindings } from './restraint.ts';
import { sealantFindings, sealantWidthFindings } from './sealant.ts';
import { bayStillPoint } from './still-point.ts';
import { thicknessFindings } from './thickness.ts';

/** How a split floor moves, and whether what is provided takes it.
 *
 *  Accepts: a resolved plan and its split, mm. Guarantees: a still point for every bay, figures for every joint and edge between bays that
 *  the split has, in the order of the split; nothing depends on where or which way round the plan lies.
 *
 *  Steps: 1. where each bay is held to the slab (held-place); 2. its strains and its still point (bay-strain, still-point); 3. movement at
 *  every joint and edge (joint-movement, edge-movement), centred and worst case; 4. profile, strip, sealant and thickness against it
 *  (joint-provision, edge-provision, sealant, thickness); 5. what a bay held in two places bears (restraint). */
export interface Movement {
  /** By bay id, mm. */
  readonly stillPoints: ReadonlyMap<string, Point>;
  /** By joint id. */
  readonly joints: ReadonlyMap<string, JointMovement>;
  /** By edge id, mm. */
  readonly edges: ReadonlyMap<string, number>;
  readonly held: readonly HeldPlace[];
  readonly findings: readonly FindingFact[];
}

/** A bay that moves, with the places that hold it. */
interface PlacedBay extends MovingBay {
  readonly grounds: readonly HeldGround[];
}

export function movementOf(plan: Plan, split: Split): Movement {
  const bays = placedBays(plan, split);
  const all = [...bays.values()];
  const joints = jointsMovement(plan, split, bays);
  const edges = edgesMovement(split, bays);
  const grounds = all.flatMap((bay) => bay.grounds);
  return {
    stillPoints: new Map(all.map((bay) => [bay.body.id, bay.stillPoint])),
    joints,
    edges,
    held: grounds.map((ground) => ground.place),
    findings: [
      ...heldPlaceFindings(grounds),
      ...all.flatMap((bay) => restraintFindings(bay, bay.grounds, plan.screed)),
      ...jointsFindings(plan, split.joints, joints),
      ...split.edges.flatMap((edge) => edgeFindings(edge, edges.get(edge.id) ?? 0, plan.edgeStrip)),
      ...stripTravelFindings(plan.edgeStrip),
      ...thicknessFindings(plan),
    ],
  };
}

function placedBays(plan: Plan, split: Split): ReadonlyMap<string, PlacedBay> {
  const holders = planHolders(plan);
  const climate = planClimate(plan);
  const placed = split.bays.map((shape): PlacedBay => {
    const body = bayBody(shape);
    const grounds = bayHeldGround(body, holders);
    return { body, grounds, strain: bayStrain(body, climate), stillPoint: bayStillPoint(body, grounds) };
  });
  return new Map(placed.map((bay) => [bay.body.id, bay]));
}

function jointsMovement(
  plan: Plan,
  split: Split,
  bays: ReadonlyMap<string, MovingBay>,
): ReadonlyMap<string, JointMovement> {
  return new Map(
    split.joints.map((joint) => {
      const displacement = jointDisplacement(joint.line, bayOf(bays, joint.bays[0]), bayOf(bays, joint.bays[1]));
      return [joint.id, jointMovement(joint, displacement, plan)];
    }),
  );
}

function edgesMovement(split: Split, bays: ReadonlyMap<string, MovingBay>): ReadonlyMap<string, number> {
  return new Map(split.edges.map((edge) => [edge.id, edgeMovement(edge.line, bayOf(bays, edge.bay))]));
}

function jointsFindings(
  plan: Plan,
  joints: readonly JointLine[],
  movements: ReadonlyMap<string, JointMovement>,
): FindingFact[] {
  const found = joints.flatMap((joint) => {
    const movement = movements.get(joint.id);
    if (movement === undefined) return [];
    return [...profileFindings(joint, movement), ...sealantFindings(joint, movement, plan.sealant.widthMm)];
  });
  return [...found, ...(joints.length > 0 ? sealantWidthFindings(plan) : [])];
}

function bayOf(bays: ReadonlyMap<string, MovingBay>, id: string): MovingBay {
  const bay = bays.get(id);
  if (bay === undefined) throw new Error(`the split has no bay ${id}`);
  return bay;
}
