import { describe, expect, test } from 'vitest';
import { derive, evaluateMotor, figuresOf, motorResult } from '@/lib/engine';
import { byDate, derivationByDate, readingDates, resultByDate } from '@/lib/features/fleet/reading-dates';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { someMotors } from '../support/study-with-demo';

const DATES = new Map([
  [70, '2025-11-03'],
  [71, '2025-12-04 09:30'],
]);

describe('readings of a motor on a screen', () => {
  test.each([
    ['The input power in row 70 fits if it is in watts.', 'The input power on 2025-11-03 fits if it is in watts.'],
    ['reading in row 71', 'reading of 2025-12-04 09:30'],
    [
      'The readings in row 70 are those of a motor running free.',
      'The readings of 2025-11-03 are those of a motor running free.',
    ],
    [
      'The stamps do not fit the readings of row 70; without them',
      'The stamps do not fit the readings of 2025-11-03; without them',
    ],
    [
      'The latest reading (row 71) could not be used; the figures are those of row 70.',
      'The latest reading (2025-12-04 09:30) could not be used; the figures are those of 2025-11-03.',
    ],
    ['In row 70 the ways beside slip are too uncertain.', 'On 2025-11-03 the ways beside slip are too uncertain.'],
    ['The estimate from row 70 bends.', 'The estimate of 2025-11-03 bends.'],
    ['fed by a drive and row 70 has no output frequency', 'fed by a drive and the reading of 2025-11-03 has no output frequency'],
    ['The reading in row 70 of 2027-01-02 is later', 'The reading of 2027-01-02 is later'],
  ])('with a date: %s', (text, shown) => expect(byDate(text, DATES)).toBe(shown));

  test.each([
    ['The reading in row 4 has no date and counts as the oldest.', 'The reading has no date and counts as the oldest.'],
    ['The load in row 4 rests on one way alone (slip).', 'The load rests on one way alone (slip).'],
    ['In row 4 the ways beside slip are too uncertain.', 'The ways beside slip are too uncertain.'],
    [
      'The latest reading (row 4) could not be used; the figures are those of row 5.',
      'The latest reading could not be used; the figures are those of another reading.',
    ],
    ['Load of row 4 by all stamps and readings together', 'Load of the reading by all stamps and readings together'],
    ['the readings of row 4; without it', 'the readings; without it'],
  ])('without one: %s', (text, shown) => expect(byDate(text, DATES)).toBe(shown));

  test.each(['bench test, row 70', 'Torque, row 70', 'reading of Torque in row 70', 'narrow 70', 'Nothing of rows.'])(
    'is left as it is: %s',
    (text) => expect(byDate(text, DATES)).toBe(text),
  );

  test('no derivation of a motor read once speaks of a row, but for keys that nobody sees', () => {
    const { tables, prices } = loadTables();
    const study = { settings: defaultSettings(), tables, prices };
    const [motor] = someMotors(1);
    if (!motor) throw new Error('no motor');
    const evaluation = evaluateMotor(motor, study, new Map());
    const dates = readingDates(motorResult(evaluation).readings);
    let before = 0;
    for (const [path, quantity] of figuresOf(evaluation)) {
      const derivation = derive(evaluation, path, quantity);
      if (!derivation) continue;
      before += /\brow \d/.test(JSON.stringify(derivation)) ? 1 : 0;
      expect(JSON.stringify(derivationByDate(derivation, dates))).not.toMatch(/\brow \d/);
    }
    expect(before).toBeGreaterThan(3);
  });

  test('no finding of a motor of the demonstration speaks of a row any more, and none loses its evidence', () => {
    const { tables, prices } = loadTables();
    const study = { settings: defaultSettings(), tables, prices };
    let before = 0;
    for (const motor of someMotors(200)) {
      const result = motorResult(evaluateMotor(motor, study));
      const shown = resultByDate(result);
      const texts = (of: typeof result) =>
        [of.trust, ...of.condition.indicators, ...of.options].flatMap(({ findings }) =>
          findings.flatMap(({ text, cause, next }) => [text, cause, next]),
        );
      before += texts(result).filter((text) => /\brow \d/.test(text)).length;
      expect(texts(shown).filter((text) => /\brow \d/.test(text))).toEqual([]);
      expect(shown.trust.findings.map(({ code, evidence }) => [code, evidence])).toEqual(
        result.trust.findings.map(({ code, evidence }) => [code, evidence]),
      );
      expect(readingDates(result.readings).size).toBeLessThanOrEqual(result.readings.length);
    }
    expect(before).toBeGreaterThan(20);
  });
});
