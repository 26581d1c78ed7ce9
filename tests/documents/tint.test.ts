import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tintCount } from '../../src/documents/styles.ts';
import { bayTints } from '../../src/documents/tint.ts';
import { bay, box, joint } from './fixture.ts';

describe('tints of bays', () => {
  it('differ between neighbours on any layout of split rectangles', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(), fc.boolean(), fc.integer({ min: 1, max: 9 })), { maxLength: 40 }),
        (cuts) => {
          const pieces: [x: number, y: number, width: number, height: number][] = [[0, 0, 1000, 1000]];
          for (const [which, upright, share] of cuts) {
            const [x, y, width, height] = pieces.splice(which % pieces.length, 1)[0] as (typeof pieces)[number];
            const part = (share / 10) * (upright ? width : height);
            if (upright) pieces.push([x, y, part, height], [x + part, y, width - part, height]);
            else pieces.push([x, y, width, part], [x, y + part, width, height - part]);
          }
          const bays = pieces.map(([x, y, w, h], i) => bay(`B${i}`, ['r1'], box(x, y, w, h), 1, 1));
          const joints = pieces.flatMap(([ax, ay, aw, ah], i) =>
            pieces.flatMap(([bx, by, bw, bh], j) => {
              const across = Math.min(ax + aw, bx + bw) - Math.max(ax, bx);
              const down = Math.min(ay + ah, by + bh) - Math.max(ay, by);
              const meet =
                i < j && ((across > 1e-6 && Math.abs(down) < 1e-6) || (down > 1e-6 && Math.abs(across) < 1e-6));
              return meet
                ? [
                    joint(
                      `J${i}-${j}`,
                      'field',
                      [
                        [0, 0],
                        [1, 0],
                      ],
                      [`B${i}`, `B${j}`],
                    ),
                  ]
                : [];
            }),
          );
          const tints = bayTints({ bays, joints }, tintCount);
          for (const {
            bays: [a, b],
          } of joints)
            expect(tints.get(a)).not.toBe(tints.get(b));
          for (const { id } of bays) expect(tints.get(id)).toBeLessThan(tintCount);
        },
      ),
      { seed: 5, numRuns: 60 },
    );
  });

  it('are the same whatever else is on the sheet is called', () => {
    const bays = ['B1', 'B2'].map((id) => bay(id, ['r1'], box(0, 0, 1, 1), 1, 1));
    const joints = [
      joint(
        'J1',
        'field',
        [
          [0, 0],
          [1, 0],
        ],
        ['B1', 'B2'],
      ),
      joint(
        'J2',
        'field',
        [
          [0, 0],
          [1, 0],
        ],
        ['B1', 'gone'],
      ),
    ];
    const tints = bayTints({ bays, joints }, tintCount);
    expect([...tints.values()].sort()).toEqual([0, 1]);
  });
});
