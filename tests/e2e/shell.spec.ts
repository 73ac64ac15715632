import { test as plainTest } from '@playwright/test';
import { expect, expectAccessible, expectNoSidewaysScroll, test } from './page-watch';
import { plantStudy } from './support-fleet';

test('the program says that it is sound', { tag: '@once' }, async ({ request }) => {
  const response = await request.get('/api/health');
  expect(response.status()).toBe(200);
  expect(await response.json()).toMatchObject({ status: 'ok' });
});

test('the first page is whole, accessible and quiet', async ({ page }) => {
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.locator('main#main')).toBeVisible();
  await expectAccessible(page);
  await expectNoSidewaysScroll(page);
});

test('the policy allows no eval and no script without the nonce', { tag: '@once' }, async ({ page }) => {
  const response = await page.goto('/');
  const policy = response?.headers()['content-security-policy'] ?? '';
  const scripts = policy.split('; ').find((part) => part.startsWith('script-src')) ?? '';
  expect(scripts).toMatch(/'nonce-[A-Za-z0-9+/=]{24}'/);
  expect(policy).not.toContain('unsafe-eval');
  expect(scripts).not.toContain('unsafe-inline');
  const second = await page.goto('/');
  expect(second?.headers()['content-security-policy']).not.toBe(policy);
  const bare = await page.locator('script:not([nonce])').count();
  expect(bare).toBe(0);
});

test('the page follows the colours of the computer, and the choice in the cookie first', async ({ page, context }) => {
  const PAGE = { light: 'rgb(251, 250, 246)', dark: 'rgb(20, 23, 26)' };
  await page.goto('/');
  const shown = () => page.evaluate(() => getComputedStyle(document.documentElement).backgroundColor);
  for (const [given, other] of [
    ['light', 'dark'],
    ['dark', 'light'],
  ] as const) {
    await context.clearCookies();
    await page.emulateMedia({ media: 'screen', colorScheme: given });
    await page.reload();
    expect(await shown()).toBe(PAGE[given]);
    await context.addCookies([{ name: 'theme', value: other, url: page.url() }]);
    await page.reload();
    expect(await shown()).toBe(PAGE[other]);
    await page.emulateMedia({ media: 'print' });
    expect(await shown()).toBe('rgb(255, 255, 255)');
  }
});

test('the way past the navigation is the first stop of the keyboard', async ({ page }) => {
  await page.goto('/');
  await page.keyboard.press('Tab');
  const skip = page.getByRole('link', { name: 'Skip to the main part' });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport();
});

// Chromium notes the 404 of the page itself in the console, so this one test does not watch it.
plainTest('an unknown address is answered in words', async ({ page }) => {
  const response = await page.goto('/nowhere');
  expect(response?.status()).toBe(404);
  await expect(page.getByRole('heading', { name: 'There is no such page' })).toBeVisible();
  await expectAccessible(page);
});

test('strangers and other sites are refused', { tag: '@once' }, async ({ request }) => {
  expect((await request.get('/', { headers: { host: 'elsewhere.example' } })).status()).toBe(421);
  expect((await request.post('/', { headers: { origin: 'http://elsewhere.example' } })).status()).toBe(403);
  expect((await request.post('/', { headers: { 'sec-fetch-site': 'cross-site' } })).status()).toBe(403);
});

plainTest('what a study does not have leaves the ways to its screens', { tag: '@once' }, async ({ page }) => {
  const study = await plantStudy('Not there', 1, { evaluated: false });
  for (const path of [
    'motor/01a21ac5-f27e-7d7a-afca-604ced27c0f3',
    'review/9',
    'tables/none',
    'bench/x',
    'nowhere',
    'ranking/nowhere',
  ]) {
    const response = await page.goto(`/${study}/${path}`);
    expect(response?.status(), path).toBe(404);
    await expect(page.getByRole('heading', { name: 'There is no such page' })).toBeVisible();
  }
  await expectAccessible(page);
  await page.getByRole('link', { name: 'Worklist' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Worklist' })).toBeVisible();
});
