import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine/evaluate';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { motorOf, READING, study } from './support/study';

const dutyOf = (motor: ReturnType<typeof motorOf>) => evaluateMotor(motor, study()).duty?.points ?? [];

describe('the duty in force', () => {
  const twice = [
    { ...READING, duty: [{ fraction: 1, hoursPerYear: 2000 }] },
    {
      ...READING,
      row: 3,
      takenAt: '2025-07-01T10:00',
      duty: [
        { fraction: 1, hoursPerYear: 3000 },
        { fraction: 0.5, hoursPerYear: 1000 },
      ],
    },
  ];
  it('is the profile of the highest row of the sheet', () => {
    expect(dutyOf(motorOf({ readings: twice })).map(({ hours }) => hours.value)).toEqual([3000, 1000]);
    expect(dutyOf(motorOf({ readings: [...twice].reverse() })).map(({ hours }) => hours.value)).toEqual([3000, 1000]);
  });

  it('has the shares of a profile refer to the load of its reading, by definition', () => {
    const [full, half] = dutyOf(motorOf({ readings: twice }));
    expect((half?.loadFraction.value ?? 0) / (full?.loadFraction.value ?? 1)).toBeCloseTo(0.5, 12);
  });

  it('is all hours at the load in use without one, the hours known to 5 % (common practice)', () => {
    const [only, ...rest] = dutyOf(motorOf());
    expect([only?.hours.value, rest.length]).toEqual([6000, 0]);
    expect(standardUncertainty(only?.hours ?? { parts: { at: [], by: [] } })).toBeCloseTo(0.05 * 6000, 9);
  });

  it('is none where no hours are known', () => {
    expect(dutyOf(motorOf({ motor: { hoursPerYear: undefined } }))).toEqual([]);
  });
});
