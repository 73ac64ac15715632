import { describe, expect, it } from 'vitest';
import { fromMoney, sumMoney } from '@/lib/engine/money/money';
import { optionResult } from '@/lib/engine/options/result';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { SETTINGS } from '../support/study';
import { cash, money, npv, POOR, PRICES, payback, saved, weigh } from './weighing';

describe('baseline', () => {
  it('a healthy pair earns no repair: the line is empty, whatever the repair costs', () => {
    for (const quotedRepair of [undefined, 100, 90000]) {
      const now = weigh({ ...POOR, plate: { ...POOR.plate, quotedRepair } }).option('replace', 'now');
      expect(now.lines?.avoided_repair.every((amount) => amount === 0)).toBe(true);
    }
  });
  it('a replacement at failure under the policy replace is the baseline itself', () => {
    const later = weigh({ ...POOR, settings: { policy: { ...SETTINGS.policy, atFailure: 'replace' } } }).option(
      'replace',
      'at-failure',
    );
    expect(npv(later)).toBeCloseTo(0, 9);
    expect(later.cashFlow.every((amount) => Math.abs(amount) <= 1)).toBe(true);
  });
  it('under the policy replace, what the policy does is worth nothing: neither it nor its rebate is gained (identity of the two sides)', () => {
    const settings = {
      policy: { ...SETTINGS.policy, atFailure: 'replace' },
      rebates: [{ action: 'replace', perKw: 12, perKwh: 0.03, cap: 700 }],
      taxRate: 0.3,
      depreciation: { method: 'straight-line', years: 5 },
      inflation: 0.02,
    } as const;
    expect(npv(weigh({ ...POOR, settings }).option('replace', 'at-failure'))).toBeCloseTo(0, 9);
    const failed = weigh({ ...POOR, plate: { ...POOR.plate, status: 'failed' }, settings });
    expect(npv(failed.option('replace', 'now'))).toBeCloseTo(0, 9);
    // To repair loses the rebate now, and gets it when the repaired motor fails: 700 before tax, a rate of 8 %, failures at 5 % a year.
    const without = weigh({
      ...POOR,
      plate: { ...POOR.plate, status: 'failed' },
      settings: { ...settings, taxRate: 0, rebates: [] },
    });
    const withIt = weigh({ ...POOR, plate: { ...POOR.plate, status: 'failed' }, settings: { ...settings, taxRate: 0 } });
    let worth = -1;
    for (let year = 1; year <= 15; year++) worth += (0.05 * 0.95 ** (year - 1)) / 1.08 ** year;
    expect(npv(withIt.option('repair')) - npv(without.option('repair'))).toBeCloseTo(700 * worth, 6);
  });
  it('a failed motor is repaired for nothing more, and replaced for the difference', () => {
    const { option } = weigh({ ...POOR, plate: { ...POOR.plate, status: 'failed', quotedPrice: 5000, quotedRepair: 3000 } });
    expect(npv(option('repair'))).toBeCloseTo(0, 9);
    expect(option('repair').figures.cost.value).toBeCloseTo(option('replace').figures.cost.value - 2000, 9);
    expect(cash(option('replace').cashFlow, 0)).toBeCloseTo(-2000, 2);
    expect(payback(option('replace'))).toBeCloseTo(2000 / money(option('replace')), 9);
    expect(option('replace').netPresentValueByYear).toHaveLength(1);
  });
  it('bearings change no efficiency, a rewind takes some', () => {
    expect(saved(weigh({ calls: ['bearing-job'] }).option('repair'))).toBe(0);
    const rewound = weigh({ calls: ['rewind'] }).option('repair');
    expect(saved(rewound)).toBeLessThan(0);
    const accredited = weigh({ calls: ['rewind'], settings: { repairShop: 'accredited' } }).option('repair');
    expect(saved(accredited)).toBeGreaterThan(saved(rewound));
    // 40 hp and above at an unknown shop: half a point (table of rewind changes), on a mean efficiency of about 92 %.
    const input = (0.6 * 37.285) / 0.92;
    expect(saved(rewound) / (-6000 * input * (0.005 / 0.92))).toBeCloseTo(1, 1);
  });
  it('takes what a rewind costs from the rating of the motor that is rewound: 1.0 point below 40 hp, 0.5 from there (table of rewind changes)', () => {
    const { options } = weigh({ load: 0.3, hours: 6000, plate: { peakLoadKw: 13 } });
    const resized = options.filter(({ action, timing }) => action === 'resize' && timing === 'now');
    expect(resized.map(({ ratedPowerKw }) => ratedPowerKw < 40 * 0.7457)).toContain(true);
    for (const { workings, ratedPowerKw } of [...resized, ...options.filter(({ action }) => action === 'replace')]) {
      const before = workings?.worths.option?.quantity.value ?? Number.NaN;
      const after = workings?.worths.optionRepaired?.quantity.value ?? Number.NaN;
      // Input after over input before is η / (η − Δη), so that Δη over η is one less its inverse.
      const share = 1 - before / after;
      const points = ratedPowerKw < 40 * 0.7457 ? 0.01 : 0.005;
      expect(points / share).toBeGreaterThan(0.88);
      expect(points / share).toBeLessThan(0.97);
    }
  });
  it('is offered a repair only when something calls for it', () => {
    expect(weigh().find('repair')).toBeUndefined();
    expect(weigh({ calls: ['bearing-job'], prices: PRICES }).option('repair').figures.cost.value).toBeCloseTo(
      200 * 4.5 ** Math.log10(3.7285) + 300,
      6,
    );
  });
  it('values the stop that a bad condition threatens apart, and inside only when asked', () => {
    const plate = { ...POOR.plate, unplannedStopCost: 10000 };
    const apart = weigh({ ...POOR, plate, calls: ['bearing-job'] });
    const inside = weigh({ ...POOR, plate, calls: ['bearing-job'], settings: { includeFailureCost: true } });
    const change = apart.option('replace', 'now').figures.failure_cost_change?.value ?? Number.NaN;
    // By hand: the rate doubles from 5 % until the first failure.
    let byHand = 0;
    for (let year = 1; year <= 15; year++) byHand += (10000 * 0.05 * 0.9 ** (year - 1)) / 1.08 ** year;
    expect(change).toBeCloseTo(byHand, 6);
    expect(npv(inside.option('replace', 'now')) - npv(apart.option('replace', 'now'))).toBeCloseTo(byHand, 6);
    expect(payback(inside.option('replace', 'now'))).toBe(payback(apart.option('replace', 'now')));
    expect(
      weigh({ ...POOR, plate: { ...plate, standby: true }, calls: ['rewind'] }).option('replace', 'now').figures
        .failure_cost_change?.value,
    ).toBe(0);
    expect(weigh({ ...POOR, plate }).option('replace', 'now').figures.failure_cost_change?.value).toBe(0);
  });
  it('counts what is left of a young motor against its replacement', () => {
    const young = weigh({ ...POOR, plate: { ...POOR.plate, yearBuilt: 2025 } }).option('replace', 'now');
    const old = weigh(POOR).option('replace', 'now');
    expect(npv(young)).toBeLessThan(npv(old));
  });
});

