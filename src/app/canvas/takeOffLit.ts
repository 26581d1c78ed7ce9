import { regionsSubtract } from '../../geometry/clip.ts';
import type { Point } from '../../geometry/point.ts';
import type { Region } from '../../geometry/ring.ts';
import type { Bay } from '../../plan/analysis.ts';
import { type TakeOffRef, takeOffRefs } from '../../plan/take-off.ts';
import type { Result } from '../state/analysisStore.ts';
import { boardStore } from '../state/boardStore.ts';
import { papersStore } from '../state/papersRun.ts';
import { takeOffLight } from '../state/takeOffShown.ts';
import { type SketchMark, sketchLine } from '../tools/sketch.ts';
import { toolStore } from '../tools/toolStore.ts';

/** What the chosen line of the take-off was measured from, in the room that is looked at or everywhere; none outside the step of the papers. */
export function takeOffMarks(): readonly SketchMark[] {
  const { laid, takeOff } = papersStore.getState();
  if (laid === null || takeOff.line === null || boardStore.getState().step !== 'papers') return [];
  const { result } = laid;
  const room = result.plan.rooms.some(({ id }) => id === takeOff.room) ? takeOff.room : null;
  const line = laid.takeOff.lines.find(({ key }) => key === takeOff.line);
  return line === undefined ? [] : takeOffRefs(line, room).flatMap((ref) => refMarks(ref, room, result));
}

function refMarks({ kind, id }: TakeOffRef, room: string | null, result: Result): readonly SketchMark[] {
  const { plan, analysis } = result;
  switch (kind) {
    case 'joint':
      return analysis.joints.filter((each) => each.id === id).map(({ line }) => sketchLine(line, 'lit'));
    case 'edge':
      return analysis.edges.filter((each) => each.id === id).map(({ line }) => sketchLine(line, 'lit'));
    case 'bay':
      return analysis.bays.filter((each) => each.id === id).map((bay) => areaMark(bayPart(bay, room, result)));
    case 'room': {
      // its floor, without what stands in it
      const bays = analysis.bays.filter(({ rooms }) => rooms.includes(id));
      return bays.map((bay) => areaMark(bayPart(bay, id, result)));
    }
    case 'object':
      return [...plan.columns, ...plan.joinery, ...plan.slabContacts]
        .filter((each) => each.id === id)
        .map(({ outline }) => areaMark([{ outline, holes: [] }]));
  }
}

/** What of a bay does not lie in other rooms than this. */
function bayPart(bay: Bay, room: string | null, { plan: { rooms } }: Result): readonly Region[] {
  const others = rooms.filter(({ id }) => id !== room && bay.rooms.includes(id));
  return room === null || others.length === 0 ? [bay] : regionsSubtract([bay], others);
}

function areaMark(regions: readonly Region[]): SketchMark {
  const rings: readonly (readonly Point[])[] = regions.flatMap(({ outline, holes }) => [outline, ...holes]);
  return { mark: 'area', rings, tone: 'lit' };
}

/** Escape takes the light away where nothing else has use of it: no tool, field, menu or chosen thing.  @returns what ends it */
export function takeOffEscape(): () => void {
  let isFree = false;
  // looked at before the key does anything, done when no field has kept it
  const look = ({ key, target }: KeyboardEvent) => {
    const { stance } = toolStore.getState();
    const { chosen, opened } = boardStore.getState();
    isFree =
      key === 'Escape' &&
      stance.tool === 'choose' &&
      !stance.underway &&
      chosen.length + opened.length === 0 &&
      !(target instanceof HTMLInputElement && target.dataset.typing === 'true') &&
      document.querySelector(':popover-open, dialog[open]') === null;
  };
  const act = () => {
    if (isFree) takeOffLight(null);
  };
  window.addEventListener('keydown', look, { capture: true });
  window.addEventListener('keydown', act);
  return () => {
    window.removeEventListener('keydown', look, { capture: true });
    window.removeEventListener('keydown', act);
  };
}
