import { resting } from './choose/resting.ts';
import { first } from './draw/first.ts';
import { drawKinds } from './draw/kinds.ts';
import { doorway } from './place/doorway.ts';
import { placeKinds, placing } from './place/placing.ts';
import type { Scene, Stance, ToolName } from './stance.ts';

/** The state in which a tool is taken up; that for set-out points with the later parts of the screen. */
export function toolStart(tool: ToolName, scene: Scene): Stance {
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
    default:
      return first(drawKinds[tool]);
  }
}
