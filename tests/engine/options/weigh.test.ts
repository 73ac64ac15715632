import { IRR, NPV } from '@formulajs/formulajs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromMoney, sumMoney } from '@/lib/engine/money/money';
import { optionResult } from '@/lib/engine/options/result';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { SETTINGS } from '../support/study';
import { BY_TIME, USAGE } from '../tariff/tariffs';
import { cash, money, npv, POOR, PRICES, payback, saved, type Trial, weigh } from './weighing';

/** Every kind of situation in which options are weighed. */
const SITUATIONS: readonly (readonly [string, Trial])[] = [
  ['running', {}],
  ['poor motor', POOR],
  ['policy replace', { ...POOR, settings: { policy: { ...SETTINGS.policy, atFailure: 'replace' } } }],
  ['low load', { load: 0.3, plate: { peakLoadKw: 13 } }],
  ['overload', { load: 1.1 }],
  ['failed', { ...POOR, plate: { ...POOR.plate, status: 'failed' } }],
  [
    'failed, policy replace',
    { plate: { status: 'failed' }, load: 0.3, settings: { policy: { ...SETTINGS.policy, atFailure: 'replace' } } },
  ],
  ['failed bearing', { plate: { status: 'failed' }, calls: ['bearing-job'] }],
  [
    'rewind called for',
    { calls: ['rewind', 'bearing-job'], plate: { unplannedStopCost: 20000 }, settings: { includeFailureCost: true } },
  ],
  ['bearings called for', { calls: ['bearing-job'], plate: { quotedRepair: 700 } }],
  [
    'nominal terms, tax and rebates',
    {
      ...POOR,
      settings: {
        moneyTerms: 'nominal',
        inflation: 0.03,
        energyPriceEscalation: 0.04,
        taxRate: 0.25,
        rebates: [{ action: 'replace', perKw: 20 }],
      },
    },
  ],
  [
    'tariff with ratchet and apparent power, tax with depreciation',
    {
      ...POOR,
      settings: {
        inflation: 0.02,
        taxRate: 0.25,
        depreciation: { method: 'declining-balance', years: 7 },
        tariffs: {
          North: {
            ...BY_TIME,
            demand: [{ name: 'any time', price: 9.5, unit: 'kVA', ratchet: { share: 0.8, months: 11 } }],
            usage: USAGE,
          },
        },
      },
    },
  ],
];

describe('value, rate of return and cash flow of every option', () => {
  it.each(SITUATIONS)('%s: follow from the cash flow alone, by a spreadsheet library (formulajs NPV and IRR)', (_, trial) => {
    const { options, study } = weigh(trial);
    for (const option of options) {
      const flow = option.cashFlow.map(fromMoney);
      const [first, ...later] = flow;
      const reference = (first ?? 0) + (NPV(study.settings.discountRate, ...later) as number);
      expect(npv(option), option.id).toBeCloseTo(reference, 0);
      expect(Math.abs(npv(option) - reference), option.id).toBeLessThan(0.005 * flow.length);
      if (option.internalRateOfReturn !== undefined) {
        const rate = IRR(flow, option.internalRateOfReturn) as number;
        expect(option.internalRateOfReturn, option.id).toBeCloseTo(rate, 5);
      }
    }
  });

  it.each(SITUATIONS)('%s: lines add up to the cash flow in whole hundredths, and nothing is NaN or infinite', (_, trial) => {
    const { options } = weigh(trial);
    for (const option of options) {
      if (option.lines) {
        const lines = Object.values(option.lines).filter((line) => line !== undefined);
        option.cashFlow.forEach((amount, year) => {
          expect(sumMoney(lines.map((line) => line[year] ?? amount))).toBe(amount);
        });
      }
      const text = JSON.stringify(optionResult(option, 'USD'), (_key, value: unknown) => {
        if (typeof value === 'number') expect(Number.isFinite(value), option.id).toBe(true);
        return value;
      });
      expect(text).not.toContain('null');
    }
  });

  it.each(SITUATIONS)('%s: ids are unique, keep is first and worth zero, and an absent payback has its finding', (_, trial) => {
    const { options } = weigh(trial);
    expect(new Set(options.map((option) => option.id)).size).toBe(options.length);
    expect(options[0]?.id).toBe('keep');
    for (const option of options) {
      const codes = option.findings().map((found) => found.code);
      if (option.figures.simple_payback === undefined)
        expect(
          codes.some((code) => ['no-saving', 'nothing-spent', 'failed-must-act'].includes(code)),
          option.id,
        ).toBe(true);
      if (option.figures.simple_payback !== undefined && option.figures.discounted_payback === undefined)
        expect(codes).toContain('never-paid-back');
      if (option.figures.simple_payback !== undefined && option.internalRateOfReturn === undefined)
        expect(
          codes.includes('no-rate-of-return') || codes.includes('rate-of-a-loan') || codes.includes('several-rates-of-return'),
          option.id,
        ).toBe(true);
    }
  });
});

