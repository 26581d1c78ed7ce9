import AxeBuilder from '@axe-core/playwright';
import { type BrowserContext, expect, type Locator, type Page, test } from '@playwright/test';
import { figurePut, flatFile, planOpen, rows, stepOpen } from './board.ts';

const keptWord = (page: Page) => page.getByText('Kept in this browser.');
const planName = (page: Page) => page.getByLabel('Name of the plan');
const keptList = (page: Page) => page.getByRole('list', { name: 'Kept plans' });

/** Opens the app; it is ready once the floor has its bays. */
async function appOpen(page: Page): Promise<void> {
  await page.goto('./');
  await expect(page.getByText(/ bays?, \d+ joints?\./)).toBeVisible();
}

async function plansOpen(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'Plans', exact: true }).click();
  const menu = page.getByRole('region', { name: 'Plans' });
  await expect(menu.getByRole('heading', { name: 'Kept in this browser' })).toBeVisible();
  return menu;
}

/** Gives the plan on the board a name: the shortest change that is seen everywhere. */
async function rename(page: Page, name: string): Promise<void> {
  await planName(page).fill(name);
  await planName(page).press('Enter');
}

/** The names of all plans that the browser has, read beside the app. */
function namesKept(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const all: unknown[] = await new Promise((done, fail) => {
      const open = indexedDB.open('screed-bays');
      open.onerror = () => fail(open.error);
      open.onsuccess = () => {
        const found = open.result.transaction('plans').objectStore('plans').getAll(IDBKeyRange.bound('file/', 'file0'));
        found.onsuccess = () => done(found.result);
      };
    });
    return all.map((file) => String((file as { name?: unknown }).name)).sort();
  });
}

/** Lays things on the shelf as another version of the app, or a fault, may have left them. */
function shelve(page: Page, entries: Readonly<Record<string, unknown>>): Promise<void> {
  return page.evaluate(
    (wanted) =>
      new Promise<void>((done, fail) => {
        const open = indexedDB.open('screed-bays');
        open.onerror = () => fail(open.error);
        open.onsuccess = () => {
          const { transaction } = open.result.transaction('plans', 'readwrite').objectStore('plans');
          for (const [key, value] of Object.entries(wanted)) transaction.objectStore('plans').put(value, key);
          transaction.oncomplete = () => done();
        };
      }),
    entries,
  );
}

const roomless = (name: string) => ({ format: 'screed-bays/plan', version: 1, name, rooms: [] });
const shelved = (id: string, name: string, savedAt: number) => ({
  [`about/${id}`]: { id, name, rooms: 0, savedAt },
  [`file/${id}`]: roomless(name),
});

test('a change is there again when the page is loaded again, and closing asks nothing', async ({ page }) => {
  const asked: string[] = [];
  page.on('dialog', (dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
  await appOpen(page);
  await expect(page.getByText(/^Demo floor: /)).toBeVisible();
  await stepOpen(page, 'Floor');
  await figurePut(page, 'Thickness', '72');
  await expect(keptWord(page)).toBeVisible();
  await page.reload();
  await expect(page.getByText(/^\d+ rooms, .* bays, \d+ joints\./)).toBeVisible();
  await expect(keptWord(page)).toBeVisible();
  await stepOpen(page, 'Floor');
  await expect(page.getByLabel('Thickness', { exact: true })).toHaveValue('72');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  expect(asked).toEqual([]);
});

test('a page that is killed has lost nothing that was kept, and the file that was opened is kept at once', async ({
  page,
  context,
}) => {
  await appOpen(page);
  await planOpen(page, flatFile);
  await expect(page.getByText('Saved as a file.')).toBeVisible();
  await expect.poll(() => namesKept(page)).toEqual(['Flat over the workshop']);
  await rename(page, 'Flat, second thought');
  // The head goes on saying that the plan is kept while a change is being written: the shelf itself is looked at.
  await expect.poll(() => namesKept(page)).toEqual(['Flat, second thought']);
  await page.close({ runBeforeUnload: false });
  const next = await context.newPage();
  await appOpen(next);
  await expect(planName(next)).toHaveValue('Flat, second thought');
});

test('a demo or an empty sheet that nobody has changed is not kept, and undo is kept like any step', async ({
  page,
}) => {
  await appOpen(page);
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await expect(page.getByRole('heading', { name: 'An empty sheet' })).toBeVisible();
  await page.keyboard.press('ControlOrMeta+z');
  const first = await planName(page).inputValue();
  await rename(page, 'Mine');
  await expect.poll(() => namesKept(page)).toEqual(['Mine']);
  await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(() => namesKept(page)).toEqual([first]);
});

test('the list of plans opens, removes and puts back, by keys alone', async ({ page }) => {
  await appOpen(page);
  const menu = await plansOpen(page);
  await expect(menu).toContainText('None yet.');
  await page.keyboard.press('Escape');
  await rename(page, 'First floor');
  await expect(keptWord(page)).toBeVisible();
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  // The empty sheet offers it too.
  await page.getByRole('button', { name: 'Go on with First floor' }).click();
  await expect(planName(page)).toHaveValue('First floor');
  await page.getByRole('button', { name: 'Empty sheet' }).click();
  await page.getByRole('button', { name: 'Draw the first room' }).click();
  await page.keyboard.type('6000 x 4500');
  await page.keyboard.press('Enter');
  await rename(page, 'Second floor');
  await expect.poll(() => namesKept(page)).toEqual(['First floor', 'Second floor']);

  await page.getByRole('button', { name: 'Plans', exact: true }).focus();
  await page.keyboard.press('Enter');
  const opens = keptList(page).getByRole('button', { name: /rooms?, / });
  await expect(opens).toHaveText([/^Second floor1 room, .*, on the board$/, /^First floor12 rooms, .* 20\d\d, /]);
  await page.keyboard.press('Tab');
  await expect(opens.first()).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Remove First floor from this browser' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Put back First floor' })).toBeFocused();
  expect(await namesKept(page)).toEqual(['Second floor']);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Remove First floor from this browser' })).toBeFocused();
  expect(await namesKept(page)).toEqual(['First floor', 'Second floor']);
  await page.keyboard.press('Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(planName(page)).toHaveValue('First floor');
  await expect(keptWord(page)).toBeVisible();
  // Another sheet is a step like any other.
  await page.keyboard.press('ControlOrMeta+z');
  await expect(planName(page)).toHaveValue('Second floor');
  await page.reload();
  await expect(planName(page)).toHaveValue('Second floor');
});

