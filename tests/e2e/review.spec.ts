import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoScrollWithin, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy } from './support-fleet';

const SHEET = `tag,site,rated_power_kw,rated_voltage_v,rated_speed_rpm,nominal_efficiency_pct,hours_per_year,status
R-1,Works,30,460,1770,88.5,6000,failed
R-2,Works,55,460,1780,91.0,6000,running
`;

async function startStudy(page: Page, name: string): Promise<string> {
  await page.goto('/');
  await page.getByLabel('Name of the study').fill(name);
  await page.getByLabel('Your name').fill('P. Planner');
  await page.locator('#sheet').setInputFiles({ name: 'motors.csv', mimeType: 'text/csv', buffer: Buffer.from(SHEET) });
  await page.getByRole('button', { name: 'Start the study' }).click();
  await page.getByRole('button', { name: /^Import/ }).click();
  await expect(page.getByText(/Imported: 2 motors added/)).toBeVisible();
  return new URL(page.url()).pathname.split('/')[1] ?? '';
}

test('a programme is frozen, signed, exported, checked and rejected later; the signature stays', async ({
  page,
  isMobile,
}, info) => {
  const study = await startStudy(page, `Review ${info.project.name} ${info.repeatEachIndex}`);
  await expect(async () => {
    await page.goto(`/${study}/ranking`);
    await expect(page.getByText('R-1').first()).toBeVisible({ timeout: 1_000 });
  }).toPass({ timeout: 40_000 });

  await page.goto(`/${study}/plan`);
  await page.getByRole('button', { name: 'Work the plan out' }).click();
  await expect(page.getByRole('heading', { name: 'Budget by year' })).toBeVisible({ timeout: 30_000 });

  await page.goto(`/${study}/review`);
  await expect(page.getByText('Nothing has been frozen for review yet.')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  await page.getByLabel('Your name').fill('P. Planner');
  await page.getByRole('button', { name: 'Freeze a version' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Version 1' })).toBeVisible();
  await expect(page.getByText(/1 motor is funded for/)).toBeVisible();
  const hash = (await page.getByText(/^Hash/).locator('code').textContent()) ?? '';
  expect(hash).toMatch(/^[0-9a-f]{64}$/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  const others = page.getByText(/R-1, .*other options?$/);
  await others.click();
  const choices = page.getByRole('region', { name: 'Options of R-1' });
  // A phone shows the lines of the table without its heads.
  await expect(
    choices
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader') })
      .first(),
  ).toContainText('chosen');
  const flow = page.getByRole('region', { name: 'Cash flow by year' });
  const single = flow.getByRole('rowheader', { name: 'R-1' });
  if (isMobile) {
    // A phone has the sum, and the motors when they are asked for.
    await expect(flow.getByRole('rowheader', { name: 'All together' })).toBeVisible();
    await expect(single).toBeHidden();
    await page.getByRole('button', { name: 'Motor by motor (1)' }).last().click();
    for (const region of [choices, flow]) await expectNoScrollWithin(region);
  }
  await expect(single).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // Opened, it is whole on a sheet that lies on its side.
  const window = page.viewportSize();
  await page.setViewportSize({ width: 1010, height: 700 });
  await page.emulateMedia({ media: 'print' });
  const opened = page.getByRole('region', { name: 'Options of R-1' });
  expect(await opened.evaluate((region) => region.scrollWidth - region.clientWidth)).toBeLessThanOrEqual(0);
  await page.emulateMedia({ media: null });
  if (window) await page.setViewportSize(window);
  const sums = page.getByRole('region', { name: 'Sums by their source' });
  await expect(sums.getByRole('row', { name: /^the workbook, worked out from its formulas/ })).toBeVisible();
  await expect(page.getByText('All sums agree to the last digit of money.')).toBeVisible();

  // The report is for paper: its hash stands at the foot of every sheet.
  await page.getByRole('link', { name: 'Open the report to print' }).click();
  await expect(page.getByRole('heading', { level: 1, name: /programme for its motors/ })).toBeVisible();
  await expect(page.getByText(/1 of 2 motors for/)).toBeVisible();
  await expect(page.getByText('Nobody has signed or returned it yet.')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
  // As wide as a sheet on its side.
  const screen = page.viewportSize();
  await page.setViewportSize({ width: 1010, height: 700 });
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByText(/^Hash/).locator('code')).toHaveText(hash);
  const margins = await page.evaluate(() =>
    document.adoptedStyleSheets.flatMap((sheet) => [...sheet.cssRules].map(({ cssText }) => cssText)),
  );
  expect(margins.join()).toMatch(new RegExp(`@page wide.*@bottom-left.*${hash}`));
  for (const scroller of await page.getByRole('region').all())
    expect(await scroller.evaluate((region) => region.scrollWidth - region.clientWidth)).toBeLessThanOrEqual(0);
  await page.emulateMedia({ media: null });
  if (screen) await page.setViewportSize(screen);
  await page.getByRole('link', { name: 'Version 1' }).click();

  // Returning wants a comment; signing does not.
  await page.getByLabel('Your name').fill('F. Finance');
  await page.getByRole('button', { name: 'Return' }).click();
  await expect(page.getByText('The comment is missing.')).toBeVisible();
  await expect(page.getByLabel('Comment')).toBeFocused();
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText(/Signed by F. Finance \(name not verified\)/)).toBeVisible();

  const waiting = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Export the file' }).click();
  const exported = readFileSync(await (await waiting).path());
  await page.goto(`/${study}/review`);
  const send = async (buffer: Buffer) => {
    await page.getByLabel('An exported file').setInputFiles({ name: 'copy.json', mimeType: 'application/json', buffer });
    await page.getByRole('button', { name: 'Check the copy' }).click();
  };
  await send(exported);
  await expect(page.getByText(/The file is unchanged and is the signed version 1 of this study/)).toBeVisible();
  await send(Buffer.from(exported.toString().replace('P. Planner', 'Q. Planner')));
  await expect(page.getByText(/it was changed after it was frozen/)).toBeVisible();

  await page.getByRole('link', { name: 'Version 1' }).click();
  await page.getByLabel('Comment').fill('The tariff is out of date.');
  await page.reload();
  await expect(page.getByText('What you had typed and not saved is here again.')).toBeVisible();
  await expect(page.getByLabel('Comment')).toHaveValue('The tariff is out of date.');
  await page.getByRole('button', { name: 'Reject' }).click();
  await expect(page.getByText(/Rejected by F. Finance/)).toBeVisible();
  await expect(page.getByText(/Signed by F. Finance/)).toBeVisible();
  await expect(page.getByText(/Nothing more can be said of it/)).toBeVisible();
  await page.goto(`/${study}/review`);
  await page.getByLabel('Or the hash of a printed page').fill(hash.slice(0, 12));
  await page.getByRole('button', { name: 'Check the copy' }).click();
  await expect(page.getByText(/The hash is that of the signed version 1 of this study; it was last rejected/)).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});

test('a long version begins its lists with a part, and shows all of them on request', { tag: '@once' }, async ({ page }) => {
  // Two hundred motors are evaluated, planned and frozen, and three long pages are looked at.
  const study = await plantStudy('Long version', 200, { evaluated: true });
  await page.goto(`/${study}/plan`);
  await page.getByRole('button', { name: 'Work the plan out' }).click();
  await expect(page.getByRole('heading', { name: 'Budget by year' })).toBeVisible({ timeout: 60_000 });
  await expectPartOnPhone(page, /^Plan of/);
  await page.goto(`/${study}/review`);
  await page.getByLabel('Your name').fill('P. Planner');
  await page.getByRole('button', { name: 'Freeze a version' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Version 1' })).toBeVisible({ timeout: 30_000 });
  const version = page.url();
  await expectPartOnPhone(page, /^Funded in/);
  await page.goto(version);
  const waiting = page.getByRole('region', { name: 'Motors changed once they fail' });
  // A head, fifty motors and the sum of all.
  await expect(waiting.getByRole('row')).toHaveCount(52);
  // Paper has every one that waits, whatever the screen shows.
  const waits = Number(/^All (\d+)$/.exec((await waiting.getByRole('rowheader').last().textContent()) ?? '')?.[1]);
  expect(waits).toBeGreaterThan(50);
  await page.emulateMedia({ media: 'print' });
  await expect(waiting.getByRole('row')).toHaveCount(waits + 2);
  await expect(page.getByText(/^Here are/).filter({ visible: true })).toHaveCount(0);
  await page.emulateMedia({ media: null });
  await expect(page.getByRole('columnheader', { name: /^Chance to pay back within 3 years$/ }).first()).toBeVisible();
  // What is assumed goes by the words of Setup.
  const settings = page.getByRole('region', { name: 'Settings as frozen' });
  await expect(settings.getByRole('row', { name: /^Longest payback years/ })).toContainText('as the study began');
  await page
    .getByText(/^Here are 50 of \d+\./)
    .first()
    .getByRole('link')
    .click();
  await expect(page).toHaveURL(/all=1#at-failure$/);
  await expect(waiting.getByRole('row')).toHaveCount(waits + 2);
  await expect(page.getByText(/^Here are 50 of/)).toHaveCount(0);
  await expectAccessible(page);
});

/** A phone begins the lines of a year with a part and has all on request; the desktop and paper have all at once. */
async function expectPartOnPhone(page: Page, name: RegExp): Promise<void> {
  const rows = page.getByRole('region', { name }).first().getByRole('rowheader');
  const whole = page.viewportSize();
  const all = await rows.count();
  expect(all).toBeGreaterThan(25);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect(rows).toHaveCount(25);
  await expectNoSidewaysScroll(page);
  await page.emulateMedia({ media: 'print' });
  await expect(rows).toHaveCount(all);
  await page.emulateMedia({ media: null });
  await page.getByText(`Here are 25 of ${all}.`).getByRole('link').click();
  await expect(page).toHaveURL(/all=1#year-\d{4}$/);
  await expect(rows).toHaveCount(all);
  if (whole) await page.setViewportSize(whole);
}
