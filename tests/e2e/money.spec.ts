import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import Papa from 'papaparse';
import { expect, expectAccessible, expectNoSidewaysScroll, expectWholeOnPaper, test } from './page-watch';
import { plantStudy, sharedStudy } from './support-fleet';

test('the money of a motor: options side by side, when it is back, what it hangs on, and a workbook for finance', async ({
  page,
}) => {
  const study = await sharedStudy(20);
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: 'A-14', exact: true }).click();
  await page.getByRole('link', { name: 'What the money hangs on' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What the money of A-14 hangs on');
  for (const name of [
    'The options, best first',
    'When it is back',
    'What its value hangs on',
    'By every measure',
    'What each dearer option adds',
    'What would turn the decision',
    'Where it stops being worth it',
    'Also worth a look',
  ])
    await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
  await expect(page.getByText(/A saved kilowatt-hour is worth 0\.110\sUSD here\./)).toBeVisible();
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

  // The same figures as CSV, one a line: the cost in the table is that in the file.
  const file = page.waitForEvent('download');
  await page.getByRole('link', { name: 'CSV', exact: true }).click();
  const rows = Papa.parse<Record<string, string>>(readFileSync(await (await file).path(), 'utf8'), {
    header: true,
    skipEmptyLines: true,
  });
  expect(rows.errors).toEqual([]);
  const costs = rows.data.filter(({ about, figure }) => about === 'option' && figure === 'cost');
  const options = page.getByRole('region', { name: 'Options, best first' }).getByRole('rowheader');
  // To keep the motor costs nothing and has no line in the file.
  expect(costs.length).toBe(await options.filter({ hasNotText: 'Keep as it is' }).count());
  await expect(options.filter({ hasText: 'Keep as it is' })).toHaveCount(1);
  for (const { value } of costs) expect(Number(value)).toBeGreaterThanOrEqual(0);
  expect(new Set(rows.data.map(({ about }) => about))).toContain('cash flow');
  // The life-cycle cost of an option is that of the baseline less its value, as the file has them.
  const cell = (about: string, figure: string, option = '') =>
    Number(rows.data.find((row) => row.about === about && row.figure === figure && row.option === option)?.value);
  const first = costs[0]?.option ?? '';
  expect(cell('baseline', 'life-cycle cost, total') - cell('option', 'life-cycle cost', first)).toBeCloseTo(
    cell('option', 'net present value', first),
    1,
  );
  await expectWholeOnPaper(page);

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

test('on a phone the options of a motor and its cash flow are read down the page, not pushed aside', {
  tag: '@once',
}, async ({ page }) => {
  const study = await sharedStudy(20);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: 'A-1', exact: true }).click();
  await page.getByText('Cash flow of what was decided').click();
  await expectNoneAside(page, ['Options side by side', 'Cash flow']);
  await page.getByRole('link', { name: 'What the money hangs on' }).click();
  await expectNoneAside(page, ['Options, best first', 'Options by every measure']);
});

async function expectNoneAside(page: Page, regions: readonly string[]): Promise<void> {
  for (const name of regions) {
    const region = page.getByRole('region', { name, exact: true });
    await expect(region).toBeVisible();
    // Still a table for those who hear it.
    await expect(region.getByRole('rowheader').first()).toBeVisible();
    expect(await region.evaluate((each) => each.scrollWidth - each.clientWidth), name).toBeLessThanOrEqual(0);
  }
}

test('the workbook of the whole fleet is taken from the ranking', async ({ page }) => {
  const study = await sharedStudy(20);
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

  await expectWholeOnPaper(page);
});

test('repair or replace: hours by rating, for another class and load, and nonsense in the address is as usual', async ({
  page,
}) => {
  const study = await plantStudy('Repair', 3, { evaluated: true });
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: 'Repair or replace, by rating and hours' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Repair or replace' })).toBeVisible();
  const hours = page.getByRole('region', { name: 'Hours by rating' });
  const usual = await hours.textContent();
  expect(usual ?? '').toMatch(/hours a year on|however little it runs/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.getByLabel('Load, %').selectOption('25');
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page).toHaveURL(/load=25/);
  expect(await hours.textContent()).not.toBe(usual);
  await page.goto(`/${study}/ranking/repair?poles=x&class=none&load=-5&site=nowhere`);
  expect(await hours.textContent()).toBe(usual);
  await expectAccessible(page);
});

