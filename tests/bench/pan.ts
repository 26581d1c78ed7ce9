import { readFileSync } from 'node:fs';
import type { PlanFile } from '../../src/plan/schema.ts';
import { appMeasured, atPace, type FrameFigures, framesOf, planLay } from './frames.ts';

/** How the screen keeps up while the hall of 10,000 m2 with some 30,000 tiles is panned. */
export interface PanFigures extends FrameFigures {
  readonly bond: string;
  readonly tiles: number;
  /** Whether the whole hall is in view, or a part of it near by. */
  readonly view: 'whole' | 'near';
}

const moves = 240;
const warmMoves = 40;
const tileMm = 575;
const groutMm = 3;
const hallM2 = 10_000;

const hall = JSON.parse(
  readFileSync(new URL('../../demo-plans/3-market-hall.json', import.meta.url), 'utf8'),
) as PlanFile;

export function panMeasure(): Promise<readonly PanFigures[]> {
  return appMeasured(async (browser, page) => {
    const found: PanFigures[] = [];
    for (const bond of ['straight', 'half', 'herringbone']) {
      const widthMm = bond === 'herringbone' ? tileMm / 2 : tileMm;
      const tiles = { lengthMm: tileMm, widthMm, groutMm, bond };
      await planLay(page, { ...hall, tiles }, /^1 room, 10.*000.* bays, \d+ joints\./);
      await page.waitForTimeout(3000);
      for (const view of ['whole', 'near'] as const) {
        if (view === 'near') for (let i = 0; i < 4; i++) await page.getByRole('button', { name: 'Zoom in' }).click();
        await page.mouse.move(720, 500);
        await page.waitForTimeout(500);
        const pan = (count: number) =>
          // Less than a whole notch comes from a touchpad, and pans.
          atPace(count, (i) => page.mouse.wheel(5 * Math.sin(i / 20), 3 * Math.cos(i / 20)));
        await pan(warmMoves);
        const figures = await framesOf(browser, page, () => pan(moves));
        found.push({
          ...figures,
          bond,
          tiles: hallM2 / ((((tileMm + groutMm) / 1000) * (widthMm + groutMm)) / 1000),
          view,
        });
      }
    }
    return found;
  });
}
