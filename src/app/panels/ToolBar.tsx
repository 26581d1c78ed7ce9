import { useStore } from 'zustand';
import { surfaceFocus } from '../canvas/surface.ts';
import { laterDo, ToolOptions } from '../later.tsx';
import { Icon, type IconName } from '../parts/Icon.tsx';
import type { WorkStep } from '../state/boardStore.ts';
import { useBoard, usePlan } from '../state/hooks.ts';
import { toolPutDown } from '../tools/hand.ts';
import type { ToolName } from '../tools/stance.ts';
import { toolStore } from '../tools/toolStore.ts';

interface ToolButton {
  readonly tool: ToolName;
  readonly icon: IconName;
  readonly words: string;
  readonly hint: string;
}

const choose: ToolButton = { tool: 'choose', icon: 'choose', words: 'Choose', hint: 'Choose and move things (Escape)' };

/** What is drawn in each step of the work. */
const stepTools: Readonly<Record<WorkStep, readonly ToolButton[]>> = {
  floor: [
    { tool: 'room', icon: 'room', words: 'Room', hint: 'Draw the clear floor of a room between its finished walls' },
    { tool: 'hole', icon: 'hole', words: 'Hole', hint: 'Draw a hole in a room: a shaft, a stairwell, a core' },
  ],
  openings: [
    { tool: 'doorway', icon: 'openings', words: 'Doorway', hint: 'Set a doorway in a wall between two rooms' },
  ],
  obstacles: [
    { tool: 'column', icon: 'column', words: 'Column', hint: 'Place a column, a row or a grid of them' },
    { tool: 'pipe', icon: 'pipe', words: 'Pipe', hint: 'Place a pipe that goes through the screed' },
    { tool: 'joinery', icon: 'joinery', words: 'Joinery', hint: 'Draw fixed joinery: units, an island, a counter' },
    { tool: 'slabContact', icon: 'contact', words: 'Slab contact', hint: 'Draw a place where insulation is left out' },
    {
      tool: 'structuralJoint',
      icon: 'building',
      words: 'Building joint',
      hint: 'Draw a joint of the building, which every layer follows',
    },
    { tool: 'sunZone', icon: 'light', words: 'Sun', hint: 'Draw floor that the sun warms' },
    {
      tool: 'keepClear',
      icon: 'clear',
      words: 'Keep clear',
      hint: 'Draw an area that no intermediate joint may cross',
    },
  ],
  joints: [{ tool: 'drawnJoint', icon: 'joint', words: 'Joint', hint: 'Draw a joint of your own, wall to wall' }],
  coverings: [
    {
      tool: 'setOut',
      icon: 'setOut',
      words: 'Set-out point',
      hint: 'Place the corner from which the tiles are laid',
    },
  ],
  papers: [
    {
      tool: 'paperPoint',
      icon: 'point',
      words: 'Point',
      hint: 'Place base points, test points and the access for the papers',
    },
  ],
};

/** What the hand can take up in this step of the work, how it is set, and what to do next. */
export function ToolBar() {
  const step = useBoard((state) => state.step);
  const held = useStore(toolStore, ({ stance }) => stance.tool);
  const hint = useStore(toolStore, ({ stance }) => stance.hint);
  const keys = useStore(toolStore, ({ stance }) => stance.keys);
  const tiled = useStore(toolStore, ({ tiles }) => tiles !== null);
  const laid = usePlan(({ history: { present } }) => (present.file.tiles ?? present.file.tileFields) !== undefined);
  const own = step === 'coverings' && !(tiled && laid) ? [] : stepTools[step];
  // What is being drawn is seen in hand in whichever step.
  const other = Object.values(stepTools).flatMap((tools) => tools.filter(({ tool }) => tool === held));
  const tools = own.some(({ tool }) => tool === held) ? own : [...own, ...other];
  // Not asked for before there is anything to set: its file comes after the first view.
  const hasOptions = held !== 'choose' || step === 'floor';
  return (
    <section className="bar" aria-label="Drawing tools">
      <fieldset className="bar-tools" aria-label="Tools">
        {[choose, ...tools].map(({ tool, icon, words, hint: title }) => (
          <button
            key={tool}
            type="button"
            className="button tool"
            aria-pressed={held === tool}
            title={title}
            onClick={() => {
              if (tool === 'choose') toolPutDown();
              else laterDo((parts) => parts.toolTake(tool));
              surfaceFocus();
            }}
          >
            <Icon name={icon} />
            {words}
          </button>
        ))}
      </fieldset>
      <div className="bar-row">
        <div className="bar-options">{hasOptions && <ToolOptions tool={held} />}</div>
        <p className="bar-hint" role="status">
          {hint} {keys !== undefined && <span className="by-keys">{keys}</span>}
        </p>
      </div>
    </section>
  );
}
