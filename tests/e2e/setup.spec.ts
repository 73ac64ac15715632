import { readFileSync } from 'node:fs';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy } from './support-fleet';

test('settings are changed, refused in words, and stand in the history', async ({ page, isMobile }) => {
  const study = await plantStudy('Setup', 3, { evaluated: false });
  await page.goto(`/${study}/setup`);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  // A phone shows what a group holds, and the fields when they are asked for.
  const prices = page.getByRole('button', { name: /^Energy price, demand price/ });
  const price = page.getByLabel('Energy price per kWh');
  await expect(price).toBeVisible({ visible: !isMobile });
  if (isMobile) await prices.click();
  await price.fill('0,145');
  await page.locator('#settings-who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the settings' }).click();
  await expect(page.getByText('Some values cannot be taken as they are; nothing was saved.')).toBeVisible();
  await expect(price).toHaveValue('0,145');
  await price.fill('0.145');
  await page.getByRole('button', { name: 'Save the settings' }).click();
  await expect(page.getByText(/Saved; 1 keys? changed/)).toBeVisible();
  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Settings as a file' }).click();
  const file = JSON.parse(readFileSync(await (await download).path(), 'utf8')) as {
    energy_price_per_kwh: number;
    discount_rate: number;
    policy: { min_probability: number };
  };
  expect(file.energy_price_per_kwh).toBe(0.145);
  const kept = { discount: file.discount_rate, odds: file.policy.min_probability };
  // Rates and shares are per cent in the form and fractions in the file; a fraction typed all the same is doubted.
  if (isMobile) await page.getByRole('button', { name: /^Discount rate/ }).click();
  await expect(page.getByLabel('Discount rate % a year')).toHaveValue('8');
  expect(kept).toEqual({ discount: 0.08, odds: 0.8 });
  await page.getByLabel('Discount rate % a year').fill('0.08');
  await page.getByRole('button', { name: 'Save the settings' }).click();
  await expect(page.getByText(/Discount rate is now 0\.08 %, less than one in a hundred/)).toBeInViewport();
  await page.goto(`/${study}/history`);
  await expect(page.getByRole('row').filter({ hasText: 'Discount rate % a year' })).toContainText(/8.*0\.08/);
  await expect(page.getByRole('row').filter({ hasText: 'energy price per kwh' })).toContainText('0.145');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page
    .getByRole('row')
    .filter({ hasText: /changed: Energy price/i })
    .getByRole('button', { name: 'Take it back' })
    .click();
  await expect(page.getByRole('row').filter({ hasText: 'undone: energy price per kwh' })).toContainText('0.11');
  await page.goto(`/${study}/setup`);
  await expect(price).toHaveValue('0.11');
  if (isMobile) await prices.click();
  await price.fill('0.3');
  await page.locator('#settings-who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the settings' }).click();
  await expect(page.getByText(/Saved; 1 key changed/)).toBeInViewport();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await expect(page.getByText(/Taken back; 1 key changed/)).toBeInViewport();
  await expect(price).toHaveValue('0.11');
});

test('a meter whose calibration was due says so, and how many readings it has taken since', async ({ page, isMobile }) => {
  const study = await plantStudy('Meters', 5, { evaluated: false });
  await page.goto(`/${study}/setup`);
  const meters = page.getByRole('region', { name: 'Instruments', exact: true });
  if (isMobile) await meters.getByRole('button', { name: 'Add a meter, or change one' }).click();
  await meters.getByLabel('Name', { exact: true }).fill('analyser 1');
  await meters.getByLabel('Calibration due on').fill('2.5.2025');
  await meters.getByLabel('Your name').fill('R. Example');
  await meters.getByRole('button', { name: 'Save the instrument' }).click();
  const due = meters.getByLabel('Calibration due on');
  await expect(due).toBeFocused();
  await expect(due).toHaveAccessibleDescription(/Write it as 2026-03-14/);
  await meters.getByLabel('Calibration due on').fill('2023-05-02');
  await meters.getByRole('button', { name: 'Save the instrument' }).click();
  const row = meters.getByRole('row').filter({ hasText: 'due 2023-05-02' });
  await expect(row).toContainText('Overdue.');
  await expect(row).toContainText(/[1-5] readings? taken after it was due/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  // The row goes with its button, and the table with its last row; whoever pressed it stays with the instruments.
  await row.getByRole('button', { name: 'Remove analyser 1' }).press('Enter');
  await expect(row).toHaveCount(0);
  await expect(meters).toBeFocused();
});
