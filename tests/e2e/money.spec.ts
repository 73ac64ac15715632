import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, test } from './page-watch';
import { plantStudy } from './support-fleet';

async function expectNoSidewaysScroll(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
}

test('the money of a motor: options side by side, when it is back, what it hangs on, and a workbook for finance', async ({
  page,
}) => {
  const study = await plantStudy('Money', 20, { evaluated: true });
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: 'A-14', exact: true }).click();
  await page.getByRole('link', { name: 'What the money hangs on' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What the money of A-14 hangs on');
  for (const name of ['The options, best first', 'When it is back', 'What its value hangs on', 'Where it stops being worth it'])
    await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
  await expect(
    page.getByText(/Price of energy: worth it (above|below)|worth it at any price of energy|No price of energy/),
  ).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // Another option of the table, by keyboard; the charts open as tables.
  const other = page.getByRole('region', { name: 'Options, best first' }).getByRole('link').first();
  const title = (await other.textContent()) ?? '';
  await other.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('[aria-current="true"]').filter({ hasText: title })).toBeVisible();
  await page.getByText('The same as a table').first().click();
  await expect(page.getByRole('columnheader', { name: 'years from now' })).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  const asked = page.waitForEvent('download');
  await page.getByRole('link', { name: 'all of it as a workbook with live formulas' }).click();
  const download = await asked;
  expect(download.suggestedFilename()).toMatch(/A-14-options\.xlsx$/);
  expect(
    readFileSync(await download.path())
      .subarray(0, 2)
      .toString(),
  ).toBe('PK');
});

test('the workbook of the whole fleet is taken from the ranking', async ({ page }) => {
  const study = await plantStudy('Book', 20, { evaluated: true });
  await page.goto(`/${study}/ranking`);
  const asked = page.waitForEvent('download');
  await page.getByRole('link', { name: 'every option of the whole fleet as a workbook with live formulas' }).click();
  const download = await asked;
  expect(
    readFileSync(await download.path())
      .subarray(0, 2)
      .toString(),
  ).toBe('PK');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});
