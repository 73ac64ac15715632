import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoScrollWithin, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy, sharedStudy } from './support-fleet';

async function openMotor(page: Page, study: string, tag: string): Promise<void> {
  await page.goto(`/${study}/ranking`);
  await page.getByRole('link', { name: tag, exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(tag);
}

test('a motor answers first, and each figure leads down to a stamp and a meter', async ({ page, isMobile }) => {
  const study = await sharedStudy(20);
  await openMotor(page, study, 'A-14');
  for (const name of ['How hard it works', 'What can be trusted', 'Condition', 'Options', 'Readings', 'History']) {
    await expect(page.getByRole('heading', { name, exact: true })).toBeVisible();
  }
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await expect(page.getByRole('img', { name: /Efficiency and power factor over load/ })).toBeVisible();
  await expect(page.getByRole('img', { name: /times its present torque before it stalls/ })).toBeVisible();
  const contributes = page.getByRole('region', { name: 'Table of what each reading and stamp contributes' });
  await expect(page.getByText(/Of these, .* has the largest part in the doubt of the load/)).toBeVisible();
  // A phone folds the evidence; a wide screen has it at once.
  const key = page.getByRole('button', { name: /^All \d+ readings and stamps$/ });
  if (isMobile) {
    await expect(contributes).toBeHidden();
    await expect(key).toHaveAttribute('aria-expanded', 'false');
    await key.press('Enter');
    await expect(key).toBeFocused();
  } else await expect(key).toBeHidden();
  await expect(contributes.getByRole('row').filter({ hasText: 'input power' })).toContainText('kW');
  if (isMobile) {
    await expectNoScrollWithin(contributes);
    await expectNoScrollWithin(page.getByRole('region', { name: 'Table of readings' }));
  }
  await page.getByRole('link', { name: /efficiency: how do we know/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('How do we know efficiency?');
  await expect(page.locator('math').first()).toBeAttached();
  await expect(page.getByText('nameplate, rated power').first()).toBeAttached();
  await expect(page.getByText(/reading of \d{4}-\d{2}-\d{2}/).first()).toBeAttached();
  await expect(page.getByRole('region', { name: 'Typical values' })).toContainText('common practice');
  await expect(page.getByText(/Equations: Running point of the circuit/)).toContainText('left by the solution');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // Uneven limits take more room than an even interval.
  await openMotor(page, study, 'A-13');
  await expect(page.getByText(/\(\d[\d.]* to \d[\d.]*\)/).first()).toBeVisible();
  await expectNoSidewaysScroll(page);
});

test('a plate is changed, the change shown and taken back', async ({ page }) => {
  const study = await plantStudy('Plate', 16, { evaluated: true });
  await openMotor(page, study, 'A-15');
  await page.getByRole('link', { name: 'Change the plate' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Change the plate');
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  const efficiency = page.locator('#nominal_efficiency_pct');
  const before = await efficiency.inputValue();
  await efficiency.fill('84,5');
  await page.locator('#who').fill('R. Example');
  await page.locator('#why').fill('read it again');
  await page.getByRole('button', { name: 'Save the plate' }).click();
  await expect(page.getByText('Some cells cannot be taken as they are; nothing was saved.')).toBeVisible();
  await expect(efficiency).toHaveValue('84,5');
  await expect(efficiency).toBeFocused();
  await expect(page.locator('#why')).toHaveValue('read it again');
  await expect(page.locator('#who')).toHaveValue('R. Example');
  await efficiency.fill('84.5');
  await page.getByRole('button', { name: 'Save the plate' }).click();
  await expect(page.getByText('What it changed')).toBeVisible();
  const moved = page.getByRole('row').filter({ hasText: 'Efficiency' });
  const [was, now] = await moved.getByRole('cell').allInnerTexts();
  expect(was).toMatch(/%/);
  expect(now).not.toBe(was);
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Back to the motor' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'changed: Nominal efficiency' })).toContainText('read it again');
  await page.getByRole('button', { name: 'Take it back' }).click();
  await expect(page.getByRole('row').filter({ hasText: 'undone' })).toContainText('84.5');
  await page.getByRole('link', { name: 'Change the plate' }).click();
  await expect(page.locator('#nominal_efficiency_pct')).toHaveValue(before);
});

test('a reading is added and left out with a reason', async ({ page }) => {
  const study = await plantStudy('Reading', 16, { evaluated: true });
  await openMotor(page, study, 'A-16');
  await page.getByRole('link', { name: 'Add a reading' }).click();
  await expect(page.getByText(/A live reading is energized work/)).toBeVisible();
  await page.getByRole('button', { name: 'Now as Taken at' }).click();
  await expect(page.locator('#taken_at')).toHaveValue(/^\d{4}-\d{2}-\d{2} \d{2}:\d{2}$/);
  await page.locator('#taken_at').fill('2026-01-01T10:00');
  await page.locator('#input_power_kw').fill('11.5');
  await page.locator('#voltage_v').fill('460');
  await page.locator('#who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the reading' }).click();
  await expect(page.getByText('Saved.')).toBeVisible();
  await page.getByRole('link', { name: 'Back to the motor' }).click();
  const row = page
    .getByRole('region', { name: 'Table of readings' })
    .getByRole('row')
    .filter({ hasText: '2026-01-01 10:00' })
    .first();
  await expect(row).toContainText('11.5');
  await row.getByText('Leave out').click();
  await row.getByLabel('Why it does not count').fill('wrong breaker');
  await row.getByLabel('Your name').fill(' ');
  await row.getByRole('button', { name: 'Leave it out' }).click();
  await expect(row.getByLabel('Your name')).toBeFocused();
  await expect(row.getByLabel('Your name')).toHaveAttribute('aria-invalid', 'true');
  await row.getByLabel('Your name').fill('R. Example');
  await row.getByRole('button', { name: 'Leave it out' }).click();
  await expect(row).toContainText('left out');
});

test('what a motor is to be read for comes first; what is folded opens with an entry, a refusal or a draft in it', async ({
  page,
}) => {
  const study = await plantStudy('Folded', 16, { evaluated: true });
  await openMotor(page, study, 'A-16');
  await page.getByRole('link', { name: 'Add a reading' }).click();
  const wanted = page.getByRole('group', { name: 'Wanted of this motor' });
  await expect(wanted.getByLabel('Input power')).toBeVisible();
  await expect(wanted.getByLabel('Shaft speed')).toBeVisible();
  const lines = page.getByLabel('Spectrum resolution');
  await expect(lines).toBeHidden();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  await page.getByText('Dimensions for spectral lines').press('Enter');
  await lines.fill('0.2x');
  await page.reload();
  await expect(page.getByText('What you had typed and not saved is here again.')).toBeVisible();
  await expect(lines).toHaveValue('0.2x');
  await expect(lines).toBeVisible();
  // Folded again, a refusal in it is led to all the same.
  await page.getByText('Dimensions for spectral lines').press('Enter');
  await expect(lines).toBeHidden();
  await page.locator('#who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the reading' }).click();
  await expect(lines).toBeFocused();
  await expect(lines).toHaveAttribute('aria-invalid', 'true');
});

test('motors with other stories say what holds for them', async ({ page }) => {
  const study = await sharedStudy(200);
  const answers = {
    'K-3': 'Measure it first: it was never measured',
    'X-1': 'A spare: it uses no energy',
    'N-5': 'It has failed: replace it rather than repair it',
    'Q-1': 'Do not start it: the insulation resistance',
  };
  for (const [tag, answer] of Object.entries(answers)) {
    await openMotor(page, study, tag);
    await expect(page.getByRole('main').getByText(answer)).toBeVisible();
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
  }
});

test('a plate is changed and a figure opened by keyboard alone', async ({ page }) => {
  const study = await plantStudy('Keys', 16, { evaluated: true });
  await openMotor(page, study, 'A-15');
  await page.getByRole('link', { name: 'Add a reading' }).focus();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Change the plate' })).toBeFocused();
  await page.keyboard.press('Enter');
  await page.locator('#frame').focus();
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type('404T');
  await page.locator('#who').focus();
  await page.keyboard.type('R. Example');
  await page.keyboard.press('Enter');
  await expect(page.getByText('Saved.')).toBeVisible();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Back to the motor' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('row').filter({ hasText: 'changed: Frame' })).toContainText('404T');
  await page.getByRole('link', { name: /efficiency: how do we know/ }).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('How do we know efficiency?');
  const closed = page.locator('details:not([open]) > summary').first();
  await closed.focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('details[open] > summary:focus')).toBeVisible();
});
