import type { BayShape, JointLine } from '../plan/analysis.ts';
import type { Ordering, Papers } from '../plan/papers.ts';
import type { Room } from '../plan/plan.ts';

export interface Sleeves {
  readonly count: number;
  readonly assumed: boolean;
}

/** Sleeves on the heating pipes that cross a joint: those entered; else what the order assumes where both sides are heated. None is assumed at a joint of
 *  the building: pipes cross it only by the engineer's detail. */
export function jointSleeves(
  joint: Pick<JointLine, 'key' | 'kind' | 'bays'>,
  on: {
    readonly bays: ReadonlyMap<string, Pick<BayShape, 'rooms'>>;
    readonly rooms: ReadonlyMap<string, Pick<Room, 'heated'>>;
    readonly papers: Pick<Papers, 'joints'>;
    readonly ordering: Pick<Ordering, 'sleevesPerJoint'>;
  },
): Sleeves {
  const entered = on.papers.joints.get(joint.key)?.pipes ?? null;
  if (entered !== null) return { count: entered, assumed: false };
  const heated = (id: string) => on.bays.get(id)?.rooms.some((room) => on.rooms.get(room)?.heated) ?? false;
  const parts = joint.kind !== 'structural' && joint.bays.every(heated);
  return { count: parts ? on.ordering.sleevesPerJoint : 0, assumed: true };
}
