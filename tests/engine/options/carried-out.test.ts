import { describe, expect, it } from 'vitest';
import { carriedOut, type Evaluation, evaluateMotor, fromMoney, moved, sumOverMotors } from '@/lib/engine';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const { tables, prices } = loadTables();
const study = { settings: defaultSettings(), tables, prices };
const fleet = generateDemo({ asOf: study.settings.asOf })
  .map(({ motor }) => motor)
  .filter((_, at) => at % 8 === 0);

/** Every option that could be carried out in each year of the budget, with the motor it is for. */
const cases = fleet.flatMap((motor) => {
  const evaluation = evaluateMotor(motor, study);
  return evaluation.options.flatMap(({ id, workings, netPresentValueByYear: byYear }) =>
    workings && byYear.length > 1 ? [{ motor, evaluation, id, byYear: byYear.map(fromMoney) }] : [],
  );
});
const worthOf = (evaluation: Evaluation, id: string, year: number) => {
  const { worth } = carriedOut(evaluation, id, year);
  if (!worth) throw new Error(`no worth of ${id}`);
  return worth;
};

describe('what is carried out in a year of the budget', () => {
  it('is worth what the option says for that year, to the cent, and at once as doubtful as its net present value', () => {
    expect(cases.length).toBeGreaterThan(20);
    for (const { evaluation, id, byYear } of cases) {
      byYear.forEach((value, year) => {
        expect(Math.abs(worthOf(evaluation, id, year).value - value)).toBeLessThanOrEqual(0.0051);
      });
      const value = evaluation.options.find((option) => option.id === id)?.figures.net_present_value;
      expect(worthOf(evaluation, id, 0).u).toBe(value && standardUncertainty(value));
    }
  });

  // The whole evaluation at other rates is a way that shares no derivative with this one.
  it('bears the doubt of the failure rate as motors evaluated at other rates do (a factor of two counts as two deviations)', () => {
    const step = 0.05;
    let compared = 0;
    for (const { motor, evaluation, id, byYear } of cases) {
      const at = (factor: number) => {
        const question = moved({ motor, study }, 'failure-rate', factor);
        const option = evaluateMotor(question.motor, question.study).options.find((each) => each.id === id);
        return option?.netPresentValueByYear.map(fromMoney) ?? [];
      };
      const [up, down] = [at(Math.exp(step)), at(Math.exp(-step))];
      byYear.forEach((_, year) => {
        const [above, below] = [up[year], down[year]];
        const own = worthOf(evaluation, id, year).shared.find(([cause]) => cause === 'failure-rate')?.[1] ?? 0;
        if (above === undefined || below === undefined) return;
        const expected = ((above - below) / (2 * step)) * (Math.LN2 / 2);
        // The slope bends a little over the step, and values are rounded to cents.
        expect(Math.abs(own - expected)).toBeLessThanOrEqual(0.01 * Math.abs(expected) + 0.2);
        if (year > 0 && Math.abs(expected) > 20) compared += 1;
      });
    }
    expect(compared).toBeGreaterThan(10);
  });

  it('is less sure in sum than by squares, since motors share their meters and the failure rate', () => {
    for (const year of [0, 2]) {
      const parts = cases.map(({ evaluation, id }) => worthOf(evaluation, id, year));
      const sum = sumOverMotors(parts);
      expect(sum.u).toBeGreaterThan(1.05 * Math.hypot(...parts.map(({ u }) => u)));
      expect(sum.u).toBeLessThan(parts.reduce((total, { u }) => total + u, 0));
    }
  });

  it('has no worth where the option has none, nor in a year that is not in the budget', () => {
    const [one] = cases;
    if (!one) throw new Error('no case');
    expect(carriedOut(one.evaluation, 'no-such-option', 0)).toEqual({ worth: undefined, energySaved: undefined });
    expect(carriedOut(one.evaluation, one.id, one.byYear.length).worth).toBeUndefined();
  });
});
