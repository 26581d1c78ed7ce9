import { surfaceFocus } from '../canvas/surface.ts';
import { demoLay, demos } from '../files/demos.ts';
import { filePick } from '../files/files.ts';
import { Icon } from '../parts/Icon.tsx';
import { boardStore } from '../state/boardStore.ts';
import { toolTake } from '../tools/hand.ts';

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
            <button type="button" className="button framed" onClick={filePick}>
              Open a plan file
            </button>
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

function roomBegin(): void {
  boardStore.setState({ step: 'floor' });
  toolTake('room');
  surfaceFocus();
}
