import { expect, test } from 'vitest';
import { gridLineHeld } from '../../../src/app/tools/papers/grid-line.ts';
import { paperPointHeld } from '../../../src/app/tools/papers/paper-point.ts';
import { placesHeld, placesResting } from '../../../src/app/tools/papers/place-hand.ts';
import { placeChosen, placesOf, placeThing } from '../../../src/app/tools/papers/places.ts';
import type { Act, Scene, Turn } from '../../../src/app/tools/stance.ts';
import { firstWishes } from '../../../src/app/tools/wishes.ts';
import type { PlanFile } from '../../../src/plan/schema.ts';
import { acted, drag, handAt, lead, pressAt, sceneOf, twoRooms, wordsOf } from './scene.ts';

/** Base points in the hall, a test point in the kitchen, the access, and two lines of the grid along the walls. */
const marked: PlanFile = {
  ...twoRooms,
  papers: {
    basePoints: [
      { name: '1', at: [2000, 2000] },
      { name: '2', at: [4000, 2000] },
    ],
    gridLines: [
      { name: 'A', from: [0, -600], to: [0, 5100] },
      { name: 'S', from: [1000, -600], to: [1900, 600] },
    ],
  },
  records: { testPoints: [{ name: '1', at: [8000, 3000] }] },
  pour: { access: [3000, 4000] },
};

/** 1 : 20, so that the flag of the test point, 4.7 mm, stands 94 mm high on the floor. */
const paperMm = () => 20;
const hand = placesResting(paperMm);
const scene = sceneOf(marked, { step: 'papers' });
const chosen = (kind: 'base' | 'test' | 'access' | 'grid', index = 0, over: Partial<Scene> = {}): Scene => ({
  ...scene,
  chosen: [placeThing({ kind, index })],
  ...over,
});
const basePoints = (turn: Turn) => turn.step?.file.papers?.basePoints?.map(({ at }) => at);
const gridLines = (turn: Turn) => turn.step?.file.papers?.gridLines?.map(({ from, to }) => [from, to]);
const nameChosen = (turn: Turn) => placeChosen(marked, turn.choose ?? [])?.name;

test('a press on a mark chooses the point, and not the bay on which it stands', () => {
  const things = [{ kind: 'bay', key: 'b1' }] as const;
  const press = (x: number, y: number): Act => ({ kind: 'press', hand: handAt([x, y], { reachMm: 10, things }) });
  expect(nameChosen(acted(hand, scene, [press(2005, 1995)]))).toBe('Base point 1');
  // 80 mm above the place of the test point is within its flag, 80 mm below is not
  expect(nameChosen(acted(hand, scene, [press(8000, 2920)]))).toBe('Test point 1');
  expect(acted(hand, scene, [press(8000, 3080)]).choose).toEqual(things);
  expect(nameChosen(acted(hand, scene, [press(3020, 4000)]))).toBe('Access');
  expect(nameChosen(acted(hand, scene, [press(3, 2500)]))).toBe('Grid line A');
});

test('the head of a pin is pressed before a point below it', () => {
  const finding = { kind: 'finding', key: 'f' } as const;
  const press: Act = { kind: 'press', hand: handAt([2000, 2000], { things: [finding] }) };
  expect(acted(hand, scene, [press]).choose).toEqual([finding]);
});

test('a drag from a mark moves the point, in one step that tells which, and chooses it', () => {
  const turn = acted(hand, scene, drag([4000, 2000], [5000, 3000]));
  expect(turn.step?.name).toBe('Base point 2 moved');
  expect(basePoints(turn)).toEqual([
    [2000, 2000],
    [5000, 3000],
  ]);
  expect(nameChosen(turn)).toBe('Base point 2');
  const test = acted(hand, scene, drag([8000, 3000], [8500, 3000]));
  expect(test.step?.name).toBe('Test point 1 moved');
  expect(test.step?.file.records?.testPoints).toEqual([{ name: '1', at: [8500, 3000] }]);
  const access = acted(hand, scene, drag([3000, 4000], [3500, 4000]));
  expect(access.step?.name).toBe('Access moved');
  expect(access.step?.file.pour?.access).toEqual([3500, 4000]);
});

