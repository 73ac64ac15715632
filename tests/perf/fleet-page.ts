import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { chromium, type Page } from '@playwright/test';
import { findChromium } from '@/scripts/find-chromium';
import type { Measure } from './engine';
import { storedFleet } from './fleet-store';

/** The fleet's page of 10,000 motors on the built program: from navigation to rows, sorting, filtering, memory of the server. */
export async function fleetPage(): Promise<Measure[]> {
  const fleet = await storedFleet();
  const server = spawn(process.execPath, ['scripts/start.mjs'], {
    env: { ...process.env, PORT: '0', LOSSBOOK_DATA: fleet.folder },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const browser = await chromium.launch({ executablePath: findChromium(), args: ['--no-sandbox', '--disable-gpu'] });
  try {
    const address = await addressOf(server);
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    const study = `${address}/${fleet.studyId}`;
    const measures = [...(await measurePage(page, `${study}/fleet`)), await measureMoves(page, `${study}/ranking`)];
    return [...fleet.measures, ...measures, memoryOf(server)];
  } finally {
    await browser.close();
    server.kill('SIGTERM');
    fleet.remove();
  }
}

function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    server.stdout?.on('data', (part: Buffer) => {
      said += part.toString();
      const address = /Lossbook is at (\S+)/.exec(said)?.[1];
      if (address !== undefined) resolve(address);
    });
    server.on('exit', () => reject(new Error(`The program did not start: ${said}`)));
  });
}

/** Rows that fill a usual window. */
const FIRST_ROWS = 30;

async function measurePage(page: Page, address: string): Promise<Measure[]> {
  const measures: Measure[] = [];
  for (const what of ['fleet page, cold: navigation to 30 rows', 'fleet page, warm: navigation to 30 rows']) {
    const start = performance.now();
    await page.goto(address);
    await page
      .locator('tr[aria-selected]')
      .nth(FIRST_ROWS - 1)
      .waitFor({ state: 'attached' });
    measures.push({ what, value: (performance.now() - start) / 1000, unit: 's', bar: '1 s, warm' });
  }
  const press = async (what: string, act: () => Promise<void>, settled: string): Promise<void> => {
    const start = performance.now();
    await act();
    await page.locator(settled).first().waitFor();
    measures.push({ what, value: (performance.now() - start) / 1000, unit: 's', bar: '0.1 s' });
  };
  const head = page.locator('th[data-column="net_present_value"] button');
  await head.scrollIntoViewIfNeeded();
  await press('sort by present value, with the click', () => head.click(), 'th[data-column="net_present_value"][aria-sort]');
  const painted = await head.evaluate(framesAfterClick);
  measures.push({ what: 'sort by present value, from the click to the frame', value: painted / 1000, unit: 's', bar: '0.1 s' });
  await press(
    'search, with the typing',
    () => page.locator('#fleet-search').fill('pump'),
    'p[role="status"]:has-text(" of 10,000 motors")',
  );
  return measures;
}

/** Milliseconds from a click until the browser has painted what came of it; what the driver of the browser takes is not in it. */
function framesAfterClick(button: HTMLElement | SVGElement): Promise<number> {
  return new Promise((resolve) => {
    const start = performance.now();
    if (button instanceof HTMLElement) button.click();
    // The first frame is asked for before it is painted, the second after it.
    requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now() - start)));
  });
}

/** Moving the energy price on the ranking: from the slide to the frame that shows what the fleet then comes to. */
async function measureMoves(page: Page, address: string): Promise<Measure> {
  await page.goto(`${address}?price=1.1`);
  await page.getByText('What if prices, hours, costs or the rate were others?').click();
  const slide = page.getByLabel('Energy price, slide');
  await slide.focus();
  await page.keyboard.press('ArrowRight');
  await page.getByRole('status').filter({ hasText: 'With energy' }).waitFor();
  const taken = await slide.evaluate(framesAfterMoves, 15);
  taken.sort((a, b) => a - b);
  return {
    what: 'what if: one move of the price, to the frame (median of 15)',
    value: (taken[7] ?? Number.NaN) / 1000,
    unit: 's',
    bar: '0.1 s',
  };
}

/** Milliseconds of each of some moves of a slide, from its event until the frame in which the answer has changed. */
async function framesAfterMoves(slide: HTMLElement | SVGElement, moves: number): Promise<number[]> {
  const taken: number[] = [];
  // No function with a name in here: the loader would wrap it in a helper that the browser lacks.
  const answers = document.getElementsByClassName(document.querySelector('main p[role="status"]')?.className ?? '');
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
  for (let i = 1; i <= moves; i++) {
    const before = answers[0]?.textContent;
    const start = performance.now();
    // The page watches the property: it has to be set as the browser does it.
    set?.call(slide, String(0.1 + 0.05 * i));
    slide.dispatchEvent(new Event('input', { bubbles: true }));
    while (answers[0]?.textContent === before && performance.now() - start < 10_000)
      await new Promise((resolve) => requestAnimationFrame(resolve));
    taken.push(performance.now() - start);
    await new Promise((resolve) => setTimeout(resolve, 300));
  }
  return taken;
}

/** Resident memory of the server, where the system tells it. */
function memoryOf(server: ChildProcess): Measure {
  const status = readFileSync(`/proc/${server.pid}/status`, 'utf8');
  const kilobytes = Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? Number.NaN);
  return { what: 'memory of the server', value: kilobytes / 1024, unit: 'MiB', bar: '1024 MiB' };
}
