import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy } from './support-fleet';

const COUNT = 60;
const DESK = { viewport: { width: 1440, height: 900 }, isMobile: false, hasTouch: false };
let study: string;

test.beforeAll(async () => {
  study = await plantStudy('Fleet', COUNT, { evaluated: true });
});

const grid = (page: Page) => page.getByRole('grid', { name: 'Motors' });
const cell = (page: Page, row: number, column: string) =>
  page.locator(`tr[aria-rowindex="${row + 1}"] [data-column="${column}"]`);
const focusedIn = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement?.closest('td, th');
    return `${at?.parentElement?.getAttribute('aria-rowindex')} ${at?.getAttribute('data-column')}`;
  });

async function open(page: Page, query = ''): Promise<void> {
  await page.goto(`/${study}/fleet${query}`);
  await expect(grid(page)).toBeVisible();
}

test('motors are there before they are evaluated, and are evaluated on request', async ({ page }) => {
  const fresh = await plantStudy('Fresh', COUNT, { evaluated: false });
  await page.goto(`/${fresh}/fleet`);
  await expect(page.getByText('These motors have not been evaluated.')).toBeVisible();
  await page.getByRole('button', { name: 'Evaluate now' }).click();
  await expect(cell(page, 1, 'trust')).toHaveText(/sound|provisional|not usable/);
  await expect(page.getByText(`${COUNT} motors`, { exact: true })).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});

test('the table says how large it is, and its rows stand as people count', async ({ page }) => {
  await open(page);
  await expect(grid(page)).toHaveAttribute('aria-rowcount', String(COUNT + 1));
  const tags = await page.locator('[data-column="tag"] a').allTextContents();
  const counted = [...tags].sort(new Intl.Collator('en', { numeric: true }).compare);
  expect(tags).toEqual(counted);
  expect(tags.length).toBeGreaterThan(5);
});

test('shaft power and ratings are in hp for who wants it, here and on a motor, and the address stays in kW', async ({
  page,
  isMobile,
}) => {
  await open(page, '?rated_power_kw=37..38');
  await expect(page.getByText('rating 37 to 38 kW')).toBeVisible();
  await page.getByRole('radio', { name: 'hp', exact: true }).filter({ visible: true }).check();
  await expect(page.getByText('rating 49.618 to 50.959 hp')).toBeVisible();
  if (!isMobile) await expect(cell(page, 1, 'rated_power_kw')).toHaveText('50');
  await page.reload();
  await expect(page.getByText('rating 49.618 to 50.959 hp')).toBeVisible();
  expect(page.url()).toContain('rated_power_kw=37..38');
  await page.locator('[data-column="tag"] a').first().click();
  await expect(page.getByText(/ · 50\shp, /)).toBeVisible();
  await expect(
    page
      .locator('dd')
      .filter({ hasText: /(±|to).*hp/ })
      .first(),
  ).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('radio', { name: 'kW', exact: true }).filter({ visible: true }).check();
  await expect(
    page
      .locator('dd')
      .filter({ hasText: /(±|to).*kW/ })
      .first(),
  ).toBeVisible();
  await expect(page.locator('dd').filter({ hasText: /hp/ })).toHaveCount(0);
});

test('filters stand in the address and in words, and Back takes one off', async ({ page }) => {
  await open(page);
  await page.getByRole('button', { name: 'Filter' }).click();
  const dialog = page.getByRole('dialog', { name: 'Filter' });
  await expectAccessible(page);
  await dialog.getByLabel(/^provisional/).check();
  await dialog.getByLabel('Load to, %').fill('60');
  await dialog.getByRole('button', { name: 'Show the motors' }).click();
  await expect(page).toHaveURL(/trust=provisional/);
  await expect(page).toHaveURL(/load_fraction=\.\.60/);
  await expect(page.getByText('trust is provisional')).toBeVisible();
  await expect(page.getByText('load at most 60 %')).toBeVisible();
  await expect(page.getByText(new RegExp(`^\\d+ of ${COUNT} motors$`))).toBeVisible();
  await page.goBack();
  await page.goBack();
  await expect(page).not.toHaveURL(/load_fraction/);
  await page.goto(`/${study}/fleet?q=no-such-tag`);
  await expect(page.getByText('No motor passes this filter.')).toBeVisible();
  await page.getByRole('button', { name: 'Clear the filter' }).click();
  await expect(page.getByText(`${COUNT} motors`, { exact: true })).toBeVisible();
});

