import type { PlanFile } from '../../plan/schema.ts';
import { analysisStore, type Result } from '../state/analysisStore.ts';
import { boardHover, boardRefuse, boardStore } from '../state/boardStore.ts';
import { commit, planPreview, planStore } from '../state/planStore.ts';
import { type Catches, catchesOf, catchesWithJoints } from './catch-lines.ts';
import { resting } from './choose/resting.ts';
import type { Act, Scene, Stance, Turn } from './stance.ts';
import { toolStore } from './toolStore.ts';
import { wallsKnown } from './walls.ts';

/** Where acts of the hand meet the stores: the one place in which a tool changes anything. */

/** What the state in hand makes of an act. */
export function handAct(act: Act): void {
  const { stance, typed } = toolStore.getState();
  // What is being typed is of the run as it stood: a hand that only passes by neither leads it on nor wipes it out.
  if (typed !== null && (act.kind === 'hover' || act.kind === 'leave')) return;
  if (!passing.includes(act.kind)) refusalPut();
  turnTake(stance.on(act, sceneOf()), gestureOf(act));
}

/** Acts that do nothing yet. */
const passing: readonly Act['kind'][] = ['hover', 'leave', 'down', 'drag'];

/** Puts down what is in hand. */
export function toolPutDown(): void {
  stanceTake(resting());
}

/** Takes up another state: a gesture under way is taken back. */
export function stanceTake(stance: Stance): void {
  planPreview(null);
  refusalPut();
  toolStore.setState({ stance, typed: null });
}

/** Another sheet on the board: what was in hand for the one before is put down. */
export function handFollow(): void {
  planStore.subscribe((state, before) => {
    if (state.history.present.number === before.history.present.number) return;
    toolStore.setState({ stance: resting(), typed: null });
    boardStore.setState({ chosen: [], opened: [] });
  });
}

/** Takes a turn that no act of the hand led to: a figure on the board was typed over. */
export function handTake(turn: Turn): void {
  turnTake(turn, null);
}

function turnTake(turn: Turn, gesture: string | null): void {
  const { next, step, preview, choose, open, hover, refused } = turn;
  toolStore.setState({ stance: next === 'rest' ? resting() : next, typed: null });
  if (step !== undefined) {
    commit(step.name, () => step.file, gesture);
    // The view that is worked in is the user's own: a board of another size does not fit it anew.
    boardStore.setState({ moved: true });
  } else planPreview(preview ?? null);
  if (choose !== undefined) boardStore.setState({ chosen: choose, opened: [] });
  if (open !== undefined) boardStore.setState({ chosen: [], opened: open });
  if (hover !== undefined) boardHover(hover);
  if (refused !== undefined) boardRefuse(refused, []);
}

/** Why the act before was not done goes with the next. What is wrong with a file stays. */
function refusalPut(): void {
  const { notice } = boardStore.getState();
  if (notice?.tone === 'refused' && notice.details.length === 0) boardStore.setState({ notice: null });
}

/** What an arrow key does until it is let go is one step. */
let keysLetGo = 0;
export function keyLetGo(): void {
  keysLetGo += 1;
}

function gestureOf(act: Act): string | null {
  return act.kind === 'steer' ? `steer ${keysLetGo}` : null;
}

/** What a tool knows of the plan, made anew when the plan or the wall's depth changes. */
interface Made {
  readonly file: PlanFile;
  readonly wallMm: number;
  readonly result: Result | null;
  readonly catches: Catches;
}
let made: Made | null = null;

export function sceneOf(): Scene {
  const { file } = planStore.getState().history.present;
  const { wishes, stance, tiles, opening } = toolStore.getState();
  const { chosen, step } = boardStore.getState();
  const last = analysisStore.getState().result;
  const result = stance.tool === 'drawnJoint' && last?.file === file ? last : null;
  if (made === null || made.file !== file || made.wallMm !== wishes.wallMm || made.result !== result) {
    const catches = catchesOf(file, wishes.wallMm);
    const joining = result === null ? catches : catchesWithJoints(catches, result.analysis.joints);
    made = {
      file,
      wallMm: wishes.wallMm,
      result,
      catches: result === null || tiles === null ? joining : { ...joining, grout: tiles.grout(file) },
    };
  }
  return {
    file,
    catches: made.catches,
    walls: () => wallsKnown(file),
    result: last,
    chosen,
    step,
    wishes,
    tiles,
    opening,
  };
}
