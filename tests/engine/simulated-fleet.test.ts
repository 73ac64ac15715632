import { beforeAll, describe, expect, it } from 'vitest';
import type { UnrankedMotor } from '@/lib/engine';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { corruptFleet } from '../simulator/corrupt';
import { simulateFleet } from '../simulator/fleet';
import { Chance } from '../simulator/random';
import { evaluateRows, limitsOf, scoreOf } from './support/simulated';

const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };
const fleet = simulateFleet({ seed: 31, motors: 600 });

describe('a simulated fleet through parser and engine', () => {
  let results: ReadonlyMap<string, UnrankedMotor> = new Map();
  beforeAll(async () => {
    results = await evaluateRows(
      fleet.map(({ cells }) => cells),
      study,
    );
  });

  it('every row is understood and every motor has a result', () => {
    expect(results.size).toBe(fleet.length);
  });

  it('nearly every motor gets a load, an efficiency and five losses, which balance', () => {
    const answered = [...results.values()].filter(({ shaft_power }) => shaft_power !== undefined);
    expect(answered.length / fleet.length).toBeGreaterThan(0.98);
    for (const { shaft_power, input_power, losses, tag } of answered) {
      if (!shaft_power || !input_power || !losses) throw new Error(`${tag} is half answered`);
      const { total, ...five } = losses;
      const sum = Object.values(five).reduce((added, figure) => added + figure.value, 0);
      expect(Math.abs(sum / total.value - 1), tag).toBeLessThan(1e-6);
      expect(Math.abs(input_power.value - shaft_power.value - total.value) / input_power.value, tag).toBeLessThan(1e-6);
      const [low, high] = limitsOf(shaft_power);
      expect(low, tag).toBeLessThan(high);
    }
  });

  it('an instrument of power finds the load within two points on average, and most truths within the limits', () => {
    const powered = fleet.filter(({ set }) => set === 'all' || set === 'power-volts-amps');
    const score = scoreOf(powered, results);
    expect(score.meanAbsolute.load).toBeLessThan(2);
    expect(score.coverage.power).toBeGreaterThan(0.85);
    expect(score.coverage.efficiency).toBeGreaterThan(0.85);
  });

  it('every sheet with a planted mistake is still read and answered as a value', async () => {
    const corrupted = corruptFleet(new Chance(4), fleet, 8);
    const found = await evaluateRows(
      corrupted.map(({ cells }) => cells),
      study,
    );
    expect(found.size).toBe(corrupted.length);
    for (const { trust, tag } of found.values()) expect(['sound', 'provisional', 'not-usable'], tag).toContain(trust.level);
  });
});