describe('value by year of the budget', () => {
  it('begins with the value now; put off by a year it is that of a shorter horizon, one year later (no failures, by hand)', () => {
    const settings = { failureRatePerYear: 0, horizonYears: 10, budget: [1, 1, 1] };
    const now = weigh({ ...POOR, settings }).option('replace', 'now');
    expect(now.netPresentValueByYear.map(fromMoney)[0]).toBeCloseTo(npv(now), 2);
    const cost = now.figures.cost.value;
    [0, 1, 2].forEach((start) => {
      let value = -cost / 1.08 ** start;
      for (let year = start + 1; year <= 10; year++) value += money(now) / 1.08 ** year;
      // A motor that never fails keeps its value: the new one's purchase less the old one's, which is the same listed price.
      const oldLeft = now.lines?.residual[10] === 0;
      expect(oldLeft).toBe(true);
      expect(now.netPresentValueByYear.map(fromMoney)[start]).toBeCloseTo(value, 2);
    });
  });
  it('is not longer than the horizon, and empty for options at failure', () => {
    const { option } = weigh({ settings: { horizonYears: 2, budget: [1, 1, 1, 1] } });
    expect(option('replace', 'now').netPresentValueByYear).toHaveLength(2);
    expect(option('replace', 'at-failure').netPresentValueByYear).toEqual([]);
  });
});

describe('settings at their ends', () => {
  it('a discount rate of zero: the value is the plain sum, and the discounted payback the simple one of the flow', () => {
    const now = weigh({ ...POOR, settings: { discountRate: 0, failureRatePerYear: 0 } }).option('replace', 'now');
    expect(npv(now)).toBeCloseTo(fromMoney(sumMoney(now.cashFlow)), 1);
    expect(now.figures.discounted_payback?.value).toBeCloseTo(payback(now), 3);
  });
  it('of a failed motor as of a running one: its own cash flow without the value left, discounted year by year (ASTM E917, by hand)', () => {
    const settings = { taxRate: 0.3, horizonYears: 15, depreciation: { method: 'straight-line', years: 7 } } as const;
    const plate = { ...POOR.plate, status: 'failed' } as const;
    const now = weigh({ ...POOR, plate, settings }).option('replace', 'now');
    const flows = now.cashFlow.map((amount, year) => fromMoney(amount) - fromMoney(now.lines?.residual[year] ?? amount));
    expect(flows[0]).toBeLessThan(0);
    let [left, paid]: [number, number | undefined] = [flows[0] ?? 0, undefined];
    for (const [year, flow] of flows.entries()) {
      if (year === 0 || paid !== undefined) continue;
      const worth = flow / 1.08 ** year;
      if (left + worth >= 0) paid = year - 1 - left / worth;
      left += worth;
    }
    expect(now.figures.discounted_payback?.value).toBeCloseTo(paid ?? Number.NaN, 6);
  });
  it('a tax of 100 %: no saving is left, said in words', () => {
    const { option, findings } = weigh({ ...POOR, settings: { taxRate: 1 } });
    const now = option('replace', 'now');
    expect(now.lines?.energy.every((amount) => amount === 0)).toBe(true);
    expect(npv(now)).toBeLessThan(0);
    expect(now.findings().map((found) => found.code)).toContain('never-paid-back');
    expect(findings.find((found) => found.code === 'tax-without-depreciation')?.text).toContain('100 %');
    // Payback is before tax.
    expect(payback(now)).toBeCloseTo(payback(weigh(POOR).option('replace', 'now')), 9);
  });
  it('grows energy by its escalation from year 2 on, and repairs by inflation in nominal terms', () => {
    const settings = { energyPriceEscalation: 0.1, failureRatePerYear: 0 };
    const flow =
      weigh({ ...POOR, settings })
        .option('replace', 'now')
        .lines?.energy.map(fromMoney) ?? [];
    const first = flow[1] ?? Number.NaN;
    expect(flow[3]).toBeCloseTo(first * 1.21, 1);
    const nominal = weigh({ ...POOR, settings: { moneyTerms: 'nominal', inflation: 0.1 } }).option('replace', 'at-failure');
    const real = weigh(POOR).option('replace', 'at-failure');
    expect(cash(nominal.lines?.investment, 5)).toBeCloseTo(1.1 ** 5 * cash(real.lines?.investment, 5), 1);
  });
});

