import { describe, expect, it } from 'vitest';
import { epsilonViolations, purityViolations } from './purity.ts';
import { readSources } from './source.ts';

const sources = readSources();

describe('the core below the screen', () => {
  it('uses no screen, clock, chance, console or file', () => {
    expect(purityViolations(sources)).toEqual([]);
  });

  it.each([
    ['the clock', 'export const a = () => Date.now();'],
    ['the clock as a type', 'export interface A { readonly at: Date }'],
    ['chance', 'export const a = () => Math.random();'],
    ['chance by another spelling', "export const a = () => Math['random']();"],
    ['a length that engines round differently', 'export const a = (x: number) => Math.hypot(x, 1);'],
    ['the console', "export function a() { console.log('x'); }"],
    ['the page', 'export const a = () => document.title;'],
    ['a global by way of the global object', 'export const a = () => globalThis.performance.now();'],
    ['a timer', 'export const a = () => setTimeout(() => 1, 2);'],
    ['a short-hand property', 'export const a = () => ({ process });'],
    ['the file that the code stands in', 'export const a = import.meta.url;'],
    ['an order that depends on the language of the machine', 'export const a = (x: string) => x.localeCompare("b");'],
  ])('would see %s', (_what, text) => {
    expect(purityViolations([{ path: 'src/bays/a.ts', text }])).toHaveLength(1);
  });

  it.each([
    ['a window of the building', 'export const a = (window: { widthMm: number }) => window.widthMm;'],
    ['a property of that name', 'export const a = (x: { document: string }) => x.document;'],
    ['a key of that name', 'export const a = { document: 1, process: 2 };'],
    ['a name in a text or comment', "// document\nexport const a = 'console.log(Date.now())';"],
    ['a name taken apart from an object', 'export function a({ self, b: [process] }: X) { return [self, process]; }'],
  ])('lets through %s', (_what, text) => {
    expect(purityViolations([{ path: 'src/bays/a.ts', text }])).toEqual([]);
  });

  it('leaves the editor its screen', () => {
    expect(purityViolations([{ path: 'src/app/a.ts', text: 'export const a = () => document.title;' }])).toEqual([]);
  });
});

describe('tolerances', () => {
  it('stand in geometry/tolerance.ts and nowhere else', () => {
    expect(epsilonViolations(sources)).toEqual([]);
  });

  it.each([
    ['compared', 'export const a = (x: number) => Math.abs(x) < 1e-6;'],
    ['compared as a share', 'export const a = (x: number, y: number) => x > y * 1e-9;'],
    ['compared with its sign turned', 'export const a = (x: number) => x >= -1e-9;'],
    ['added before it is compared', 'export const a = (x: number, y: number) => x + 1e-9 < y;'],
    ['given a name', 'const eps = 1e-9;\nexport const a = (x: number) => x < eps;'],
    ['the default of a parameter', 'export const a = (x: number, slack = 0.0001) => x < slack;'],
    ['handed to a function', 'export const a = (x: number) => near(x, 1e-7);'],
    ['the one of the language', 'export const a = (x: number) => x < Number.EPSILON;'],
  ])('would be seen where one is %s', (_what, text) => {
    expect(epsilonViolations([{ path: 'src/bays/a.ts', text }])).toHaveLength(1);
  });

  it.each([
    ['a change of unit', 'export const a = (areaMm2: number) => areaMm2 * 1e-6;'],
    ['a figure in a table', 'export const a = { expansionPerK: 12e-6 };'],
    ['a length of a millimetre', 'export const a = (x: number) => x < 1;'],
    ['zero', 'export const a = (x: number) => x > 0;'],
  ])('are not seen in %s', (_what, text) => {
    expect(epsilonViolations([{ path: 'src/bays/a.ts', text }])).toEqual([]);
  });
});
