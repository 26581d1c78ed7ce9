import { describe, expect, it } from 'vitest';
import { drawingLayers } from '../../src/documents/drawing.ts';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { jointKinds } from '../../src/plan/analysis.ts';
import { analysisOf, box, finding, joint, planOf } from './fixture.ts';
import { tiledAnalysis, tiledPlan } from './tile-fixture.ts';

const drawing = drawingOf(planOf(), analysisOf());

describe('the drawing list', () => {
  it('shows every bay, joint, edge and placed finding by its id', () => {
    const refs = new Set(
      drawing.items.filter(({ shape }) => shape !== 'label').map(({ ref }) => `${ref.kind} ${ref.id}`),
    );
    const { bays, joints, edges } = analysisOf();
    for (const { id } of bays) expect(refs).toContain(`bay ${id}`);
    for (const { id } of joints) expect(refs).toContain(`joint ${id}`);
    for (const { id } of edges) expect(refs).toContain(`edge ${id}`);
    expect([...refs].filter((ref) => ref.startsWith('finding')).sort()).toEqual([
      'finding 0',
      'finding 1',
      'finding 3',
    ]);
  });

  it('shows every object that was drawn', () => {
    const drawn = {
      id: 'x1',
      line: [
        [500, 500],
        [900, 900],
      ],
    } as const;
    const plan = planOf({
      drawnJoints: [drawn],
      noJoint: [{ ...drawn, id: 'n1' }],
      structuralJoints: [{ ...drawn, id: 's1', widthMm: 20 }],
      slabContacts: [{ id: 'k1', outline: box(100, 3000, 400, 400) }],
    });
    const ids = new Set(drawingOf(plan, analysisOf()).items.map(({ ref }) => ref.id));
    for (const id of ['d1', 'c1', 'p1', 'j1', 'j2', 'u1', 'q1', 'x1', 'n1', 's1', 'k1']) expect(ids).toContain(id);
  });

  it('hatches the floor of a room without insulation as held to the slab, and of no other', () => {
    const hatched = (insulationMm: number | null) => {
      const buildUp = insulationMm === null ? null : { insulationMm, adhesiveMm: 4, coveringMm: 10 };
      const rooms = planOf().rooms.map((each) => (each.id === 'r1' ? { ...each, buildUp } : each));
      return drawingOf(planOf({ rooms }), analysisOf()).items.flatMap((item) =>
        item.shape === 'fill' && item.style === 'held' && item.ref.kind === 'bay' ? [item.ref.id] : [],
      );
    };
    const own = analysisOf().bays.filter(({ rooms }) => rooms.includes('r1'));
    expect(own.length).toBeGreaterThan(0);
    expect(hatched(0)).toEqual(own.map(({ id }) => id));
    expect(hatched(30)).toEqual([]);
    expect(hatched(null)).toEqual([]);
  });

  it('comes in painting order, from the floor up to the findings', () => {
    const { items } = drawingOf(tiledPlan(), tiledAnalysis());
    const ranks = items.map(({ layer }) => drawingLayers.indexOf(layer));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(new Set(ranks).size).toBe(drawingLayers.length);
  });

  it('draws the outline of a room that no bay covers, and of no other', () => {
    const rooms = drawing.items.filter(({ ref }) => ref.kind === 'room').map(({ ref }) => ref.id);
    expect(rooms).toEqual(['r3']);
  });

  it('numbers a pin as the finding is numbered in the list, with the faults on top', () => {
    const pins = drawing.items.filter((item) => item.layer === 'findings');
    expect(pins.map((pin) => (pin.shape === 'mark' ? pin.text : null))).toEqual(['4', '2', '1']);
  });

  it('marks the ends of a run of joints and not where one joint of it goes on as the next', () => {
    const xs = [0, 3000, 3600, 6000, 9000];
    const joints = xs.slice(1).map((x, i) => ({
      ...joint(
        `J${i}`,
        'field',
        [
          [xs[i] as number, 0],
          [x, 0],
        ],
        ['B1', 'B2'],
      ),
      run: 'R1',
    }));
    const bare = drawingOf(planOf(), analysisOf({ joints })).items.flatMap((item) =>
      item.layer === 'joints' && item.shape === 'line' ? [item.bareEnds] : [],
    );
    expect(bare).toEqual(['last', 'both', 'both', 'first']);
  });

  it('knows a style for every kind of joint', () => {
    const joints = jointKinds.map((kind, i) =>
      joint(
        `J${i}`,
        kind,
        [
          [0, i * 100],
          [900, i * 100],
        ],
        ['B1', 'B2'],
      ),
    );
    const styles = drawingOf(planOf(), analysisOf({ joints })).items.flatMap((item) =>
      item.layer === 'joints' && item.shape === 'line' ? [item.style] : [],
    );
    expect(new Set(styles).size).toBe(jointKinds.length);
  });

  it('has a box round the floor, and none where nothing is drawn', () => {
    expect(drawing.box).toEqual({ minX: 0, minY: 0, maxX: 10620, maxY: 7000 });
    const empty = planOf({ rooms: [], doorways: [], columns: [], pipes: [], joinery: [], sunZones: [], keepClear: [] });
    const none = analysisOf({
      bays: [],
      joints: [],
      edges: [],
      findings: [finding('note', null, 'Nothing is drawn.')],
    });
    expect(drawingOf(empty, none)).toEqual({ items: [], box: null });
  });

  it('writes figures with the decimal mark asked for', () => {
    const texts = drawingOf(planOf(), analysisOf(), { decimalMark: ',' }).items.flatMap((item) =>
      item.shape === 'label' ? item.forms.flat().map(({ text }) => text) : [],
    );
    expect(texts).toContain('28,0 m\u00b2');
    expect(texts).toContain('7,00 \u00d7 4,00 m');
    expect(texts).toContain('J1 closes 1,1 mm');
  });
});
