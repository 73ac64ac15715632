import { describe, expect, it } from 'vitest';
import { trendOf } from '@/lib/engine/condition/trend';
import { evaluateMotor } from '@/lib/engine/evaluate';
import type { Reading } from '@/lib/engine/motor';
import { exact, type Quantity } from '@/lib/engine/quantity/quantity';
import { motorOf, READING, study } from '../support/study';

const doubtful = (value: number, u: number): Quantity => ({ unit: 'mm/s', value, parts: { at: [1], by: [u] } });
const dated = (year: number, value: Quantity) => ({ takenAt: `${year}-01-01`, value });

describe('the line through dated values', () => {
  it('has the slope of a straight rise, in the unit a year', () => {
    const trend = trendOf([dated(2021, exact(1, 'mm/s')), dated(2022, exact(2, 'mm/s')), dated(2023, exact(3, 'mm/s'))], false);
    expect(trend).toMatchObject({ unit: 'mm/s/a', readings: 3, since: '2021-01-01', direction: 'worse' });
    // Two calendar years are 730 days of 365.25.
    expect(trend?.perYear).toBeCloseTo(2 / (730 / 365.25), 9);
  });

  it('agrees with the least squares of a textbook example, worked by hand', () => {
    // Times 0, 1, 2, 3 in steps of 365.25 days but for leap days; sizes 2, 3, 5, 6: slope 1.4, residuals 0.1, −0.3, 0.3, −0.1, so s² = 0.2/2 and
    // u = √(0.1/5) = 0.1414.
    const trend = trendOf(
      [2, 3, 5, 6].map((size, i) => dated(2021 + i, exact(size, 'mm/s'))),
      false,
    );
    expect(trend?.perYear).toBeCloseTo(1.4, 2);
    expect(trend?.u).toBeCloseTo(0.1414, 3);
  });

  it('is steady where the readings’ own doubt is larger than what they moved', () => {
    expect(trendOf([dated(2021, doubtful(2, 0.5)), dated(2022, doubtful(2.4, 0.5))], false)?.direction).toBe('steady');
    expect(trendOf([dated(2021, doubtful(2, 0.05)), dated(2022, doubtful(2.4, 0.05))], false)?.direction).toBe('worse');
  });

  it('knows which way is worse', () => {
    const falling = [dated(2021, doubtful(4, 0.1)), dated(2023, doubtful(2, 0.1))];
    expect(trendOf(falling, false)?.direction).toBe('better');
    expect(trendOf(falling, true)?.direction).toBe('worse');
  });

  it.each([
    ['none', []],
    ['one', [dated(2021, exact(1, 'mm/s'))]],
    ['two of one day', [dated(2021, exact(1, 'mm/s')), dated(2021, exact(2, 'mm/s'))]],
    ['two within a month', [dated(2021, exact(1, 'mm/s')), { takenAt: '2021-01-31', value: exact(2, 'mm/s') }]],
  ])('has no answer for %s', (_, values) => {
    expect(trendOf(values, false)).toBeUndefined();
  });
});

it('a month apart is enough for a line', () => {
  const later = { takenAt: '2021-02-01', value: exact(2, 'mm/s') };
  expect(trendOf([dated(2021, exact(1, 'mm/s')), later], false)?.perYear).toBeCloseTo(365.25 / 31, 9);
});

describe('trends of a motor', () => {
  const yearly = (values: readonly Partial<Reading>[]) =>
    motorOf({
      plate: { foundation: 'rigid' },
      readings: values.map((value, i) => ({ ...READING, row: 2 + i, takenAt: `${2021 + i}-06-01`, ...value })),
    });
  const vibration = (values: readonly Partial<Reading>[]) =>
    evaluateMotor(yearly(values), study()).condition.indicators.find((entry) => entry.id === 'vibration');

  it('vibration within its zone but rising is shown as getting worse, and clears no suspicion', () => {
    const rising = [0.9, 1.2, 1.6, 2.1].map((vibrationMmS) => ({ vibrationMmS }));
    expect(vibration(rising)).toMatchObject({ band: 'within', trend: { direction: 'worse', readings: 4 } });
    const against = (values: readonly Partial<Reading>[]) => {
      const { suspicions } = evaluateMotor(yearly(values.map((value) => ({ ...value, bearingTempC: 95 }))), study()).condition;
      const bearing = suspicions().hypotheses.find((entry) => entry.id === 'bearing');
      return bearing?.againstIt.map((entry) => entry.indicator);
    };
    expect(against(rising)).not.toContain('vibration');
    expect(against([2.1, 2.1, 2.1, 2.1].map((vibrationMmS) => ({ vibrationMmS })))).toContain('vibration');
  });

  it('leaves out readings at another load', () => {
    const light = { inputPowerKw: 11, currentA: undefined, shaftSpeedRpm: undefined, vibrationMmS: 4 };
    expect(vibration([light, { vibrationMmS: 2 }])?.trend).toBeUndefined();
  });

  it('falling insulation is getting worse', () => {
    const motor = yearly([900, 400, 60].map((insulationResistanceMohm) => ({ insulationResistanceMohm, insulationTempC: 40 })));
    const found = evaluateMotor(motor, study()).condition.indicators.find((entry) => entry.id === 'insulation-resistance');
    expect(found?.trend).toMatchObject({ direction: 'worse', unit: 'MΩ/a' });
  });
});
