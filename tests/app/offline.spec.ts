import { expect, type Page, test } from '@playwright/test';
import { flatFile, paperButton, planOpen, rows, stepOpen } from './board.ts';

/** What is fetched after the first view: screen, files and papers, and the last of the demos. */
const late = [/later-parts-.*\.js$/, /file-work-.*\.js$/, /3-market-hall-.*\.js$/, /pdf-.*\.js$/, /Bold-.*\.ttf$/];

/** Opens the app; saving by download. */
async function appOpen(page: Page): Promise<void> {
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await expect(rows(page, 'Bays').first()).toBeVisible();
}

test('with the server gone after the first view, saving, opening, demos, papers and working still work', async ({
  page,
  context,
}) => {
  const fetched = late.map((name) => page.waitForResponse((response) => name.test(response.url())));
  await appOpen(page);
  await Promise.all(fetched);
  await page.waitForLoadState('networkidle');
  await context.setOffline(true);

  await rows(page, 'Joints').first().click();
  await page.getByText('How the movement is found').click();
  await expect(page.getByText('Physics textbooks')).toBeVisible();
  await stepOpen(page, 'Papers');
  for (const [group, words, name] of [
    ['Lists', 'Joint list, CSV', 'joints.csv'],
    ['Sheets to scale', 'Joint plan, PDF', 'plan.pdf'],
  ] as const) {
    const paper = page.waitForEvent('download');
    await (await paperButton(page, group, words)).click();
    expect((await paper).suggestedFilename()).toContain(name);
  }
  await page.getByRole('button', { name: 'Plans', exact: true }).click();
  await page.getByRole('list', { name: 'Demo floors' }).getByRole('button', { name: 'Public library' }).click();
  await expect(page.getByText(/^Demo floor: .* 33 bays, /)).toBeVisible();
  await planOpen(page, flatFile);
  await expect(page.getByLabel('Name of the plan')).toHaveValue('Flat over the workshop');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save' }).click();
  expect((await saved).suggestedFilename()).toBe('flat-over-the-workshop.json');
});

test('what cannot be fetched is said on the board, and is there once the server is back', async ({ page }) => {
  await page.route(/(later-parts|file-work|2-public-library)-.*\.js$/, (route) => route.abort());
  await appOpen(page);
  const note = page.getByRole('status').filter({ hasText: 'Keep this page open' });
  await page.getByRole('button', { name: 'Save' }).click();
  await expect(note).toContainText('The plan was not saved.');
  await planOpen(page, flatFile);
  await expect(note).toContainText('flat.json was not opened.');
  await page.getByRole('button', { name: 'Plans', exact: true }).click();
  await page.getByRole('list', { name: 'Demo floors' }).getByRole('button', { name: 'Public library' }).click();
  await expect(note).toContainText('The demo "Public library" could not be laid on the board.');
  // What the step holds is not there to be waited for.
  await page.getByRole('navigation').getByRole('button', { name: 'Papers' }).click();
  await expect(note).toContainText('This part of the screen is not there yet.');

  await page.unrouteAll();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save' }).click();
  await saved;
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeVisible({ timeout: 15_000 });
});

test('a step that is opened for the first time is there in the frame in which it is opened', async ({ page }) => {
  const fetched = page.waitForResponse((response) => /later-parts-.*\.js$/.test(response.url()));
  await appOpen(page);
  await fetched;
  await page.waitForLoadState('networkidle');
  const shown = await page.evaluate(async () => {
    const tab = [...document.querySelectorAll('nav button')].find(({ textContent }) => textContent === 'Coverings');
    (tab as HTMLButtonElement | undefined)?.click();
    await new Promise(requestAnimationFrame);
    return document.querySelector('.tray .part')?.textContent;
  });
  expect(shown).toContain('All rooms');
});
