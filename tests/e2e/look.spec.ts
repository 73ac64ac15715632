import type { Page } from '@playwright/test';
import { DEMO_SITE } from '@/lib/features/demo/scenario';
import { expect, test } from './page-watch';
import { plantStudy, sharedStudy } from './support-fleet';

const SCREENS = [
  'fleet',
  'ranking',
  'plan',
  'review',
  'trust',
  'worklist',
  'import',
  'setup',
  'history',
  'method',
  'tables',
] as const;

/** Every screen of a study, a motor with all its parts and its forms among them, as paths below the study. */
async function screensOf(page: Page, study: string): Promise<readonly string[]> {
  await page.goto(`/${study}/ranking`);
  const motor = (await page.getByRole('rowheader').getByRole('link').first().getAttribute('href')) ?? '';
  const path = motor.replace(`/${study}/`, '');
  return [
    ...SCREENS,
    path,
    `${path}/lines`,
    `${path}/edit`,
    `${path}/reading`,
    `${path}/why?figure=shaft_power`,
    `trust/round?m=${path.replace('motor/', '')}`,
    'tables/vibration-zones',
    `setup/tariff?site=${encodeURIComponent(DEMO_SITE)}`,
  ];
}

test('every screen holds at 400 % zoom, without colours of its own, and without motion', { tag: '@once' }, async ({ page }) => {
  const study = await plantStudy('Look', 30, { evaluated: true });
  await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
  // 1280 px wide at 400 % leaves 320 px (WCAG 2.2, 1.4.10).
  await page.setViewportSize({ width: 320, height: 700 });
  for (const screen of await screensOf(page, study)) {
    await page.goto(`/${study}/${screen}`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(sideways, `${screen} scrolls sideways`).toBe(0);
    const moving = await page.evaluate(
      () => document.getAnimations().filter((animation) => animation.playState === 'running').length,
    );
    expect(moving, `${screen} moves`).toBe(0);
  }
});

test('every screen prints light, whatever the screen shows, and without its navigation', { tag: '@once' }, async ({ page }) => {
  const study = await plantStudy('Print', 30, { evaluated: true });
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  for (const screen of (await screensOf(page, study)).filter((path) => !path.startsWith('import'))) {
    await page.goto(`/${study}/${screen}`);
    const paper = await page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
    expect(
      paper === 'rgba(0, 0, 0, 0)' || /rgb\((2[0-9]{2}), (2[0-9]{2}), (2[0-9]{2})\)/.test(paper),
      `${screen} prints on ${paper}`,
    ).toBe(true);
    await expect(page.getByRole('link', { name: 'Setup' })).toBeHidden();
  }
});

test('on a phone the ways to the screens are one line with the open one in sight, and each is reached by keyboard', {
  tag: '@once',
}, async ({ page }) => {
  const study = await sharedStudy(60);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(`/${study}/tables`);
  const ways = page.getByRole('navigation', { name: 'Screens' });
  await expect(ways.getByRole('link', { name: 'Tables' })).toBeInViewport({ ratio: 1 });
  const tops = await ways.getByRole('link').evaluateAll((links) => links.map((link) => link.getBoundingClientRect().top));
  expect(new Set(tops).size).toBe(1);
  await ways.getByRole('link', { name: 'Tables' }).focus();
  for (const name of ['Method', 'History', 'Setup', 'Bench test', 'Import', 'Worklist', 'Review', 'Trust', 'Plan']) {
    await page.keyboard.press('Shift+Tab');
    await expect(ways.getByRole('link', { name })).toBeFocused();
    await expect(ways.getByRole('link', { name })).toBeInViewport({ ratio: 1 });
  }
});

test('the tag of a ranked motor stays in sight while its columns are pushed aside, the head down a long list', {
  tag: '@once',
}, async ({ page }) => {
  const study = await sharedStudy(60);
  await page.setViewportSize({ width: 800, height: 900 });
  await page.goto(`/${study}/ranking`);
  const list = page.getByRole('region', { name: 'Motors in rank order' });
  const tag = list.getByRole('rowheader').first();
  await list.evaluate((region) => region.scrollTo({ left: region.scrollWidth }));
  const [at, from] = [await tag.boundingBox(), await list.boundingBox()];
  expect(at?.x).toBeCloseTo(from?.x ?? 0, 0);
  // From a laptop on all columns fit.
  await page.setViewportSize({ width: 1280, height: 800 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
  await list.getByRole('row').nth(30).scrollIntoViewIfNeeded();
  await expect(list.getByRole('columnheader', { name: 'Motor' })).toBeInViewport();
});
