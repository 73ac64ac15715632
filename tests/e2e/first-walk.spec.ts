import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';

/** What each screen says that it is for, as long as there are no motors. */
const EMPTY = [
  ['Ranking', 'What to do with each motor and what it is worth'],
  ['Plan', 'Which motors to fund in which year'],
  ['Trust', 'Which figures may not be used or are in doubt'],
  ['Worklist', 'Motors that have failed, or whose condition needs somebody'],
] as const;

/** A sheet as an office in Central Europe writes it: a title, semicolons, decimal commas, windows-1252, names of its own, no hours. */
const SHEET = [
  'Motoren Halle Süd;;;;;;;',
  ';;;;;;;',
  'Motor ID;kW;Volts;Amps;RPM;Date;Measured kW;Area',
  'P-1;30;460;47,5;1775;2026-03-14;21,4;Süd',
  'P-2;15;460;24,1;1765;2026-03-14;9,6;Süd',
  'P-3;7,5;460;12,2;1760;2026-03-14;4,85;Süd',
].join('\r\n');

const ways = (page: Page) => page.getByRole('navigation', { name: 'Screens' });

async function open(page: Page, name: string): Promise<void> {
  await ways(page).getByRole('link', { name, exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name, exact: true })).toBeVisible();
}

async function send(page: Page, name: string, text: string, encoding: BufferEncoding = 'utf8'): Promise<void> {
  await page.locator('#file').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text, encoding) });
  await page.getByRole('button', { name: 'Read the sheet' }).click();
}

test('somebody who has never seen it comes from nothing to a report, and each screen says what is next', async ({
  page,
}, info) => {
  await page.goto('/');
  await page.getByLabel('Name of the study').fill(`First walk ${info.project.name} ${info.repeatEachIndex}`);
  await page.getByLabel('Your name').fill('R. Example');
  await page.getByRole('button', { name: 'Start the study' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();

  for (const [name, shows] of EMPTY) {
    await open(page, name);
    await expect(page.getByText(shows)).toBeVisible();
    await expect(page.getByText('This study has no motors yet.')).toBeVisible();
    await expect(page.getByRole('main').getByRole('link', { name: 'Import a sheet' })).toBeVisible();
  }
  await expectAccessible(page);
  await open(page, 'Fleet');
  await page.getByRole('main').getByRole('link', { name: 'Import a sheet' }).click();

  // Names without a row below them bring nothing, and say so; the way to another sheet is there.
  await send(page, 'empty.csv', 'tag,rated_power_kw,rated_voltage_v\n');
  await expect(page.getByText('There is nothing to import.')).toBeVisible();
  await page.getByRole('link', { name: 'Choose another sheet' }).click();

  await send(page, 'motoren.csv', SHEET, 'latin1');
  await expect(page.getByText('3 rows: 3 new motors and 3 new readings.')).toBeVisible();
  await expect(page.getByLabel('a comma')).toBeChecked();
  await expect(page.getByLabel('Letters are encoded in')).toHaveValue('windows-1252');
  await expect(page.getByText('row 1 with “Motoren Halle Süd”')).toBeVisible();
  await expectNoSidewaysScroll(page);
  await page.getByRole('button', { name: 'Import 3 rows' }).click();
  await expect(page.getByText('Imported: 3 motors added')).toBeVisible();
  await expect(page.getByText('What they mean is worked out by itself')).toBeVisible();

  await page.getByRole('link', { name: 'Go to the fleet' }).click();
  await expect(page.locator('tr[aria-rowindex="2"] [data-column="trust"]')).toHaveText(/sound|provisional|not usable/);
  await open(page, 'Ranking');
  await expect(page.getByText('No saving can be told yet')).toBeVisible();
  await expect(page.getByText('The hours a year of 3 motors are not known')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // The hours come by a second sheet that names the motors alone.
  await page.getByRole('main').getByRole('link', { name: 'import a sheet' }).click();
  await send(page, 'hours.csv', 'tag,hours_per_year\nP-1,8000\nP-2,6000\nP-3,4000\n');
  await page.getByRole('button', { name: 'Import 3 rows' }).click();
  await page.getByRole('link', { name: 'Go to the ranking' }).click();
  await expect(page.getByText('No saving can be told yet')).toHaveCount(0);
  await expect(page.getByText('3 of 3 motors.')).toBeVisible();
  await page.getByRole('link', { name: 'P-1', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('P-1');
  await expectNoSidewaysScroll(page);

  await open(page, 'Plan');
  await page.getByRole('button', { name: 'Work the plan out' }).click();
  await expect(page.getByText(/funded/).first()).toBeVisible();
  await page
    .getByRole('link', { name: /report/i })
    .first()
    .click();
  await expect(page.getByText(/draft/i).first()).toBeVisible();
  await expectNoSidewaysScroll(page);
});
