import { describe, expect, it } from 'vitest';
import { evaluateMotor, repairOrReplaceCurve, turnings } from '@/lib/engine';
import { moved, type Question } from '@/lib/engine/explain/lever';
import { motorOf, study } from '../support/study';

const question = (hoursPerYear: number, settings: Parameters<typeof study>[0] = {}): Question => ({
  motor: motorOf({
    plate: { nominalEfficiencyPct: 87, drivenMachine: 'pump', flowControl: 'drive', driveFed: false },
    reading: { inputPowerKw: 30, currentA: 49, shaftSpeedRpm: undefined },
    motor: { hoursPerYear },
  }),
  study: study(settings),
});

describe('what turns a decision', () => {
  const asked = question(8000);
  const answer = turnings(asked);

  it('is found by evaluating again: at the factor the other option is decided, a little nearer to today the same as today', () => {
    expect(answer.decided).toBe(evaluateMotor(asked.motor, asked.study).decision.option);
    expect(answer.turnings.length).toBeGreaterThan(0);
    for (const turning of answer.turnings) {
      expect(turning.option).not.toBe(answer.decided);
      if (turning.lever === 'load') continue;
      const decide = (factor: number) => {
        const { motor, study: context } = moved(asked, turning.lever as Exclude<typeof turning.lever, 'load'>, factor);
        return evaluateMotor(motor, context).decision.option;
      };
      expect(decide(turning.factor)).toBe(turning.option);
      expect(decide(turning.factor * (turning.factor > 1 ? 0.999 : 1.001))).toBe(answer.decided);
    }
  });
  it('comes nearest first, in a sentence with its numbers', () => {
    const distances = answer.turnings.map(({ factor }) => Math.abs(Math.log(factor)));
    expect(distances).toEqual([...distances].sort((a, b) => a - b));
    for (const { text } of answer.turnings) {
      expect(text).toMatch(/^With .*\d.* the decision would turn to .+\.$/);
      expect(text).not.toMatch(/NaN|undefined/);
    }
  });
  it('names the runner-up: of the rest the one of the highest value', () => {
    const { options } = evaluateMotor(asked.motor, asked.study);
    const others = options
      .filter((option) => option.id !== answer.decided)
      .map((option) => option.figures.net_present_value?.value ?? -Infinity);
    expect(answer.runnerUp?.value).toBe(Math.max(...others));
    expect(answer.runnerUp?.option).not.toBe(answer.decided);
  });
  it('never speaks of 0 %: a change that small is less than 1 %', () => {
    const price = answer.turnings.find(({ lever }) => lever === 'energy-price');
    if (!price) throw new Error('no price of energy turns the decision');
    const near = price.factor > 1 ? price.factor / 1.002 : price.factor / 0.998;
    const close = turnings(question(8000, { energyPricePerKwh: asked.study.settings.energyPricePerKwh * near }));
    const text = close.turnings.find(({ lever }) => lever === 'energy-price')?.text;
    expect(text).toContain(`(less than 1 % ${price.factor > 1 ? 'more' : 'less'})`);
  });
  it('never names keeping a failed motor as the runner-up', () => {
    const failed = { ...asked, motor: { ...asked.motor, plate: { ...asked.motor.plate, status: 'failed' as const } } };
    const found = turnings(failed);
    expect(found.runnerUp).toBeDefined();
    expect([found.decided, found.runnerUp?.option]).not.toContain('keep');
  });
  it('is nothing for a spare, and never more hours than a year has', () => {
    const spare = { ...asked, motor: { ...asked.motor, plate: { ...asked.motor.plate, status: 'spare' as const } } };
    expect(turnings(spare)).toMatchObject({ decided: 'keep', turnings: [] });
    for (const { lever, factor } of answer.turnings) if (lever === 'hours') expect(factor * 8000).toBeLessThanOrEqual(8784);
  });
  it('is no load above half as much again as the rating, however little a motor runs', () => {
    for (const hours of [600, 900, 1300, 1800, 2500]) {
      const little = question(hours);
      const { duty } = evaluateMotor(little.motor, little.study);
      const highest = Math.max(...(duty?.points ?? []).map(({ loadFraction }) => loadFraction.value));
      for (const { lever, factor } of turnings(little).turnings)
        if (lever === 'load') expect(factor * highest, `${hours} h`).toBeLessThanOrEqual(1.5 + 1e-9);
    }
  });
});

describe('repair or replace by rating and hours', () => {
  const given = {
    site: 'North',
    ratedVoltageV: 460,
    poles: 4,
    enclosure: 'enclosed',
    efficiencyClass: 'standard',
    load: 0.75,
    fromKw: 7,
    toKw: 76,
  } as const;
  const hoursOf = (settings: Parameters<typeof study>[0]) =>
    repairOrReplaceCurve(study(settings), given).map(({ hours }) =>
      hours.kind === 'at'
        ? hours.value
        : hours.kind === 'always'
          ? 0
          : hours.kind === 'never'
            ? Number.POSITIVE_INFINITY
            : Number.NaN,
    );

  it('has every standard rating of the range, and hours within a year', () => {
    const curve = repairOrReplaceCurve(study(), given);
    // 10, 15, 20, 25, 30, 40, 50, 60, 75 and 100 hp (NEMA MG 1 10.32.4, from memory).
    expect(curve.map(({ ratedPowerKw }) => Math.round(ratedPowerKw / 0.7457))).toEqual([10, 15, 20, 25, 30, 40, 50, 60, 75, 100]);
    for (const { hours } of curve) {
      expect(hours.kind).not.toBe('unknown');
      if (hours.kind === 'at') expect(hours.value).toBeGreaterThan(0);
    }
  });
  it('asks for fewer hours where energy is dear, and for about half of them at twice the price without a demand charge', () => {
    const free = { demandPricePerKwMonth: 0 };
    const cheap = hoursOf({ ...free, energyPricePerKwh: 0.06 });
    const dear = hoursOf({ ...free, energyPricePerKwh: 0.12 });
    let compared = 0;
    cheap.forEach((hours, index) => {
      const less = dear[index] ?? Number.NaN;
      expect(less).toBeLessThanOrEqual(hours);
      if (!Number.isFinite(hours) || hours === 0) return;
      expect(less).toBeCloseTo(hours / 2, 3);
      compared++;
    });
    expect(compared).toBeGreaterThan(3);
  });
});
