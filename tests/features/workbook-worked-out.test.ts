import { describe, expect, it } from 'vitest';
import { evaluateMotor, motorKey, motorResult, type Settings, type StudyContext } from '@/lib/engine';
import { defaultSettings } from '@/lib/features/study/settings';
import { Calculation } from '@/lib/features/workbook/calculation';
import type { Cell } from '@/lib/features/workbook/cells';
import { workedOut } from '@/lib/features/workbook/work-out';
import { loadTables } from '@/lib/reference/load';
import { DECIDED_FLEET } from './support/decided-fleet';

const { tables, prices } = loadTables();
const context = (changes: Partial<Settings> = {}): StudyContext => ({
  settings: { ...defaultSettings(), ...changes },
  tables,
  prices,
});
/** A formula; the value beside it is wrong, and must not be looked at. */
const formula = (text: string): Cell => ({ formula: text, result: -999 });

describe('a workbook worked out from the text of its formulas', () => {
  const of = (text: string, cells: readonly (readonly Cell[])[] = []) =>
    new Calculation(
      new Map<string, readonly (readonly Cell[])[]>([
        ['Sheet', [[formula(text)], ...cells]],
        ['Other one', [[null, 7]]],
      ]),
      new Map([['rate', 0.5]]),
    ).valueAt('Sheet', 1, 1);

  it.each([
    // As spreadsheets have it: a sign binds before a power, powers go from left to right.
    ['-2 ^ 2', 4],
    ['2 ^ 3 ^ 2', 64],
    ['2 + 3 * 4 - 10 / 5', 12],
    ['8 - 3 - 2', 3],
    ['(1 + rate) ^ -1', 1 / 1.5],
    ['1e3 * 2', 2000],
    ["'Other one'!$B$1 * 2", 14],
    ['SUM(A2:C2)', 6],
    ['SUMPRODUCT(A2:C2, A3:C3)', 32],
    ['ROUND(-2.345, 2)', -2.35],
    ['IF(A2 <= 0, "never", A2 / 4)', 0.25],
    ['IF(A2 > 0, "always", 1)', 'always'],
    ['IFERROR(1 / 0, "none")', 'none'],
    ['LN(EXP(3)) + SQRT(16) + ABS(-1)', 8],
    ['A5 + 1', 1],
  ])('%s is %s', (text, value) => {
    const cells: readonly (readonly Cell[])[] = [
      [1, 2, 3],
      [4, 5, formula('B3 + 1')],
    ];
    const found = of(text, cells);
    if (typeof value === 'number') expect(found).toBeCloseTo(value, 12);
    else expect(found).toBe(value);
  });

  it.each(['1 +', '(1', 'NOW(1)', 'nobody', '1 2', '"text" * 2', '#'])('refuses %s, which no sheet writes', (text) => {
    expect(() => of(text)).toThrow();
  });

  it.each([
    ['as usual', {}],
    [
      'in nominal terms with tax, depreciation, replacement at failure and growing prices',
      {
        taxRate: 0.3,
        depreciation: { method: 'straight-line', years: 7 },
        moneyTerms: 'nominal',
        inflation: 0.02,
        energyPriceEscalation: [0.03, 0.01, 0.02],
        includeFailureCost: true,
        policy: { ...defaultSettings().policy, atFailure: 'replace' },
      } satisfies Partial<Settings>,
    ],
  ])('comes to cost and value of every option in every year of the budget, to the cent, %s', async (_, changes) => {
    const study = context(changes);
    const motors = DECIDED_FLEET.filter((__, at) => at % 3 === 0);
    const found = await workedOut(motors, study);
    let valued = 0;
    for (const motor of motors)
      for (const option of motorResult(evaluateMotor(motor, study)).options) {
        const worked = found.get(`${motorKey(motor)}\n${option.id}`);
        expect(Math.abs((worked?.cost ?? Number.NaN) - option.cost)).toBeLessThan(0.0051);
        if (option.action === 'keep' || option.timing === 'at-failure' || option.net_present_value === undefined) continue;
        option.net_present_value_by_year.forEach((value, at) => {
          expect(Math.abs((worked?.values[at] ?? Number.NaN) - value), `${option.id} ${at}`).toBeLessThan(0.0051);
          valued += 1;
        });
      }
    expect(valued).toBeGreaterThan(30);
  });
});
