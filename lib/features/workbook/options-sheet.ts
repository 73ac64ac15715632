import {
  FORMULAS,
  fromMoney,
  type MotorWorksheet,
  type OptionWorksheet,
  type Product,
  type Settings,
  type WorthLines,
} from '@/lib/engine';
import { type Cell, columnName, filled } from './cells';
import { LINE_WORDS } from './words';
import type { TermRows, YearsSheet } from './years-sheet';

export const OPTIONS = 'Options';
export const CASH_FLOW = 'Cash flow';

export const OPTION_HEADS = [
  'Site',
  'Tag',
  'Option',
  'Action',
  'Timing',
  'Rated power, kW',
  'Decided',
  'Cost',
  'Cost that the payback counts',
  'Energy saved, kWh a year',
  'Money saved a year',
  'Saved in the first year',
  'Simple payback, years',
  'Net present value',
  'Rate of return',
] as const;

/** Head of the net present value of an option that is carried out in a later year, before the year. */
export const LATER_HEAD = 'Net present value if done in';

/** Lines of the cash flow in order, each with the part of a worth that it takes. */
const LINES = [
  ['energy', 'running', 'energy'],
  ['demand', 'running', 'demand'],
  ['power factor', 'running', 'powerFactor'],
  ['avoided_repair', 'avoided_repair', 'whole'],
  ['residual', 'residual', 'whole'],
  ['investment', 'investment', 'whole'],
  ['rebate', 'rebate', 'whole'],
  ['tax', 'tax', 'whole'],
  ['failure', 'failure', 'whole'],
] as const;

const LEAD = 4;

/** Options of every motor with their figures, and the cash flow of each by line. */
export class OptionsSheet {
  readonly #years: YearsSheet;
  readonly #horizon: number;
  /** Years of the budget after the first in which an option could be carried out. */
  readonly #later: readonly number[];
  readonly #writeOption: (cells: readonly Cell[]) => void;
  readonly #writeFlow: (cells: readonly Cell[]) => void;
  #flowRows = 1;

