import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { flatFile, flatOpen, planOpen, rows, stepOpen } from './board.ts';

type PlanLike = Record<string, unknown>;

/** Lays the fixture on the board with some of it changed. */
async function flatChanged(page: Page, change: (plan: PlanLike) => void): Promise<void> {
  const plan = JSON.parse(readFileSync(flatFile, 'utf8')) as PlanLike;
  change(plan);
  plan.name = 'Changed';
  await page.goto('./');
  await planOpen(page, { name: 'c.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Changed');
  await expect(page.getByText(/^\d+ rooms?, .* bays?, \d+ joints?\./)).toBeVisible();
}

test('a bay that a fault names is marked in its row, and nothing beside it says that all is well', async ({ page }) => {
  await flatOpen(page);
  const finding = await rows(page, 'Findings').filter({ hasText: 'held to the slab' }).locator('.name').textContent();
  const [, id] = /Bay (B\d+)/.exec(finding ?? '') ?? [];
  const row = rows(page, 'Bays').filter({ has: page.getByText(String(id), { exact: true }) });
  await expect(row.locator('.value .tone-fault')).toHaveText(/fault .*m²/);
  await expect(row.locator('.tone-within')).toHaveCount(0);
  await row.click();
  const card = page.getByRole('region', { name: new RegExp(`^${id} `) });
  await expect(card).toContainText('Within its limits of area, side and proportion');
  await expect(card.locator('.tone-within')).toHaveCount(0);
});

test('a limit is given with the digits that it has', async ({ page }) => {
  // Exposed floor in the United States: 12 ft, which is 3.6576 m.
  await flatChanged(page, (plan) => {
    plan.ruleSet = 'tile-us-exposed';
  });
  await stepOpen(page, 'Floor');
  await expect(page.getByText(/^A bay at most: .*3\.66 m long/)).toBeVisible();
});

test('a bay that has more floor than its limit only by its doorways says so', async ({ page }) => {
  // 8 x 5 m are the 40 m2 that are allowed; half the opening of 1 x 0.4 m comes on top.
  await flatChanged(page, (plan) => {
    plan.rooms = [
      {
        id: 'a',
        name: 'Hall',
        outline: [
          [0, 0],
          [8000, 0],
          [8000, 5000],
          [0, 5000],
        ],
      },
      {
        id: 'b',
        name: 'Store',
        outline: [
          [0, 5400],
          [4000, 5400],
          [4000, 8000],
          [0, 8000],
        ],
      },
    ];
    plan.doorways = [
      {
        id: 'd',
        line: [
          [1000, 5200],
          [2000, 5200],
        ],
        wallMm: 400,
        leaf: true,
      },
    ];
    for (const key of ['columns', 'pipes', 'joinery', 'sunZones']) delete plan[key];
  });
  await rows(page, 'Bays').filter({ hasText: 'Hall' }).click();
  const card = page.getByRole('region', { name: /Hall/ });
  await expect(card.getByRole('row', { name: /^Area 40\.2 m²$/ })).toBeVisible();
  await expect(card.getByRole('row', { name: 'Without the floor of doorways at most 40 m² 40.0 m²' })).toBeVisible();
});

test('the working of a movement has one digit more than the movement, so that it adds up', async ({ page }) => {
  await flatOpen(page);
  await rows(page, 'Joints').first().click();
  await page.getByText('How the movement is found').click();
  const card = page.getByRole('region', { name: /^J\d+/ });
  const closing = card.getByRole('row', { name: /^Closes \d/ });
  const [total] = /\d+\.\d/.exec((await closing.textContent()) ?? '') ?? [];
  const shares = await card
    .getByRole('row', { name: /^B\d+ / })
    .locator('td')
    .allTextContents();
  expect(shares.length).toBe(2);
  for (const share of shares) expect(share).toMatch(/^\d+\.\d\d mm$/);
  const sum = shares.reduce((all, share) => all + Number.parseFloat(share), 0);
  expect(Math.abs(sum - Number(total))).toBeLessThanOrEqual(0.06);
});
