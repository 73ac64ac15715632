import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy, sharedStudy } from './support-fleet';

test('the worklist leads to the motor, its suspicions and its spectral lines', async ({ page }) => {
  const study = await sharedStudy(200);
  await page.goto(`/${study}/worklist`);
  await expect(page.getByText(/\d+ of 200 motors need a person\./)).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  const list = page.getByRole('list', { name: 'Motors in order of risk' });
  // What must not be started stands first.
  await expect(list.getByRole('listitem').first()).toContainText('must do');
  await page.getByRole('link', { name: 'by area' }).click();
  await expect(page.getByRole('heading', { level: 2 }).first()).toContainText(/\(\d+\)/);
  await page.getByRole('link', { name: 'by outage' }).click();
  await expect(page.getByRole('heading', { name: /While the motor is stopped/ })).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('link', { name: 'G-8', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'What may be wrong' })).toBeVisible();
  await expect(page.getByText(/Rotor cage: 1 in \d+, weak/)).toBeVisible();
  await expect(page.getByText('Best read next:')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.getByRole('link', { name: 'Spectral lines to expect' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Spectral lines of G-8');
  await expect(page.getByRole('region', { name: 'Lines that cannot be told apart' })).toContainText('pole-pass sideband');
  await expect(page.getByRole('region', { name: 'Lines expected in the current' })).toContainText('f₁ − 2 s f₁');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});

test('a suspicion is folded open by keyboard', async ({ page }) => {
  const study = await sharedStudy(60);
  await page.goto(`/${study}/worklist`);
  await page.getByRole('link', { name: 'E-5', exact: true }).click();
  const folded = page.locator('summary', { hasText: 'Belt drive' });
  await folded.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('details', { hasText: 'Belt drive' }).getByText('For', { exact: true })).toBeVisible();
});

test('before the first evaluation the worklist says what to do', async ({ page }) => {
  const study = await plantStudy('No worklist', 3, { evaluated: false });
  await page.goto(`/${study}/worklist`);
  await expect(page.getByText('The fleet has not been evaluated yet.')).toBeVisible();
});