  constructor(
    years: YearsSheet,
    { horizonYears: horizon, budget, asOf }: Pick<Settings, 'horizonYears' | 'budget' | 'asOf'>,
    write: { readonly option: (cells: readonly Cell[]) => void; readonly flow: (cells: readonly Cell[]) => void },
  ) {
    this.#years = years;
    this.#horizon = horizon;
    this.#later = Array.from({ length: Math.max(0, Math.min(budget.length, horizon) - 1) }, (_, at) => at + 1);
    this.#writeOption = write.option;
    this.#writeFlow = write.flow;
    write.option([...OPTION_HEADS, ...this.#later.map((after) => `${LATER_HEAD} ${Number(asOf.slice(0, 4)) + after}`)]);
    write.flow(['Site', 'Tag', 'Option', 'Line', ...Array.from({ length: horizon + 1 }, (_, year) => `Year ${year}`)]);
  }

  add(sheet: MotorWorksheet, address: (product: Product) => string): void {
    for (const worked of sheet.options) this.#option(sheet, worked, address);
  }

  #option(sheet: MotorWorksheet, worked: OptionWorksheet, address: (product: Product) => string): void {
    const { motor, decided } = sheet;
    const { option, flow } = worked;
    const { figures } = option;
    const line = (number: number | undefined, result: number | undefined): Cell =>
      number === undefined || result === undefined ? null : { formula: address([number]), result };
    const rest: Cell[] = flow
      ? [
          line(flow.netCost, flow.workings.netCost.value),
          line(worked.energySaved, figures.energy_saved?.value),
          line(worked.moneySaved, figures.money_saved?.value),
          line(flow.firstYear, flow.workings.firstYear.value),
          payback(address([flow.netCost]), address([flow.firstYear]), figures.simple_payback?.value),
          { formula: this.#value(flow, address), result: figures.net_present_value?.value ?? 0 },
          this.#flow(sheet, worked, address),
          ...this.#later.map((after): Cell => {
            const result = option.netPresentValueByYear[after];
            return result === undefined ? null : { formula: this.#value(flow, address, after), result: fromMoney(result) };
          }),
        ]
      : [null, line(worked.energySaved, figures.energy_saved?.value), line(worked.moneySaved, figures.money_saved?.value)];
    this.#writeOption([
      motor.site,
      motor.tag,
      option.id,
      option.action,
      option.timing,
      option.ratedPowerKw,
      option.id === decided ? 'yes' : '',
      line(worked.cost, figures.cost.value),
      ...rest,
    ]);
  }

  #value(flow: NonNullable<OptionWorksheet['flow']>, address: (product: Product) => string, after = 0): string {
    const { plan, growth } = flow.workings;
    return sum(
      this.#years.rowsOf(plan, growth, after).flatMap(({ term, row, delayRow }) => {
        const worth = flow.worths[term.basis];
        return [
          worth && `${this.#years.address(row)}*${address(worth.whole)}`,
          worth?.demand && delayRow !== undefined && `${this.#years.address(delayRow)}*${address(worth.demand)}`,
        ];
      }),
    );
  }

  #rowsOf({ workings }: NonNullable<OptionWorksheet['flow']>): readonly TermRows[] {
    return this.#years.rowsOf(workings.plan, workings.growth);
  }

  /** Writes the lines of a cash flow and their sum. @returns the cell of the rate of return. */
  #flow({ motor }: MotorWorksheet, { option, flow }: OptionWorksheet, address: (product: Product) => string): Cell {
    if (!flow) return null;
    const first = this.#flowRows + 1;
    const years = Array.from({ length: this.#horizon + 1 }, (_, year) => year);
    for (const [name, line, part] of LINES) {
      const terms = this.#rowsOf(flow).filter(({ term }) => term.line === line && flow.worths[term.basis]?.[part]);
      if (terms.length === 0) continue;
      this.#flowRows += 1;
      const amounts = option.lines?.[name === 'power factor' ? 'power_factor' : name];
      this.#writeFlow([
        motor.site,
        motor.tag,
        option.id,
        line === 'running' ? name : LINE_WORDS[line],
        ...years.map(
          (year): Cell => ({
            formula: `ROUND(${this.#amounts(terms, { worths: flow.worths, part, year }, address)}, 2)`,
            result: fromMoney(amounts?.[year] ?? ZERO),
          }),
        ),
      ]);
    }
    const last = this.#flowRows;
    this.#flowRows += 1;
    const total = this.#flowRows;
    this.#writeFlow([
      motor.site,
      motor.tag,
      option.id,
      'together',
      ...years.map((year): Cell => {
        const column = columnName(LEAD + 1 + year);
        return { formula: `SUM(${column}${first}:${column}${last})`, result: fromMoney(option.cashFlow[year] ?? ZERO) };
      }),
    ]);
    const cell = (year: number) => `$${columnName(LEAD + 1 + year)}$${total}`;
    const from = (year: number) => `'${CASH_FLOW}'!${cell(year)}:${cell(this.#horizon)}`;
    const rate = option.internalRateOfReturn;
    return { formula: rateFormula(`'${CASH_FLOW}'!${cell(0)}`, from(1), from(0)), result: rate ?? 'none' };
  }

  #amounts(
    terms: readonly TermRows[],
    given: {
      readonly worths: Readonly<Record<string, WorthLines | undefined>>;
      readonly part: keyof WorthLines;
      readonly year: number;
    },
    address: (product: Product) => string,
  ): string {
    return sum(
      terms.flatMap(({ term, row, delayRow }) => {
        const worth = given.worths[term.basis]?.[given.part];
        if (!worth) return [];
        const of = (at: number) => `${this.#years.address(at, given.year)}*${address(worth)}`;
        return [of(row), given.part === 'demand' && delayRow !== undefined && of(delayRow)];
      }),
    );
  }
}

/** Starts of the spreadsheet's search, which gives up far from a root or finds one below −1; where none serves the cell says so. */
const STARTS = [0.1, -0.1, 0.6];

/** A rate at which the present value rises with the rate is that of a loan, and none of a return. */
function rateFormula(first: string, later: string, all: string): string {
  return STARTS.reduceRight((otherwise, start) => {
    const rate = `IRR(${all}, ${start})`;
    const falls = `${first} + NPV(${rate} + 0.0001, ${later}) < 0`;
    return `IFERROR(IF(AND(${rate} > -1, ${falls}), ${rate}, 0 / 0), ${otherwise})`;
  }, '"none"');
}

const ZERO = 0 as Parameters<typeof fromMoney>[0];

function sum(parts: readonly (string | false | undefined)[]): string {
  const kept = parts.filter((part) => typeof part === 'string');
  return kept.length === 0 ? '0' : kept.join(' + ');
}

/** Payback by the sheet's formula, within the bounds in which it holds. */
function payback(netCost: string, saving: string, result: number | undefined): Cell {
  const formula = FORMULAS.money?.simple_payback;
  if (!formula) throw new Error('the formula of the payback is missing');
  const inside = filled(formula.cell, { net_cost: netCost, saving });
  return { formula: `IF(${saving} <= 0, "never", IF(${netCost} <= 0, 0, ${inside}))`, result: result ?? 'never' };
}
