import { describe, expect, test } from 'vitest';
import { groutFurthest, groutWords } from '../../src/app/parts/grout.ts';
import { type Joint, untiledJoint } from '../../src/plan/analysis.ts';

const off = (id: string, grout: Partial<Joint>): Joint =>
  ({ ...untiledJoint, id, onGroutLine: false, tilesAt: 'cut', cutsTiles: 3, ...grout }) as Joint;

const near = off('J1', { offGroutMm: 12, bondLets: true, whyOff: 'aim' });
const far = off('J2', { offGroutMm: 280, bondLets: true, whyOff: 'aim' });
const lineless = off('J3', { offGroutMm: 270, bondLets: false, whyOff: 'bond' });

describe('what is said of a joint in the grout', () => {
  test('gives no figure where no grout line runs its way', () => {
    expect(groutWords(lineless)).toEqual({ place: 'no grout line this way', more: '3 tiles cut along it' });
    expect(groutWords(near)?.place).toBe('off by 12 mm');
  });

  test('puts those furthest off first, and those that no line runs along last', () => {
    expect(groutFurthest([lineless, near, far]).map(({ id }) => id)).toEqual(['J2', 'J1', 'J3']);
  });
});
