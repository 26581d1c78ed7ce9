import { readFileSync } from 'node:fs';
import { expect, type Page, test } from '@playwright/test';
import { boardPlaces, paperButton, planOpen, rows, stepOpen } from './board.ts';
import { card, expectUndo, type PlanLike, planSaved } from './cards.ts';

/** The dwelling, with something entered for a joint far off the floor. */
async function dwellingOpen(page: Page): Promise<void> {
  const plan = JSON.parse(readFileSync('demo-plans/1-dwelling.json', 'utf8')) as PlanLike;
  plan.papers = { joints: [{ key: 'field:living@40,40', profile: 'PROF-Y' }] };
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await page.goto('./');
  await planOpen(page, { name: 'd.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(plan)) });
  await expect(page.getByText(/^12 rooms, .* bays, \d+ joints\./)).toBeVisible();
}

/** The joint across the living room, which runs from its lower to its upper wall at 5456.7 mm. */
async function jointChoose(page: Page): Promise<void> {
  await stepOpen(page, 'Joints');
  await rows(page, 'Joints').filter({ hasText: /^J15/ }).click();
  await expect(page.getByRole('region', { name: /^J15/ })).toBeVisible();
}

/** Of the joint whose card is open. */
async function profileEnter(page: Page): Promise<void> {
  await page.getByText('In the joint register').click();
  await page.getByLabel('Profile', { exact: true }).fill('PROF-X');
  await page.getByLabel('Profile', { exact: true }).press('Enter');
}

/** Taken hold of where neither a pin nor a dimension lies over it. */
async function jointDrag(
  page: Page,
  byMm: number,
  [x, y]: readonly [number, number] = [5456.7, 10_900],
): Promise<void> {
  const at = await boardPlaces(page);
  await page.mouse.move(...at(x, y));
  await page.mouse.down();
  await page.mouse.move(...at(x + byMm / 2, y), { steps: 3 });
  await page.mouse.move(...at(x + byMm, y), { steps: 3 });
  await page.mouse.up();
}

const groupOf = (page: Page, name: string) =>
  page.locator('.group', { has: page.getByRole('heading', { name, exact: true }) });

test('what is entered of a joint, and the days of the bays beside it, go with the joint when it is dragged', async ({
  page,
}) => {
  await dwellingOpen(page);
  await stepOpen(page, 'Papers');
  await groupOf(page, 'Pour').getByRole('button', { name: 'Take the proposed days over' }).click();
  await expectUndo(page, /Take the proposed days/);
  await jointChoose(page);
  await profileEnter(page);
  const before = await planSaved(page);

  await jointDrag(page, 600);
  await expectUndo(page, /Move joint J15/);
  await jointChoose(page);
  await expect(card(page)).toContainText('Joint drawn by hand');
  await page.getByText('In the joint register').click();
  await expect(card(page)).toContainText('What stands here was entered for a joint about half a metre away.');
  await expect(page.getByLabel('Profile', { exact: true })).toHaveValue('PROF-X');

  await stepOpen(page, 'Papers');
  const days = groupOf(page, 'Pour');
  await expect(days).toContainText(/Entered day \d+ names (a bay that has|bays that have) changed since: B\d+/);
  await expect(days).not.toContainText('does not have any more');
  await expect(days).not.toContainText('living@');
  const register = groupOf(page, 'Joint register');
  await expect(register).toContainText('What is entered for J15 was entered before it moved');
  const asked = page.waitForEvent('download');
  await (await paperButton(page, 'Lists', 'Joint register, CSV')).click();
  const csv = readFileSync(await (await asked).path(), 'utf8');
  expect(
    csv
      .split('\n')
      .filter((line) => /^"?J15"?,/.test(line))
      .join(),
  ).toContain('PROF-X');

  // One step takes the joint back, and with it all that is entered.
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await planSaved(page)).toEqual(before);
});

test('the next word that is entered of a moved joint stands under the joint as it is', async ({ page }) => {
  await dwellingOpen(page);
  await jointChoose(page);
  await profileEnter(page);
  await jointDrag(page, 600);
  await expectUndo(page, /Move joint J15/);
  await jointChoose(page);
  await page.getByText('In the joint register').click();
  await expect(card(page)).toContainText('What stands here was entered for a joint');
  await page.getByLabel('Colour', { exact: true }).fill('sand');
  await page.getByLabel('Colour', { exact: true }).press('Enter');
  await expect(card(page)).not.toContainText('What stands here was entered');
  const { joints } = (await planSaved(page)).papers as { joints: readonly Record<string, string>[] };
  expect(joints.map(({ key, ...entry }) => [key?.replace(/:.*$/, ''), entry])).toEqual([
    ['field', { profile: 'PROF-Y' }],
    ['drawn', { profile: 'PROF-X', colour: 'sand' }],
  ]);
});

test('what is entered of a joint goes with it as far as it is dragged, and stands in its card at once', async ({
  page,
}) => {
  await dwellingOpen(page);
  await jointChoose(page);
  await profileEnter(page);
  await jointDrag(page, 1300);
  await expectUndo(page, /Move joint J15/);
  // it came to lie on a grout line
  const [drawn] = (await planSaved(page)).drawnJoints as readonly { line: readonly (readonly number[])[] }[];
  await jointDrag(page, 1300, [drawn?.line[0]?.[0] ?? 0, 7300]);
  await expect(card(page)).toContainText('Drawn joint x1');
  await page.getByText('In the joint register').click();
  await expect(card(page)).toContainText('What stands here was entered for a joint about 2.5 m away.');
  await expect(page.getByLabel('Profile', { exact: true })).toHaveValue('PROF-X');
  await stepOpen(page, 'Papers');
  await expect(groupOf(page, 'Joint register')).not.toContainText('PROF-X');
});

test('what is entered of a joint that is not there any more is told by its room, and taken out', async ({ page }) => {
  await dwellingOpen(page);
  await stepOpen(page, 'Papers');
  const register = groupOf(page, 'Joint register');
  await expect(register).toContainText(
    'What was entered for a joint of Living, dining and kitchen near 40, 40 m has no joint any more.',
  );
  await register.getByRole('button', { name: /^Take it out/ }).click();
  await expect(register).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'All papers, ZIP' })).toBeFocused();
  expect((await planSaved(page)).papers).toBeUndefined();
});
