import { describe, expect, it } from 'vitest';
import { flowSoFar } from '@/lib/engine/explain/cumulative-flow';
import { fromMoney } from '@/lib/engine/money/money';
import { netPresentValue } from '@/lib/engine/money/present-value';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { npv, POOR, weigh } from './weighing';

/** No published case: the oracle is the cash flow itself, discounted by the function that is checked against Handbook 135. */
describe('what an option has brought in so far', () => {
  const settings = { taxRate: 0.25, energyPriceEscalation: 0.02 };
  const option = weigh({ ...POOR, settings }).option('replace', 'now');
  const soFar = flowSoFar(option, { discountRate: 0.08 });

  it('is the discounted cash flow up to each year, but for the rounding of its lines to cents', () => {
    expect(soFar).toHaveLength(16);
    soFar.forEach(({ year, value }) => {
      const known = netPresentValue(option.cashFlow.slice(0, year + 1).map(fromMoney), 0.08);
      expect(Math.abs(value - known), `year ${year}`).toBeLessThan(0.005 * 7 * (year + 1));
    });
    expect(soFar.at(-1)?.value).toBeCloseTo(npv(option), 8);
  });

  it('has the doubt of the value at the horizon where nothing fails, and less than it where the failure rate adds its own', () => {
    const last = soFar.at(-1);
    const value = option.figures.net_present_value;
    if (!last || !value) throw new Error('no value');
    expect(last.u).toBeLessThanOrEqual(standardUncertainty(value) * (1 + 1e-12));
    const sure = weigh({ ...POOR, settings: { failureRatePerYear: 0 } }).option('replace', 'now');
    const [worth, end] = [sure.figures.net_present_value, flowSoFar(sure, { discountRate: 0.08 }).at(-1)];
    expect(end?.u).toBeCloseTo(worth ? standardUncertainty(worth) : 0, 6);
    // At the start only what is paid is in doubt.
    expect(soFar[0]?.u).toBeCloseTo(standardUncertainty(option.figures.cost), 6);
  });

  it('is empty for an option without value', () => {
    expect(flowSoFar(weigh(POOR).option('keep'), { discountRate: 0.08 })).toEqual([]);
  });
});
