import './style/card.css';
import './style/hand.css';
import './style/help.css';
import './style/kept.css';
import './style/papers.css';
import './style/tiles.css';

/** What the first view does not show: the figures of a chosen thing, the other steps of the work, the empty sheet, the
 *  kept plans. */

export { BoardKey } from './canvas/BoardKey.tsx';
export { Dimensions } from './canvas/Dimensions.tsx';
export { paperItemsOn } from './canvas/paperItems.ts';
export { planHit } from './canvas/planHit.ts';
export { SketchLayer } from './canvas/SketchLayer.tsx';
export { TypedEntry } from './canvas/TypedEntry.tsx';
export { Card } from './card/Card.tsx';
export { LiveLimits } from './card/LiveLimits.tsx';
export { Begin } from './panels/Begin.tsx';
export { CoveringsPanel } from './panels/CoveringsPanel.tsx';
export { FloorPanel } from './panels/FloorPanel.tsx';
export { HandGroup } from './panels/HandGroup.tsx';
export { HelpSheet } from './panels/HelpSheet.tsx';
export { KeptPlans } from './panels/KeptPlans.tsx';
export { ObstaclesPanel } from './panels/ObstaclesPanel.tsx';
export { OpeningsPanel } from './panels/OpeningsPanel.tsx';
export { PapersPanel } from './panels/PapersPanel.tsx';
export { ToolOptions } from './panels/ToolOptions.tsx';
export { papersPrepare } from './state/papersRun.ts';
export {
  chosenAll,
  chosenCopy,
  chosenCut,
  chosenRemove,
  clipPaste,
} from './tools/actions.ts';
export { opening } from './tools/choose/opening.ts';
export { tileTools } from './tools/tiles/tile-tools.ts';
export { toolTake } from './tools/tools.ts';
