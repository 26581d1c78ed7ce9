import { describe, expect, test } from 'vitest';
import { planRead } from '../../src/plan/read.ts';
import { planResolve } from '../../src/plan/resolve.ts';
import { planText, square } from './plan-text.ts';

describe('a large plan is read or refused', () => {
  const circle = Array.from({ length: 1_000_000 }, (_, i) => {
    const turn = (i / 1_000_000) * 2 * Math.PI;
    return [Math.cos(turn) * 4e6, Math.sin(turn) * 4e6];
  });

  test('a ring of twenty thousand points is read and its defaults filled in', () => {
    const ring = circle.filter((_, i) => i % 50 === 0);
    const read = planRead(planText({ rooms: [{ id: 'r1', outline: ring }] }));
    expect(read.kind === 'plan' && planResolve(read.file).rooms[0]?.outline.length).toBe(20_000);
  });

  const refusedAt = (fields: object) => {
    const read = planRead(planText(fields));
    return read.kind === 'refused' ? read.problems.map(({ path, message }) => `${path}: ${message}`) : [];
  };

  test('five megabytes are looked through for a key used twice at the very end', () => {
    const rooms = Array.from({ length: 100_000 }, (_, i) => ({ id: `r${i}`, name: 'Hall', outline: [[0, i]] }));
    const text = planText({ rooms }).replace(/\}$/, ',"name":""}');
    expect(text.length).toBeGreaterThan(5e6);
    const read = planRead(text);
    expect(read.kind === 'refused' && read.problems.map(({ path }) => path)).toEqual(['name']);
  });

  test('a ring of a million points is refused, sound or not', () => {
    for (const outline of [circle, circle.map(() => ['x', 0])]) {
      expect(refusedAt({ rooms: [{ id: 'r1', outline }] })).toEqual([
        'rooms[0].outline: has 1000000 points; 20000 are read',
      ]);
    }
  });

  test('of many bad points ten are named and the rest counted', () => {
    const problems = refusedAt({ rooms: [{ id: 'r1', outline: circle.slice(0, 20_000).map(() => ['x', 0]) }] });
    expect(problems).toHaveLength(11);
    expect(problems[9]).toMatch(/^rooms\[0\]\.outline\[9\]: /);
    expect(problems[10]).toBe('rooms[0].outline: has 19990 more bad points');
  });

  test('a million points in many rings are refused', () => {
    const rooms = Array.from({ length: 50 }, (_, i) => ({ id: `r${i}`, outline: circle.slice(0, 20_000) }));
    expect(refusedAt({ rooms })).toEqual([': has 1000000 points; 100000 are read']);
  });

  test('a scribble of twenty thousand points is refused, its name and place kept', () => {
    // a chord of about a third of the circle each time: near every chord crosses two thirds of the others
    const outline = Array.from({ length: 20_000 }, (_, i) => circle[(i * 333_331) % 1_000_000]);
    const [problem, ...others] = refusedAt({
      rooms: [
        { id: 'r1', outline: square },
        { id: 'r2', outline },
      ],
    });
    expect(others).toEqual([]);
    expect(problem).toMatch(/^rooms\[1\]\.outline: crosses itself .* more than 1000 times$/);
  });

  test('a thicket of lines is refused whether or not they cross', () => {
    const lines = (turn: (i: number) => unknown) =>
      Array.from({ length: 40_000 }, (_, i) => ({ id: `x${i}`, line: turn(i) }));
    const across = (i: number) =>
      i % 2
        ? [
            [0, i],
            [40_000, i],
          ]
        : [
            [i, 0],
            [i, 40_000],
          ];
    const alongside = (i: number) => [
      [i, 0],
      [i + 90_000, 90_000],
    ];
    for (const turn of [across, alongside]) {
      const [problem, ...others] = refusedAt({ drawnJoints: lines(turn) });
      expect(others).toEqual([]);
      expect(problem).toMatch(/^drawnJoints\[\d+\]\.line: lies where outlines and lines cross /);
    }
  });

  test('seventy joints drawn across seventy others are a plan', () => {
    const drawnJoints = Array.from({ length: 140 }, (_, i) => {
      const at = 1000 * Math.ceil((i + 1) / 2);
      return {
        id: `x${i}`,
        line:
          i % 2
            ? [
                [0, at],
                [80_000, at],
              ]
            : [
                [at, 0],
                [at, 80_000],
              ],
      };
    });
    expect(planRead(planText({ drawnJoints })).kind).toBe('plan');
  });

  test('two hundred thousand bad rooms are refused, twenty problems listed and the rest counted', () => {
    const read = planRead(planText({ rooms: Array.from({ length: 200_000 }, () => ({})) }));
    const problems = read.kind === 'refused' ? read.problems : [];
    expect(problems).toHaveLength(21);
    expect(problems.at(-1)?.message).toBe('has 399980 more problems');
  });
});
