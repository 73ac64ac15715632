import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { beyondPolicy } from '@/lib/features/plan/beyond-policy';
import type { ProgrammeItem } from '@/lib/features/plan/programme';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const settings = defaultSettings();
const { maxSimplePaybackYears: limit, minProbability: least } = settings.policy;

interface Figures {
  readonly payback?: number | undefined;
  readonly odds?: number | undefined;
  readonly value?: number | undefined;
  readonly must?: true;
}

function item({ payback, odds, value = 1000, must }: Figures): ProgrammeItem {
  return {
    site: 'Works',
    tag: 'M-1',
    rank: 1,
    option: 'replace-now-30-premium',
    action: 'replace',
    rated_power_kw: 30,
    cost: 4000,
    net_present_value: value,
    cash_flow: [],
    ...(payback !== undefined && { simple_payback: { value: payback, u: 0.1, unit: 'a' } }),
    ...(odds !== undefined && { probability_within_policy: odds }),
    ...(must && { must }),
  };
}
const count = (...items: readonly ProgrammeItem[]) =>
  beyondPolicy({ years: [{ year: 2026, budget: 1e5, spent: 0, items: [...items] }] }, settings);

describe('motors of a plan that the policy would not change now', () => {
  it('are none on the limit itself, and one just beside it', () => {
    expect(count(item({ payback: limit, odds: least }))).toBe(0);
    expect(count(item({ payback: limit + 0.001, odds: least }))).toBe(1);
    expect(count(item({ payback: limit, odds: least - 0.001 }))).toBe(1);
    expect(count(item({ payback: limit, odds: least, value: 0 }))).toBe(1);
    expect(count(item({}))).toBe(1);
    expect(count()).toBe(0);
  });

  it('leave out what must be done in any case', () => {
    expect(count(item({ must: true }), item({ payback: limit + 1, odds: 0.1 }))).toBe(1);
  });

  it('are those whose best change now the ranking does not advise', () => {
    const { tables, prices } = loadTables();
    const evaluations = generateDemo({ asOf: settings.asOf })
      .slice(0, 80)
      .map(({ motor }) => evaluateMotor(motor, { settings, tables, prices }));
    let [advised, others] = [0, 0];
    for (const { decision, options, trust, condition } of evaluations) {
      const chosen = options.find(({ id }) => id === decision.option);
      const free = trust.level !== 'not-usable' && condition.callsForRepair.length === 0;
      if (!free || !chosen || decision.because.some(({ code }) => code === 'failed')) continue;
      if (decision.because.some(({ code }) => code === 'within-policy')) {
        const { simple_payback: payback, net_present_value: value } = chosen.figures;
        const odds = chosen.probabilityWithinPolicy;
        expect(count(item({ payback: payback?.value, odds, value: value?.value }))).toBe(0);
        advised += 1;
        continue;
      }
      for (const { timing, action, figures, probabilityWithinPolicy: odds, findings } of options) {
        const { simple_payback: payback, net_present_value: value } = figures;
        const change = timing === 'now' && (action === 'replace' || action === 'resize');
        if (!change || !value || findings().some(({ severity }) => severity === 'disqualifies')) continue;
        expect(count(item({ payback: payback?.value, odds, value: value.value }))).toBe(1);
        others += 1;
      }
    }
    expect(advised).toBeGreaterThan(0);
    expect(others).toBeGreaterThan(20);
  });
});
