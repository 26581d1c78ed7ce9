import { describe, expect, it } from 'vitest';
import { drawingOf } from '../../src/documents/drawing-list.ts';
import { sheetContent } from '../../src/documents/sheet-content.ts';
import { xmlText } from '../../src/documents/xml-text.ts';
import type { Analysis } from '../../src/plan/analysis.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { drawingSvg } from './drawing-svg.ts';
import { analysisOf, finding, planOf, room } from './fixture.ts';
import { paperSource } from './paper-fixture.ts';

function svg(plan: Plan = planOf(), analysis: Analysis = analysisOf()): string {
  return drawingSvg(drawingOf(plan, analysis), sheetContent(paperSource(plan, analysis)));
}

/** Text of all text elements, joined: lines that were broken read on. */
function words(text: string): string {
  return [...text.matchAll(/<text[^>]*>([^<]*)<\/text>/gu)].map(([, inside]) => inside).join(' ');
}

/** Tags opened and closed in order: what a parser would ask first. */
function isBalanced(text: string): boolean {
  const open: string[] = [];
  for (const [, end, name, self] of text.matchAll(/<(\/?)([a-z]+)(?:\s[^<>]*?)?(\/?)>/gu)) {
    if (end === '/') {
      if (open.pop() !== name) return false;
    } else if (self !== '/') open.push(name as string);
  }
  return open.length === 0;
}

describe('the drawing in SVG', () => {
  it('is to scale: a wall of 7 m is 140 mm at 1 : 50', () => {
    const text = svg();
    const [, width, viewWidth] = /<svg [^>]*width="(\d+)mm"[^>]*viewBox="0 0 (\d+) /u.exec(text) ?? [];
    expect(width).toBe(viewWidth);
    const path = /data-kind="edge" data-id="E1"><path d="M([^"]*)"/u.exec(text)?.[1] ?? '';
    const ys = path.split('L').map((point) => Number(point.split(' ')[1]));
    expect(words(text)).toContain('Scale 1 : 50');
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(140, 6);
  });

  it('names plan, rule set, screed, cautions and how little it knows of north', () => {
    const text = words(svg());
    for (const part of [
      'Reading rooms',
      'EN 1264-4',
      'CT-C25-F4, 65 mm',
      'structural engineer',
      'north',
      'checked for construction',
    ]) {
      expect(text).toContain(part);
    }
  });

  it('lists the findings with the numbers of their pins, faults first', () => {
    const text = words(svg());
    expect(text).toContain('1 fault 1 caution, 2 notes');
    expect(text).toContain('1 Serving counter holds');
    expect(text.indexOf('Serving counter holds')).toBeLessThan(text.indexOf('Joint J1 closes 5.2'));
  });

  it('says how many findings found no room', () => {
    const findings = Array.from({ length: 90 }, (_, i) =>
      finding('fault', [i * 50, 900], `Side of ${i} m is over 8 m.`),
    );
    const text = words(svg(planOf(), analysisOf({ findings })));
    const left = Number(/(\d+) more in the list of findings/u.exec(text)?.[1]);
    expect(text).toContain('90 faults');
    expect(text.match(/is over 8\sm\./gu)).toHaveLength(90 - left);
  });

  it('explains the symbols in use and no others', () => {
    const text = words(svg());
    expect(text).toContain('Intermediate movement joint');
    expect(text).toContain('Held to the slab (no insulation)');
    expect(text).not.toContain('Structural joint');
    expect(text).not.toContain('Joint across a neck');
  });

  it('takes hostile names for what they are: text', () => {
    const hostile = '</text><script>alert(1)</script>&amp;"\'\u0000\ud800\u2028]]>';
    const plan = planOf({ name: hostile, rooms: [room('r1', hostile, planOf().rooms[0]?.outline ?? [])] });
    const analysis = analysisOf({ findings: [finding('fault', [0, 0], hostile, [hostile])] });
    const text = svg(plan, analysis);
    expect(text).not.toContain('<script');
    expect(text).toContain('&lt;script&gt;');
    expect(isBalanced(text)).toBe(true);
    for (const character of text) {
      const code = character.codePointAt(0) ?? 0;
      expect(code === 10 || (code >= 32 && !(code >= 0xd800 && code <= 0xdfff))).toBe(true);
    }
  });

  it('is the same, byte for byte, for the same plan', () => {
    expect(svg()).toBe(svg());
    expect(svg()).not.toBe(svg(planOf({ name: 'Other rooms' })));
  });

  it('loads nothing from anywhere', () => {
    expect(svg().replace('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|url\(|href|@import|<image|<style/u);
  });

  it('draws an empty plan without a word that is not a number', () => {
    const plan = planOf({ rooms: [], doorways: [], columns: [], pipes: [], joinery: [], sunZones: [], keepClear: [] });
    const text = svg(plan, analysisOf({ bays: [], joints: [], edges: [], findings: [] }));
    expect(text).not.toMatch(/NaN|Infinity|undefined|null/u);
    expect(words(text)).toContain('No fault found');
  });
});

describe('text for XML', () => {
  it('keeps what is harmless and replaces what XML cannot hold', () => {
    expect(xmlText('Küche 3 \u{1f6aa}')).toBe('Küche 3 \u{1f6aa}');
    expect(xmlText('a<b & "c" \'d\'')).toBe('a&lt;b &amp; &quot;c&quot; &#39;d&#39;');
    expect(xmlText('\udfff\uffff')).toBe('\ufffd\ufffd');
  });

  it('has a space for every control character', () => {
    expect(xmlText('a\u0000b\u0008c\td\ne\u007ff\u0085g')).toBe('a b c d e f g');
  });
});