describe('savings', () => {
  it('a motor like the old one saves nothing, and is worth minus its cost and plus what is left of it', () => {
    const plate = { ratedCurrentA: undefined, ratedPowerFactorPct: undefined, designLetter: undefined, yearBuilt: undefined };
    const like = [
      {
        item: 'motor',
        ratedPowerKw: 37.285,
        poles: 4,
        efficiencyClass: 'premium',
        nominalEfficiencyPct: 91.7,
        ratedSpeedRpm: 1765,
        price: 3000,
      },
    ] as const;
    const { option, study } = weigh({ plate, prices: [...like, ...PRICES.filter((line) => line.item !== 'motor')] });
    const now = option('replace', 'now');
    expect(saved(now)).toBeCloseTo(0, 6);
    expect(money(now)).toBeCloseTo(0, 6);
    expect(now.figures.simple_payback).toBeUndefined();
    const { horizonYears, discountRate, failureRatePerYear } = study.settings;
    const left = 3000 * (1 - horizonYears * failureRatePerYear);
    expect(npv(now)).toBeCloseTo(-3300 + left / (1 + discountRate) ** horizonYears, 6);
  });

  it('with speed held, is the textbook difference of inputs at the efficiencies of the two points (Cengel and Boles, example 2-17)', () => {
    const { option, trace } = weigh(POOR);
    const now = option('replace', 'now');
    const shaft = 0.75 * 50 * 0.7457;
    // The rated points of both machines are in the trace as well: only those at the load of the example count.
    const efficiencies = [...trace].flatMap(([quantity, step]) =>
      step.kind === 'formula' &&
      step.formula.id === 'machine.efficiency' &&
      Math.abs((step.inputs.shaft_power?.value ?? 0) - shaft) < 1e-6
        ? [quantity.value]
        : [],
    );
    const oldEfficiency = efficiencies[0] ?? Number.NaN;
    const newEfficiency = efficiencies.at(-1) ?? Number.NaN;
    expect(saved(now)).toBeCloseTo(8000 * shaft * (1 / oldEfficiency - 1 / newEfficiency), 6);
  });

  it('halves the payback when the energy price doubles and demand is free', () => {
    const settings = { demandPricePerKwMonth: 0 };
    for (const timing of ['now', 'at-failure'] as const) {
      const one = weigh({ ...POOR, settings }).option('replace', timing);
      const two = weigh({ ...POOR, settings: { ...settings, energyPricePerKwh: 0.22 } }).option('replace', timing);
      expect(payback(two)).toBeCloseTo(payback(one) / 2, 9);
    }
  });

  it('is surer than either motor’s own energy, since both share the load', () => {
    const { option, trace } = weigh({ ...POOR, loadDoubt: 0.1 });
    const now = option('replace', 'now');
    const step = now.figures.energy_saved && trace.get(now.figures.energy_saved);
    if (step?.kind !== 'formula') throw new Error('the saving has no derivation');
    const own = Object.values(step.inputs).map(standardUncertainty);
    expect(own).toHaveLength(2);
    for (const u of own) expect(now.figures.energy_saved && standardUncertainty(now.figures.energy_saved)).toBeLessThan(u / 2);
  });

  it('grows with the hours and vanishes with them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8784 }), (hours) => {
        expect(saved(weigh({ ...POOR, hours }).option('replace', 'now'))).toBeCloseTo(
          (saved(weigh(POOR).option('replace', 'now')) * hours) / 8000,
          6,
        );
      }),
      { numRuns: 10 },
    );
    const never = weigh({ ...POOR, hours: 0 }).option('replace', 'now');
    expect([saved(never), money(never), never.figures.demand_saved?.value]).toEqual([0, 0, 0]);
    expect(never.findings().map((found) => found.code)).toContain('no-saving');
    expect(never.findings().find((found) => found.code === 'no-saving')?.text).toContain('saves nothing');
  });

  it('takes demand at the step with the highest input, times the coincidence', () => {
    const steps = [
      [0.8, 2000],
      [0.4, 4000],
    ] as const;
    const both = weigh({ ...POOR, steps, plate: { ...POOR.plate, demandCoincidence: 0.5 } }).option('replace', 'now');
    const high = weigh({ ...POOR, load: 0.8, hours: 2000, plate: { ...POOR.plate, demandCoincidence: 1 } }).option(
      'replace',
      'now',
    );
    const low = weigh({ ...POOR, load: 0.4, hours: 4000 }).option('replace', 'now');
    expect(both.figures.demand_saved?.value).toBeCloseTo(0.5 * (high.figures.demand_saved?.value ?? Number.NaN), 9);
    expect(saved(both)).toBeCloseTo(saved(high) + saved(low), 6);
  });

  it('is money over energy as the marginal price: between the energy price and that with the demand charge', () => {
    const now = weigh(POOR).option('replace', 'now');
    expect(now.marginalPrice).toBeCloseTo(money(now) / saved(now), 12);
    expect(weigh({ ...POOR, settings: { demandPricePerKwMonth: 0 } }).option('replace', 'now').marginalPrice).toBeCloseTo(
      0.11,
      9,
    );
  });

  it('is money by the prices: energy times price and demand times price times twelve months', () => {
    const now = weigh(POOR).option('replace', 'now');
    expect(money(now)).toBeCloseTo(saved(now) * 0.11 + (now.figures.demand_saved?.value ?? 0) * 9.5 * 12, 6);
    expect(now.figures.emissions_saved?.value).toBeCloseTo(saved(now) * 0.373, 6);
  });
});

