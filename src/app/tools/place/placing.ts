import type { Point } from '../../../geometry/point.ts';
import { type NewObject, objectsAdded } from '../../../plan/edits/objects.ts';
import { type Caught, freeHold, handCatch } from '../catch.ts';
import { placeFree } from '../draw/first.ts';
import { type SketchMark, sketchRing } from '../sketch.ts';
import type { Act, Scene, Stance, Turn } from '../stance.ts';
import type { Wishes } from '../wishes.ts';

/** What a press places: shapes of a wished size, their middle where the hand is. */
export interface PlaceKind {
  readonly tool: 'column' | 'pipe';
  readonly noun: string;
  readonly shapes: (at: Point, wishes: Wishes) => readonly PlacedShape[];
}

interface PlacedShape {
  readonly outline: readonly Point[];
  readonly object: NewObject;
}

/** A round column is drawn with so many corners: 0.6 % less in area than the circle. */
const roundCorners = 32;

const column: PlaceKind = {
  tool: 'column',
  noun: 'the column',
  shapes(at, { column: { shape, widthMm, depthMm, countX, countY, spacingXMm, spacingYMm } }) {
    const places = Array.from(
      { length: countX * countY },
      (_, i): Point => [at[0] + (i % countX) * spacingXMm, at[1] + Math.floor(i / countX) * spacingYMm],
    );
    return places.map((middle) => {
      const outline = shape === 'round' ? circle(middle, widthMm) : rectangle(middle, widthMm, depthMm);
      return { outline, object: { list: 'columns', object: { outline } } };
    });
  },
};

const pipe: PlaceKind = {
  tool: 'pipe',
  noun: 'the pipe',
  shapes: (centre, { pipeMm }) => [
    {
      outline: circle(centre, pipeMm),
      object: { list: 'pipes', object: { centre, diameterMm: pipeMm } },
    },
  ],
};

export const placeKinds = { column, pipe } as const;

function rectangle([x, y]: Point, widthMm: number, depthMm: number): readonly Point[] {
  const [dx, dy] = [widthMm / 2, depthMm / 2];
  return [
    [x - dx, y - dy],
    [x + dx, y - dy],
    [x + dx, y + dy],
    [x - dx, y + dy],
  ];
}

function circle([x, y]: Point, acrossMm: number): readonly Point[] {
  return Array.from({ length: roundCorners }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / roundCorners;
    return [x + (acrossMm / 2) * Math.cos(turn), y + (acrossMm / 2) * Math.sin(turn)];
  });
}

/** The hand carries what a press places. */
export function placing(kind: PlaceKind, at: Caught | null = null): Stance {
  return {
    tool: kind.tool,
    hint: `Press where the middle of ${kind.noun} belongs.`,
    underway: false,
    hand: at?.at ?? null,
    typed: null,
    sketch: ({ wishes }) => ({ marks: at === null ? [] : placingMarks(kind, at, wishes) }),
    grabs: () => true,
    on: (act, scene) => placingOn(kind, at, act, scene),
  };
}

function placingMarks(kind: PlaceKind, at: Caught, wishes: Wishes): readonly SketchMark[] {
  const rings = kind.shapes(at.at, wishes).map(({ outline }) => sketchRing(outline));
  return [...rings, { mark: 'dot', at: at.at, tone: 'hand' }, ...at.marks];
}

function placingOn(kind: PlaceKind, at: Caught | null, act: Act, scene: Scene): Turn {
  switch (act.kind) {
    case 'hover':
    case 'down':
    case 'drag':
      return { next: placing(kind, handCatch(scene.catches, act.hand, freeHold)) };
    case 'drop':
    case 'press':
    case 'hold':
      return placed(kind, handCatch(scene.catches, act.hand, freeHold), scene);
    case 'steer': {
      const [x, y] = at?.at ?? placeFree(scene);
      return { next: placing(kind, plain([x + act.by[0], y + act.by[1]])) };
    }
    case 'place':
      return placed(kind, plain(act.at), scene);
    case 'enter':
      return at === null ? { next: placing(kind) } : placed(kind, at, scene);
    case 'length':
    case 'sides':
      return { next: placing(kind, at) };
    case 'leave':
      return { next: placing(kind) };
    case 'back':
      return { next: 'rest' };
  }
}

function plain(at: Point): Caught {
  return { at, marks: [], onSide: false };
}

function placed(kind: PlaceKind, at: Caught, { file, wishes }: Scene): Turn {
  const shapes = kind.shapes(at.at, wishes);
  const added = objectsAdded(
    file,
    shapes.map(({ object }) => object),
  );
  const name = shapes.length === 1 ? `Place ${kind.noun.replace('the ', 'a ')}` : `Place ${shapes.length} columns`;
  return {
    next: placing(kind, at),
    step: { name, file: added.file },
    choose: added.ids.map((key) => ({ kind: 'object', key })),
  };
}
