/** Rates, life-cycle costs and increments of a motor's options, against a spreadsheet's functions, hand arithmetic and drawn lives. */
import { MIRR, NPV } from '@formulajs/formulajs';
import { describe, expect, it } from 'vitest';
import { evaluateMotor, measuresOfWorth } from '@/lib/engine';
import type { Plate } from '@/lib/engine/motor';
import type { Settings } from '@/lib/engine/settings';
import { Chance } from '../../simulator/random';
import { motorOf, study } from '../support/study';

function of(settings: Partial<Settings> = {}, plate: Partial<Plate> = {}) {
  const context = study(settings);
  const evaluation = evaluateMotor(motorOf({ plate: { drivenMachine: 'pump', flowControl: 'none', ...plate } }), context);
  return { evaluation, settings: context.settings, found: measuresOfWorth(evaluation.options, context.settings) };
}
const netValue = (options: ReturnType<typeof of>['evaluation']['options'], id: string) =>
  options.find((option) => option.id === id)?.figures.net_present_value?.value ?? Number.NaN;

describe('every measure of an option', () => {
  it('has the modified rate of a spreadsheet, and the adjusted rate by hand', () => {
    const { evaluation, found, settings } = of();
    expect(found.options.length).toBeGreaterThan(1);
    for (const { id, modifiedRate, adjustedRate, internalRate } of found.options) {
      const option = evaluation.options.find((each) => each.id === id);
      const flows = option?.cashFlow.map((minor) => minor / 100) ?? [];
      // Financed and reinvested at one rate: what comes in over what is spent, both carried to the start.
      const carried = (sign: 1 | -1) => {
        const [first = 0, ...later] = flows.map((flow) => Math.max(sign * flow, 0));
        return first + Number(NPV(settings.discountRate, ...later));
      };
      const sheet = 1.08 * (carried(1) / carried(-1)) ** (1 / 15) - 1;
      if (modifiedRate.kind === 'value') expect(modifiedRate.value).toBeCloseTo(sheet, 9);
      const oneOutlay = flows.slice(1).every((flow) => flow >= 0);
      if (oneOutlay) expect(modifiedRate).toEqual({ kind: 'value', value: expect.closeTo(Number(MIRR(flows, 0.08, 0.08)), 6) });
      if (internalRate.kind === 'value') expect(internalRate.value).toBeCloseTo(option?.internalRateOfReturn ?? Number.NaN, 6);
      const ratio = option?.savingsToInvestment;
      if (ratio !== undefined && ratio > 0)
        expect(adjustedRate).toEqual({ kind: 'value', value: expect.closeTo(1.08 * ratio ** (1 / 15) - 1, 9) });
    }
  });
  it('says in words where there is none: nothing saved, nothing spent', () => {
    const { found } = of({}, { ratedPowerKw: 50 * 0.7457 });
    const idle = measuresOfWorth(evaluateMotor(motorOf({ motor: { hoursPerYear: 0 } }), study()).options, study().settings);
    for (const measures of [...found.options, ...idle.options])
      for (const stated of [measures.internalRate, measures.modifiedRate, measures.adjustedRate])
        if (stated.kind === 'none') expect(stated.text).toMatch(/^[A-Z].*\.$/);
        else if (stated.kind === 'value') expect(Number.isFinite(stated.value)).toBe(true);
    const lost = idle.options.find(({ id }) => id.startsWith('replace-now'));
    expect(lost?.internalRate.kind === 'value' && lost.internalRate.value < 0).toBe(true);
  });
  it('is none for a motor that is kept without an alternative', () => {
    const { found } = of({}, { status: 'spare' });
    expect(found).toEqual({ baseline: undefined, options: [], steps: { increments: [], chosen: undefined } });
  });
});

