import { useState } from 'react';
import { useStore } from 'zustand';
import { oneLine } from '../../../documents/words.ts';
import type { TakeOff, TakeOffCost, TakeOffLine } from '../../../plan/take-off.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { countOf, figure, nameText } from '../../parts/format.ts';
import { type Laid, papersStore, takeOffLight } from '../../state/papersRun.ts';

/** Key of the whole floor in the choice of rooms: no id is empty. */
const whole = '';

/** What is to be ordered: net, with its allowance, and in packs. Choosing a line lights what it was measured from. */
export function TakeOffGroup({ laid: { result, takeOff } }: { readonly laid: Laid }) {
  const [room, setRoom] = useState(whole);
  const rooms = result.plan.rooms;
  const isRoom = rooms.some(({ id }) => id === room);
  return (
    <section className="group" id="take-off">
      <h3>Take-off</h3>
      <ChoiceField
        label="Of"
        value={isRoom ? room : whole}
        choices={[
          { value: whole, words: 'The whole floor' },
          ...rooms.map(({ id, name }) => ({ value: id, words: nameText(oneLine(name)) || id })),
        ]}
        onChange={setRoom}
      />
      <TakeOffTable takeOff={takeOff} room={isRoom ? room : null} />
      {takeOff.cost !== null && !isRoom && <Cost {...takeOff.cost} currency={takeOff.currency} />}
      <p className="small quiet">
        {isRoom
          ? 'Net of the room. Packs are ordered for the whole floor.'
          : 'Press a line to see on the drawing what it was measured from.'}
      </p>
    </section>
  );
}

function Cost({ total, unpriced, currency }: TakeOffCost & { readonly currency: string }) {
  return (
    <p>
      <strong>
        {figure(total, 2)} {currency}
      </strong>{' '}
      <span className="quiet">
        {unpriced.length === 0 ? 'in all' : `of what has a price; ${countOf(unpriced.length, 'line', 'lines')} without`}
      </span>
    </p>
  );
}

function TakeOffTable({ takeOff, room }: { readonly takeOff: TakeOff; readonly room: string | null }) {
  const lit = useStore(papersStore, (state) => state.lit);
  return (
    <table className="take-off">
      <thead>
        <tr>
          <th scope="col">What</th>
          <th scope="col">Net</th>
          {room === null && (
            <>
              <th scope="col">Allowance</th>
              <th scope="col">Order</th>
            </>
          )}
        </tr>
      </thead>
      {takeOff.lines.map((line) => (
        <TakeOffRow key={line.key} line={line} room={room} lit={lit === line.key} currency={takeOff.currency} />
      ))}
    </table>
  );
}

interface RowProps {
  readonly line: TakeOffLine;
  readonly room: string | null;
  readonly lit: boolean;
  readonly currency: string;
}

function TakeOffRow({ line, room, lit, currency }: RowProps) {
  const { key, item, spec, unit, decimals, allowance, order, notes, cost } = line;
  const net = room === null ? line.net : netOf(line, room);
  if (room !== null && net === 0) return null;
  return (
    <tbody>
      <tr>
        <th scope="row" colSpan={room === null ? 4 : 2}>
          <button
            type="button"
            className="button bare lights"
            aria-pressed={lit}
            onClick={() => takeOffLight(lit ? null : key)}
          >
            {item}
          </button>{' '}
          <span className="quiet">{spec}</span>
        </th>
      </tr>
      <tr>
        <td />
        <td>
          {figure(net, decimals)} {unit}
        </td>
        {room === null && (
          <>
            <td title={allowance.words}>{allowance.amount === 0 ? '–' : `+ ${figure(allowance.amount, decimals)}`}</td>
            <td className="strong" title={order?.content}>
              {order === null ? `${figure(line.gross, decimals)} ${unit}` : `${figure(order.count, 0)} ${order.unit}`}
            </td>
          </>
        )}
      </tr>
      {lit && (
        <tr>
          <td colSpan={room === null ? 4 : 2} className="notes">
            {[allowance.words, ...notes].map((note) => (
              <p key={note}>{note}</p>
            ))}
            {cost !== null && (
              <p>
                {figure(cost, 2)} {currency}
              </p>
            )}
          </td>
        </tr>
      )}
    </tbody>
  );
}

function netOf({ cells }: TakeOffLine, room: string): number {
  return cells.filter((cell) => cell.room === room).reduce((sum, { amount }) => sum + amount, 0);
}