test('the files hold the motors that are listed', { tag: '@once' }, async ({ page, request }) => {
  await open(page, '?trust=sound&sort=-load_fraction');
  const shown = await grid(page).getAttribute('aria-rowcount');
  await page.getByRole('button', { name: 'Download or print' }).click();
  const waiting = page.waitForEvent('download');
  await page.getByRole('link', { name: 'CSV' }).click();
  const text = await readFile(await (await waiting).path(), 'utf8');
  const lines = text.trimEnd().split('\r\n');
  expect(lines).toHaveLength(Number(shown) + 1);
  expect(lines[0]).toMatch(/^rank,site,tag,area/);
  expect(lines.at(-1)).toContain(`${Number(shown) - 1} of ${COUNT} motors; trust is sound`);
  const workbook = await request.get(`/api/studies/${study}/results/xlsx?trust=sound`);
  expect(workbook.status()).toBe(200);
  expect((await workbook.body()).subarray(0, 2).toString()).toBe('PK');
});

test('a view is kept, opened and removed', async ({ page }, info) => {
  const name = `Low load ${info.project.name}`;
  await open(page, '?load_fraction=..40');
  await page.getByRole('button', { name: 'Views' }).click();
  const dialog = page.getByRole('dialog', { name: 'Views' });
  await dialog.getByLabel('Keep this list as').fill(name);
  await dialog.getByRole('button', { name: 'Keep the view' }).click();
  await expect(dialog.getByRole('button', { name: `Open ${name}` })).toBeVisible();
  await open(page);
  await page.getByRole('button', { name: 'Views' }).click();
  await dialog.getByRole('button', { name: `Open ${name}` }).click();
  await expect(page.getByText('load at most 40 %')).toBeVisible();
  await page.getByRole('button', { name: 'Views' }).click();
  await dialog.getByRole('button', { name: `Remove ${name}` }).click();
  await expect(dialog.getByRole('button', { name: `Open ${name}` })).toHaveCount(0);
});

test('many motors are changed after a preview, and the change is taken back', async ({ page }) => {
  await open(page);
  for (const row of [1, 2, 3]) await cell(page, row, 'box').getByRole('checkbox').check();
  await page.getByRole('button', { name: 'Change 3 selected' }).click();
  const dialog = page.getByRole('dialog', { name: 'Change 3 motors' });
  await dialog.getByLabel('Which fact').selectOption('hours_per_year');
  await dialog.getByLabel(/^New value/).fill('4,3');
  await dialog.getByRole('button', { name: 'Show what would change' }).click();
  await expect(dialog.getByRole('alert')).toBeVisible();
  await dialog.getByLabel(/^New value/).fill('1234');
  await dialog.getByRole('button', { name: 'Show what would change' }).click();
  await expect(dialog.getByText('3 would change')).toBeVisible();
  await expectAccessible(page);
  await dialog.getByLabel('Your name').fill('Trial Reader');
  await dialog.getByRole('button', { name: 'Change 3 motors' }).click();
  await expect(page.getByText(/changed for 3 motors/)).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText(/Taken back for 3 motors/)).toBeVisible();
});

