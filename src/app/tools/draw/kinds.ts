import type { Point } from '../../../geometry/point.ts';
import { ringContains } from '../../../geometry/ring.ts';
import { jointsKept, jointsRestedOn } from '../../../plan/edits/joints.ts';
import { objectAdded, objectChanged } from '../../../plan/edits/objects.ts';
import type { PlanFile } from '../../../plan/schema.ts';
import type { Scene, ToolName } from '../stance.ts';

/** What a drawn outline or line becomes. */
export interface DrawKind {
  readonly tool: ToolName;
  /** An outline; a line else. */
  readonly closed: boolean;
  /** In a sentence: "the room". */
  readonly noun: string;
  /** Name of the step that adds it. */
  readonly step: string;
  /** The plan with it; the reason where it cannot be. */
  readonly add: (file: PlanFile, points: readonly Point[], scene: Pick<Scene, 'wishes' | 'result'>) => Added;
}

export type Added = { readonly file: PlanFile; readonly id: string } | { readonly refused: string };

const room: DrawKind = {
  tool: 'room',
  closed: true,
  noun: 'the room',
  step: 'Draw a room',
  add: (file, outline) => objectAdded(file, 'rooms', { name: roomName(file), outline: [...outline] }),
};

/** "Room 3": the first number that no room has. */
function roomName({ rooms }: PlanFile): string {
  const taken = new Set(rooms.map(({ name }) => name));
  let number = rooms.length + 1;
  while (taken.has(`Room ${number}`)) number += 1;
  return `Room ${number}`;
}

const hole: DrawKind = {
  tool: 'hole',
  closed: true,
  noun: 'the hole',
  step: 'Draw a hole in the floor',
  add(file, ring) {
    const [first] = ring;
    const owner = first === undefined ? undefined : roomAt(file, ring);
    if (owner === undefined) return { refused: 'A hole lies within one room: draw it inside a room’s outline.' };
    const holes = [...(owner.holes ?? []), [...ring]];
    return { file: objectChanged(file, owner.id, { holes }), id: owner.id };
  },
};

function roomAt(file: PlanFile, points: readonly Point[]): PlanFile['rooms'][number] | undefined {
  return file.rooms.find(({ outline }) => points.every((point) => ringContains(outline, point)));
}

const joinery: DrawKind = {
  tool: 'joinery',
  closed: true,
  noun: 'the joinery',
  step: 'Draw joinery',
  add: (file, outline, { wishes: { joinery: wish } }) =>
    objectAdded(file, 'joinery', { name: 'Joinery', outline: [...outline], ...wish }),
};

const slabContact: DrawKind = {
  tool: 'slabContact',
  closed: true,
  noun: 'the slab contact',
  step: 'Draw a slab contact',
  add: (file, outline) => objectAdded(file, 'slabContacts', { outline: [...outline] }),
};

const sunZone: DrawKind = {
  tool: 'sunZone',
  closed: true,
  noun: 'the sunlit floor',
  step: 'Draw sunlit floor',
  add: (file, outline, { wishes: { sunC } }) =>
    objectAdded(file, 'sunZones', { outline: [...outline], highestC: sunC }),
};

const keepClear: DrawKind = {
  tool: 'keepClear',
  closed: true,
  noun: 'the area to keep clear',
  step: 'Draw an area to keep clear of joints',
  add: (file, outline) => objectAdded(file, 'keepClear', { outline: [...outline] }),
};

const structuralJoint: DrawKind = {
  tool: 'structuralJoint',
  closed: false,
  noun: 'the joint of the building',
  step: 'Draw a joint of the building',
  add: (file, line, { wishes: { structuralMm } }) =>
    objectAdded(file, 'structuralJoints', { line: [...line], widthMm: structuralMm }),
};

const drawnJoint: DrawKind = {
  tool: 'drawnJoint',
  closed: false,
  noun: 'the joint',
  step: 'Draw a joint',
  // A joint that the tool found and that it ends on is kept with it, or it would end on nothing.
  add(file, line, { result }) {
    const joints = result?.file === file ? result.analysis.joints : [];
    const rested = jointsRestedOn(line, joints).map(({ id }) => id);
    return objectAdded(jointsKept(file, joints, rested).file, 'drawnJoints', { line: [...line] });
  },
};

export const drawKinds = { room, hole, joinery, slabContact, sunZone, keepClear, structuralJoint, drawnJoint } as const;
