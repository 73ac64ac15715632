import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { evaluateMotor, type StudyContext, shelfMotor, shelvesOf } from '@/lib/engine';
import { adviceOf, sparesCsv } from '@/lib/features/ranking/spares';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { someMotors } from './support/study-with-demo';

const { tables, prices } = loadTables();
const STUDY: StudyContext = { settings: defaultSettings(), tables, prices };
const motors = someMotors(120).flatMap((motor) => shelfMotor(evaluateMotor(motor, STUDY)) ?? []);
const shelves = shelvesOf(motors, STUDY, { restockYears: (8 * 7) / 365.25, keepingPerYear: 0.02 });
const advice = shelves.map((shelf) => adviceOf(shelf, STUDY.settings));

describe('the spare strategy in words and as a file', () => {
  it('says of each kind why, in words without a figure out of nothing', () => {
    expect(advice.length).toBeGreaterThan(5);
    for (const { reasons } of advice) {
      expect(reasons.length).toBeGreaterThan(0);
      expect(reasons.join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it('the share of the stops that it asks for makes up exactly what the first spare lacks', () => {
    const [shelf] = shelves.filter(({ best, one }) => best.spares === 0 && one.value < 0);
    if (!shelf) throw new Error('every spare pays by itself');
    const asking = adviceOf({ ...shelf, stopsMet: -4 * shelf.one.value }, STUDY.settings);
    expect(asking.stopShareNeeded).toBeCloseTo(0.25, 9);
    expect(asking.reasons.join(' ')).toContain('25\u202f% of what the stops cost');
    // Stops that cost less than what is lacking cannot pay for it, whatever share is saved.
    expect(adviceOf({ ...shelf, stopsMet: -0.9 * shelf.one.value }, STUDY.settings).stopShareNeeded).toBeUndefined();
  });

  it('is read back from the file with the figures of the page', () => {
    const rows = Papa.parse<Record<string, string>>([...sparesCsv(advice, 'USD')].join(''), {
      header: true,
      skipEmptyLines: true,
    }).data;
    expect(rows.length).toBe(advice.length);
    for (const [at, row] of rows.entries()) {
      const shelf = advice[at];
      expect(Number(row.spares)).toBe(shelf?.best.spares);
      expect(Number(row.value)).toBeCloseTo(shelf?.best.value ?? Number.NaN, 1);
      expect(Number(row.value)).toBeCloseTo(Number(row.gained) - Number(row.keeping_cost), 1);
      expect(row.tags?.split(' ').length).toBe(Number(row.motors));
      expect(row.reasons).toBe(shelf?.reasons.join(' '));
    }
  });
});
