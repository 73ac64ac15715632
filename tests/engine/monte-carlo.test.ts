import { describe, expect, it } from 'vitest';
import type { Motor } from '@/lib/engine';
import { parseFleet } from '@/lib/features/fleet/parse';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { sheetText, simulateFleet } from '../simulator/fleet';
import { Chance } from '../simulator/random';
import { compare, normalQuantile } from './support/monte-carlo';

const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };

async function motorsOf(seed: number, motors: number): Promise<Motor[]> {
  const fleet = simulateFleet({ seed, motors });
  const parsed = await parseFleet(
    { name: 'drawn.csv', text: sheetText(fleet.map(({ cells }) => cells)) },
    { asOf: study.settings.asOf },
  );
  if (!parsed.ok) throw new Error(parsed.problem.text);
  return parsed.motors.map(({ motor }) => motor);
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

describe('first-order doubt against drawn sheets (JCGM 101)', () => {
  it('normal quantiles are those of the tables', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959964, 6);
    expect(normalQuantile(0.5)).toBeCloseTo(0, 12);
    expect(normalQuantile(0.05)).toBeCloseTo(-1.644854, 6);
  });

  it('standard uncertainties of shaft power and efficiency agree with the scatter of draws', async () => {
    const motors = await motorsOf(51, 50);
    const compared = motors.flatMap((motor, i) => {
      const found = compare(motor, study, { chance: new Chance(i), draws: 120, normal: true });
      return found ? [found] : [];
    });
    expect(compared.length).toBeGreaterThan(45);
    for (const watched of ['shaftPower', 'efficiency'] as const) {
      const ratios = compared.map((found) => found[watched].sd / found[watched].figure.u);
      expect(Math.abs(median(ratios) - 1), watched).toBeLessThan(0.05);
    }
  });
});
