import type { Page } from '@playwright/test';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';
import { sharedStudy } from './support-fleet';

test('what if energy were dearer: the fleet is ranked at once, the address keeps it, and it can be taken back', async ({
  page,
}) => {
  const study = await sharedStudy(200);
  await page.goto(`/${study}/ranking`);
  const stored = await page.getByText(/^Replacing \d+ motors? now costs/).textContent();
  const count = Number(stored?.match(/Replacing (\d+)/)?.[1]);
  const names = await watchTitle(page);
  await page.getByText('What if prices, hours, costs or the rate were others?').click();
  const price = page.getByRole('spinbutton', { name: 'Energy price' });
  await expect(price).toHaveValue('1');
  await price.fill('2');
  const answer = page.getByText(/^With energy at [\d.]+ USD\/kWh, 100\s% more: replacing/);
  await expect(answer).toBeVisible();
  // The stored sums stand beside the moved ones, reckoned by the browser: they must be those that the server says.
  await expect(page.getByText(new RegExp(`As the study stands it is ${count} motors?`))).toBeVisible();
  const more = Number((await answer.textContent())?.match(/replacing (\d+)/)?.[1]);
  expect(more).toBeGreaterThan(count);
  await expect(page.getByText(/\d+ decisions turn\./)).toBeVisible();
  await expect(page.getByRole('region', { name: 'Motors in rank order as moved' }).getByText(/^was /).first()).toBeVisible();
  await expect(page).toHaveURL(/price=2/);
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);

  // By the keyboard alone, on the slide.
  const cost = page.getByRole('slider', { name: 'Costs, slide' });
  await cost.focus();
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText(/^With .*; costs \d+\s% more: replacing/)).toBeVisible();
  await expect(page).toHaveURL(/price=2&cost=1\.04/);
  // The page keeps its name through all of it, and a motor's page leads back to the moves.
  expect(await names()).toEqual([expect.stringMatching(/^Ranking · .* · Lossbook$/)]);
  await page.getByRole('region', { name: 'Motors in rank order as moved' }).getByRole('link').first().click();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Ranking');
  await page.goBack();
  await expect(page.getByText(/^With .*; costs \d+\s% more: replacing/)).toBeVisible();
  await page.reload();
  await expect(page.getByText(/^With .*; costs \d+\s% more: replacing/)).toBeVisible();
  await expect(price).toHaveValue('2');
  await page.getByRole('link', { name: /^keep \(\d+\)$/ }).click();
  await expect(page).toHaveURL(/decision=keep/);
  await expect(page).toHaveURL(/price=2/);
  await page.getByRole('button', { name: 'As the study stands' }).click();
  await expect(page.getByText(stored ?? '')).toBeVisible();
  await expect(page).not.toHaveURL(/price=/);
});

/** Notes each title that the page has from now on. */
async function watchTitle(page: Page): Promise<() => Promise<string[]>> {
  await expect(page).toHaveTitle(/\S/);
  const seen = await page.evaluateHandle(() => {
    const titles = [document.title];
    const note = (): void => {
      if (titles.at(-1) !== document.title) titles.push(document.title);
    };
    new MutationObserver(note).observe(document, { subtree: true, childList: true, characterData: true });
    return titles;
  });
  return () => seen.jsonValue();
}