describe('speed of the new motor', () => {
  it('eats into the saving of a pump, less of one that runs on and off, and not behind a drive', () => {
    const at = (flowControl: 'none' | 'on-off' | 'drive') => saved(weigh({ plate: { flowControl } }).option('replace', 'now'));
    expect(at('none')).toBeLessThan(at('on-off'));
    expect(at('on-off')).toBeLessThan(at('drive'));
    expect(saved(weigh({ plate: { driveFed: true } }).option('replace', 'now'))).toBeCloseTo(at('drive'), 9);
  });
  it('counts in full where flow that is not needed is throttled, damped, led back or just made', () => {
    const at = (flowControl: 'none' | 'throttle' | 'damper' | 'bypass') =>
      saved(weigh({ plate: { flowControl } }).option('replace', 'now'));
    for (const way of ['throttle', 'damper', 'bypass'] as const) expect(at(way), way).toBeCloseTo(at('none'), 9);
  });
  it('behind a drive is said to be held, with the loss of the drive', () => {
    const now = weigh({ plate: { driveFed: true } }).option('replace', 'now');
    const findings = now.findings().map((found) => found.code);
    expect(findings).toContain('speed-held');
    expect(findings).not.toContain('speed-eats-saving');
    const loss = now.findings().find((found) => found.code === 'speed-held')?.evidence.drive_loss;
    // US DOE Motor Systems Tip Sheet 11: drives of this size give 90 to 98 % from half to full load.
    expect(loss).toBeGreaterThan(0.02);
    expect(loss).toBeLessThan(0.11);
  });
  it('matters less to a constant torque than to the square of the speed', () => {
    const at = (loadTorqueExponent: 0 | 1 | 2) => saved(weigh({ plate: { loadTorqueExponent } }).option('replace', 'now'));
    expect(at(2)).toBeLessThan(at(1));
    expect(at(1)).toBeLessThan(at(0));
  });
});

