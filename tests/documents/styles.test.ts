import { describe, expect, it } from 'vitest';
import {
  type ColourName,
  colours,
  fillStyles,
  type LineStyle,
  lineStyles,
  type Theme,
  textStyles,
} from '../../src/documents/styles.ts';
import { endMarks, marks } from '../../src/documents/symbols.ts';
import { jointKinds } from '../../src/plan/analysis.ts';

/** Relative luminance and contrast as the Web Content Accessibility Guidelines 2 define them. */
function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: ColourName, b: ColourName, theme: Theme): number {
  const [low, high] = [luminance(colours[a][theme]), luminance(colours[b][theme])].sort((x, y) => x - y) as [
    number,
    number,
  ];
  return (high + 0.05) / (low + 0.05);
}

const themes: readonly Theme[] = ['light', 'dark'];
const bayTints = Object.keys(fillStyles).flatMap((name) =>
  name.startsWith('bay-') ? [`tint${name.slice(4)}` as ColourName] : [],
);
const grounds: readonly ColourName[] = ['paper', 'unit', ...bayTints];

describe.each(themes)('on a %s ground', (theme) => {
  it('black on white measures 21 and a colour on itself 1', () => {
    expect((1 + 0.05) / (luminance('#000000') + 0.05)).toBeCloseTo(21, 6);
    expect(contrast('ink', 'ink', theme)).toBe(1);
  });

  it('every text reads over every tint', () => {
    expect(bayTints).toHaveLength(6);
    for (const [name, { colour }] of Object.entries(textStyles)) {
      if (name.startsWith('pin-fault') || name.startsWith('across-')) continue;
      for (const ground of grounds)
        expect(contrast(colour, ground, theme), `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('what stands across a sheet is seen over every tint, and much paler than any line or text', () => {
    for (const ground of grounds) {
      const seen = contrast('across', ground, theme);
      expect(seen, ground).toBeGreaterThan(1.15);
      expect(seen, ground).toBeLessThan(2);
    }
  });

  it('the number on a fault reads', () => {
    for (const name of ['pin-fault', 'pin-fault-long'] as const)
      expect(contrast(textStyles[name].colour, 'fault', theme)).toBeGreaterThanOrEqual(4.5);
  });

  it('every line of a joint is seen over every tint', () => {
    for (const kind of jointKinds) {
      for (const ground of grounds)
        expect(contrast(lineStyles[`joint-${kind}`].colour, ground, theme)).toBeGreaterThanOrEqual(3);
    }
  });

  it('grout lines are seen over every tint, and are fainter than any other line', () => {
    for (const ground of grounds) {
      const seen = contrast('grout', ground, theme);
      expect(seen, `grout on ${ground}`).toBeGreaterThanOrEqual(2);
      for (const { colour } of Object.values(lineStyles).filter((style) => style !== lineStyles.grout))
        expect(contrast(colour, ground, theme), `${colour} on ${ground}`).toBeGreaterThan(seen);
    }
  });

  it('no two tints are the same', () => {
    expect(new Set(bayTints.map((tint) => colours[tint][theme])).size).toBe(bayTints.length);
  });
});

describe('without colour', () => {
  it('each kind of joint has a pattern and an end mark of its own', () => {
    const patterns = jointKinds.map((kind) =>
      JSON.stringify(lineStyles[`joint-${kind}`].strokes.map(({ widthMm, dashMm }) => [widthMm, dashMm])),
    );
    expect(new Set(patterns).size).toBe(jointKinds.length);
    expect(new Set(jointKinds.map((kind) => lineStyles[`joint-${kind}`].endMark)).size).toBe(jointKinds.length);
  });

  it('narrow cuts have a pattern of their own, and slivers twice the ink of cuts under half', () => {
    const inkShare = (style: 'cut-sliver' | 'cut-under-half') => {
      const [bar = 0, gap = 0] = lineStyles[style].strokes[0].dashMm;
      return bar / (bar + gap);
    };
    expect(inkShare('cut-sliver')).toBeGreaterThan(2 * inkShare('cut-under-half'));
  });

  it('grout lines are the finest', () => {
    const { grout, ...others } = lineStyles;
    for (const { strokes } of Object.values<LineStyle>(others))
      for (const { widthMm } of strokes) expect(widthMm).toBeGreaterThan(grout.strokes[0].widthMm);
  });

  it('each severity has a shape of its own', () => {
    const shapes = (['fault', 'caution', 'note'] as const).map((severity) => {
      const body = marks[`pin-${severity}`].figures.at(-1);
      return body?.figure === 'polyline' ? body.points.length : body?.figure;
    });
    expect(new Set(shapes).size).toBe(3);
  });

  it('the floor edge is the heaviest single line', () => {
    const edge = lineStyles['edge-wall'].strokes[0].widthMm;
    for (const kind of jointKinds.filter((each) => each !== 'structural')) {
      for (const { widthMm } of lineStyles[`joint-${kind}`].strokes) expect(widthMm).toBeLessThan(edge);
    }
  });
});

it('every symbol stays within the reach that text keeps clear of', () => {
  for (const [name, { figures, reachMm }] of Object.entries(marks)) {
    for (const figure of figures) {
      const half = figure.widthMm / 2;
      const points =
        figure.figure === 'disc'
          ? [
              [figure.centre[0] - figure.radiusMm, figure.centre[1] - figure.radiusMm],
              [figure.centre[0] + figure.radiusMm, figure.centre[1] + figure.radiusMm],
            ]
          : figure.points;
      for (const [x, y] of points as readonly (readonly [number, number])[]) {
        expect(x - half, name).toBeGreaterThanOrEqual(-reachMm.left);
        expect(x + half, name).toBeLessThanOrEqual(reachMm.right);
        expect(y - half, name).toBeGreaterThanOrEqual(-reachMm.up);
        expect(y + half, name).toBeLessThanOrEqual(reachMm.down);
      }
    }
  }
  expect(Object.keys(endMarks)).toHaveLength(7);
});