test('a point that is dragged is caught by corners as one that is placed, and shown there until the hand lets go', () => {
  const turn = acted(hand, scene, lead([2000, 2000], [30, 4480]));
  expect(turn.step).toBeUndefined();
  expect(turn.preview?.papers?.basePoints?.[0]?.at).toEqual([0, 4500]);
  expect(turn.next === 'rest' ? [] : wordsOf(turn.next, scene)).toContain('Corner of Hall');
  expect(basePoints(acted(hand, scene, drag([2000, 2000], [30, 4480])))?.[0]).toEqual([0, 4500]);
  // with Shift it goes where the hand is
  expect(basePoints(acted(hand, scene, drag([2000, 2000], [30, 4480], { loose: true })))?.[0]).toEqual([30, 4480]);
});

test('a point that is taken beside its middle goes by as much as the hand', () => {
  expect(basePoints(acted(hand, scene, drag([2030, 2020], [2530, 2720])))?.[0]).toEqual([2500, 2700]);
});

test('Escape gives the drag of a point up', () => {
  const turn = acted(hand, scene, [...lead([2000, 2000], [5000, 3000]), { kind: 'back' }]);
  expect(turn).toEqual({ next: 'rest' });
});

test('an end of a grid line is dragged: one that is square stays so where right angles are wished, one that is askew is free', () => {
  const square = acted(hand, scene, drag([0, 5100], [30, 6500]));
  expect(square.step?.name).toBe('Grid line A moved');
  expect(gridLines(square)?.[0]).toEqual([
    [0, -600],
    [0, 6500],
  ]);
  const free = { ...scene, wishes: { ...firstWishes, square: false } };
  expect(gridLines(acted(hand, free, drag([0, 5100], [300, 6500])))?.[0]?.[1]).toEqual([300, 6500]);
  expect(gridLines(acted(hand, scene, drag([1900, 600], [2500, 900])))?.[1]).toEqual([
    [1000, -600],
    [2500, 900],
  ]);
});

test('the middle of a chosen grid line is dragged square to the line; of another it moves the board', () => {
  expect(hand.grabs(handAt([0, 3000]), scene)).toBe(false);
  const over = chosen('grid', 0);
  expect(hand.grabs(handAt([0, 3000]), over)).toBe(true);
  const turn = acted(hand, over, drag([0, 3000], [500, 3900]));
  expect(turn.step?.name).toBe('Grid line A moved');
  expect(gridLines(turn)?.[0]).toEqual([
    [500, -600],
    [500, 5100],
  ]);
  // it runs 3 across for 4 down, so square to it is 4 across for 3 up: 500 mm that way
  const askew = acted(hand, chosen('grid', 1), drag([1450, 0], [1850, -300]));
  expect(gridLines(askew)?.[1]).toEqual([
    [1400, -900],
    [2300, 300],
  ]);
});

test('a grid line is dragged on to the wall that catches it', () => {
  expect(gridLines(acted(hand, chosen('grid', 0), drag([0, 3000], [5960, 3000])))?.[0]).toEqual([
    [6000, -600],
    [6000, 5100],
  ]);
});

test('what cannot be is told, and nothing moves', () => {
  const ends = acted(hand, scene, drag([0, 5100], [0, -600]));
  expect(ends.step).toBeUndefined();
  expect(ends.refused).toBe('The two ends would lie at one place.');
  // the sheet ends at 10 km
  const off = acted(hand, scene, drag([2000, 2000], [2000, 10_000_500]));
  expect(off.step).toBeUndefined();
  expect(off.refused).toBe('This lies beyond the sheet.');
});

test('arrow keys move the chosen point or grid line', () => {
  const steer: Act = { kind: 'steer', by: [10, 0] };
  const point = acted(hand, chosen('base', 1), [steer]);
  expect(point.step?.name).toBe('Base point 2 moved');
  expect(basePoints(point)?.[1]).toEqual([4010, 2000]);
  expect(gridLines(acted(hand, chosen('grid', 0), [steer]))?.[0]).toEqual([
    [10, -600],
    [10, 5100],
  ]);
});

test('the tool for points moves the one that a drag begins on, whichever it is for, and places one elsewhere', () => {
  const tool = placesHeld(paperPointHeld('base'), 'base', paperMm);
  const moved = acted(tool, scene, drag([2000, 2000], [2500, 2500]));
  expect(moved.step?.name).toBe('Base point 1 moved');
  expect(basePoints(moved)).toHaveLength(2);
  expect(moved.next === 'rest' ? null : moved.next.tool).toBe('paperPoint');
  expect(acted(tool, scene, drag([8000, 3000], [8500, 3000])).step?.name).toBe('Test point 1 moved');
  expect(acted(tool, scene, drag([5000, 1000], [5000, 1500])).step?.name).toBe('Base point 3 placed');
  // after a press the tool is the same
  const again = acted(tool, scene, [pressAt(5000, 1000), ...drag([2000, 2000], [2500, 2500])]);
  expect(again.step?.name).toBe('Base point 1 moved');
});