test('spares on the shelf: what would pay and why, other weeks and keeping, nonsense is as usual and said so, and the file', async ({
  page,
}) => {
  const study = await sharedStudy(60);
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: 'which spares to keep on the shelf' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Spares on the shelf' })).toBeVisible();
  const others = page.getByText(/of which none pays by what it makes possible$/);
  const table = page.getByRole('region', { name: 'Spares that do not pay by themselves', includeHidden: true });
  if (!(await table.isVisible())) await others.click();
  const usual = await table.textContent();
  expect(usual).toMatch(/A failure calls for one/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await expectWholeOnPaper(page);
  await page.getByLabel('Keeping, % of the price a year').fill('20');
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page).toHaveURL(/keeping=20/);
  expect(await table.textContent()).not.toBe(usual);
  const asked = page.waitForEvent('download');
  await page.getByRole('link', { name: 'CSV' }).click();
  expect(readFileSync(await (await asked).path(), 'utf8')).toMatch(/^site,rated_power_kw,poles,frame/);
  await page.getByLabel('Weeks to restock').fill('banana');
  await page.getByLabel('Keeping, % of the price a year').fill('-3');
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'Weeks to restock' })).toContainText('figures for the usual 8 weeks');
  await expect(page.getByRole('alert').filter({ hasText: 'Keeping' })).toContainText('A number from 0 to 50 is wanted.');
  await expect(page.getByLabel('Weeks to restock')).toHaveValue('banana');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  expect(await table.textContent()).toBe(usual);

  // Of one of its motors the page of its money and "how do we know?" of an option's figure say the same; that of a load says nothing of it.
  const row = table.getByRole('row').nth(1);
  if (!(await table.isVisible())) await others.click();
  const why = (await row.textContent()) ?? '';
  await row.getByRole('link').first().click();
  const links = page.locator('a[href*="why?figure=options."]');
  const ofOption = (await links.first().getAttribute('href')) ?? '';
  await page.getByRole('link', { name: 'What the money hangs on' }).click();
  const spare = page.getByRole('region', { name: 'Spare on the shelf' });
  await expect(spare).toBeVisible();
  const reason = (await spare.getByRole('listitem').first().textContent()) ?? '';
  expect(why).toContain(reason);
  await expectAccessible(page);
  const said = await spare.textContent();
  await page.goto(ofOption);
  await expect(page.getByRole('heading', { level: 1, name: /^How do we know/ })).toBeVisible();
  expect(await spare.textContent()).toBe(said);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.goto(`${ofOption.split('/why')[0]}/why?figure=shaft_power`);
  await expect(page.getByRole('heading', { level: 1, name: /^How do we know/ })).toBeVisible();
  await expect(spare).toHaveCount(0);
  await page.goto(ofOption);
  await page.getByRole('link', { name: 'All spares, on other terms' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Spares on the shelf' })).toBeVisible();
});

test('other measures over the fleet: what each saves, what it may cost, what they save together, and the file', async ({
  page,
}) => {
  const study = await sharedStudy(60);
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: 'what else is worth doing beside new motors' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Other measures' })).toBeVisible();
  const table = page.getByRole('region', { name: 'Measures by motor' });
  await expect(table.getByText(/^Costs about .* \(an invented price\) and pays back in .* years/).first()).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await expectWholeOnPaper(page);
  const asked = page.waitForEvent('download');
  await page.getByRole('link', { name: 'CSV' }).click();
  const rows = Papa.parse<Record<string, string>>(readFileSync(await (await asked).path(), 'utf8'), {
    header: true,
    skipEmptyLines: true,
  }).data;
  expect(rows.length).toBeGreaterThan(0);
  await table.getByRole('link').first().click();
  await expect(page.getByRole('heading', { name: 'Also worth a look' })).toBeVisible();
});
