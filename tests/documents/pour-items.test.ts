import { describe, expect, it } from 'vitest';
import type { DrawingItem } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { legendOf } from '../../src/documents/legend.ts';
import type { PaperSource } from '../../src/documents/paper-source.ts';
import { pourItems } from '../../src/documents/pour-items.ts';
import { pourPlanOf } from '../../src/documents/pour-plan.ts';
import { demoText, paperSourceOf } from './paper-fixture.ts';
import { gridSource } from './pour-fixture.ts';

function itemsOf(source: PaperSource): readonly DrawingItem[] {
  return pourItems(source, drawingOf(source.plan, source.analysis));
}

describe('the drawing of the pour', () => {
  // by hand: three bays of 1 m3 in a row, two a day from the far end: B3 and B2, then B1; work stops at J1
  const source = gridSource(3, 1, { pour: { access: [0, 2000], mostM3PerDay: 2 } });
  const items = itemsOf(source);

  it('writes its day on each bay', () => {
    const days = items.flatMap((item) =>
      item.shape === 'label' && item.ref.kind === 'bay' ? [[item.ref.id, item.forms[0]?.[0]?.text]] : [],
    );
    expect(days.sort()).toEqual([
      ['B1', 'Day 2'],
      ['B2', 'Day 1'],
      ['B3', 'Day 1'],
    ]);
  });

  it('marks the joints at which work stops and no others, beneath their lines', () => {
    const at = (style: string) => items.findIndex((item) => item.shape === 'line' && item.style === style);
    expect(items.filter((item) => item.shape === 'line' && item.style === 'dam').map(({ ref }) => ref.id)).toEqual([
      'J1',
    ]);
    expect(at('dam')).toBeLessThan(at('joint-field'));
  });

  it('gives the bays of a day one tint, and days that meet different ones', () => {
    const tint = (id: string) =>
      items.flatMap((item) =>
        item.shape === 'fill' && item.layer === 'bays' && item.ref.id === id ? [item.style] : [],
      );
    expect(tint('B3')).toEqual(tint('B2'));
    expect(tint('B2')).not.toEqual(tint('B1'));
  });

  it('marks the access where it is entered, and explains what it shows', () => {
    const words = legendOf({ items, box: null }).map((row) => row.words);
    expect(words).toContain('Access: screed is brought in');
    expect(words).toContain('Stop of work at a joint');
    expect(itemsOf(gridSource(3, 1)).some((item) => item.shape === 'mark' && item.style === 'access')).toBe(false);
  });
});

it('the pour of a demo floor shows neither findings nor tiles nor movement', () => {
  const source = paperSourceOf(demoText('2-public-library'));
  const items = itemsOf(source);
  expect(items.filter(({ layer }) => layer === 'findings' || layer === 'tiles')).toEqual([]);
  expect(items.filter((item) => item.shape === 'label' && item.ref.kind === 'joint')).toEqual([]);
  const stops = new Set(items.flatMap((item) => (item.shape === 'line' && item.style === 'dam' ? [item.ref.id] : [])));
  const dams = new Set(pourPlanOf(source).lots.flatMap((lot) => lot.dams.map(({ joint }) => joint)));
  expect(stops).toEqual(dams);
});