test('the tool for points chooses the one of its kind that a press meets, and places none over it', () => {
  const tool = placesHeld(paperPointHeld('base'), 'base', paperMm);
  const turn = acted(tool, scene, [pressAt(4010, 2000)]);
  expect(turn.step).toBeUndefined();
  expect(nameChosen(turn)).toBe('Base point 2');
  expect(turn.next === 'rest' ? null : turn.next.tool).toBe('paperPoint');
  // a test point may be a base point as well
  expect(acted(tool, scene, [pressAt(8000, 3000)]).step?.name).toBe('Base point 3 placed');
  // one that is dragged is chosen too, so that Delete takes it away
  expect(nameChosen(acted(tool, scene, drag([2000, 2000], [2500, 2500])))).toBe('Base point 1');
});

test('what is placed is the one that is chosen, and where a point stands no other is placed by keys', () => {
  const tool = placesHeld(paperPointHeld('base'), 'base', paperMm);
  const placed = acted(tool, scene, [pressAt(5000, 1000)]);
  expect(placeChosen(placed.step?.file ?? marked, placed.choose ?? [])?.name).toBe('Base point 3');
  const twice = acted(tool, scene, [{ kind: 'place', at: [4000, 2000] }]);
  expect(twice.step).toBeUndefined();
  expect([twice.refused, nameChosen(twice)]).toEqual(['Base point 2 stands there already.', 'Base point 2']);
  const line = acted(placesHeld(gridLineHeld(), 'grid', paperMm), scene, drag([5000, -600], [5000, 5100]));
  expect(placeChosen(line.step?.file ?? marked, line.choose ?? [])?.name).toBe('Grid line B');
});

test('the tool for grid lines chooses the line that a press meets, and moves it once it is chosen', () => {
  const tool = placesHeld(gridLineHeld(), 'grid', paperMm);
  const turn = acted(tool, scene, [pressAt(0, 3000)]);
  expect(turn.step).toBeUndefined();
  expect([nameChosen(turn), turn.next === 'rest' ? null : turn.next.underway]).toEqual(['Grid line A', false]);
  expect(acted(tool, scene, drag([0, 3000], [500, 3000])).step?.name).toBe('Grid line 1 placed');
  expect(acted(tool, chosen('grid', 0), drag([0, 3000], [500, 3000])).step?.name).toBe('Grid line A moved');
});

test('after a drag that was given up the tool places nothing where the hand lets go', () => {
  const tool = placesHeld(paperPointHeld('base'), 'base', paperMm);
  const acts = drag([2000, 2000], [2500, 2500]);
  const turn = acted(tool, scene, [...acts.slice(0, -1), { kind: 'back' }, ...acts.slice(2)]);
  expect(turn.step).toBeUndefined();
  expect(turn.next === 'rest' ? null : turn.next.tool).toBe('paperPoint');
  // and goes on with the next press
  const next = acted(tool, scene, [...acts.slice(0, -1), { kind: 'back' }, ...acts.slice(2), pressAt(5000, 1000)]);
  expect(next.step?.name).toBe('Base point 3 placed');
});

test('the tool for grid lines moves the end that a drag begins on, and draws a line where a point stands', () => {
  const tool = placesHeld(gridLineHeld(), 'grid', paperMm);
  expect(acted(tool, scene, drag([0, 5100], [0, 6500])).step?.name).toBe('Grid line A moved');
  const drawn = acted(tool, scene, drag([2000, 2000], [2000, 4000]));
  expect(drawn.step?.name).toBe('Grid line B placed');
  // a line under way ends on an end that stands there
  const ended = acted(tool, scene, [pressAt(0, 8000), ...drag([0, 5100], [0, 5100])]);
  expect(ended.step?.name).toBe('Grid line B placed');
});

test('a place is told by its name whatever that holds', () => {
  const file: PlanFile = { ...marked, papers: { basePoints: [{ name: 'x'.repeat(10_000), at: [0, 0] }] } };
  expect(placesOf(file)[0]?.name.length).toBeLessThan(200);
});
