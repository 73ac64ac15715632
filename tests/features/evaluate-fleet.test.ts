import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, motorResult } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { evaluateFleet } from '@/lib/features/evaluation/evaluate-fleet';
import { rankedHead, type TextBlock, type TextKey, unrankedLine } from '@/lib/features/evaluation/result-text';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };
const demo = generateDemo({ asOf: '2026-01-01', seed: 7 }).map(({ motor }) => motor);
/** Enough for two helpers. */
const fleet = Array.from({ length: 8 }, (_, copy) => demo.map((motor) => ({ ...motor, tag: `${motor.tag}/${copy}` }))).flat();

function textsOf(blocks: readonly TextBlock[], headOf: (key: TextKey) => string): string[] {
  return blocks.flatMap(({ keys, bytes, ends }) =>
    keys.map((key, at) => headOf(key) + Buffer.from(bytes.subarray(ends[at - 1] ?? 0, ends[at])).toString('utf8')),
  );
}

async function texts(
  motors: readonly Motor[],
  shape: 'json' | 'lines',
  jobs: number,
  headOf: (key: TextKey) => string,
): Promise<string[]> {
  const blocks: TextBlock[] = [];
  const finished = await evaluateFleet(motors, study, {
    jobs,
    shape,
    take: (block) => {
      blocks.push(block);
    },
  });
  expect(finished).toBe(true);
  return textsOf(blocks, headOf);
}

describe('a fleet', () => {
  it('comes in order, each motor as it is evaluated alone, whatever the number of threads', async () => {
    const alone = fleet.map((motor) => {
      const { ranking: _, likeness: _l, site, tag, ...rest } = motorResult(evaluateMotor(motor, study));
      return JSON.stringify({ site, tag, rank: 1, ...rest });
    });
    for (const jobs of [1, 2, 3])
      expect(await texts(fleet, 'json', jobs, (key) => rankedHead(key, 1)), `${jobs} jobs`).toEqual(alone);
  });

  it('has the same cells in a line of a list as in its whole results', async () => {
    const alone = demo.map((motor) => unrankedLine(motorResult(evaluateMotor(motor, study))));
    expect(await texts(demo, 'lines', 1, () => '')).toEqual(alone);
  });

  it('waits until a block is taken in before it gives the next', async () => {
    let inside = 0;
    let most = 0;
    await evaluateFleet(demo, study, {
      jobs: 1,
      shape: 'rows',
      take: async () => {
        most = Math.max(most, ++inside);
        await new Promise((resolve) => setTimeout(resolve, 5));
        inside -= 1;
      },
    });
    expect(most).toBe(1);
  });

  it('stops when it is cancelled, and says so', async () => {
    let blocks = 0;
    const finished = await evaluateFleet(fleet, study, {
      jobs: 2,
      shape: 'rows',
      take: () => {
        blocks += 1;
      },
      cancelled: () => blocks === 2,
    });
    expect([finished, blocks]).toEqual([false, 2]);
  });

  it('without motors is finished at once', async () => {
    expect(await evaluateFleet([], study, { jobs: 2, shape: 'json', take: () => expect.unreachable() })).toBe(true);
  });
});
