import { surfaceFocus } from '../canvas/surface.ts';
import { demoLay, demos } from '../files/demos.ts';
import { filePick } from '../files/files.ts';
import { keptOpen } from '../files/kept.ts';
import { useKeptList } from '../files/kept-list.ts';
import { nameText } from '../parts/format.ts';
import { Icon } from '../parts/Icon.tsx';
import { boardStore } from '../state/boardStore.ts';
import { toolTake } from '../tools/tools.ts';

/** What an empty sheet says: three ways to begin. It goes away as soon as one is begun. */
export function Begin() {
  return (
    <div className="begin">
      <div>
        <h2>An empty sheet</h2>
        <ol>
          <li>
            <h3>Draw a room</h3>
            <p>The clear floor between its finished walls: press corner after corner, or type its sides.</p>
            <button type="button" className="button main" onClick={roomBegin}>
              <Icon name="room" />
              Draw the first room
            </button>
          </li>
          <li>
            <h3>Open a plan</h3>
            <p>A plan file from your disk, or drop it anywhere on the board.</p>
            <div className="choices">
              <button type="button" className="button framed" onClick={filePick}>
                Open a plan file
              </button>
              <GoOn />
            </div>
          </li>
          <li>
            <h3>Try a demo</h3>
            <p>A finished floor with its bays, joints and findings.</p>
            <div className="choices">
              {demos.map((demo) => (
                <button key={demo.path} type="button" className="button framed" onClick={() => void demoLay(demo)}>
                  {demo.name}
                </button>
              ))}
            </div>
          </li>
        </ol>
      </div>
    </div>
  );
}

/** The plan that was worked on last in this browser, where there is one. */
function GoOn() {
  const [newest] = useKeptList()?.plans ?? [];
  if (newest === undefined) return null;
  const { id, name } = newest;
  return (
    <button type="button" className="button framed" title={name} onClick={() => void keptOpen(id, name)}>
      <span className="name">Go on with {nameText(name)}</span>
    </button>
  );
}

function roomBegin(): void {
  boardStore.setState({ step: 'floor' });
  toolTake('room');
  surfaceFocus();
}
