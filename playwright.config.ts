import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { defineConfig } from '@playwright/test';
import { findChromium } from './scripts/find-chromium';

// This file is read by the runner and again by each of its workers; what is chosen here is handed down by the environment.
process.env.E2E_PORT ??= execFileSync(process.execPath, [
  '-e',
  "const s = require('net').createServer().listen(0, '127.0.0.1', () => { process.stdout.write(String(s.address().port)); s.close(); })",
]).toString();
process.env.E2E_DATA ??= mkdtempSync(path.join(tmpdir(), 'lossbook-e2e-'));

const address = `http://127.0.0.1:${process.env.E2E_PORT}`;
const desktop = { viewport: { width: 1440, height: 900 } };
const phone = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true };

/** Tests that set the size themselves, or don't look at it, would be the same test in both projects: they run in the first. */
const ONCE = /@once/;
/** Tests that touch every study wait until all others are done. */
const ALONE = /@alone/;

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  globalTeardown: './tests/e2e/remove-data.ts',
  // The journeys share one program and one database; each has a study of its own, so two may be under way.
  workers: 2,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  // Ends what hangs; no test is to be quick on a busy machine.
  timeout: 300_000,
  expect: { timeout: 20_000 },
  // A failure is told again at the end, where a log that was cut still has it.
  reporter: 'list',
  use: {
    baseURL: address,
    browserName: 'chromium',
    locale: 'en-US',
    timezoneId: 'UTC',
    // A trace of every step costs a quarter of the time; `--trace retain-on-failure` writes one of a test that fails.
    trace: 'off',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: findChromium(),
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    { name: 'desktop', grepInvert: ALONE, use: { ...desktop, colorScheme: 'light' } },
    { name: 'phone', grepInvert: [ONCE, ALONE], use: { ...phone, colorScheme: 'light' } },
    { name: 'alone', grep: ALONE, dependencies: ['desktop', 'phone'], use: { ...desktop, colorScheme: 'light' } },
  ],
  webServer: {
    command: `${JSON.stringify(process.execPath)} scripts/start.mjs`,
    // Not the health check: when that is red, a test says so at once.
    url: address,
    env: { PORT: process.env.E2E_PORT, LOSSBOOK_DATA: process.env.E2E_DATA },
    // It builds when something changed.
    timeout: 600_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 10_000 },
    stdout: 'pipe',
    stderr: 'pipe',
  },
});
