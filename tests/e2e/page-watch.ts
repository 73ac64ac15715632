import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Locator, type Page } from '@playwright/test';

/** A test that fails when the page says anything in its console, throws, or breaks its Content-Security-Policy. */
export const test = base.extend<{ quiet: undefined }>({
  quiet: [
    async ({ page }, use) => {
      const said: string[] = [];
      page.on('console', (message) => said.push(`${message.type()}: ${message.text()}`));
      page.on('pageerror', (error) => said.push(`error: ${error.message}`));
      await use(undefined);
      expect(said, 'messages in the console of the page').toEqual([]);
    },
    { auto: true },
  ],
});

/**
 * Fails with the rules and elements when the page breaks WCAG 2.2 A or AA as far as axe can tell. Dark colours change nothing but contrast, so
 * on the desktop that one rule is asked once more in the dark.
 */
export async function expectAccessible(page: Page): Promise<void> {
  // The title comes with the streamed page, a moment after its heading; while one page gives way to the next there is none.
  await expect(page).toHaveTitle(/\S/);
  // The quick way of asking looks at one frame, and so sees all of a page that has no other.
  expect(page.frames()).toHaveLength(1);
  const all = axe(page).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']);
  expect(wordsOf(await all.analyze())).toEqual([]);
  const { name, use } = base.info().project;
  if (name !== 'desktop') return;
  const given = use.colorScheme ?? 'light';
  await page.emulateMedia({ colorScheme: given === 'dark' ? 'light' : 'dark' });
  expect(wordsOf(await axe(page).withRules(['color-contrast']).analyze()), 'in the other colours').toEqual([]);
  await page.emulateMedia({ colorScheme: given });
}

/** Axe in the page itself, writing down what is broken alone: a third of the time on a long page, with the same findings. */
function axe(page: Page): AxeBuilder {
  return new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode();
}

/** Fails when the page scrolls sideways. */
export async function expectNoSidewaysScroll(page: Page): Promise<void> {
  expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(0);
}

/** Fails when a table scrolls sideways within its region, as none of those does that are lines on a phone. */
export async function expectNoScrollWithin(region: Locator): Promise<void> {
  await expect(region).toBeVisible();
  expect(await region.evaluate((shown) => shown.scrollWidth - shown.clientWidth)).toBeLessThanOrEqual(0);
}

/** Fails when a column is cut off on a sheet that lies on its side. */
export async function expectWholeOnPaper(page: Page): Promise<void> {
  const screen = page.viewportSize();
  await page.setViewportSize({ width: 1010, height: 700 });
  await page.emulateMedia({ media: 'print' });
  for (const scroller of await page.getByRole('region').all())
    expect(await scroller.evaluate((region) => region.scrollWidth - region.clientWidth)).toBeLessThanOrEqual(0);
  await page.emulateMedia({ media: null });
  if (screen) await page.setViewportSize(screen);
}

function wordsOf({ violations }: Awaited<ReturnType<AxeBuilder['analyze']>>): string[] {
  return violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html).join(' ')}`);
}

export { expect } from '@playwright/test';