test('the plan on the board stays there when it is removed, and its next change is kept again', async ({ page }) => {
  await appOpen(page);
  await rename(page, 'Mine');
  await expect(keptWord(page)).toBeVisible();
  await plansOpen(page);
  await page.getByRole('button', { name: 'Remove Mine from this browser' }).click();
  await expect(keptWord(page)).toHaveCount(0);
  expect(await namesKept(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(planName(page)).toHaveValue('Mine');
  await rename(page, 'Mine again');
  await expect(keptWord(page)).toBeVisible();
  expect(await namesKept(page)).toEqual(['Mine again']);
});

test('a kept plan that cannot be read stops nothing: a demo opens, it is said, and it stays where it is', async ({
  page,
}) => {
  await appOpen(page);
  await rename(page, 'Soon broken');
  await expect(keptWord(page)).toBeVisible();
  await page.evaluate(() => sessionStorage.clear());
  await shelve(page, {
    'about/old': { id: 'old', name: 'From the future', rooms: 3, savedAt: 1 },
    'file/old': { format: 'screed-bays/plan', version: 99, name: 'From the future', rooms: [] },
    'about/odd': 'no record at all',
    'file/odd': 7,
    last: 'old',
  });
  await page.reload();
  await expect(page.getByText(/^Demo floor: /)).toBeVisible();
  const note = page.getByRole('status').filter({ hasText: 'The plan that was on the board could not be read.' });
  await expect(note).toContainText('It is left where it is');
  await expect(note).toContainText('version is 99');
  expect(await namesKept(page)).toEqual(['From the future', 'Soon broken', 'undefined']);
  await plansOpen(page);
  await keptList(page)
    .getByRole('button', { name: /^Plan that cannot be read/ })
    .click();
  await expect(page.getByRole('status').filter({ hasText: 'was not opened' })).toContainText('is not a plan');
  await plansOpen(page);
  await keptList(page)
    .getByRole('button', { name: /^Soon broken/ })
    .click();
  await expect(planName(page)).toHaveValue('Soon broken');
});

for (const [what, refuse] of [
  ['has no place to keep plans', () => Object.defineProperty(window, 'indexedDB', { value: undefined })],
  [
    'refuses to keep plans',
    () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('The user denied permission', 'SecurityError');
      };
    },
  ],
  [
    'has no room left',
    () => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('No room', 'QuotaExceededError');
      };
    },
  ],
] as const) {
  test(`a browser that ${what} says so once, and everything else works`, async ({ page }) => {
    const asked: string[] = [];
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('dialog', (dialog) => {
      asked.push(dialog.type());
      void dialog.accept();
    });
    await page.addInitScript(refuse);
    await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
    await appOpen(page);
    await stepOpen(page, 'Floor');
    await figurePut(page, 'Thickness', '72');
    const word = page.getByText('Not kept in this browser: save the plan file.');
    await expect(word).toHaveCount(1);
    await figurePut(page, 'Thickness', '73');
    await expect(page.getByLabel('Thickness', { exact: true })).toHaveValue('73');
    await plansOpen(page);
    await page.keyboard.press('Escape');
    await expect(word).toBeVisible();
    await page.close({ runBeforeUnload: true });
    await expect.poll(() => asked).toEqual(['beforeunload']);
    expect(faults).toEqual([]);
  });
}

