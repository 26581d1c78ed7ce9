import type { Point } from '../../../geometry/point.ts';
import { thingEquals } from '../../state/thing.ts';
import { resting } from '../choose/resting.ts';
import { type SketchMark, sketchLine, sketchRing } from '../sketch.ts';
import type { Act, Hand, Scene, Stance, Turn } from '../stance.ts';
import { placeDrag, placeRefused } from './place-drag.ts';
import {
  type PaperMm,
  type PaperPlace,
  type PlaceHeld,
  placeChosen,
  placeMoved,
  placesOf,
  placeThing,
  placeUnder,
  symbolReach,
} from './places.ts';

/** The open hand in the step of the papers: points and grid lines are chosen and moved as well, before what lies below them. */
export function placesResting(paperMm: PaperMm): Stance {
  const rest = resting();
  const under = (hand: Hand, { file }: Scene) => placeUnder(placesOf(file), hand, paperMm());
  const taken = (hand: Hand, scene: Scene) => placeTaken(under(hand, scene), hand, scene);
  const stance: Stance = {
    ...rest,
    hint: 'Press a thing to choose it. Drag a point, or what is chosen, to move it; drag anywhere else to move the board.',
    sketch(scene) {
      const place = placeChosen(scene.file, scene.chosen);
      const own = place === null ? [] : chosenMarks(place, paperMm());
      return { marks: [...rest.sketch(scene).marks, ...own] };
    },
    grabs: (hand, scene) => taken(hand, scene) !== null || rest.grabs(hand, scene),
    on(act, scene) {
      const drag = act.kind === 'down' ? taken(act.hand, scene) : null;
      const turn = drag === null ? (placeTurn(act, scene, under) ?? rest.on(act, scene)) : { next: drag };
      return turn.next === 'rest' ? { ...turn, next: stance } : turn;
    },
  };
  return stance;
}

/** A tool that places points or lines: a drag that begins on a mark of a point, on an end of a line or on the line that is chosen moves that one; a press on
 *  one of the kind that it places chooses it. */
export function placesHeld(tool: Stance, kind: PaperPlace['kind'], paperMm: PaperMm): Stance {
  const stance: Stance = {
    ...tool,
    sketch(scene) {
      const place = placeChosen(scene.file, scene.chosen);
      const own = place === null || tool.underway ? [] : chosenMarks(place, paperMm());
      const drawn = tool.sketch(scene);
      return { ...drawn, marks: [...drawn.marks, ...own] };
    },
    on(act, scene) {
      if (!tool.underway && (act.kind === 'press' || act.kind === 'hold')) {
        const alike = placesOf(scene.file).filter((place) => place.kind === kind);
        const held = placeUnder(alike, act.hand, paperMm());
        if (held !== null) return { next: stance, choose: [placeThing(held.place)] };
      }
      // A line under way ends on another where it is led there.
      if (act.kind === 'down' && !tool.underway) {
        const own = placesOf(scene.file).filter((place) => (place.kind === 'grid') === (kind === 'grid'));
        const held = placeUnder(own, act.hand, paperMm());
        if (held !== null && isTaken(held, scene)) return { next: placeDrag(held, act.hand, stance) };
      }
      const turn = tool.on(act, scene);
      return turn.next === 'rest' ? turn : { ...turn, next: placesHeld(turn.next, kind, paperMm) };
    },
  };
  return stance;
}

/** The drag that begins here. A line is moved once it is chosen, as joints are: it runs where the board is moved. */
function placeTaken(held: PlaceHeld | null, hand: Hand, scene: Scene): Stance | null {
  return held === null || !isTaken(held, scene) ? null : placeDrag(held, hand, 'rest');
}

function isTaken({ place, end }: PlaceHeld, { file, chosen }: Scene): boolean {
  const own = placeChosen(file, chosen);
  return end !== null || (own !== null && thingEquals(placeThing(own), placeThing(place)));
}

/** What an act means for a place; null where it means something else. */
function placeTurn(act: Act, scene: Scene, under: (hand: Hand, scene: Scene) => PlaceHeld | null): Turn | null {
  switch (act.kind) {
    case 'hover':
    case 'press':
    case 'hold': {
      // The head of a pin lies over all else, and a place beside it is met by its own.
      const held = act.hand.things[0]?.kind === 'finding' ? null : under(act.hand, scene);
      if (held === null) return null;
      const thing = placeThing(held.place);
      return { next: 'rest', ...(act.kind === 'hover' ? { hover: thing } : { choose: [thing] }) };
    }
    case 'steer': {
      const place = placeChosen(scene.file, scene.chosen);
      return place === null ? null : steered(place, act.by, scene);
    }
    default:
      return null;
  }
}

function steered(place: PaperPlace, [dx, dy]: Point, { file }: Scene): Turn {
  const points = place.points.map(([x, y]): Point => [x + dx, y + dy]);
  const refused = placeRefused(points);
  if (refused !== null) return { next: 'rest', refused: `${refused}.` };
  return { next: 'rest', step: { name: `${place.name} moved`, file: placeMoved(file, place, points) } };
}

/** Distance of the ring round a chosen symbol from it, mm on paper. */
const ringMm = 0.8;
const ringCorners = 32;

function chosenMarks({ kind, points }: PaperPlace, paperMm: number): readonly SketchMark[] {
  const [at] = points;
  if (at === undefined) return [];
  if (kind === 'grid') {
    return [sketchLine(points), ...points.map((end): SketchMark => ({ mark: 'corner', at: end, tone: 'hand' }))];
  }
  const { left, right, up, down } = symbolReach(kind);
  const middle: Point = [at[0] + ((right - left) / 2) * paperMm, at[1] + ((down - up) / 2) * paperMm];
  const radii = [(left + right) / 2 + ringMm, (up + down) / 2 + ringMm].map((mm) => mm * paperMm);
  const ring = Array.from({ length: ringCorners }, (_, i): Point => {
    const angle = (2 * Math.PI * i) / ringCorners;
    return [middle[0] + (radii[0] ?? 0) * Math.cos(angle), middle[1] + (radii[1] ?? 0) * Math.sin(angle)];
  });
  return [sketchRing(ring)];
}
