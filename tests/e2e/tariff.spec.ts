import { expect, expectAccessible, expectNoScrollWithin, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy } from './support-fleet';

test('a site’s tariff is typed, worked out, saved and taken back', async ({ page, isMobile }) => {
  const study = await plantStudy('Tariff', 60, { evaluated: true });
  await page.goto(`/${study}/setup`);
  const sites = page.getByRole('region', { name: 'Sites and their prices' });
  // A phone shows the lines of the table without its heads.
  const line = sites
    .getByRole('row')
    .filter({ has: page.getByRole('link') })
    .first();
  await expect(line).toContainText('flat prices');
  await expect(line).toContainText('0.1100');
  await sites.getByRole('link').first().click();
  await expect(page.getByRole('heading', { name: /^Tariff of / })).toBeVisible();
  await expect(page.getByText('The site has no tariff yet')).toBeVisible();
  await expect(page.getByText(/The last kilowatt-hour costs 0\.1100/)).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  if (isMobile) await expectNoScrollWithin(page.getByRole('region', { name: 'Rows of energy' }));
  // A narrow price first, then the rest of the hours.
  await page.getByLabel('Energy, row 1: name').fill('summer peak');
  await page.getByLabel('Energy, row 1: months').fill('6-9');
  await page.getByLabel('Energy, row 1: hours').fill('Mo-Fr 12:00-20:00');
  await page.getByLabel('Energy, row 1: price').fill('0.17');
  await page.getByLabel('Demand, row 1: ratchet share').fill('80');
  await page.getByLabel('Demand, row 1: ratchet months').fill('11');
  await page.getByRole('button', { name: 'Work it out' }).last().click();
  await expect(page.getByRole('alert').filter({ hasText: 'have no price' })).toContainText('Add a last period');
  await page.getByLabel('Energy, row 2: name').fill('other hours');
  await page.getByLabel('Energy, row 2: price').fill('0.09');
  await page.getByRole('button', { name: 'Work it out' }).last().click();
  await expect(page.getByRole('alert').filter({ hasText: 'ratchet' })).toContainText('last twelve bills');
  await page.getByLabel('Energy of the whole site').fill('400000');
  await page.getByLabel('Highest demand of the whole site').fill('700; 700; 720; 760; 800; 900; 1000; 950; 880; 800; 740; 700');
  await page.getByRole('button', { name: 'Work it out' }).last().click();
  await expect(page.getByText('Worked out as typed; not saved.')).toBeVisible();
  await expect(page.getByText(/the average one 0\.1/)).toBeVisible();
  await expect(page.getByRole('row').filter({ hasText: 'summer peak' }).first()).toContainText('0.1700');
  await expect(page.getByText(/Billed once as a whole that is/)).toBeVisible();
  await page.getByText(/^July: /).click();
  await expect(page.getByRole('region', { name: 'Bill of July' }).getByRole('row').filter({ hasText: 'any time' })).toContainText(
    '1,000.0 kW',
  );
  if (isMobile)
    for (const name of ['Prices by the hours of the tariff', 'Last prices by the hours of motors', 'Bill of July'])
      await expectNoScrollWithin(page.getByRole('region', { name }));
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  await page.getByRole('button', { name: 'Save the tariff' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'name' })).toBeVisible();
  await page.locator('#tariff-who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the tariff' }).click();
  await expect(page.getByText(/Saved; 1 key changed/)).toBeVisible();
  await expect(page.getByText('Its prices serve for all motors of the site.')).toBeVisible();
  await expect(page.getByLabel('Energy, row 1: hours')).toHaveValue('Mo-Fr 12:00-20:00');
  await page.getByRole('link', { name: 'All prices and assumptions' }).click();
  await expect(line).not.toContainText('flat prices');
  await sites.getByRole('link').first().click();
  await page.getByRole('button', { name: 'Remove it: flat prices again' }).click();
  await expect(page.getByText(/Saved; 1 key changed/)).toBeVisible();
  await expect(page.getByText('The site has no tariff yet')).toBeVisible();
  await page.getByRole('button', { name: 'Take it back' }).click();
  await expect(page.getByText(/Taken back; 1 key changed/)).toBeVisible();
  await expect(page.getByText('Its prices serve for all motors of the site.')).toBeVisible();
});

test('a tariff that was saved in another window meanwhile is not overwritten unseen', { tag: '@once' }, async ({
  page,
  context,
}) => {
  const study = await plantStudy('Two tariffs', 3, { evaluated: false });
  await page.goto(`/${study}/setup`);
  const address =
    (await page.getByRole('region', { name: 'Sites and their prices' }).getByRole('link').first().getAttribute('href')) ?? '';
  const other = await context.newPage();
  for (const [window, price] of [
    [page, '0.21'],
    [other, '0.19'],
  ] as const) {
    await window.goto(address);
    await window.getByLabel('Energy, row 1: price').fill(price);
    await window.locator('#tariff-who').fill('R. Example');
  }
  const save = (window: typeof page) => window.getByRole('button', { name: 'Save the tariff' }).click();
  await save(other);
  await expect(other.getByText(/Saved; 1 key changed/)).toBeVisible();
  await save(page);
  await expect(page.getByRole('alert').filter({ hasText: 'has been changed by somebody else' })).toBeVisible();
  await expect(page.getByLabel('Energy, row 1: price')).toHaveValue('0.21');
  await save(page);
  await expect(page.getByText(/Saved; 1 key changed/)).toBeVisible();
});

test('a tariff that is being typed is there again after a reload and a way back and forth, until it is saved', {
  tag: '@once',
}, async ({ page }) => {
  const study = await plantStudy('Typed tariff', 3, { evaluated: false });
  await page.goto(`/${study}/setup`);
  await page.getByRole('region', { name: 'Sites and their prices' }).getByRole('link').first().click();
  const again = page.getByText('What you had typed and not saved is here again.');
  const price = (row: number) => page.getByLabel(`Energy, row ${row}: price`);
  await price(1).fill('0.21');
  await page.getByRole('button', { name: 'Another row of energy' }).click();
  await page.getByRole('button', { name: 'Another row of energy' }).click();
  // A row that the page has only because it was asked for.
  await price(4).fill('0.09');
  await page.reload();
  await expect(again).toBeVisible();
  await expect(price(1)).toHaveValue('0.21');
  await expect(price(4)).toHaveValue('0.09');

  await page.getByRole('link', { name: 'All prices and assumptions' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Setup' })).toBeVisible();
  await page.goBack();
  await expect(again).toBeVisible();
  await expect(price(4)).toHaveValue('0.09');

  await page.getByRole('button', { name: 'Throw it away' }).click();
  await expect(price(1)).toHaveValue('0.11');
  await expect(price(4)).toHaveValue('');
  await page.reload();
  await expect(price(1)).toHaveValue('0.11');
  await expect(again).toBeHidden();

  await price(1).fill('0.21');
  await page.locator('#tariff-who').fill('R. Example');
  await page.getByRole('button', { name: 'Save the tariff' }).click();
  await expect(page.getByText(/Saved; 1 key changed/)).toBeVisible();
  await page.reload();
  await expect(price(1)).toHaveValue('0.21');
  await expect(again).toBeHidden();
});
