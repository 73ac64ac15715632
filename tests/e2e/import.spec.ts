import { readFileSync } from 'node:fs';
import type { Page, TestInfo } from '@playwright/test';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';

const HEAD = 'tag,site,area,rated_power_kw,rated_voltage_v,rated_current_a,status,taken_at,input_power_kw,inventory';
const GOOD = ['P-1,North,Hall,30,460,48,,2025-03-14,21.4,A-1', 'P-2,North,Hall,15,460,25,,2025-03-14,9.1,A-2'];
const BAD = [
  'P-3,North,Hall,fifty,460,60,,2025-03-15,28,A-3',
  'P-4,North,Hall,75,,88,,2025-03-15,41,A-4',
  'P-5,North,Hall,11,460,19,asleep,2025-03-15,6,A-5',
];

/** A name that no other test and no other project of this run uses. */
const named = (what: string, info: TestInfo) => `${what} ${info.project.name} ${info.repeatEachIndex}`;

async function startStudy(page: Page, name: string, sheet?: { readonly name: string; readonly text: string }): Promise<void> {
  await page.goto('/');
  await page.getByLabel('Name of the study').fill(name);
  await page.getByLabel('Your name').fill('R. Example');
  if (sheet !== undefined) {
    await page.locator('#sheet').setInputFiles({ name: sheet.name, mimeType: 'text/csv', buffer: Buffer.from(sheet.text) });
  }
  await page.getByRole('button', { name: 'Start the study' }).click();
}

async function sendText(page: Page, text: string): Promise<void> {
  await page.getByLabel('Or rows pasted from a spreadsheet').fill(text);
  await page.getByRole('button', { name: 'Read the sheet' }).click();
}

const count = (page: Page, name: string) => page.locator('dl div', { has: page.getByText(name, { exact: true }) }).locator('dd');

