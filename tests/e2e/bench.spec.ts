import type { Page } from '@playwright/test';
import type { BenchTest } from '@/lib/engine';
import { writeBenchCsv } from '@/lib/features/bench/write-sheet';
import { syntheticTest } from '../engine/bench/synthetic';
import { expect, expectAccessible, expectNoScrollWithin, expectNoSidewaysScroll, test } from './page-watch';

async function startStudy(page: Page, name: string): Promise<string> {
  await page.goto('/');
  await page.getByLabel('Name of the study').fill(name);
  await page.getByLabel('Your name').fill('R. Example');
  const text = 'tag,site,rated_power_kw,rated_voltage_v,rated_speed_rpm,nominal_efficiency_pct\nB-1,Works,18.65,460,1769,91.0\n';
  await page.locator('#sheet').setInputFiles({ name: 'motor.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await page.getByRole('button', { name: 'Start the study' }).click();
  await page.getByRole('button', { name: /^Import/ }).click();
  await expect(page.getByText(/Imported: 1 motor added/)).toBeVisible();
  return new URL(page.url()).pathname.split('/')[1] ?? '';
}

async function keep(page: Page, study: string, what: BenchTest, date: string): Promise<void> {
  await page.goto(`/${study}/bench`);
  await page.getByText('Read a sheet', { exact: true }).click();
  await page.getByLabel('Or rows pasted from a spreadsheet').fill(writeBenchCsv([{ ...what, tag: 'B-1' }]));
  await page.getByRole('button', { name: 'Read into the table' }).click();
  await expect(page.getByLabel('Tag of the motor')).toHaveValue('B-1');
  await page.getByLabel('Date, as 2026-03-14').fill(date);
  await expect(page.getByText(/Efficiency at rated load/)).toBeVisible();
  await page.locator('#who').fill('R. Example');
  await page.getByRole('button', { name: 'Keep with the motor' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('B-1');
}

test('a test is read, worked out while one types, kept, reported, printed and compared with the one after the rewind', async ({
  page,
}, info) => {
  const study = await startStudy(page, `Bench ${info.project.name} ${info.repeatEachIndex}`);
  await page.goto(`/${study}/bench`);
  await expect(page.getByText('No test has been kept yet.')).toBeVisible();
  await expect(page.getByText('For qualified persons only.')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // Typing: a wrong cell is named at once, and a first pair of figures already answers.
  await page.getByLabel('Tag of the motor').fill('B-1');
  await page.getByLabel('Resistance, row 1', { exact: true }).fill('0,52');
  await expect(page.getByText(/Row 1, .*: “0,52” uses a comma/)).toBeVisible();
  await page.getByLabel('Resistance, row 1', { exact: true }).fill('0.52');
  await page.getByLabel('Winding, row 1', { exact: true }).fill('25');
  await expect(page.getByText('As it stands the test would not be accepted.')).toBeVisible();

  // Loaded again, all of it is there again.
  await page.reload();
  await expect(page.getByText('What you had typed and not saved is here again.')).toBeVisible();
  await expect(page.getByLabel('Tag of the motor')).toHaveValue('B-1');
  await expect(page.getByLabel('Resistance, row 1', { exact: true })).toHaveValue('0.52');

  // A name that is none is led to.
  await page.locator('#who').fill(' ');
  await page.getByRole('button', { name: 'Keep with the motor' }).click();
  await expect(page.locator('#who')).toBeFocused();
  await expect(page.locator('#who')).toHaveAttribute('aria-invalid', 'true');
  if (info.project.name === 'phone') {
    const points = page.getByRole('region', { name: 'Measured points' });
    await expectNoScrollWithin(points);
    // A phone asks a section for what it has a use for, and of its empty rows shows the first, until that has a figure.
    await expect(page.getByLabel('Torque, row 9', { exact: true })).toBeHidden();
    const next = page.getByLabel('Voltage, row 4', { exact: true });
    await expect(next).toBeHidden();
    await page.getByLabel('Torque, row 3', { exact: true }).fill('98');
    await expect(next).toBeVisible();
    await page.getByRole('button', { name: '11 more empty rows' }).click();
    await expect(page.getByLabel('Voltage, row 16', { exact: true })).toBeVisible();
  }
  // A row that is removed hands the focus to the one that takes its place.
  await page.getByRole('button', { name: 'Add a row below row 16' }).click();
  await page.getByRole('button', { name: 'Remove row 16', exact: true }).press('Enter');
  await expect(page.getByRole('button', { name: 'Remove row 16', exact: true })).toBeFocused();

  // A voltage of one phase is doubted at its cell, before the test is complete.
  await page.getByLabel('Section of row 3').selectOption('load');
  await page.getByLabel('Voltage, row 3', { exact: true }).fill('265');
  await expect(page.getByLabel('Voltage, row 3', { exact: true })).toHaveAttribute('title', /in row 3 .* 265; .* is usual/);

  const before = { ...syntheticTest(), test: 'before' };
  await keep(page, study, before, '2025-03-01');
  await expect(page.getByText(/Accepted by IEEE 112 B: 91\.\d/)).toBeVisible();
  // Kept, it is no longer half typed.
  await page.goto(`/${study}/bench`);
  await expect(page.getByText('is here again')).toBeHidden();
  await expect(page.getByLabel('Tag of the motor')).toHaveValue('');
  await page.goBack();
  for (const name of [
    'The regressions',
    'At the standard loads',
    'The load test, column by column',
    'The no-load run, column by column',
  ]) {
    await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
  }
  await expect(page.getByRole('img')).toHaveCount(2);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  await page.getByRole('link', { name: 'IEC 60034-2-1, 2-1-1B: dynamometer' }).click();
  await expect(page.getByText(/Accepted by IEC 60034-2-1, 2-1-1B/)).toBeVisible();

  // After the rewind the core loses 40 % more.
  const burnt = syntheticTest(undefined, (point, section) =>
    section === 'no-load'
      ? { ...point, inputPowerKw: (point.inputPowerKw ?? 0) + 0.118 * ((point.voltageV ?? 0) / 460) ** 2 }
      : point,
  );
  await keep(page, study, { ...burnt, test: 'after' }, '2025-06-01');
  await page.getByRole('link', { name: 'before, 2025-03-01' }).click();
  await expect(page.getByText(/The repair did not keep the motor as it was: .*core loss/)).toBeVisible();
  await expect(page.getByRole('row').filter({ hasText: 'Core loss' }).filter({ hasText: 'beyond the limit' })).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  await page.emulateMedia({ media: 'print' });
  for (const format of ['A4', 'Letter'] as const) expect((await page.pdf({ format })).length).toBeGreaterThan(10_000);
  await page.emulateMedia({ media: null });

  // The motor shows both, and its history; a wrong test is withdrawn with its reason.
  await page.getByRole('link', { name: 'The motor', exact: true }).click();
  const region = page.getByRole('region', { name: 'Table of bench tests' });
  await expect(region.getByRole('link')).toHaveCount(2);
  await expect(page.getByRole('row').filter({ hasText: 'added: bench test' })).toHaveCount(2);
  await expect(page.getByRole('row').filter({ hasText: /added: bench test.*after.*core 0\.41/ })).toHaveCount(1);
  await expect(region.getByRole('row').filter({ hasText: 'after' })).toContainText(/core loss \+40/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await region.getByRole('link', { name: /after/ }).click();
  await page.getByText('Withdraw this test').click();
  const why = page.getByLabel('Why');
  await page.getByRole('button', { name: 'Withdraw the test' }).click();
  await expect(why).toBeFocused();
  await expect(why).toHaveAttribute('aria-invalid', 'true');
  await why.fill('wrong motor');
  await page.getByRole('button', { name: 'Withdraw the test' }).click();
  await expect(page.getByText(/Withdrawn by R. Example.*wrong motor/)).toBeVisible();
});
