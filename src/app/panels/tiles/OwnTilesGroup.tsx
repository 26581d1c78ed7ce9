import { useState } from 'react';
import { oneLine } from '../../../documents/words.ts';
import { roomsTiled, type TilesOf, tileFieldAdded, tilesTakenAway } from '../../../plan/edits/tiles.ts';
import type { Plan, Room, TileField } from '../../../plan/plan.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { Fold } from '../../parts/Fold.tsx';
import { focusHeir } from '../../parts/focus.ts';
import { nameText } from '../../parts/format.ts';
import { Icon } from '../../parts/Icon.tsx';
import { Stretches } from '../../parts/Stretches.tsx';
import type { Result } from '../../state/analysisStore.ts';
import { useBoard } from '../../state/hooks.ts';
import { commit, planStore } from '../../state/planStore.ts';
import type { Thing } from '../../state/thing.ts';
import { BalanceCuts } from './BalanceCuts.tsx';
import { roomsText } from './names.ts';
import { FieldResults, NoRooms } from './TileResults.tsx';
import { TileSettings } from './TileSettings.tsx';

interface OwnTilesProps {
  readonly plan: Plan;
  readonly result: Result | null;
}

/** Tile fields that some rooms have for themselves, and a way to give them to more. */
export function OwnTilesGroup({ plan, result }: OwnTilesProps) {
  // A field that was just made opens; those that were there stay as they were.
  const [added, setAdded] = useState<string | null>(null);
  return (
    <section className="group" id="own-tiles">
      <h3>Own tiles {plan.tileFields.length > 0 && <span className="quiet">{plan.tileFields.length}</span>}</h3>
      {plan.tileFields.map((field) => (
        <Fold key={field.id} summary={fieldSummary(field, plan)} unfolded={field.id === added}>
          <OwnField field={field} plan={plan} result={result} />
        </Fold>
      ))}
      <OwnTilesFor plan={plan} result={result} onAdded={setAdded} />
    </section>
  );
}

function fieldRooms({ rooms }: TileField, plan: Plan): readonly Room[] {
  return plan.rooms.filter(({ id }) => rooms.includes(id));
}

function fieldSummary(field: TileField, plan: Plan): string {
  const rooms = fieldRooms(field, plan);
  return `Field ${field.id}: ${rooms.length === 0 ? 'no room' : roomsText(rooms)}`;
}

const fieldHeir = focusHeir('#own-tiles :is(summary, select)');
const roomHeir = focusHeir('#own-tiles :is(summary, select)', '#own-tiles .fold');

/** About the height of a room's row, px. */
const rowPx = 32;

function OwnField({ field, plan, result }: OwnTilesProps & { readonly field: TileField }) {
  const { id } = field;
  const rooms = fieldRooms(field, plan);
  const report = result?.analysis.tiles?.fields.find((each) => each.id === id);
  return (
    <fieldset className="own-field" aria-label={`Field ${id}`}>
      <ul aria-label={`Rooms of field ${id}`}>
        <Stretches count={rooms.length} rowPx={rowPx}>
          {(i) => {
            const room = rooms[i];
            return room && <FieldRoom key={room.id} room={room} />;
          }}
        </Stretches>
      </ul>
      <TileSettings of={id} grid={field} />
      {report === undefined ? <NoRooms result={result} /> : <FieldResults report={report} />}
      <div className="deeds">
        {report !== undefined && <BalanceCuts of={id} />}
        <button
          ref={fieldHeir}
          type="button"
          className="button framed"
          title="Its rooms have the tiles of the floor again"
          onClick={() => commit(`Take field ${id} away`, (file) => tilesTakenAway(file, id))}
        >
          Take the field away
        </button>
      </div>
    </fieldset>
  );
}

function FieldRoom({ room: { id, name } }: { readonly room: Room }) {
  const words = `${nameText(oneLine(name))} back to the tiles of the floor`;
  return (
    <li className="field-room">
      <span>{oneLine(name)}</span>
      <button
        ref={roomHeir}
        type="button"
        className="button bare"
        aria-label={words}
        title={words}
        onClick={() => commit(words, (file) => roomsTiled(file, [id], null))}
      >
        <Icon name="close" />
      </button>
    </li>
  );
}

/** Rooms chosen on the board, and those of the bays that are. */
function roomsChosen(chosen: readonly Thing[], { rooms }: Plan, result: Result | null): readonly Room[] {
  const ids = new Set(
    chosen.flatMap(({ kind, key }) => {
      if (kind === 'room') return [key];
      return kind === 'bay' ? (result?.analysis.bays.find((bay) => bay.key === key)?.rooms ?? []) : [];
    }),
  );
  return rooms.filter(({ id }) => ids.has(id));
}

/** In place of a room's id: those that are chosen. In place of a field's: a new one. No id is empty. */
const others = '';

function OwnTilesFor({ plan, result, onAdded }: OwnTilesProps & { readonly onAdded: (id: string | null) => void }) {
  const chosen = useBoard((state) => state.chosen);
  const [asked, setAsked] = useState<string | null>(null);
  const [into, setInto] = useState(others);
  const takesTiles = ({ covering }: Room) => covering === 'stone-or-ceramic';
  const tiled = plan.rooms.filter(takesTiles);
  const picked = roomsChosen(chosen, plan, result).filter(takesTiles);
  if (tiled.length === 0) return null;
  const choices = [
    ...(picked.length > 0 ? [{ value: others, words: `Chosen: ${roomsText(picked)}` }] : []),
    ...tiled.map(({ id, name }) => ({ value: id, words: nameText(oneLine(name)) })),
  ];
  const of = choices.find(({ value }) => value === asked)?.value ?? choices[0]?.value ?? others;
  const rooms = of === others ? picked : tiled.filter(({ id }) => id === of);
  const fields = plan.tileFields.map(({ id }) => ({ value: id, words: `Field ${id}` }));
  const field = fields.find(({ value }) => value === into)?.value ?? others;
  return (
    <>
      <ChoiceField label="Own tiles for" value={of} choices={choices} onChange={setAsked} />
      {fields.length > 0 && (
        <ChoiceField
          label="In tile field"
          value={field}
          choices={[{ value: others, words: 'A new one' }, ...fields]}
          onChange={setInto}
        />
      )}
      <div className="deeds">
        <button
          type="button"
          className="button framed"
          onClick={() => onAdded(ownTilesLay(rooms, field === others ? null : field))}
        >
          {field === others ? `Give ${rooms.length === 1 ? 'it' : 'them'} own tiles` : `Put into field ${field}`}
        </button>
      </div>
    </>
  );
}

/** @returns id of the field that was made; null where there was none to make */
function ownTilesLay(rooms: readonly Room[], into: TilesOf): string | null {
  const ids = rooms.map(({ id }) => id);
  const name = `Own tiles for ${roomsText(rooms)}`;
  if (into !== null) {
    commit(name, (file) => roomsTiled(file, ids, into));
    return null;
  }
  const { file, id } = tileFieldAdded(planStore.getState().history.present.file, ids);
  commit(name, () => file);
  return id;
}
