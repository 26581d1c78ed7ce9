import { useRef, useState } from 'react';
import { useStore } from 'zustand';
import { type Point, pointBetween, pointDirection } from '../../geometry/point.ts';
import { cornerAdded, cornerMoved, cornerRemoved, type Edited, ringSet } from '../../plan/edits/corners.ts';
import { objectFind, objectRings, type PlanObject } from '../../plan/edits/objects.ts';
import type { PlanFile } from '../../plan/schema.ts';
import { FARTHEST_MM } from '../../plan/snap.ts';
import { Fold } from '../parts/Fold.tsx';
import { Icon } from '../parts/Icon.tsx';
import { Stretches } from '../parts/Stretches.tsx';
import { commit, planStore } from '../state/planStore.ts';
import { unitStore } from '../state/unit.ts';
import { LengthField } from './LengthField.tsx';
import { triedOf } from './put.ts';

/** Corners of an outline and its holes, or points of a line. */
interface RingTable {
  readonly ring: number;
  readonly heading: string;
  readonly points: readonly Point[];
  readonly closed: boolean;
}

function tablesOf(found: PlanObject): readonly RingTable[] {
  if ('line' in found.object) return [{ ring: 0, heading: 'Points', points: found.object.line, closed: false }];
  return objectRings(found).map((points, ring) => ({
    ring,
    heading: ring === 0 ? 'Corners' : `Corners of hole ${ring}`,
    points,
    closed: true,
  }));
}

interface CornersProps {
  readonly file: PlanFile;
  readonly id: string;
  /** What they are the corners of, as undo tells it. */
  readonly of: string;
}

/** A table for each outline, hole or line of a thing, folded until it is asked for. */
export function Corners({ file, id, of }: CornersProps) {
  const found = objectFind(file, id);
  if (found === null) return null;
  return tablesOf(found).map((table) => (
    <Fold key={table.ring} summary={`${table.heading}, ${table.points.length}`}>
      <CornersTable id={id} of={of} table={table} />
    </Fold>
  ));
}

/** About the height of a row, px. */
const rowPx = 40;

interface TableProps {
  readonly id: string;
  readonly of: string;
  readonly table: RingTable;
}

function CornersTable({ id, of, table }: TableProps) {
  const unit = useStore(unitStore, (state) => state.unit);
  const place = useRef<HTMLFieldSetElement>(null);
  const [wanted, setWanted] = useState(-1);
  const [wrong, setWrong] = useState<{ readonly row: number; readonly words: string } | null>(null);
  const { points, ring, closed } = table;
  const noun = closed ? 'corner' : 'point';
  const rowName = (row: number) => `${ring === 0 ? '' : `hole ${ring}, `}${noun} ${row + 1}`;
  /** What a button does to the table; the focus goes on to a control of the row where the next step is. */
  const act = (row: number, name: string, edit: (file: PlanFile) => Edited, focus: { row: number; part: string }) => {
    const edited = edit(planStore.getState().history.present.file);
    if (edited.kind === 'refused') {
      setWrong({ row, words: String(triedOf(edited)) });
      return;
    }
    setWrong(null);
    commit(name, () => edited.file);
    setWanted(focus.row);
    requestAnimationFrame(() => {
      const rowAt = place.current?.querySelector(`[data-row="${focus.row}"]`);
      rowAt?.querySelector<HTMLElement>(`[data-part="${focus.part}"]`)?.focus();
    });
  };
  return (
    <fieldset className="corners" ref={place}>
      <legend className="unseen">{table.heading}</legend>
      <div className="corner-row titles" aria-hidden="true">
        <span />
        <span>Across, {unit}</span>
        <span>Down, {unit}</span>
      </div>
      <Stretches count={points.length} rowPx={rowPx} wanted={wanted}>
        {(i) => (
          <CornerRow
            key={i}
            at={points[i] ?? [0, 0]}
            row={i}
            noun={noun}
            name={rowName(i)}
            wrong={wrong?.row === i ? wrong.words : null}
            placeOf={{ id, ring, corner: i }}
            of={of}
            onAdd={() =>
              act(i, `Add a ${noun} to ${of}`, (file) => cornerAfter(file, id, table, i), { row: i + 1, part: 'x' })
            }
            onRemove={() =>
              act(i, `Remove a ${noun} of ${of}`, (file) => cornerRemoved(file, { id, ring, corner: i }), {
                row: Math.min(i, points.length - 2),
                part: 'remove',
              })
            }
          />
        )}
      </Stretches>
    </fieldset>
  );
}

/** A point beyond the end of a line lies so far on, mm. */
const onMm = 1000;

/** A new corner in the middle of the side that begins here; a line is led on at its end. */
function cornerAfter(file: PlanFile, id: string, { ring, points, closed }: RingTable, corner: number): Edited {
  const at = points[corner] ?? [0, 0];
  const next = points[corner + 1] ?? (closed ? points[0] : undefined);
  if (next !== undefined) return cornerAdded(file, { id, ring, corner }, pointBetween(at, next, 0.5));
  const [ux, uy] = pointDirection(points[corner - 1] ?? at, at);
  return ringSet(file, id, ring, [...points, [at[0] + ux * onMm, at[1] + uy * onMm]]);
}

interface CornerRowProps {
  readonly at: Point;
  readonly row: number;
  readonly noun: string;
  /** With its number and that of its hole, for where it is heard alone. */
  readonly name: string;
  readonly of: string;
  readonly placeOf: { readonly id: string; readonly ring: number; readonly corner: number };
  readonly wrong: string | null;
  readonly onAdd: () => void;
  readonly onRemove: () => void;
}

function CornerRow({ at, row, noun, name, of, placeOf, wrong, onAdd, onRemove }: CornerRowProps) {
  const head = `${name.charAt(0).toUpperCase()}${name.slice(1)}`;
  return (
    <div className="corner-row" data-row={row}>
      <span aria-hidden="true" className="quiet">
        {row + 1}
      </span>
      <Coordinate axis={0} {...{ at, name: head, of, placeOf }} />
      <Coordinate axis={1} {...{ at, name: head, of, placeOf }} />
      <button
        type="button"
        className="button bare"
        aria-label={`Add a ${noun} after ${name}`}
        title={`Add a ${noun} after`}
        onClick={onAdd}
      >
        <Icon name="nearer" />
      </button>
      <button
        type="button"
        className="button bare"
        data-part="remove"
        aria-label={`Remove ${name}`}
        title={`Remove this ${noun}`}
        onClick={onRemove}
      >
        <Icon name="farther" />
      </button>
      {wrong !== null && (
        <span className="wrong-word" role="alert">
          {wrong}
        </span>
      )}
    </div>
  );
}

interface CoordinateProps extends Pick<CornerRowProps, 'at' | 'of' | 'placeOf'> {
  readonly axis: 0 | 1;
  readonly name: string;
}

function Coordinate({ axis, at, name, of, placeOf }: CoordinateProps) {
  const spoken = `${name} ${axis === 0 ? 'across' : 'down'}`;
  return (
    <LengthField
      label={spoken}
      of={of}
      cell={axis === 0 ? 'x' : 'y'}
      valueMm={at[axis]}
      leastMm={-FARTHEST_MM}
      edit={(file, mm) => triedOf(cornerMoved(file, placeOf, axis === 0 ? [mm, at[1]] : [at[0], mm]))}
    />
  );
}