test('a sheet with three bad rows: the good ones come in, the bad ones come back, mended they come in, and all is taken back', async ({
  page,
}, info) => {
  await startStudy(page, named('Three bad rows', info), { name: 'motors.csv', text: [HEAD, ...GOOD, ...BAD].join('\n') });
  await expect(page.getByText('5 rows: 2 new motors and 2 new readings. 3 rows cannot be taken in.')).toBeVisible();
  for (const text of ['fifty', 'asleep', '“Rated voltage, V” is empty.'])
    await expect(page.getByText(text).first()).toBeVisible();
  await expect(page.getByText('“inventory” is not a column of the fleet sheet')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  await page.getByRole('button', { name: 'Import 2 good rows' }).click();
  await expect(page.getByText('Imported: 2 motors added, 0 changed, 2 readings added.')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Download the rejected rows' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('motors rejected rows.csv');
  const rejected = readFileSync(await file.path(), 'utf8');
  expect(rejected.split('\r\n')[0]).toContain(`${HEAD},rejected_row,rejected_reason,rejected_remedy`);
  const mended = rejected
    .replace('fifty', '37')
    .replace('P-4,North,Hall,75,,', 'P-4,North,Hall,75,460,')
    .replace('asleep', 'running');

  await page.getByRole('link', { name: 'Import another sheet' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();
  await expectAccessible(page);
  await page.locator('#file').setInputFiles({ name: 'mended.csv', mimeType: 'text/csv', buffer: Buffer.from(mended) });
  await page.getByRole('button', { name: 'Read the sheet' }).click();
  await expect(page.getByText('3 rows: 3 new motors and 3 new readings.')).toBeVisible();
  await expect(page.getByText('A sheet with the same header')).toBeVisible();
  await page.getByRole('button', { name: 'Import 3 rows' }).click();
  await expect(page.getByText('Imported: 3 motors added')).toBeVisible();

  await page.getByText('Take this import back…').click();
  await page.getByRole('button', { name: 'Take the import back' }).click();
  await expect(page.getByText(/This import was taken back on .* by R\. Example/)).toBeVisible();
  await page.getByRole('link', { name: 'Import another sheet' }).click();
  await expect(page.getByText('taken back')).toBeVisible();
});

test('the same sheet a second time has nothing to import; other values are shown old and new', async ({ page }, info) => {
  await startStudy(page, named('Twice', info), { name: 'motors.csv', text: [HEAD, ...GOOD].join('\n') });
  await page.getByRole('button', { name: 'Import 2 rows' }).click();
  await page.getByRole('link', { name: 'Import another sheet' }).click();
  await sendText(page, [HEAD, ...GOOD].join('\n'));
  await expect(page.getByText('Everything in this sheet is in the study already.')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Import/ })).toHaveCount(0);
  await expect(count(page, 'Readings there already')).toHaveText('2');
  await page.getByRole('button', { name: 'Do not import' }).click();

  await sendText(page, [HEAD, ...GOOD].join('\n').replace(',48,', ',52,'));
  const conflicts = page.getByRole('region', { name: 'stated otherwise than the study has it' });
  await expect(conflicts.getByText('48 A', { exact: true })).toBeVisible();
  await expect(conflicts.getByText('52 A', { exact: true })).toBeVisible();
  await expectAccessible(page);
  await page.getByLabel('keep what the study has').check();
  await page.reload();
  await expect(page.getByLabel('keep what the study has')).toBeChecked();
  await page.getByRole('button', { name: 'Import 2 rows' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();

  // Decided apart, one fact is taken over although the others stay.
  await sendText(page, [HEAD, ...GOOD].join('\n').replace(',48,', ',52,'));
  await page.getByLabel('keep what the study has').check();
  const current = page.getByLabel(/^Rated current of .*: what to do/);
  await current.selectOption({ label: 'take over 52 A' });
  await page.reload();
  await expect(current.locator('option:checked')).toHaveText('take over 52 A');
  await page.getByRole('button', { name: 'Import 2 rows' }).click();
  await expect(page.getByText(/Imported: .* 1 changed/)).toBeVisible();
});

test('numbers that can be read in two ways are asked about, with samples', async ({ page }, info) => {
  await startStudy(page, named('Two ways', info));
  await sendText(page, 'tag;rated_power_kw;rated_voltage_v;rated_current_a\nP-1;1.250;4160;1.234\n');
  await expect(page.getByText('Which sign marks the decimals?')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Import/ })).toHaveCount(0);
  await expect(page.getByText('1.250 is 1.250 · 1.234 is 1.234')).toBeVisible();
  await expectAccessible(page);
  await page.getByLabel('a point').check();
  await page.getByRole('button', { name: 'Read the sheet again' }).click();
  await expect(page.getByText('1 row: 1 new motor.')).toBeVisible();
  await expect(page.getByLabel('a point')).toBeChecked();
});

test(
  'column names below a title are read from there, and what was passed over is said',
  { tag: '@once' },
  async ({ page }, info) => {
    await startStudy(page, named('Title', info));
    await sendText(page, 'Motors of the mill\t\t\n\t\t\nMotor ID\tkW\tVolts\nP-1\t30\t460\nP-2\tfifty\t460\n');
    await expect(page.getByText('2 rows: 1 new motor. 1 row cannot be taken in.')).toBeVisible();
    await expect(page.getByText('The column names are those of row 3; what stands above them was passed over')).toContainText(
      'row 1 with “Motors of the mill”',
    );
    await expect(page.getByLabel('Place of kW')).toHaveValue('rated_power_kw');
    await expect(
      page.getByRole('region', { name: '1 row rejected' }).getByRole('cell', { name: '5', exact: true }),
    ).toBeVisible();
    await page.getByRole('button', { name: 'Import 1 good row' }).click();
    await expect(page.getByText('Imported: 1 motor added')).toBeVisible();
    // Without its voltage it is not sure enough that these are the names.
    await page.getByRole('link', { name: 'Import another sheet' }).click();
    await sendText(page, 'Motors of the mill\t\t\nMotor ID\tkW\tArea\nP-1\t30\tHall\n');
    await expect(page.getByText('The column names seem to stand in row 2')).toBeVisible();
  },
);

test('columns under other names are suggested, and can be placed, kept as a note or left out', async ({ page }, info) => {
  await startStudy(page, named('Columns', info));
  await sendText(page, 'Motor ID\tHP\tVoltage\tFLA\tPaint\tShelf\nP-1\t40\t460\t48\tblue\t12\n');
  await expect(page.getByText('1 row: 1 new motor.')).toBeVisible();
  await expect(page.getByLabel('Cells are divided by')).toHaveValue('\t');
  await expect(page.getByLabel('Place of FLA')).toHaveValue('rated_current_a');
  await expect(page.getByLabel('Place of Paint')).toHaveValue('');
  await page.getByLabel('Place of Shelf').selectOption({ label: 'left out' });
  await page.getByLabel('Place of Paint').selectOption({ label: 'Area' });
  await page.getByRole('button', { name: 'Read the sheet again' }).click();
  await expect(page.getByLabel('Place of Shelf')).toHaveValue('-');
  await expect(page.getByLabel('Place of Paint')).toHaveValue('area');
  await expect(page.getByText('is not a column of the fleet sheet')).toHaveCount(0);
  // Without its tag column the sheet cannot be read, and says so; the columns can still be placed.
  await page.getByLabel('Place of Motor ID').selectOption({ label: 'left out' });
  await page.getByRole('button', { name: 'Read the sheet again' }).click();
  await expect(page.getByText('The header has no column tag.')).toBeVisible();
  await page.getByLabel('Place of Motor ID').selectOption({ label: 'Tag' });
  await page.getByRole('button', { name: 'Read the sheet again' }).click();
  await expect(page.getByRole('button', { name: 'Import 1 row' })).toBeVisible();
});

test('a name that is taken is refused, and what was typed stays', { tag: '@once' }, async ({ page }, info) => {
  const name = named('Taken', info);
  await startStudy(page, name);
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();
  await startStudy(page, name, { name: 'motors.csv', text: [HEAD, ...GOOD].join('\n') });
  await expect(page.getByRole('alert').filter({ hasText: 'There is a study named' })).toContainText('Choose the sheet once more');
  await expect(page.getByLabel('Name of the study')).toHaveValue(name);
});

test(
  'a sheet without a column that each motor needs says so once, and how to place one',
  { tag: '@once' },
  async ({ page }, info) => {
    await startStudy(page, named('No volts', info));
    await sendText(page, 'tag,rated_power_kw,volts at motor\nP-1,30,460\nP-2,15,460\n');
    await expect(page.getByText('No column of the sheet gives the rated voltage (rated_voltage_v)')).toBeVisible();
    await page.getByLabel('Place of volts at motor').selectOption({ label: 'Rated voltage, V' });
    await page.getByRole('button', { name: 'Read the sheet again' }).click();
    await expect(page.getByRole('button', { name: 'Import 2 rows' })).toBeVisible();
    await expect(page.getByText('No column of the sheet gives')).toBeHidden();
  },
);

test('a file that is no sheet is refused in words', async ({ page }, info) => {
  await startStudy(page, named('No sheet', info));
  await page.getByRole('button', { name: 'Read the sheet' }).click();
  await expect(
    page.getByRole('alert').filter({ hasText: 'Choose a file that is not empty, or paste rows with their header.' }),
  ).toBeVisible();
  await page
    .locator('#file')
    .setInputFiles({ name: 'photo.csv', mimeType: 'text/csv', buffer: Buffer.from([0xff, 0xd8, 0, 1, 2, 0, 3]) });
  await page.getByRole('button', { name: 'Read the sheet' }).click();
  await expect(page.getByText('photo.csv is not a text file')).toBeVisible();
  await expectAccessible(page);
  // A workbook that broke on its way says so, and asks for no delimiter.
  await page.goto(page.url().replace(/import.*/, 'import'));
  const buffer = Buffer.from('PK\x03\x04 and then nothing that fits', 'latin1');
  await page.locator('#file').setInputFiles({ name: 'motors.xlsx', mimeType: 'application/octet-stream', buffer });
  await page.getByRole('button', { name: 'Read the sheet' }).click();
  await expect(page.getByText('motors.xlsx could not be opened as a workbook: it is cut off or damaged.')).toBeVisible();
  await expect(page.getByLabel('Cells are divided by')).toHaveCount(0);
  await page.getByRole('link', { name: 'Choose another file' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();
});

test('a study starts and a sheet comes in by keyboard alone', { tag: '@once' }, async ({ page }, info) => {
  await page.goto('/');
  await page.getByLabel('Name of the study').focus();
  await page.keyboard.type(named('By keyboard', info));
  await page.keyboard.press('Tab');
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('K. Example');
  await page.keyboard.press('Enter');
  const pasted = page.getByLabel('Or rows pasted from a spreadsheet');
  await pasted.focus();
  await page.keyboard.insertText([HEAD, ...GOOD].join('\n'));
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Read the sheet' })).toBeFocused();
  await page.keyboard.press('Enter');
  const commit = page.getByRole('button', { name: 'Import 2 rows' });
  await commit.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByText('Imported: 2 motors added')).toBeVisible();
});

test('the demonstration opens beside one’s own studies, goes in one click, and comes back', async ({ page }, info) => {
  await startStudy(page, named('Mine', info));
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();
  await page.goto('/');
  const open = page.getByRole('button', { name: 'Open the demonstration' });
  const opened = page.getByRole('link', { name: /\(invented\)/ });
  // The list comes after the page's frame: which of the two is there is known only then.
  await expect(open.or(opened).first()).toBeVisible();
  if (await open.isVisible()) await open.click();
  else await opened.click();
  await expect(page.getByText('invented figures')).toBeVisible();
  await page.goto('/');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await expect(page.getByRole('link', { name: named('Mine', info) })).toBeVisible();
  await page.getByRole('button', { name: 'Remove the demonstration' }).click();
  await expect(page.getByText('was put aside; nothing of it is lost yet.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Remove the demonstration' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('button', { name: 'Remove the demonstration' })).toBeVisible();
});

test('a study that was put aside can be removed for good', async ({ page }, info) => {
  const name = named('Goes', info);
  await startStudy(page, name);
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();
  await page.goto('/');
  await page.getByRole('button', { name: `Put aside ${name}` }).click();
  await page.getByText(`Remove for good… ${name}`).click();
  await page.getByRole('checkbox').check();
  await page.getByRole('button', { name: `Remove ${name}` }).click();
  await expect(page.getByText(name)).toHaveCount(0);
});

test('the icon is found under its old name as well', { tag: '@once' }, async ({ request }) => {
  const icon = await request.get('/favicon.ico');
  expect(icon.status()).toBe(200);
  expect(icon.headers()['content-type']).toContain('image/svg+xml');
});

test('blank sheets come as CSV and XLSX, and import as they are', { tag: '@once' }, async ({ page, request }, info) => {
  const csv = await request.get('/api/blank-sheet/csv');
  expect(csv.headers()['content-disposition']).toContain('fleet-sheet.csv');
  const xlsx = await request.get('/api/blank-sheet/xlsx');
  expect((await xlsx.body()).subarray(0, 2).toString()).toBe('PK');
  expect((await request.get('/api/blank-sheet/pdf')).status()).toBe(404);
  await startStudy(page, named('Blank', info));
  await page
    .locator('#file')
    .setInputFiles({ name: 'blank.xlsx', mimeType: 'application/octet-stream', buffer: await xlsx.body() });
  await page.getByRole('button', { name: 'Read the sheet' }).click();
  await expect(page.getByText('3 rows: 2 new motors and 3 new readings.')).toBeVisible();
});

test('an indicator history comes in by the same road, shows its trend, and is taken back', async ({ page }, info) => {
  const fleet = [
    'tag,site,rated_power_kw,rated_voltage_v,rated_speed_rpm,foundation,taken_at,input_power_kw,vibration_mm_s',
    'P-1,North,75,460,1780,rigid,2025-06-01,52,3.1',
  ];
  await startStudy(page, named('History', info), { name: 'motors.csv', text: fleet.join('\n') });
  await page.getByRole('button', { name: /^Import/ }).click();
  await page.getByRole('link', { name: 'Import another sheet' }).click();
  const history = [
    'site,tag,indicator,value,unit,taken_at,instrument',
    'North,P-1,vibration,1.0,mm/s,2023-06-01,probe',
    'North,P-1,vibration,0.08,in/s,2024-06-01,probe',
    'North,P-9,vibration,1.0,mm/s,2023-06-01,probe',
  ];
  await sendText(page, history.join('\n'));
  await expect(page.getByText('An indicator history: 2 new values of 1 motor. 1 row cannot be taken in.')).toBeVisible();
  await expect(page.getByRole('link', { name: 'Download the rejected rows' })).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.getByRole('button', { name: 'Import 2 values' }).click();
  await expect(page.getByText('Imported: 2 values of 1 motor.')).toBeVisible();
  await expectAccessible(page);
  const batch = page.url();
  await page.goto(batch.replace(/import.*/, 'ranking'));
  await page.getByRole('link', { name: 'P-1', exact: true }).click();
  await expect(page.getByText('getting worse, 3 readings since 2023-06-01')).toBeVisible();
  await page.getByText('Imported indicator history (2)').click();
  await expect(page.getByRole('region', { name: 'Imported indicator history' })).toContainText('2.032');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.goto(batch);
  await page.getByText('Take this import back…').click();
  await page.getByRole('button', { name: 'Take the import back' }).click();
  await expect(page.getByText(/This import was taken back/)).toBeVisible();
});

test('pasted rows are there again after a reload, and gone once they were read', { tag: '@once' }, async ({ page }, info) => {
  await startStudy(page, named('Pasted', info));
  await page.getByRole('link', { name: 'Import', exact: true }).click();
  const rows = page.getByLabel('Or rows pasted from a spreadsheet');
  await rows.fill([HEAD, ...GOOD].join('\n'));
  await page.reload();
  await expect(page.getByText('What you had typed and not saved is here again.')).toBeVisible();
  await expect(rows).toHaveValue([HEAD, ...GOOD].join('\n'));
  await page.getByRole('button', { name: 'Throw it away' }).press('Enter');
  await expect(rows).toHaveValue('');
  await expect(page.getByRole('main')).toBeFocused();
  await rows.fill([HEAD, ...GOOD].join('\n'));
  await page.getByRole('button', { name: 'Read the sheet' }).click();
  await expect(page.getByText('2 rows: 2 new motors and 2 new readings.')).toBeVisible();
  await page.getByRole('link', { name: 'Import', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Import' })).toBeVisible();
  await expect(rows).toHaveValue('');
});
