import { tilesLaid, tilesTakenAway } from '../../../plan/edits/tiles.ts';
import type { TileGrid } from '../../../plan/plan.ts';
import { focusHeir } from '../../parts/focus.ts';
import { TickField } from '../../parts/TickField.tsx';
import type { Result } from '../../state/analysisStore.ts';
import { boardStore } from '../../state/boardStore.ts';
import { useBoard, usePlanResolved } from '../../state/hooks.ts';
import { commit } from '../../state/planStore.ts';
import { BalanceCuts } from './BalanceCuts.tsx';
import { OwnTilesGroup } from './OwnTilesGroup.tsx';
import { AllResults, FieldResults, NoRooms } from './TileResults.tsx';
import { TileSettings } from './TileSettings.tsx';

const groupId = 'floor-tiles';
const layHeir = focusHeir(`#${groupId} input`);
const awayHeir = focusHeir(`#${groupId} .button`);

/** The tiles of the floor, the fields that some rooms have for themselves, and what all of them come to. */
export function TilesGroup({ result }: { readonly result: Result | null }) {
  const plan = usePlanResolved();
  const tiles = result?.analysis.tiles ?? null;
  if (plan.tiles === null && plan.tileFields.length === 0) return <NoTiles />;
  return (
    <>
      <section className="group" id={groupId}>
        <h3>Tiles of the floor</h3>
        <TilesTick />
        {plan.tiles === null ? <LayTiles /> : <FloorTiles grid={plan.tiles} result={result} />}
      </section>
      <OwnTilesGroup plan={plan} result={result} />
      {tiles !== null && tiles.fields.length > 1 && (
        <section className="group">
          <h3>All tiles</h3>
          <AllResults counts={tiles} reports={tiles.fields} />
        </section>
      )}
    </>
  );
}

function TilesTick() {
  const tilesShown = useBoard((state) => state.tilesShown);
  return (
    <TickField
      label="Show the tiles on the drawing"
      value={tilesShown}
      onChange={(shown) => boardStore.setState({ tilesShown: shown })}
    />
  );
}

function NoTiles() {
  return (
    <section className="group" id={groupId}>
      <h3>Tiles</h3>
      <p className="small quiet">
        Once tiles are laid, joints are measured against their grout lines, cuts are sized and tiles are counted.
      </p>
      <LayTiles />
    </section>
  );
}

function LayTiles() {
  return (
    <div className="deeds">
      <button ref={layHeir} type="button" className="button framed" onClick={() => commit('Lay tiles', tilesLaid)}>
        Lay tiles
      </button>
    </div>
  );
}

function FloorTiles({ grid, result }: { readonly grid: TileGrid; readonly result: Result | null }) {
  const report = result?.analysis.tiles?.fields.find(({ id }) => id === null);
  return (
    <>
      <TileSettings of={null} grid={grid} />
      {report === undefined ? <NoRooms result={result} /> : <FieldResults report={report} />}
      <div className="deeds">
        {report !== undefined && <BalanceCuts of={null} />}
        <button
          ref={awayHeir}
          type="button"
          className="button framed"
          onClick={() => commit('Take the tiles away', (file) => tilesTakenAway(file, null))}
        >
          Take the tiles away
        </button>
      </div>
    </>
  );
}
