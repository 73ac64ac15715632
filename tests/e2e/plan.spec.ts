import { expect, expectAccessible, test } from './page-watch';
import { plantStudy } from './support-fleet';

test('a plan is worked out, a motor is pinned and one left alone by keyboard, and budgets are changed', async ({ page }) => {
  const study = await plantStudy('Plan', 25, { evaluated: true });
  await page.goto(`/${study}/plan`);
  await expect(page.getByText('No plan has been worked out yet.')).toBeVisible();
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Work the plan out' }).press('Enter');
  await expect(page.getByRole('heading', { name: 'Budget by year' })).toBeVisible({ timeout: 30_000 });
  // The button is gone, and the focus with it to the part of the page that it stood in.
  await expect(page.getByRole('main')).toBeFocused();
  await expect(page.getByText(/No plan within these limits can bring more than/)).toBeVisible();
  await expectAccessible(page);

  // A draft says so on each sheet, and carries no hash.
  await page.getByRole('link', { name: 'Open a draft of the report to print' }).click();
  await expect(page.getByText('Draft, not frozen.')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Savings by year' })).toBeVisible();
  await expectAccessible(page);
  const margins = await page.evaluate(() =>
    document.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules].map(({ cssText }) => cssText)),
  );
  expect(margins.join()).toMatch(/@page wide.*@bottom-left.*no hash.*@top-center.*DRAFT/s);
  await expect(page.getByText(/^Hash/)).toHaveCount(0);
  await page.getByRole('link', { name: 'Plan', exact: true }).first().click();

  // The grid of options and years is one choice: arrow keys move in it.
  const row = page
    .getByRole('region', { name: /^Plan of/ })
    .first()
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader') })
    .first();
  const motor = (await row.getByRole('rowheader').textContent()) ?? '';
  await row.getByRole('link', { name: /move or pin/ }).press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(motor);
  await expectAccessible(page);
  const free = page.getByRole('radio', { name: 'as the solver finds best' });
  await free.focus();
  for (const _ of [1, 2, 3, 4]) await page.keyboard.press('ArrowDown');
  await page.getByLabel('Your name').fill('P. Planner');
  await page.getByRole('button', { name: 'Save and plan anew' }).press('Enter');
  await expect(page.getByRole('heading', { name: 'What was wished' })).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText(/What was wished costs/)).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText(/pinned by P. Planner/).first()).toBeVisible();

  // A latest year asks for something to be done; a year alone leaves the option open, an option alone the year. Each is there again.
  const again = page.getByRole('link', { name: new RegExp(`^(move or pin|bring in) (.* / )?${motor}$`) }).first();
  const save = async (said: RegExp) => {
    await page.getByRole('button', { name: 'Save and plan anew' }).press('Enter');
    await expect(page.getByText(said).first()).toBeVisible({ timeout: 30_000 });
    await again.press('Enter');
  };
  await again.press('Enter');
  const latest = page.getByLabel('at the latest in');
  await latest.selectOption({ index: 2 });
  await expect(page.getByRole('radio', { name: /^something is done with it/ })).toBeChecked();
  await save(/must be done by \d{4}, as P. Planner wants it/i);
  await expect(page.getByRole('radio', { name: /^something is done with it/ })).toBeChecked();
  await expect(latest).toHaveValue(/^\d{4}$/);
  const anyTime = page.getByRole('radio', { name: /in the year that the solver finds best$/ }).first();
  await anyTime.check();
  await save(/pinned by P. Planner: .* in any year/);
  await expect(anyTime).toBeChecked();
  const anyOption = page.getByRole('radio', { name: /^any of its options in \d{4}$/ }).first();
  await anyOption.check();
  await expectAccessible(page);
  await save(/pinned by P. Planner: any of its options in \d{4}/);
  await expect(anyOption).toBeChecked();
  await page.getByRole('link', { name: 'Plan', exact: true }).first().click();

  await page.getByText('Hours that areas can spare, low case, other budgets').click();
  await page.getByLabel('Outage, h').fill('eight');
  await page.getByRole('button', { name: 'Save and plan anew' }).press('Enter');
  await expect(page.getByText(/Some values cannot be taken as they are/)).toBeVisible();
  await page.getByLabel('Outage, h').fill('-4');
  await page.getByLabel(/^Area/).fill('Nowhere');
  await page.getByLabel('Year (empty: each)').fill('1999');
  await page.getByRole('checkbox', { name: /try other budgets/ }).check();
  await page.getByRole('button', { name: 'Save and plan anew' }).press('Enter');
  await expect(page.getByText('Hours cannot be below zero.')).toBeVisible();
  await expect(page.getByText('No motor of the study stands in an area of this name.')).toBeVisible();
  await expect(page.getByText(/Give a year of the budget: \d{4}/)).toBeVisible();
  // What was ticked stays ticked where something was refused.
  await expect(page.getByRole('checkbox', { name: /try other budgets/ })).toBeChecked();
  await page.getByLabel('Outage, h').fill('16');
  await page.getByLabel(/^Area/).fill('');
  await page.getByLabel('Year (empty: each)').fill('');
  await expectAccessible(page);
  await page.getByRole('button', { name: 'Save and plan anew' }).press('Enter');
  await expect(page.getByRole('heading', { name: 'Hours by area' })).toBeVisible({ timeout: 30_000 });
  await expect(page.getByRole('heading', { name: 'Other budgets' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What to measure next' })).toBeVisible();
  await expectAccessible(page);

  // The settings file takes the wish along, and brings it back once it was taken back.
  const file = await page.request.get(`/api/studies/${study}/settings`);
  const settings = await file.body();
  expect(JSON.parse(settings.toString()).plan).toMatchObject({
    pins: [{ year: expect.any(Number) }],
    limits: [{ outage_hours: 16 }],
  });
  await page.getByText('Take all wishes back').click();
  await page.getByRole('button', { name: 'Take all back and plan anew' }).press('Enter');
  await expect(page.getByRole('heading', { name: 'What was wished' })).toBeHidden();
  // The section went with its button: the page has the focus, and not nothing.
  await expect(page.getByRole('main')).toBeFocused();
  await page.goto(`/${study}/setup`);
  const section = page.getByRole('region', { name: 'Take a settings file' });
  await section
    .getByLabel('Settings file (JSON)')
    .setInputFiles({ name: 'settings.json', mimeType: 'application/json', buffer: settings });
  await section.getByRole('button', { name: 'Take the settings' }).click();
  await expect(page.getByText('Saved; no key changed. 1 wish of the plan changed: work it out anew.')).toBeVisible();
  await page.goto(`/${study}/plan`);
  await expect(page.getByText(/pinned by P. Planner/).first()).toBeVisible();
  await page.getByText('Take all wishes back').click();
  await page.getByRole('button', { name: 'Take all back and plan anew' }).click();
  await expect(page.getByRole('heading', { name: 'What was wished' })).toBeHidden();
  await page.getByText('Change budgets and aim').click();
  const [first] = await page.getByRole('textbox', { name: /^\d{4} / }).all();
  await first?.fill('1.500,00');
  await page.getByRole('button', { name: 'Save and plan anew' }).click();
  await expect(page.getByText(/Some budgets cannot be taken as they are/)).toBeVisible();
  await first?.fill('3000');
  const name = page.locator('#budget-who');
  const typed = await name.inputValue();
  await name.fill('');
  await page.getByRole('button', { name: 'Save and plan anew' }).first().click();
  await expect(name).toBeFocused();
  await expect(name).toHaveAccessibleDescription('Write your name; it is kept with the change.');
  await name.fill(typed);
  // Opened again by itself with what was typed.
  await page.reload();
  await expect(page.getByText('What you had typed and not saved is here again.')).toBeVisible();
  await expect(page.getByRole('textbox', { name: /^\d{4} / }).first()).toHaveValue('3000');
  await page.getByRole('button', { name: 'Save and plan anew' }).click();
  await expect(page.getByRole('region', { name: 'Money of each year' }).getByText('3,000.00')).toBeVisible({
    timeout: 30_000,
  });
  await expectAccessible(page);
});

test('a wish that is refused is there again as it was sent', { tag: '@once' }, async ({ page }) => {
  const study = await plantStudy('Wish', 25, { evaluated: true });
  await page.goto(`/${study}/fleet?trust=not-usable`);
  const motor = (await page.locator('[data-column="tag"] a').first().getAttribute('href')) ?? '';
  await page.goto(motor.replace('/motor/', '/plan/'));
  await page.getByRole('radio', { name: 'it is left alone' }).check();
  await page.getByRole('checkbox', { name: 'I let it in all the same' }).check();
  await page.getByLabel('Done in one year with others').fill('Line 1');
  await page.getByLabel('Your name').fill('P. Planner');
  await page.getByRole('button', { name: 'Save and plan anew' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'Write why its figures may be used all the same' })).toBeVisible();
  await expect(page.getByLabel('Why', { exact: true })).toBeFocused();
  await expect(page.getByRole('radio', { name: 'it is left alone' })).toBeChecked();
  await expect(page.getByRole('checkbox', { name: 'I let it in all the same' })).toBeChecked();
  await expect(page.getByLabel('Done in one year with others')).toHaveValue('Line 1');
  await expect(page.getByLabel('Your name')).toHaveValue('P. Planner');
  // Nor does a reload lose it; saved, it is forgotten.
  await page.reload();
  await expect(page.getByText('What you had typed and not saved is here again.')).toBeVisible();
  await expect(page.getByRole('radio', { name: 'it is left alone' })).toBeChecked();
  await expect(page.getByLabel('Done in one year with others')).toHaveValue('Line 1');
  await page.getByLabel('Why', { exact: true }).fill('Read twice');
  await page.getByRole('button', { name: 'Save and plan anew' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Plan', exact: true })).toBeVisible();
  await page.goBack();
  await expect(page.getByRole('radio', { name: 'it is left alone' })).toBeChecked();
  await expect(page.getByText('is here again')).toBeHidden();
});
