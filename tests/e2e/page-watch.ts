import AxeBuilder from '@axe-core/playwright';
import { test as base, expect, type Page } from '@playwright/test';

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
  // The title comes with the streamed page, a moment after its heading.
  await expect(page).toHaveTitle(/\S/);
  const all = new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']);
  expect(wordsOf(await all.analyze())).toEqual([]);
  const { name, use } = base.info().project;
  if (name !== 'desktop') return;
  const given = use.colorScheme ?? 'light';
  await page.emulateMedia({ colorScheme: given === 'dark' ? 'light' : 'dark' });
  expect(wordsOf(await new AxeBuilder({ page }).withRules(['color-contrast']).analyze()), 'in the other colours').toEqual([]);
  await page.emulateMedia({ colorScheme: given });
}

function wordsOf({ violations }: Awaited<ReturnType<AxeBuilder['analyze']>>): string[] {
  return violations.map((violation) => `${violation.id}: ${violation.nodes.map((node) => node.html).join(' ')}`);
}

export { expect } from '@playwright/test';
