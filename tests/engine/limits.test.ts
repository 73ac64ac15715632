import { describe, expect, it } from 'vitest';
import { type Evaluation, evaluateMotor, motorResult, standardUncertainty } from '@/lib/engine';
import { limitsOf } from '@/lib/engine/explain/limits-of';
import { drawnLimits } from '@/lib/engine/load/drawn-limits';
import { ESTIMATED, type Estimated, Estimator } from '@/lib/engine/load/estimator';
import { figureLimits } from '@/lib/engine/load/figure-limits';
import { pointFigures, pointLimits } from '@/lib/engine/load/limits';
import { coverageFactor, rectangularShare } from '@/lib/engine/quantity/coverage';
import { tidy } from '@/lib/engine/result-figure';
import { parseFleet } from '@/lib/features/fleet/parse';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { sheetText, simulateFleet } from '../simulator/fleet';
import { Chance } from '../simulator/random';
import { quantile } from './support/monte-carlo';

const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };

describe('coverage factor of a rectangular error in a normal rest', () => {
  it('is that of the normal and of the rectangular distribution at the ends (JCGM 100, tables G.1 and 4.3.7)', () => {
    expect(coverageFactor(0)).toBeCloseTo(1.959964, 6);
    expect(coverageFactor(1)).toBeCloseTo(0.95 * Math.sqrt(3), 10);
  });

  it('is that of drawn sums between', () => {
    const chance = new Chance(3);
    for (const share of [0.3, 0.6, 0.8, 0.9, 0.97]) {
      const sums = Array.from({ length: 200_000 }, () =>
        Math.abs(Math.sqrt(3 * share) * chance.between(-1, 1) + Math.sqrt(1 - share) * chance.normal(0, 1)),
      ).sort((a, b) => a - b);
      // Four standard errors of that quantile, at its density of about 0.1.
      expect(Math.abs(coverageFactor(share) - quantile(sums, 0.95)), `share ${share}`).toBeLessThan(0.02);
    }
  });
});

/** What limits from some thousand draws scatter by themselves, as a share of the width. */
const SCATTER = 0.01;

async function evaluations(seed: number, motors: number): Promise<{ set: string; evaluation: Evaluation }[]> {
  const fleet = simulateFleet({ seed, motors });
  const parsed = await parseFleet(
    { name: 'drawn.csv', text: sheetText(fleet.map(({ cells }) => cells)) },
    { asOf: study.settings.asOf },
  );
  if (!parsed.ok) throw new Error(parsed.problem.text);
  return parsed.motors.map(({ motor }, i) => ({ set: fleet[i]?.set ?? '', evaluation: evaluateMotor(motor, study) }));
}

/** Limits of the figures by draws of all sources, the linear part of which is known exactly and taken out of the draws' own scatter. */
function drawn(evaluation: Evaluation, chance: Chance, draws: number): Readonly<Record<Estimated, readonly [number, number]>> {
  const { scope, joint, inUse, point } = evaluation;
  if (!joint || !inUse || !point) throw new Error('no estimate');
  const estimator = new Estimator(scope, joint, 0, inUse.metered);
  const figures = pointFigures(joint, point);
  const values = new Map(ESTIMATED.map((of) => [of, { whole: [] as number[], linear: [] as number[] }]));
  for (let draw = 0; draw < draws; draw++) {
    const scores = Float64Array.from(scope.sources.list, ({ rectangular }) =>
      rectangular ? Math.sqrt(3) * chance.between(-1, 1) : chance.normal(0, 1),
    );
    const unknowns = estimator.search(scores);
    const found = unknowns && estimator.figures(unknowns, scores);
    if (!found) continue;
    for (const [of, { whole, linear }] of values) {
      const { value, parts } = figures[of];
      whole.push(found[of]);
      linear.push(parts.at.reduce((sum, source, i) => sum + (parts.by[i] ?? 0) * (scores[source] ?? 0), value));
    }
  }
  const limits = (of: Estimated): readonly [number, number] => {
    const { whole, linear } = values.get(of) ?? { whole: [], linear: [] };
    whole.sort((a, b) => a - b);
    linear.sort((a, b) => a - b);
    const half = coverageFactor(rectangularShare(figures[of].parts, scope.sources)) * standardUncertainty(figures[of]);
    const at = (p: number, exact: number): number => quantile(whole, p) - quantile(linear, p) + exact;
    return [at(0.025, figures[of].value - half), at(0.975, figures[of].value + half)];
  };
  return Object.fromEntries(ESTIMATED.map((of) => [of, limits(of)])) as Record<Estimated, readonly [number, number]>;
}

/** Limits as the results file has them. */
const written = (limits: ReturnType<typeof drawnLimits>) =>
  ESTIMATED.map((of) => limits && [tidy(limits[of].low), tidy(limits[of].high)]);

