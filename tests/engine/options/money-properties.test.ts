import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { appraise } from '@/lib/engine/money/appraisal';
import { incrementalAnalysis } from '@/lib/engine/money/incremental';
import { fromMoney } from '@/lib/engine/money/money';
import type { Settings } from '@/lib/engine/settings';
import type { Tariff } from '@/lib/engine/tariff/tariff';
import { SETTINGS } from '../support/study';
import { BY_TIME, tariffOf, USAGE } from '../tariff/tariffs';
import { money, npv, POOR, PRICES, payback, type Trial, weigh } from './weighing';

/** Every amount of money in prices and settings times a factor, as in a currency of smaller units. */
function inUnits(trial: Trial, factor: number): Trial {
  const { settings = {} } = trial;
  const flat: Partial<Settings> = {
    energyPricePerKwh: (settings.energyPricePerKwh ?? SETTINGS.energyPricePerKwh) * factor,
    demandPricePerKwMonth: (settings.demandPricePerKwMonth ?? SETTINGS.demandPricePerKwMonth) * factor,
    tariffs: Object.fromEntries(Object.entries(settings.tariffs ?? {}).map(([site, tariff]) => [site, tariffIn(tariff, factor)])),
    rebates: (settings.rebates ?? []).map((rebate) => ({ ...rebate, perKw: rebate.perKw * factor })),
  };
  return {
    ...trial,
    prices: (trial.prices ?? PRICES).map((line) => ({ ...line, price: line.price * factor })),
    settings: { ...settings, ...flat },
  };
}

function tariffIn(tariff: Tariff, factor: number): Tariff {
  return {
    ...tariff,
    energy: tariff.energy.map((period) => ({ ...period, pricePerKwh: period.pricePerKwh * factor })),
    blocks: tariff.blocks.map((block) => ({ ...block, pricePerKwh: block.pricePerKwh * factor })),
    demand: tariff.demand.map((charge) => ({ ...charge, price: charge.price * factor })),
  };
}

const TARIFF = tariffOf({
  energy: BY_TIME.energy,
  demand: [{ name: 'any time', price: 9.5, unit: 'kVA', ratchet: { share: 0.8, months: 11 } }],
  blocks: [{ upToKwh: 100_000, pricePerKwh: 0.02 }, { pricePerKwh: 0 }],
  taxes: [{ name: 'levy', rate: 0.05 }],
  usage: USAGE,
});

const RICH: Trial = {
  ...POOR,
  prices: PRICES,
  settings: {
    tariffs: { North: TARIFF },
    taxRate: 0.25,
    depreciation: { method: 'declining-balance', years: 7 },
    rebates: [{ action: 'replace', perKw: 15 }],
  },
};

describe('money of options', () => {
  it('in units of another size scales, and payback, rates and odds stay', () => {
    for (const trial of [{ ...POOR, prices: PRICES }, RICH]) {
      // Both in units so small that rounding to a hundredth of one, which rates of return rest on, does not show.
      const one = weigh(inUnits(trial, 100));
      const hundred = weigh(inUnits(trial, 10_000));
      for (const option of one.options) {
        const other = hundred.options.find(({ id }) => id === option.id);
        expect((other ? npv(other) : Number.NaN) / 100, option.id).toBeCloseTo(npv(option), 4);
        const [years, otherYears] = [option.figures.simple_payback?.value, other?.figures.simple_payback?.value];
        if (years !== undefined) expect(otherYears).toBeCloseTo(years, 8);
        if (option.internalRateOfReturn !== undefined)
          expect(other?.internalRateOfReturn).toBeCloseTo(option.internalRateOfReturn, 4);
        if (option.probabilityWithinPolicy !== undefined)
          expect(other?.probabilityWithinPolicy).toBeCloseTo(option.probabilityWithinPolicy, 6);
      }
    }
  });
  it('a higher price of energy never lengthens the payback of an energy saving, flat or by the hour', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 3, noNaN: true }),
        (price, dearer) => {
          const at = (of: number) =>
            payback(weigh({ ...POOR, prices: PRICES, settings: { energyPricePerKwh: of } }).option('replace', 'now'));
          expect(at(price * dearer)).toBeLessThanOrEqual(at(price) * (1 + 1e-12));
          const byHour = (factor: number) =>
            payback(
              weigh({
                ...POOR,
                prices: PRICES,
                settings: { tariffs: { North: { ...TARIFF, energy: tariffIn(BY_TIME, factor).energy } } },
              }).option('replace', 'now'),
            );
          expect(byHour(dearer)).toBeLessThanOrEqual(byHour(1) * (1 + 1e-12));
        },
      ),
      { numRuns: 15 },
    );
  });
  it('an idle motor saves nothing: no payback, in words, and no demand under any tariff', () => {
    for (const settings of [{}, RICH.settings ?? {}]) {
      const { options } = weigh({ ...POOR, prices: PRICES, hours: 0, settings });
      const now = options.find((option) => option.action === 'replace' && option.timing === 'now');
      if (!now) throw new Error('no replacement is offered');
      expect(money(now)).toBe(0);
      expect(now.figures.simple_payback).toBeUndefined();
      expect(now.findings().map((found) => found.code)).toContain('no-saving');
      const rules = { discountRate: 0.08, residual: now.lines?.residual.map(fromMoney) };
      expect(appraise(now.cashFlow.map(fromMoney), rules).simplePayback.kind).toBe('none');
    }
  });
  it('of one motor, compared by increments, leads to the option of the highest value', () => {
    for (const trial of [RICH, { ...POOR, prices: PRICES }, { load: 0.3, prices: PRICES, plate: { peakLoadKw: 13 } }]) {
      const { options } = weigh(trial);
      const now = options.filter((option) => option.timing === 'now' && option.figures.net_present_value);
      const { chosen } = incrementalAnalysis(
        now.map((option) => ({ id: option.id, flows: option.cashFlow.map(fromMoney) })),
        0.08,
      );
      const best = Math.max(...now.map(npv));
      const value = now.find(({ id }) => id === chosen);
      expect(value ? npv(value) : 0).toBeCloseTo(Math.max(0, best), 0);
    }
  });
});
