import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { ringArea } from '../../src/geometry/ring.ts';
import type { PlanFile } from '../../src/plan/schema.ts';
import { boardPlaces, rows, stepOpen } from '../app/board.ts';
import { appMeasured, atPace, type FrameFigures, framesOf, planLay } from './frames.ts';

/** How the screen keeps up while a corner of the 900 m2 demo is dragged, with the analysis following. */
export interface DragFigures extends FrameFigures {
  readonly floorM2: number;
}

const moves = 360;
/** The first moves warm the code up: nobody judges a drag by its first half second. */
const warmMoves = 60;

/** Builds the app and drags in it. */
export function dragMeasure(): Promise<DragFigures> {
  return appMeasured(async (browser, page) => {
    await planLay(page, demo, /^\d+ rooms, 8\d\d.* bays, \d+ joints\./);
    const [x, y] = await cornerTake(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await dragAbout(page, x, y, warmMoves);
    const figures = await framesOf(browser, page, () => dragAbout(page, x, y, moves));
    await page.mouse.up();
    const floorM2 = demo.rooms.reduce((sum, { outline }) => sum + ringArea(outline), 0) / 1e6;
    return { ...figures, floorM2 };
  });
}

const demo = JSON.parse(
  readFileSync(new URL('../../demo-plans/2-public-library.json', import.meta.url), 'utf8'),
) as PlanFile;

/** Chooses the largest room and gives the place of its first corner, px. */
async function cornerTake(page: Page): Promise<readonly [number, number]> {
  await stepOpen(page, 'Floor');
  const [room] = [...demo.rooms].sort((a, b) => ringArea(b.outline) - ringArea(a.outline));
  if (room === undefined) throw new Error('the demo has no room');
  await rows(page, 'Rooms')
    .filter({ hasText: room.name ?? room.id })
    .first()
    .click();
  const places = await boardPlaces(page);
  const [x, y] = room.outline[0] as readonly [number, number];
  return places(x, y);
}

/** Leads the hand about the place in a circle. */
function dragAbout(page: Page, x: number, y: number, count: number): Promise<void> {
  return atPace(count, (i) => {
    const turn = (i / 60) * 2 * Math.PI;
    return page.mouse.move(x + 30 * Math.sin(turn), y + 30 * Math.sin(turn * 0.7));
  });
}