test('once it is saved as a file nothing is asked, kept or not', async ({ page }) => {
  await page.addInitScript(() => Object.defineProperty(window, 'indexedDB', { value: undefined }));
  await page.addInitScript(() => Reflect.deleteProperty(window, 'showSaveFilePicker'));
  await appOpen(page);
  await rename(page, 'Mine');
  await expect(page.getByText('Not kept in this browser')).toBeVisible();
  const saved = page.waitForEvent('download');
  await page.keyboard.press('ControlOrMeta+s');
  await saved;
  await expect(page.getByText('Saved as a file.')).toBeVisible();
  await expect(page.getByText('Not kept in this browser')).toHaveCount(0);
  page.on('dialog', () => {
    throw new Error('closing asked');
  });
  await Promise.all([page.waitForEvent('close'), page.close({ runBeforeUnload: true })]);
});

async function secondTab(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await appOpen(page);
  await expect(
    page.getByText('This plan is also open in another tab: this one is kept as a copy.', { exact: true }),
  ).toBeVisible();
  return page;
}

test('two tabs never write over each other', async ({ page, context }) => {
  await appOpen(page);
  await rename(page, 'Shared');
  await expect(keptWord(page)).toBeVisible();
  const second = await secondTab(context);
  await expect(planName(second)).toHaveValue('Shared');
  expect(await namesKept(page)).toEqual(['Shared']);
  await rename(second, 'Of the second tab');
  await expect.poll(() => namesKept(page)).toEqual(['Of the second tab', 'Shared']);
  await rename(page, 'Of the first tab');
  await expect.poll(() => namesKept(page)).toEqual(['Of the first tab', 'Of the second tab']);
  // Each tab comes back with its own, whichever was last.
  await page.reload();
  await expect(planName(page)).toHaveValue('Of the first tab');
  await second.reload();
  await expect(planName(second)).toHaveValue('Of the second tab');
  await expect(second.getByText('also open in another tab')).toHaveCount(0);
  // Nor does the list take from one what the other has, or lay it on its board.
  await plansOpen(second);
  await second.getByRole('button', { name: 'Remove Of the first tab from this browser' }).click();
  await expect(keptList(second).getByRole('alert')).toHaveText('It is open in another tab: close that first.');
  await keptList(second)
    .getByRole('button', { name: /^Of the first tab/ })
    .click();
  await expect(second.getByText('also open in another tab')).toBeVisible();
  await rename(second, 'A copy');
  await expect.poll(() => namesKept(page)).toEqual(['A copy', 'Of the first tab', 'Of the second tab']);
  // Once the other is closed its plan may be had.
  await page.close();
  await plansOpen(second);
  await keptList(second)
    .getByRole('button', { name: /^Of the first tab/ })
    .click();
  await rename(second, 'Taken over');
  await expect.poll(() => namesKept(second)).toEqual(['A copy', 'Of the second tab', 'Taken over']);
});

for (const { width, height, touch } of [
  { width: 1440, height: 900, touch: false },
  { width: 1024, height: 768, touch: false },
  { width: 820, height: 1180, touch: true },
]) {
  test.describe(`${width} x ${height}`, () => {
    test.use({ viewport: { width, height }, hasTouch: touch, colorScheme: touch ? 'dark' : 'light' });

    test('200 kept plans with long names and names from right to left stay inside the window and are met', async ({
      page,
    }) => {
      await appOpen(page);
      const names = ['مخطط الطابق الأرضي', 'Ground floor of the school by the river '.repeat(9), 'Bath', 'קומת קרקע'];
      const all = Array.from({ length: 200 }, (_, i) => shelved(`k${i}`, `${names[i % 4]} ${i}`, 1.7e12 + i));
      await shelve(page, Object.assign({}, ...all));
      const menu = await plansOpen(page);
      await expect(keptList(page).getByRole('listitem')).toHaveCount(200);
      await expect(keptList(page).getByRole('listitem').first()).toContainText('199');
      const box = await menu.boundingBox();
      if (box === null) throw new Error('the menu has no size');
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(width);
      expect(box.y + box.height).toBeLessThanOrEqual(height);
      const least = touch ? 44 : 24;
      const boxes = await menu
        .getByRole('button')
        .evaluateAll((buttons) => buttons.map((button) => button.getBoundingClientRect().toJSON()));
      for (const each of boxes) {
        expect(Math.min(each.width, each.height)).toBeGreaterThanOrEqual(least);
        expect(each.right).toBeLessThanOrEqual(box.x + box.width);
      }
      await expect(menu.getByRole('button', { name: 'Market hall' })).toBeInViewport({ ratio: 1 });
      const { violations } = await new AxeBuilder({ page }).include('.menu').analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.target.join(' ')}`)).toEqual([]);
      const last = keptList(page).getByRole('listitem').last().getByRole('button').first();
      await last.scrollIntoViewIfNeeded();
      if (touch) await last.tap();
      else await last.click();
      await expect(planName(page)).toHaveValue('مخطط الطابق الأرضي 0');
      await expect(menu).toBeHidden();
    });
  });
}

test('a browser that never answers holds the first view up for a moment only', async ({ page }) => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => new EventTarget() as IDBOpenDBRequest;
  });
  await page.goto('./');
  await expect(page.getByText(/^Demo floor: .* bays/)).toBeVisible();
  await expect(rows(page, 'Bays').first()).toBeVisible();
  await rename(page, 'Mine');
  await expect(page.getByText('Not kept yet.')).toBeVisible();
});