describe('life-cycle costs', () => {
  it('have one baseline: a quotation for the repair changes it by the first failure alone, for every option (by hand)', () => {
    // 1,500 in place of the listed price, at the first failure of 5 % a year, discounted at 8 %; where no other failure follows, what is left of
    // the difference by the straight line over 20 years comes back at the end.
    const plain = of();
    const quoted = of({}, { quotedRepair: 1500 });
    const list = plain.evaluation.options.find(({ timing }) => timing === 'at-failure')?.figures.cost.value ?? Number.NaN;
    const own = quoted.evaluation.options.find(({ timing }) => timing === 'at-failure')?.figures.cost.value ?? Number.NaN;
    let first = 0;
    for (let year = 1; year <= 15; year++) {
      first += (0.05 * 0.95 ** (year - 1)) / 1.08 ** year;
      first -= (0.05 * 0.95 ** (year - 1) * 0.95 ** (15 - year) * (1 - (15 - year) / 20)) / 1.08 ** 15;
    }
    const dearer = (list - own) * first;
    expect(Math.abs(dearer)).toBeGreaterThan(10);
    expect((quoted.found.baseline?.total ?? Number.NaN) - (plain.found.baseline?.total ?? Number.NaN)).toBeCloseTo(dearer, 6);
    const cost = ({ found }: typeof plain, part: string) =>
      found.options.find(({ id }) => id.includes(part))?.lifeCycleCost ?? Number.NaN;
    // What is done at failure spares the repair, so that its own costs do not know of the quotation.
    expect(cost(quoted, 'at-failure')).toBeCloseTo(cost(plain, 'at-failure'), 6);
    // A like motor in place of the old one is repaired for the same price.
    expect(cost(quoted, 'now') - cost(plain, 'now')).toBeCloseTo(dearer, 6);
  });
  it('differ by the net present values, whichever two are taken', () => {
    for (const atFailure of ['repair', 'replace'] as const) {
      const { evaluation, found, settings } = of({ policy: { ...study().settings.policy, atFailure }, taxRate: 0.3 });
      const total = found.baseline?.total ?? Number.NaN;
      expect(settings.policy.atFailure).toBe(atFailure);
      for (const { id, lifeCycleCost } of found.options)
        expect(total - (lifeCycleCost ?? Number.NaN)).toBeCloseTo(netValue(evaluation.options, id), 6);
    }
  });
  it.each([
    { discountRate: 0.05, horizonYears: 10, energyPriceEscalation: [0.03, 0.01] },
    { discountRate: 0, horizonYears: 4, taxRate: 0.3 },
  ])('differ by the value that a spreadsheet finds for the flow between them, %o', (settings) => {
    const { evaluation, found } = of(settings);
    const { total = Number.NaN, ...lines } = found.baseline ?? {};
    expect(Object.values(lines).reduce((sum, line) => sum + line, 0)).toBeCloseTo(total, 6);
    expect(found.options.length).toBeGreaterThan(1);
    for (const { id, lifeCycleCost = Number.NaN } of found.options) {
      const [first = 0, ...later] = evaluation.options.find((each) => each.id === id)?.cashFlow.map((minor) => minor / 100) ?? [];
      expect(later).toHaveLength(settings.horizonYears);
      // The flow is in whole cents.
      expect(Math.abs(total - lifeCycleCost - first - Number(NPV(settings.discountRate, ...later)))).toBeLessThan(0.06);
    }
  });
  it.each([
    { discountRate: 0.08, horizonYears: 15, rises: [0, 0] },
    { discountRate: 0.05, horizonYears: 10, rises: [0.03, 0.01] },
    { discountRate: 0, horizonYears: 4, rises: [0, 0] },
  ] as const)('of a motor that never fails are its bills of the years, by hand, %o', ({ rises, ...settings }) => {
    const { evaluation, found } = of({ ...settings, energyPriceEscalation: rises, failureRatePerYear: 0 });
    const kw = evaluation.point?.inputPower.value ?? Number.NaN;
    let bill = kw * (6000 * 0.11 + 12 * 9.5 * 0.8);
    const flows: number[] = [];
    for (let year = 1; year <= settings.horizonYears; year++) {
      flows.push(bill);
      bill *= 1 + rises[year === 1 ? 0 : 1];
    }
    // The year is at the assumed ambient, the reading at its own: a few parts in ten thousand.
    expect(Math.abs((found.baseline?.running ?? 0) / Number(NPV(settings.discountRate, ...flows)) - 1)).toBeLessThan(1e-3);
    expect(found.baseline?.repairs).toBe(0);
  });
  it('of a motor that fails and is repaired are the mean of drawn lives', () => {
    const { evaluation, found, settings } = of({ failureRatePerYear: 0.1 });
    const workings = evaluation.options.find(({ id }) => id.startsWith('replace-now'))?.workings;
    const worth = (basis: 'old' | 'oldRepaired' | 'repairLater') => workings?.worths[basis]?.quantity.value ?? Number.NaN;
    const chance = new Chance(20260301);
    let [running, repairs] = [0, 0];
    const lives = 40_000;
    for (let life = 0; life < lives; life++) {
      let repaired = false;
      for (let year = 1; year <= settings.horizonYears; year++) {
        const factor = 1.08 ** -year;
        running += factor * worth(repaired ? 'oldRepaired' : 'old');
        if (!chance.happens(0.1)) continue;
        repairs += factor * worth('repairLater');
        repaired = true;
      }
    }
    expect(found.baseline?.running).toBeCloseTo(running / lives, -1.5);
    expect(Math.abs((found.baseline?.repairs ?? 0) / (repairs / lives) - 1)).toBeLessThan(0.015);
    expect(worth('oldRepaired')).toBeGreaterThan(worth('old'));
  });
});

describe('what each dearer option adds', () => {
  it('ends at the option of the highest value, and its accepted steps add up to that value', () => {
    const { evaluation, found } = of({ energyPricePerKwh: 0.25 });
    const values = found.options.map(({ id }) => netValue(evaluation.options, id));
    const { increments, chosen } = found.steps;
    expect(netValue(evaluation.options, chosen ?? '')).toBe(Math.max(...values));
    const added = increments.filter(({ accepted }) => accepted).reduce((sum, { netPresentValue }) => sum + netPresentValue, 0);
    // The flow is in whole cents.
    expect(Math.abs(added - Math.max(...values))).toBeLessThan(0.2);
    expect(increments.map(({ to }) => to).sort()).toEqual(found.options.map(({ id }) => id).sort());
  });
});