describe('doubt', () => {
  it('of the value holds that of the failure rate: half the value’s change when the rate is doubled or halved, to first order', () => {
    const small = 1.02;
    const at = (factor: number) =>
      npv(weigh({ ...POOR, settings: { failureRatePerYear: 0.05 * factor } }).option('replace', 'at-failure'));
    const slope = (at(small) - at(1 / small)) / (2 * Math.log(small));
    const later = weigh(POOR).option('replace', 'at-failure');
    const index = later.figures.net_present_value?.parts.by.findIndex(
      (part) => Math.abs(Math.abs(part) / ((slope * Math.LN2) / 2) - 1) < 0.02,
    );
    expect(index).toBeGreaterThanOrEqual(0);
  });
  it('of the payback decides the chance: one half where cost and limit meet', () => {
    const now = weigh(POOR).option('replace', 'now');
    const policy = { ...SETTINGS.policy, maxSimplePaybackYears: payback(now) };
    expect(weigh({ ...POOR, settings: { policy } }).option('replace', 'now').probabilityWithinPolicy).toBeCloseTo(0.5, 9);
    const double = { ...SETTINGS.policy, maxSimplePaybackYears: 2 * payback(now) };
    expect(weigh({ ...POOR, settings: { policy: double } }).option('replace', 'now').probabilityWithinPolicy).toBeGreaterThan(
      0.8,
    );
  });
  it('rises with that of the load', () => {
    const u = (loadDoubt: number) => {
      const value = weigh({ ...POOR, loadDoubt }).option('replace', 'now').figures.net_present_value;
      return value ? standardUncertainty(value) : Number.NaN;
    };
    expect(u(0.2)).toBeGreaterThan(u(0.02));
  });
});

describe('derivation', () => {
  it('leads from the value to formulas and leaves, with what the rounded cash flow leaves of it', () => {
    const { option, trace } = weigh(POOR);
    const value = option('replace', 'now').figures.net_present_value;
    const step = value && trace.get(value);
    if (step?.kind !== 'solution') throw new Error('the value has no derivation');
    expect(step.residual).toBeLessThan(1e-4);
    expect(Object.keys(step.inputs)).toContain('running_cost_as_it_is');
    for (const input of Object.values(step.inputs)) expect(trace.has(input)).toBe(true);
  });
});

describe('results', () => {
  it('carry the keys of the contract and two decimals', () => {
    const result = optionResult(weigh(POOR).option('replace', 'now'), 'EUR');
    // As a file has it: what is absent is not written.
    expect(Object.keys(JSON.parse(JSON.stringify(result)) as object).sort()).toEqual(
      [
        'action',
        'cash_flow',
        'cost',
        'demand_saved',
        'discounted_payback',
        'efficiency_class',
        'emissions_saved',
        'energy_saved',
        'failure_cost_change',
        'findings',
        'id',
        'internal_rate_of_return',
        'marginal_price',
        'money_saved',
        'net_present_value',
        'net_present_value_by_year',
        'nominal_efficiency_pct',
        'probability_within_policy',
        'rated_power_kw',
        'savings_to_investment',
        'simple_payback',
        'timing',
      ].sort(),
    );
    expect(result.money_saved?.unit).toBe('EUR');
    expect(result.net_present_value?.unit).toBe('EUR');
    expect(result.energy_saved?.unit).toBe('kWh/a');
    for (const amount of [result.cost, ...result.cash_flow]) expect(amount).toBe(Math.round(amount * 100) / 100);
  });
  it('gives hp and kW sheets of one motor the same options', () => {
    const hp = weigh({ load: 0.3 });
    const kw = weigh({ load: 0.3, plate: { ratedPowerUnit: 'kW' } });
    expect(kw.options.map((option) => [option.id, option.figures.net_present_value?.value])).toEqual(
      hp.options.map((option) => [option.id, option.figures.net_present_value?.value]),
    );
  });
});
