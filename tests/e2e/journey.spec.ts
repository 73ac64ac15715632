import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import Papa from 'papaparse';
import { expect, expectAccessible, test } from './page-watch';

/** Stops of the Tab key before one gives up. */
const MOST_STOPS = 300;

/** Goes on with the Tab key until the element has the focus, and fails when it never does. */
async function tabTo(page: Page, target: Locator): Promise<void> {
  await expect(target).toBeVisible();
  for (let stop = 0; stop < MOST_STOPS; stop++) {
    if (await target.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`${String(target)} is never reached with the Tab key.`);
}

async function press(page: Page, target: Locator, key = 'Enter'): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press(key);
}

async function type(page: Page, target: Locator, text: string): Promise<void> {
  await tabTo(page, target);
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.insertText(text);
}

/** A blank sheet filled in: its examples with ordinary tags, and three rows each with another mistake. */
function filled(blank: string): Record<string, string>[] {
  const rows = Papa.parse<Record<string, string>>(blank, { header: true, skipEmptyLines: true }).data;
  const named = rows.map((row) => ({ ...row, tag: (row.tag ?? '').replace('EXAMPLE', 'M'), description: '' }));
  const like = named[0] ?? {};
  return [
    ...named,
    { ...like, tag: 'M-3', rated_power_kw: 'fifty' },
    { ...like, tag: 'M-4', rated_voltage_v: '' },
    { ...like, tag: 'M-5', poles: '5' },
  ];
}

test.describe('the whole way', () => {
  test.use({ viewport: { width: 1440, height: 900 }, isMobile: false, hasTouch: false });

  test('from a blank sheet to a changed figure and back, by keyboard alone', { tag: '@once' }, async ({ page }, info) => {
    await page.goto('/');
    const download = page.waitForEvent('download');
    await press(page, page.getByRole('link', { name: 'CSV' }));
    const rows = filled(readFileSync(await (await download).path(), 'utf8'));
    await page.reload();
    await type(page, page.getByLabel('Name of the study'), `By keys ${info.project.name}`);
    await type(page, page.getByLabel('Your name'), 'R. Example');
    await press(page, page.getByRole('button', { name: 'Start the study' }));

    await type(page, page.getByLabel('Or rows pasted from a spreadsheet'), Papa.unparse(rows, { delimiter: '\t' }));
    await press(page, page.getByRole('button', { name: 'Read the sheet' }));
    await expect(page.getByText('3 rows rejected', { exact: true })).toBeVisible();
    for (const wrong of ['fifty', '“Rated voltage, V” is empty.', 'poles come in pairs'])
      await expect(page.getByText(wrong).first()).toBeVisible();
    await press(page, page.getByRole('button', { name: /^Import \d good rows$/ }));
    await expect(page.getByText('Imported: 2 motors added, 0 changed, 3 readings added.')).toBeVisible();

    const rejects = page.waitForEvent('download');
    await press(page, page.getByRole('link', { name: 'Download the rejected rows' }));
    const rejected = Papa.parse<Record<string, string>>(
      readFileSync(await (await rejects).path(), 'utf8').replace('\ufeff', ''),
      {
        header: true,
        skipEmptyLines: true,
      },
    ).data;
    expect(rejected.map(({ tag }) => tag)).toEqual(['M-3', 'M-4', 'M-5']);
    const mended = rejected.map((row) => ({
      ...row,
      rated_power_kw: row.tag === 'M-3' ? '30' : row.rated_power_kw,
      rated_voltage_v: '460',
      poles: row.tag === 'M-5' ? '4' : row.poles,
    }));
    await press(page, page.getByRole('link', { name: 'Import another sheet' }));
    await type(page, page.getByLabel('Or rows pasted from a spreadsheet'), Papa.unparse(mended, { delimiter: '\t' }));
    await press(page, page.getByRole('button', { name: 'Read the sheet' }));
    await press(page, page.getByRole('button', { name: 'Import 3 rows' }));
    await expect(page.getByText('Imported: 3 motors added')).toBeVisible();

    await press(page, page.getByRole('link', { name: 'Fleet', exact: true }));
    await expect(page.locator('[data-column="trust"]').first()).toBeVisible();
    await expect(page.locator('tr[aria-rowindex="2"] [data-column="trust"]')).toHaveText(/sound|provisional|not usable/);
    await press(page, page.getByRole('link', { name: 'Ranking', exact: true }));
    await expect(page.getByText('5 of 5 motors.')).toBeVisible();
    await press(page, page.getByRole('link', { name: 'M-1', exact: true }));
    await expect(page.getByRole('heading', { level: 1 })).toContainText('M-1');
    const efficiency = page.getByRole('link', { name: /efficiency: how do we know/ });
    const before = (await efficiency.textContent()) ?? '';
    await press(page, efficiency);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('How do we know efficiency?');
    // Down to what is stamped and what was metered.
    await expect(page.getByText('nameplate, rated power').first()).toBeAttached();
    await expect(page.getByText(/reading of \d{4}-\d{2}-\d{2}/).first()).toBeAttached();
    await page.goBack();

    await press(page, page.getByRole('link', { name: 'Change the plate' }));
    await type(page, page.locator('#nominal_efficiency_pct'), '88.5');
    await press(page, page.getByRole('button', { name: 'Save the plate' }));
    await expect(page.getByText('What it changed')).toBeVisible();
    await press(page, page.getByRole('link', { name: 'Back to the motor' }));
    await expect(efficiency).not.toHaveText(before);
    await expectAccessible(page);
    await press(page, page.getByRole('button', { name: 'Take it back' }));
    await expect(page.getByRole('row').filter({ hasText: 'undone' })).toContainText('93.6');
    await expect(efficiency).toHaveText(before);
  });
});
