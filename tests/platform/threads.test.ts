import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { busyResponse, Places, startApart } from '@/lib/platform/threads';

/** A place that must have been given. */
async function placeIn(places: Places): Promise<() => void> {
  const leave = await places.enter();
  if (leave === 'busy') throw new Error('turned away');
  return leave;
}

describe('places for work apart', () => {
  it('lets so many in at once, the next ones wait in their order, and more are turned away', async () => {
    const places = new Places({ atOnce: 2, mayWait: 2 });
    const [first, second] = [await placeIn(places), await placeIn(places)];
    const order: string[] = [];
    const third = placeIn(places).then((leave) => {
      order.push('third');
      return leave;
    });
    const fourth = placeIn(places).then((leave) => {
      order.push('fourth');
      return leave;
    });
    expect(await places.enter()).toBe('busy');
    expect(order).toEqual([]);
    second();
    await third;
    expect(order).toEqual(['third']);
    // A place that is given back twice is one place.
    second();
    await Promise.resolve();
    expect(order).toEqual(['third']);
    first();
    (await fourth)();
    (await third)();
    await placeIn(places);
    await placeIn(places);
  });

  it('turns all but the first away where nobody may wait', async () => {
    const places = new Places({ atOnce: 1, mayWait: 0 });
    const leave = await placeIn(places);
    expect(await places.enter()).toBe('busy');
    leave();
    await placeIn(places);
  });

  it('keeps the place of a thread until it ends, also when it fails', async () => {
    const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-test-'));
    vi.stubEnv('LOSSBOOK_DATA', folder);
    const places = new Places({ atOnce: 1, mayWait: 1 });
    const thread = await startApart('lib/platform/no-such-program.ts', {}, places);
    if (thread === 'busy') throw new Error('turned away');
    const failed = new Promise((resolve) => thread.on('error', resolve));
    let entered = false;
    const next = placeIn(places).then(() => {
      entered = true;
    });
    await Promise.resolve();
    expect(entered).toBe(false);
    expect(await places.enter()).toBe('busy');
    expect(await failed).toBeInstanceOf(Error);
    await next;
    expect(entered).toBe(true);
    vi.unstubAllEnvs();
    rmSync(folder, { recursive: true, force: true });
  });

  it('answers who is turned away with a sentence and when to come again', async () => {
    const answer = busyResponse();
    expect(answer.status).toBe(503);
    expect(answer.headers.get('retry-after')).toBe('60');
    expect(await answer.text()).toMatch(/^Too many .*\.\n$/);
  });
});
