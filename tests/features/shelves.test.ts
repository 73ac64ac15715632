import { describe, expect, it } from 'vitest';
import { evaluateMotor, type Motor, type StudyContext, shelvesOf } from '@/lib/engine';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

const reference = loadTables();
const STUDY: StudyContext = {
  settings: { ...defaultSettings(), asOf: '2026-01-01' },
  tables: reference.tables,
  prices: reference.prices,
};
const MOTORS = generateDemo({ asOf: '2026-01-01' }).map((entry) => entry.motor);
const GIVEN = { restockYears: 0.15, keepingPerYear: 0.02 };
const evaluate = (motors: readonly Motor[], study = STUDY) => motors.map((motor) => evaluateMotor(motor, study));

describe('shelves of the demonstration site', () => {
  const shelves = shelvesOf(evaluate(MOTORS), GIVEN);

  it('count each motor with a priced replacement at failure once, and list what is worth most first', () => {
    const tags = shelves.flatMap((shelf) => shelf.tags);
    expect(tags.length).toBeGreaterThan(50);
    expect(new Set(tags).size).toBe(tags.length);
    for (const [index, shelf] of shelves.entries()) {
      expect(shelf.best.value).toBeGreaterThanOrEqual(0);
      expect(shelf.best.value).toBeLessThanOrEqual(shelves[index - 1]?.best.value ?? Number.POSITIVE_INFINITY);
    }
  });
  it('more like motors never make a spare worth less', () => {
    const worth = [1, 4, 12].map((count) => {
      const like = MOTORS.filter((motor) => motor.tag === shelves[0]?.tags[0]).flatMap((motor) =>
        Array.from({ length: count }, (_, n) => ({ ...motor, tag: `${motor.tag}-${n}` })),
      );
      return shelvesOf(evaluate(like), GIVEN)[0]?.best.value ?? -1;
    });
    expect(worth[1]).toBeGreaterThanOrEqual(worth[0] ?? 0);
    expect(worth[2]).toBeGreaterThan(worth[1] ?? 0);
  });
  it('keep none where the policy replaces a failed motor anyway, or where nothing fails', () => {
    const anyway = {
      ...STUDY,
      settings: { ...STUDY.settings, policy: { ...STUDY.settings.policy, atFailure: 'replace' as const } },
    };
    const never = { ...STUDY, settings: { ...STUDY.settings, failureRatePerYear: 0 } };
    for (const study of [anyway, never])
      for (const shelf of shelvesOf(evaluate(MOTORS, study), GIVEN)) expect(shelf.best.spares).toBe(0);
    expect(shelvesOf([], GIVEN)).toEqual([]);
  });
});
