import { viewportLengthMm, viewportPaperPx } from '../canvas/viewport.ts';
import { boardStore } from '../state/boardStore.ts';
import { resting } from './choose/resting.ts';
import { first } from './draw/first.ts';
import { drawKinds } from './draw/kinds.ts';
import { sceneOf, stanceTake } from './hand.ts';
import { gridLineHeld } from './papers/grid-line.ts';
import { paperPointHeld } from './papers/paper-point.ts';
import { placesHeld } from './papers/place-hand.ts';
import { doorway } from './place/doorway.ts';
import { placeKinds, placing } from './place/placing.ts';
import type { Scene, Stance, ToolName } from './stance.ts';

/** Takes a tool up. The tools that draw and place come with the later parts of the screen. */
export function toolTake(tool: ToolName): void {
  stanceTake(toolStart(tool, sceneOf()));
  if (tool !== 'choose') boardStore.setState({ chosen: [], opened: [] });
}

/** The state in which a tool is taken up. */
function toolStart(tool: ToolName, scene: Scene): Stance {
  switch (tool) {
    case 'choose':
      return resting();
    case 'doorway':
      return doorway();
    case 'column':
    case 'pipe':
      return placing(placeKinds[tool]);
    case 'setOut':
      return scene.tiles?.start(scene) ?? resting();
    case 'paperPoint':
      return placesHeld(
        scene.wishes.paperPoint === 'grid' ? gridLineHeld() : paperPointHeld(scene.wishes.paperPoint),
        scene.wishes.paperPoint,
        paperMmNow,
      );
    default:
      return first(drawKinds[tool]);
  }
}

/** So many mm of the plan lie under 1 mm of paper on the board. */
export function paperMmNow(): number {
  const { view } = boardStore.getState();
  return view === null ? 0 : viewportLengthMm(view, viewportPaperPx(1));
}