test.describe('with keys alone', { tag: '@once' }, () => {
  // A table wide enough for arrows to the side, whatever the project's screen.
  test.use(DESK);

  test('one stop leads into the table, arrows move, Home and End jump', async ({ page }) => {
    await open(page);
    await page.keyboard.press('/');
    await expect(page.getByLabel('Search')).toBeFocused();
    await page.keyboard.press('Escape');
    expect(await focusedIn(page)).toBe('2 tag');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowRight');
    expect(await focusedIn(page)).toMatch(/^3 (site|area)$/);
    await page.keyboard.press('End');
    expect(await focusedIn(page)).toBe('3 rank');
    await page.keyboard.press('Control+End');
    expect(await focusedIn(page)).toBe(`${COUNT + 1} rank`);
    await expect(page.locator(':focus')).toBeInViewport();
    await page.keyboard.press('Control+Home');
    expect(await focusedIn(page)).toBe('2 box');
    await page.keyboard.press('PageDown');
    await expect(page.locator(':focus')).toBeInViewport();
    const inside = await grid(page).locator('[tabindex="0"]').count();
    expect(inside).toBe(1);
  });

  test('a key pressed while newer figures come in moves the focus as well', async ({ page }) => {
    await open(page);
    await cell(page, 5, 'box').getByRole('checkbox').check();
    await page.getByRole('button', { name: 'Change 1 selected' }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('Which fact').selectOption('hours_per_year');
    await dialog.getByLabel(/^New value/).fill('1234');
    await dialog.getByRole('button', { name: 'Show what would change' }).click();
    await expect(dialog.getByText('1 would change')).toBeVisible();
    await dialog.getByLabel('Your name').fill('Trial Reader');
    // The key comes as soon as the newer rows are drawn, before anything else that the drawing has to do.
    await page.evaluate(() => {
      new MutationObserver((_, observer) => {
        if (document.querySelector('[data-refetching]')?.getAttribute('data-refetching') !== 'false') return;
        observer.disconnect();
        const active = document.querySelector<HTMLElement>('[role="grid"] [tabindex="0"]');
        active?.focus();
        active?.dispatchEvent(new KeyboardEvent('keydown', { key: 'ArrowDown', bubbles: true, cancelable: true }));
      }).observe(document.body, { attributes: true, subtree: true, attributeFilter: ['data-refetching'] });
    });
    await dialog.getByRole('button', { name: /^Change/ }).click();
    await expect.poll(() => focusedIn(page)).toBe('7 box');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect(page.getByText(/Taken back for/)).toBeVisible();
  });

  test('the head sorts, a second column is added with Shift', async ({ page }) => {
    await open(page);
    await page.keyboard.press('/');
    await page.keyboard.press('Escape');
    await page.keyboard.press('ArrowUp');
    expect(await focusedIn(page)).toBe('1 tag');
    const head = page.getByRole('columnheader', { name: /Efficiency/ });
    await head.getByRole('button').click();
    await expect(head).toHaveAttribute('aria-sort', 'descending');
    await page
      .getByRole('columnheader', { name: /Trust/ })
      .getByRole('button')
      .click({ modifiers: ['Shift'] });
    await expect(page).toHaveURL(/sort=-efficiency%2Ctrust/);
    // Pressed alone it stands alone, and turns round.
    await head.getByRole('button').click();
    await expect(head).toHaveAttribute('aria-sort', 'ascending');
    await expect(page).toHaveURL(/sort=efficiency$/);
  });

  test('Space selects, Shift extends, Esc takes the selection off', async ({ page }) => {
    await open(page);
    await page.keyboard.press('/');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Space');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await expect(page.getByRole('button', { name: 'Change 3 selected' })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.locator('tr[aria-selected="true"]')).toHaveCount(0);
  });

  test('Enter opens the motor, and coming back leads to the same cell', async ({ page }) => {
    await open(page);
    await page.keyboard.press('/');
    await page.keyboard.press('Escape');
    for (let step = 0; step < 4; step++) await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect(page).toHaveURL(/\/motor\//);
    await page.goBack();
    await expect(grid(page)).toBeVisible();
    await expect.poll(() => focusedIn(page)).toBe('6 tag');
  });

  test('Shift+Enter asks how a figure is known', async ({ page }) => {
    await open(page);
    const load = cell(page, 1, 'load_fraction');
    await load.click();
    await expect(page.getByRole('link', { name: 'How do we know?' })).toBeVisible();
    await page.keyboard.press('Shift+Enter');
    await expect(page).toHaveURL(/\/why\?figure=load_fraction/);
  });

  test('? lists the keys, and single keys can be switched off', async ({ page }) => {
    await open(page);
    await page.keyboard.press('?');
    const dialog = page.getByRole('dialog', { name: 'Keys' });
    await expect(dialog).toBeVisible();
    await dialog.getByLabel('Single keys do something').uncheck();
    await page.keyboard.press('Escape');
    await expect(dialog).toBeHidden();
    await page.keyboard.press('?');
    await expect(dialog).toBeHidden();
  });
});

test('paper carries every listed row, with a head of words that browsers repeat', { tag: '@once' }, async ({ page }) => {
  await open(page);
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  await expect(page.locator('tr[aria-selected]')).toHaveCount(COUNT);
  await expect(grid(page).locator('thead button')).toHaveCount(0);
  await expect(grid(page).locator('thead th[data-column="decision"]')).toHaveText('Decision');
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await expect(grid(page).locator('thead button').first()).toBeAttached();
});
