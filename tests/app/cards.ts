import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { flatFile, planOpen, rows, stepOpen } from './board.ts';

/** What browser tests of cards do again and again. */
export type Point = [number, number];
export interface PlanLike {
  name: string;
  rooms: { id: string; name?: string; outline: Point[] }[];
  doorways?: unknown[];
  [list: string]: unknown;
}

export const flat = () => JSON.parse(readFileSync(flatFile, 'utf8')) as PlanLike;

/** Lays a plan on the board. */
export async function planLay(page: Page, plan: PlanLike): Promise<void> {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await planOpen(page, { name: 'p.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await expect(page.getByLabel('Name of the plan')).toHaveValue(plan.name);
  await expect(page.getByText(/^\d+ rooms?, .* bays?, \d+ joints?\./)).toBeVisible();
}

/** The plan on the board, as it would be saved. */
export async function planSaved(page: Page): Promise<PlanLike> {
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save' }).click();
  return JSON.parse(readFileSync(await (await saved).path(), 'utf8')) as PlanLike;
}

export async function choose(page: Page, step: string, list: string, name: string): Promise<void> {
  await stepOpen(page, step);
  await rows(page, list).filter({ hasText: name }).first().click();
}

export const card = (page: Page) => page.locator('#card');

export async function put(page: Page, label: string, value: string): Promise<void> {
  const field = card(page).getByLabel(label, { exact: true });
  await field.fill(value);
  await field.press('Enter');
}

export const expectUndo = (page: Page, name: string | RegExp) =>
  expect(page.getByRole('button', { name: 'Undo' })).toHaveAttribute('title', name);
