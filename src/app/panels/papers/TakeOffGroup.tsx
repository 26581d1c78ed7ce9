import { useStore } from 'zustand';
import { oneLine } from '../../../documents/words.ts';
import type { Room } from '../../../plan/plan.ts';
import {
  type TakeOff,
  type TakeOffCost,
  type TakeOffLine,
  type TakeOffOrder,
  takeOffNet,
  takeOffUnit,
} from '../../../plan/take-off.ts';
import { ChoiceField } from '../../parts/ChoiceField.tsx';
import { countOf, figure, nameText } from '../../parts/format.ts';
import { type Laid, papersStore } from '../../state/papersRun.ts';
import { takeOffLight, takeOffRoom } from '../../state/takeOffShown.ts';

/** Key of the whole floor in the choice of rooms: no id is empty. */
const whole = '';

/** What is to be ordered: net, with its allowance, and in packs. Choosing a line lights what it was measured from. */
export function TakeOffGroup({ laid: { result, takeOff } }: { readonly laid: Laid }) {
  const wished = useStore(papersStore, (state) => state.takeOff.room);
  const rooms = result.plan.rooms;
  const room = rooms.find(({ id }) => id === wished) ?? null;
  return (
    <section className="group" id="take-off">
      <h3>Take-off</h3>
      <ChoiceField
        label="Quantities of"
        value={room?.id ?? whole}
        choices={[
          { value: whole, words: 'The whole floor' },
          ...rooms.map((each) => ({ value: each.id, words: roomText(each) })),
        ]}
        onChange={(id) => takeOffRoom(id === whole ? null : id, takeOff.lines)}
      />
      <TakeOffTable takeOff={takeOff} room={room} />
      {takeOff.cost !== null && room === null && <Cost {...takeOff.cost} currency={takeOff.currency} />}
      <p className="small quiet">
        {room !== null && 'Net of the room. Packs are ordered for the whole floor. '}
        Press a line to see on the drawing what it was measured from.
      </p>
    </section>
  );
}

/** Example: "overlap of 100 mm at every splice" -> "Overlap of 100 mm at every splice" */
function sentenceOf(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function roomText({ id, name }: Pick<Room, 'id' | 'name'>): string {
  return nameText(oneLine(name)) || id;
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

function TakeOffTable({ takeOff, room }: { readonly takeOff: TakeOff; readonly room: Room | null }) {
  const lit = useStore(papersStore, (state) => state.takeOff.line);
  return (
    <table className="take-off">
      <caption className="unseen">Take-off, {room === null ? 'the whole floor' : roomText(room)}</caption>
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
        <TakeOffRow
          key={line.key}
          line={line}
          room={room?.id ?? null}
          lit={lit === line.key}
          currency={takeOff.currency}
        />
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
  const net = room === null ? line.net : takeOffNet(line, room);
  if (room !== null && net === 0) return null;
  const orderTold = room === null ? sentenceOf(allowance.words) : roomOrderText(order, room);
  const amount = (value: number) => `${figure(value, decimals)} ${takeOffUnit(Number(value.toFixed(decimals)), unit)}`;
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
        <td>{amount(net)}</td>
        {room === null && (
          <>
            <td title={sentenceOf(allowance.words)}>
              {allowance.amount === 0 ? '–' : `+ ${figure(allowance.amount, decimals)}`}
            </td>
            <td className="strong" title={order?.content}>
              {order === null
                ? amount(line.gross)
                : `${figure(order.count, 0)} ${takeOffUnit(order.count, order.unit)}`}
            </td>
          </>
        )}
      </tr>
      {lit && (
        <tr>
          <td colSpan={room === null ? 4 : 2} className="notes">
            {[orderTold, ...notes].map((note) => (
              <p key={note}>{note}</p>
            ))}
            {cost !== null && room === null && (
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

/** What a room takes of an order that serves each by itself; the others are worked out for the whole floor, and so is the allowance. */
function roomOrderText(order: TakeOffOrder | null, room: string): string {
  const own = order?.rooms.find((each) => each.room === room);
  if (order === null || own === undefined) return 'Allowance and order are worked out for the whole floor.';
  return `${figure(own.count, 0)} ${takeOffUnit(own.count, order.unit)} of ${order.content} for this room. The allowance is worked out for the whole floor.`;
}