describe('95 % limits against draws through the whole estimate (JCGM 101)', () => {
  it('agree within 5 % of the width on 200 motors, but for the few that are called not linear', async () => {
    const all = await evaluations(91, 200);
    let compared = 0;
    let bent = 0;
    for (const [i, { set, evaluation }] of all.entries()) {
      const { scope, joint, inUse, point } = evaluation;
      if (!joint || !inUse || !point) continue;
      const limits = pointLimits(scope, joint, 0, inUse.metered, point);
      if (!limits.linear) {
        bent++;
        continue;
      }
      const found = drawn(evaluation, new Chance(1000 + i), set === 'amps-volts' ? 2500 : 1000);
      for (const of of ESTIMATED) {
        const [low, high] = found[of];
        const off = Math.max(Math.abs(limits[of].low - low), Math.abs(limits[of].high - high)) / (high - low);
        expect(off, `${evaluation.motor.tag} ${set} ${of}`).toBeLessThan(0.05 + SCATTER);
      }
      compared++;
    }
    expect(compared).toBeGreaterThan(170);
    expect(bent).toBeLessThan(24);
  });

  it('come from 10,000 seeded draws where the estimate is not linear', async () => {
    const all = await evaluations(91, 60);
    const bent = all.find(({ evaluation }) => figureLimits(evaluation)?.finding)?.evaluation;
    if (!bent?.joint || !bent.inUse) throw new Error('none is bent');
    expect(motorResult(bent).trust.findings.map(({ code }) => code)).toContain('not-linear');
    const limits = () =>
      drawnLimits(
        new Estimator(
          bent.scope,
          bent.joint as NonNullable<Evaluation['joint']>,
          0,
          (bent.inUse as NonNullable<Evaluation['inUse']>).metered,
        ),
        bent.scope.sources,
      );
    const once = limits();
    // To the digits of the results: a search starts from the point of the last one, which may move the last bit.
    expect(written(limits())).toEqual(written(once));
    const other = drawn(bent, new Chance(8), 4000);
    const [low, high] = other.load;
    expect(Math.abs((once?.load.low ?? Number.NaN) - low) / (high - low)).toBeLessThan(0.05);
    expect(Math.abs((once?.load.high ?? Number.NaN) - high) / (high - low)).toBeLessThan(0.05);
  });
});

describe('the explanation of a figure', () => {
  it('gives the u of the results wherever it is more than that of its own steps', async () => {
    let wider = 0;
    for (const { evaluation } of await evaluations(92, 60)) {
      if (!evaluation.point) continue;
      const { efficiency } = evaluation.point;
      const told = limitsOf(evaluation, 'efficiency', efficiency)?.widened;
      const firstOrder = standardUncertainty(efficiency);
      const u = motorResult(evaluation).efficiency?.u ?? Number.NaN;
      expect(told ?? firstOrder).toSatisfy((shown: number) => Math.abs(shown / u - 1) < (told === undefined ? 0.01 : 1e-9));
      if (told !== undefined) wider++;
    }
    // Those bend whose load is known by speed or amperes alone.
    expect(wider).toBeGreaterThan(3);
    expect(wider).toBeLessThan(50);
  });
});

describe('limits at the ends of what can be', () => {
  /** Invented plates and readings that contradict each other, so that figures bend by more than their own half-width. */
  const ROWS = [
    {
      tag: 'A',
      rated_power_hp: '3',
      rated_voltage_v: '600',
      rated_current_a: '2.43',
      rated_speed_rpm: '2907',
      rated_power_factor_pct: '88',
      machine_kind: 'wound-rotor',
      voltage_ab_v: '617.5',
      voltage_bc_v: '582.6',
      voltage_ca_v: '590.1',
      input_power_kw: '1.992',
      frequency_hz: '50.03',
    },
    {
      tag: 'B',
      rated_power_hp: '7.5',
      rated_voltage_v: '660',
      voltage_v: '685.5',
      current_a: '5.23',
      input_power_kw: '5.192',
      shaft_speed_rpm: '806',
    },
    {
      tag: 'C',
      rated_power_hp: '1.5',
      rated_voltage_v: '415',
      rated_current_a: '2.72',
      rated_frequency_hz: '50',
      poles: '8',
      enclosure: 'enclosed',
      no_load_current_a: '0.62',
      no_load_power_kw: '0.032',
      frequency_hz: '49.97',
      shaft_speed_rpm: '745',
    },
    {
      tag: 'D',
      rated_power_hp: '400',
      rated_voltage_v: '575',
      rated_current_a: '317.74',
      nominal_efficiency_pct: '89.7',
      enclosure: 'enclosed',
      temperature_rise_class: 'B',
      no_load_current_a: '280.51',
      voltage_ab_v: '616.6',
      voltage_bc_v: '610.1',
      voltage_ca_v: '611.3',
      frequency_hz: '60.05',
      shaft_speed_rpm: '3596',
      ambient_c: '55',
    },
    {
      tag: 'E',
      rated_power_hp: '50',
      rated_voltage_v: '460',
      rated_current_a: '60.5',
      rated_speed_rpm: '1770',
      voltage_v: '460',
      shaft_speed_rpm: '1799',
    },
  ];

  it('hold their own figure, and none lies below nothing or an efficiency above all', async () => {
    const parsed = await parseFleet({ name: 'odd.csv', text: sheetText(ROWS) }, { asOf: study.settings.asOf });
    if (!parsed.ok) throw new Error(parsed.problem.text);
    expect(parsed.motors).toHaveLength(ROWS.length);
    for (const { motor } of parsed.motors) {
      const evaluation = evaluateMotor(motor, study);
      const { scope, joint, inUse, point } = evaluation;
      if (!joint || !inUse || !point) throw new Error(`no estimate for ${motor.tag}`);
      const limits = pointLimits(scope, joint, 0, inUse.metered, point);
      const figures = pointFigures(joint, point);
      for (const of of ESTIMATED) {
        const { low, high } = limits[of];
        expect(low, `${motor.tag} ${of}`).toBeLessThanOrEqual(figures[of].value);
        expect(high, `${motor.tag} ${of}`).toBeGreaterThanOrEqual(figures[of].value);
        expect(low, `${motor.tag} ${of}`).toBeGreaterThanOrEqual(0);
      }
      expect(limits.efficiency.high).toBeLessThanOrEqual(1);
    }
  });
});