describe('cost', () => {
  it('is the listed price between ratings on a power law, with removal and installation, or the quotation', () => {
    const listed = weigh({ prices: PRICES }).option('replace', 'now');
    const byHand = 10 ** (3 + Math.log10(37.285 / 10) * 1);
    expect(listed.figures.cost.value).toBeCloseTo(byHand + 300, 6);
    expect(standardUncertainty(listed.figures.cost)).toBeCloseTo(Math.hypot(0.15 * byHand, 0.15 * 300), 6);
    const quoted = weigh({ prices: PRICES, plate: { quotedPrice: 4000 } }).option('replace', 'now');
    expect(quoted.figures.cost.value).toBe(4300);
    expect(standardUncertainty(quoted.figures.cost)).toBeCloseTo(45, 9);
  });
  it('at failure is what the new motor costs beyond the repair; rebates shorten the payback', () => {
    const prices = PRICES;
    const quotes = { quotedPrice: 5000, quotedRepair: 3000 };
    const later = weigh({ ...POOR, prices, plate: { ...POOR.plate, ...quotes } }).option('replace', 'at-failure');
    expect(later.figures.cost.value).toBeCloseTo(2000, 9);
    expect(payback(later)).toBeCloseTo(2000 / money(later), 9);
    const rebates = [{ action: 'replace', perKw: 40, cap: 1000 }] as const;
    const helped = weigh({ ...POOR, prices, plate: { ...POOR.plate, ...quotes }, settings: { rebates } }).option(
      'replace',
      'at-failure',
    );
    expect(payback(helped)).toBeCloseTo(1000 / money(helped), 9);
  });
  it('that is not above the repair makes the payback at failure zero', () => {
    const later = weigh({ ...POOR, plate: { ...POOR.plate, quotedPrice: 2000, quotedRepair: 3000 } }).option(
      'replace',
      'at-failure',
    );
    expect(payback(later)).toBe(0);
    expect(later.figures.discounted_payback?.value).toBe(0);
    expect(later.probabilityWithinPolicy).toBeGreaterThan(0.9);
  });
  it('takes an adapter for another frame, and for a U frame', () => {
    const same = weigh({ prices: PRICES }).option('replace', 'now').figures.cost.value;
    expect(weigh({ prices: PRICES, plate: { frame: '326U' } }).option('replace', 'now').figures.cost.value).toBeCloseTo(
      same + 150,
      9,
    );
    const smaller = weigh({ prices: PRICES, load: 0.3, plate: { peakLoadKw: 20 } }).option('resize', 'now');
    expect(smaller.ratedPowerKw).toBeCloseTo(22.371, 9);
    expect(smaller.figures.cost.value).toBeCloseTo(1000 * (22.371 / 10) + 450, 6);
  });
  it('buys an adapter once: the next motor of the same frame in its place goes without', () => {
    const replacing = {
      ...SETTINGS,
      policy: { ...SETTINGS.policy, atFailure: 'replace' as const },
      failureRatePerYear: 0.1,
      horizonYears: 2,
    };
    const trial = { prices: PRICES, settings: replacing, load: 0.3, plate: { peakLoadKw: 20, quotedPrice: 5000 } };
    // By hand: one year in ten a motor fails. Kept, that buys 5000 + 300 each time; resized, 2237.10 + 300 and no adapter of 150.
    const spared = cash(weigh(trial).option('resize', 'now').lines?.avoided_repair, 1);
    expect(spared).toBeCloseTo(0.1 * (5300 - 2537.1), 2);
    // A U frame kept: in year 1 the old motor fails, whose place wants the adapter; in year 2 that holds for 0.9 of them, the others have it.
    const kept = weigh({ ...trial, plate: { frame: '326U', quotedPrice: 5000 }, load: 0.6 }).option('replace', 'now').lines;
    expect(cash(kept?.investment, 0)).toBe(-5450);
    expect(cash(kept?.avoided_repair, 1)).toBeCloseTo(0.1 * 150, 2);
    expect(cash(kept?.avoided_repair, 2)).toBeCloseTo(0.1 * 0.9 * 150, 2);
    // A failed motor that is repaired has no adapter yet: it is bought at the next failure, as the baseline has bought it now.
    const repaired = weigh({ ...trial, plate: { frame: '326U', quotedPrice: 5000, status: 'failed' }, load: 0.6 }).option(
      'repair',
    ).lines;
    expect(cash(repaired?.avoided_repair, 1)).toBeCloseTo(0.1 * -150, 2);
    expect(cash(repaired?.avoided_repair, 2)).toBeCloseTo(0.1 * 0.9 * -150, 2);
  });
});

describe('the repair of a failed motor where the policy would replace it', () => {
  const policy = { ...SETTINGS.policy, atFailure: 'replace' as const };
  const failed = { plate: { status: 'failed' as const }, settings: { policy }, prices: PRICES };

  it('is valued against that replacement: the baseline by itself is worth nothing', () => {
    const weighed = weigh(failed);
    const same = weighed.option('replace', 'now');
    expect(npv(same)).toBeCloseTo(0, 6);
    // By hand: in year 0 the difference of the two outlays; then the difference of the two running costs while the first machine lives,
    // S(t−1) = 0.95^(t−1), after which both have the same; at the horizon the value left in a new motor, and in the rewind, by the straight line over 20 years.
    const worths = same.workings?.worths;
    const outlays = (worths?.sameInstalled?.quantity.value ?? 0) - (worths?.repairNow?.quantity.value ?? 0);
    const running = (worths?.same?.quantity.value ?? 0) - (worths?.oldRepaired?.quantity.value ?? 0);
    const left =
      0.95 ** 15 * (1 - 15 / 20) * ((worths?.purchaseSame?.quantity.value ?? 0) - (worths?.workNow?.quantity.value ?? 0)) -
      0.95 ** 15 * (worths?.oldWorth?.quantity.value ?? 0);
    expect(worths?.workNow?.quantity.value).toBeGreaterThan(0);
    let value = outlays - left / 1.08 ** 15;
    for (let year = 1; year <= 15; year++) value += (running * 0.95 ** (year - 1)) / 1.08 ** year;
    expect(npv(weighed.option('repair'))).toBeCloseTo(value, 4);
  });

  it('has no value where no replacement can be priced', () => {
    const repair = weigh({ ...failed, prices: PRICES.filter(({ item }) => item !== 'motor') }).option('repair');
    expect(repair.figures.net_present_value).toBeUndefined();
  });
});
