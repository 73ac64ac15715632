import { test as plainTest } from '@playwright/test';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy, sharedStudy } from './support-fleet';

test('what may not be used leads to a round sheet with expected ranges, cautions and blanks', async ({ page }) => {
  const study = await sharedStudy(200);
  await page.goto(`/${study}/trust`);
  await expect(page.getByText(/The figures of \d+ of 200 motors may not be used; \d+ are provisional/)).toBeVisible();
  await expect(page.getByRole('heading', { level: 2 }).first()).toContainText(/\(\d+ of \d+\)/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // In parts, what weighs most first; all together for the printer.
  await expect(page.getByText(/^Here are 50 of \d+ motors/)).toBeVisible();
  await expect(page.getByRole('checkbox')).toHaveCount(50);
  const pages = page.getByRole('navigation', { name: 'Pages' });
  await pages.getByRole('link', { name: 'Next' }).click();
  await expect(pages).toContainText('Page 2 of 3');
  await expect(page.locator('[data-trust="not-usable"]')).toHaveCount(0);
  await pages.getByRole('link', { name: 'All on one page, for printing' }).click();
  await expect(page.getByRole('checkbox').nth(100)).toBeAttached();
  // A signature read at low load says at which load to read again.
  const under = page.getByRole('listitem').filter({ hasText: 'below 50 % it says nothing' }).first();
  await expect(under).toContainText('at 75 % load or more');
  await page.getByRole('link', { name: 'Page by page' }).click();
  await expect(pages).toContainText('Page 1 of 3');

  // What may not be used alone, then everything again.
  const levels = page.getByRole('navigation', { name: 'Trust' });
  await levels.getByRole('link', { name: /^not usable \(\d+\)$/ }).click();
  await expect(page).toHaveURL(/level=not-usable/);
  await expect(page.locator('[data-trust="not-usable"]').first()).toBeVisible();
  await expect(page.locator('[data-trust="provisional"], [data-trust="sound"]')).toHaveCount(0);
  await levels.getByRole('link', { name: 'all of these' }).click();
  await expect(page).not.toHaveURL(/level=/);

  // One area; what is not usable is ticked already.
  await page.getByLabel('Area', { exact: true }).selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Show', exact: true }).click();
  await expect(page).toHaveURL(/area=/);
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(1);
  const first = page.getByRole('checkbox').first();
  const tag = ((await first.locator('..').textContent()) ?? '').replace(' on the round sheet', '').trim();
  await first.focus();
  await first.check();
  await expect(first).toBeChecked();
  await page.getByRole('button', { name: 'Make a round sheet', exact: true }).click();

  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Round sheet');
  const cautions = page.getByRole('region', { name: 'Cautions' });
  for (const words of [
    'energized work',
    'current-transformer secondary',
    'stroboscope',
    'DC bus',
    'four times the test',
    'process owner',
  ])
    await expect(cautions).toContainText(words);
  const motor = page.getByRole('region', { name: tag, exact: true });
  await expect(motor.getByRole('row').filter({ hasText: 'Voltage ab, bc, ca' })).toContainText(/\d+ to \d+; within 1 %/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.emulateMedia({ media: 'print' });
  for (const format of ['A4', 'Letter'] as const) expect((await page.pdf({ format })).length).toBeGreaterThan(10_000);
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
});

test('a screen opened before the first evaluation is done shows the figures when they are there, by itself', async ({ page }) => {
  const study = await plantStudy('Waiting', 40, { evaluated: false });
  await page.goto(`/${study}/trust`);
  await page.getByRole('button', { name: 'Evaluate now' }).click();
  await expect(page.getByText(/The figures of (all 40|\d+ of 40) motors may/)).toBeVisible();
  await expect(page.getByText('The fleet has not been evaluated yet.')).toBeHidden();
});

test('after a change the figures say that they are those from before, and change by themselves', { tag: '@once' }, async ({
  page,
}) => {
  const study = await plantStudy('Changed', 60, { evaluated: true });
  await page.goto(`/${study}/ranking`);
  const answer = page.getByText(/^Replacing \d+ motors? now costs/);
  const before = (await answer.textContent()) ?? '';
  await page.goto(`/${study}/setup`);
  await page.getByLabel('Energy price').fill('0.3');
  await page.locator('#settings-who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the settings' }).click();
  await expect(page.getByText(/Saved; 1 key changed/)).toBeVisible();
  await page.getByRole('link', { name: 'Ranking', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Ranking' })).toBeVisible();
  // Either it is still at work and says so, or it is done: in the end the new figures stand there without a reload.
  await expect(answer).not.toHaveText(before);
  await expect(page.getByText('The figures are those of the last evaluation until it is done.')).toBeHidden();
});

test('without a tick the round sheet says what to do; before the first evaluation so does the list', async ({ page }) => {
  const study = await plantStudy('No trust', 3, { evaluated: false });
  await page.goto(`/${study}/trust`);
  await expect(page.getByText('The fleet has not been evaluated yet.')).toBeVisible();
  await page.goto(`/${study}/trust/round`);
  await expect(page.getByText('No motor was ticked.')).toBeVisible();
});

// The browser itself complains in the console of a request that nothing answers.
plainTest(
  'a round goes from motor to motor: a missing name is led to, and out of reach nothing that was typed is lost',
  async ({ page, context }) => {
    const study = await plantStudy('Round', 12, { evaluated: true });
    await page.goto(`/${study}/trust`);
    const boxes = page.getByRole('checkbox');
    for (const box of await boxes.all()) await box.uncheck();
    for (const at of [0, 1]) await boxes.nth(at).check();
    await page.getByRole('button', { name: 'Make a round sheet', exact: true }).click();
    await page.getByRole('link', { name: 'Enter a reading' }).first().click();
    await expect(page.getByText('Motor 1 of 2 on the round.')).toBeVisible();
    const first = await page.getByRole('heading', { level: 1 }).textContent();
    await page.getByLabel('Frequency Hz').fill('60');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    const name = page.getByLabel('Your name');
    await expect(name).toBeFocused();
    await expect(name).toHaveAccessibleDescription('Write your name; it is kept with the change.');
    await name.fill('T. Technician');

    await context.setOffline(true);
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await expect(page.getByText('What you typed is kept here.')).toBeVisible();
    await expect(page.getByLabel('Frequency Hz')).toHaveValue('60');
    await context.setOffline(false);
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await expect(page.getByText('Saved.')).toBeVisible();
    await page.getByRole('link', { name: /^Next on the round: / }).click();

    await expect(page.getByText('Motor 2 of 2 on the round.')).toBeVisible();
    await expect(page.getByRole('heading', { level: 1 })).not.toHaveText(first ?? '');
    await expect(page.getByLabel('Frequency Hz')).toHaveValue('');
    await expect(name).toHaveValue('T. Technician');
    await expectAccessible(page);
    await expectNoSidewaysScroll(page);
    await page.getByLabel('Frequency Hz').fill('60');
    await page.getByRole('button', { name: 'Save the reading' }).click();
    await page.getByRole('link', { name: 'That was the last motor of the round; back to its sheet' }).click();
    await expect(page.getByRole('heading', { level: 1, name: 'Round sheet' })).toBeVisible();
  },
);
