import { useEffect, useId, useRef } from 'react';
import { cautionLines } from '../../documents/words.ts';
import { Icon } from '../parts/Icon.tsx';
import { commandKey } from '../parts/keys.ts';

/** How the work is done by pointer, touch, pen and keys. */
export function HelpSheet({ onClose }: { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  useEffect(() => {
    if (dialog.current?.open === false) dialog.current.showModal();
  }, []);
  return (
    <dialog
      ref={dialog}
      className="help"
      aria-labelledby={title}
      onClose={onClose}
      // What Escape lets go of on the board stays.
      onKeyDown={(event) => event.stopPropagation()}
      onClick={(event) => event.target === dialog.current && dialog.current.close()}
    >
      <div className="help-head">
        <h2 id={title}>Help</h2>
        <button type="button" className="button framed" onClick={() => dialog.current?.close()}>
          <Icon name="close" />
          Close
        </button>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls is reached by the Tab key */}
      <section className="help-text" tabIndex={0} aria-label="How it is done">
        {cautionLines.map((line) => (
          <p key={line} className="quiet">
            {line}
          </p>
        ))}
        <div className="help-parts">
          {parts.map(({ head, lines }) => (
            <div key={head}>
              <h3>{head}</h3>
              <ul>
                {lines.map((line) => (
                  <li key={line}>{line}</li>
                ))}
              </ul>
            </div>
          ))}
          <KeyTable head="Keys" rows={keys} />
          <KeyTable head="Mouse, trackpad, touch and pen" rows={pointers} />
        </div>
      </section>
    </dialog>
  );
}

const parts: readonly { readonly head: string; readonly lines: readonly string[] }[] = [
  {
    head: 'Draw',
    lines: [
      'Open a step of the work and take up a tool in the bar above the board.',
      'Press for each corner. The first corner or Enter closes an outline; Escape takes a corner back.',
      'The hand is caught by corners, walls and lines with them. Hold Shift to let go of every catch.',
      'A doorway is set by a press on a wall between two rooms, or by a drag from jamb to jamb.',
    ],
  },
  {
    head: 'Type',
    lines: [
      'With a corner set, type the length of the run and press Enter. Tab goes on to its direction.',
      'Before or after the first corner, type two sides for a rectangle: 4.5 x 3 m.',
      'The field At takes a point: across, then down. A figure may carry its unit: 4.5 m.',
    ],
  },
  {
    head: 'Choose and move',
    lines: [
      'Press a thing to choose it. Its figures open beside it.',
      'Drag what is chosen to move it, a corner or a side to change its shape.',
      'A drag anywhere else moves the board.',
    ],
  },
  {
    head: 'Tiles',
    lines: [
      'Lay tiles in the step Coverings. A room may have tiles of its own: a tile field.',
      'Drag the set-out point, the corner at which a whole tile begins. It is caught by corners, walls and joints, and where the cuts on both sides of a room are equal.',
      'A joint that is dragged or drawn is caught by grout lines that run its way.',
      'Compare the ways to make joints and grout lines agree, and use one: it is one step.',
    ],
  },
  {
    head: 'Papers',
    lines: [
      'In the step Papers the tool Point marks what joints are set out from, base points or grid lines, and the places where dryness is tested and by which the floor is left.',
      'A point or line that stands is chosen by a press and moved by a drag; its figures stand in the panel.',
      'A line of the take-off shows where it comes from on the board.',
      'An earlier version of the plan is compared there, and its changes printed as a revision.',
    ],
  },
];

type Row = readonly [keys: string, does: string];

const keys: readonly Row[] = [
  ['Tab', 'Goes on to the next thing of the plan, field or button; Shift Tab goes back'],
  ['Enter, Space', 'Chooses the thing that has the focus; with Shift it is added. Enter again goes into its figures'],
  [
    'Arrows',
    'Move what is chosen, or lead the hand of a tool, by 10 mm; with Shift 100, with Ctrl 1. Else they move the board',
  ],
  ['Enter', 'With a tool in hand: sets a corner or a thing where the hand is; again: closes the outline'],
  ['Escape', 'Takes a corner back, puts the tool down, lets go of what is chosen'],
  ['Delete', 'Removes what is chosen'],
  ['+  -  Home', 'Nearer, farther, the whole drawing'],
  [`${commandKey} Z`, 'Undo'],
  [`${commandKey} Shift Z, ${commandKey} Y`, 'Redo'],
  [`${commandKey} C, X, V`, 'Copy, cut, paste'],
  [`${commandKey} A`, 'Choose all things of the step'],
  [`${commandKey} O, ${commandKey} S`, 'Open, save a plan file'],
];

const pointers: readonly Row[] = [
  ['Wheel', 'Nearer and farther'],
  ['Trackpad', 'Two fingers move the board, a pinch zooms'],
  ['Middle button, or Space and a drag', 'Moves the board with any tool in hand'],
  ['Shift and a press', 'Adds to what is chosen, or takes from it'],
  ['Shift and a drag', 'Draws a box: what lies wholly in it is chosen'],
  ['One finger or pen', 'As the mouse: a press chooses or sets, a drag moves'],
  ['Two fingers', 'Move the board and zoom, with any tool in hand'],
  ['A finger that rests', 'Adds the thing to what is chosen; on free floor, dragged on, draws a box'],
];

function KeyTable({ head, rows }: { readonly head: string; readonly rows: readonly Row[] }) {
  return (
    <div>
      <h3>{head}</h3>
      <table className="help-keys">
        <tbody>
          {rows.map(([which, does]) => (
            <tr key={which}>
              <th scope="row">{which}</th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
