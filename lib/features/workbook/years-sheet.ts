import { type FlowPlan, FORMULAS, type LaterTerm, ofYear, type PriceGrowth, priceIndex, type Settings } from '@/lib/engine';
import type { Assumptions } from './assumptions';
import { type Cell, columnName, filled } from './cells';
import { BASIS_WORDS, LINE_WORDS } from './words';

export const YEARS = 'Years';

/** Columns before that of year 0. */
const LEAD = 5;
const PRESENT_VALUE = 'E';
const DISCOUNT_ROW = 2;
const PRICE_ROW = 3;

/** Where the amounts of a term stand: its row, and that of what a ratchet delays. */
export interface TermRows {
  readonly term: LaterTerm;
  readonly row: number;
  readonly delayRow?: number | undefined;
}

/**
 * Expected amounts by year for each kind of option: so many times of a basis, with the growth of prices and the tax. The same for all motors
 * whose options have one plan. Formulas, but for the expected number of times, which follow from the rate of failures.
 */
export class YearsSheet {
  readonly #settings: Settings;
  readonly #assumptions: Assumptions;
  readonly #write: (cells: readonly Cell[]) => void;
  readonly #growths = new Map<PriceGrowth, { readonly index: number; readonly late: string | undefined }>();
  readonly #plans = new Map<readonly LaterTerm[], readonly TermRows[]>();
  #rows = 0;

  constructor(settings: Settings, assumptions: Assumptions, write: (cells: readonly Cell[]) => void) {
    this.#settings = settings;
    this.#assumptions = assumptions;
    this.#write = write;
    const { discountRate } = settings;
    const spv = FORMULAS.money?.single_present_value;
    if (!spv) throw new Error('the formula of the present value is missing');
    this.#row('Plan', 'Counted in', 'Line', 'Part', 'Present value', (year) => year, 'Expected times, year 0 first');
    this.#row('', 'Present value of one at the end of the year', '', '', null, (year) => ({
      formula: filled(spv.cell, { rate: 'discount_rate', years: `${this.#at(year)}$1` }),
      result: (1 + discountRate) ** -year,
    }));
    this.#row('', 'Prices of motors and repairs, the start being 1', '', '', null, (year) => ({
      formula: `(1 + price_growth) ^ ${this.#at(year)}$1`,
      result: (1 + this.#general) ** year,
    }));
  }

  /** Column of a year. */
  #at(year: number): string {
    return columnName(LEAD + 1 + year);
  }

  get #general(): number {
    return this.#settings.moneyTerms === 'nominal' ? this.#settings.inflation : 0;
  }

  /** The rows of a plan that is carried out after so many years, written when they are first asked for; none where the plan does not go so far. */
  rowsOf(plan: FlowPlan, growth: PriceGrowth, after = 0): readonly TermRows[] {
    const terms: readonly LaterTerm[] = after === 0 ? plan.terms : (plan.later[after - 1] ?? []);
    const known = this.#plans.get(terms);
    if (known) return known;
    const number = this.#plans.size + 1;
    const prices = this.#growthOf(growth);
    const label = after === 0 ? `${number}` : `${number}, begun at the end of year ${after}`;
    const rows = terms.map((term) => this.#term(label, term, { growth, ...prices }));
    this.#plans.set(terms, rows);
    return rows;
  }

  /** Address of the amount of a year; the present value without one. */
  address(row: number, year?: number): string {
    return `${YEARS}!$${year === undefined ? PRESENT_VALUE : this.#at(year)}$${row}`;
  }

  #term(
    plan: string,
    term: LaterTerm,
    prices: { readonly growth: PriceGrowth; readonly index: number; readonly late: string | undefined },
  ): TermRows {
    const { times, line, yearly, delay } = term;
    const horizon = this.#settings.horizonYears;
    const first = LEAD + horizon + 3;
    const count = (year: number, row: number) => `$${columnName(first + year)}${row}`;
    const running = line === 'running';
    const taxed = running || line === 'failure' ? ' * (1 - tax_rate)' : '';
    const price = (year: number) => `${this.#at(year)}$${running ? prices.index : PRICE_ROW}`;
    const { taxRate } = this.#settings;
    // A part of the tax is no event: its times are those of a whole tax.
    const counts = times ?? yearly.map((amount) => (taxRate === 0 ? 0 : amount / taxRate));
    const row = this.#rows + 1;
    const label = [plan, BASIS_WORDS[term.basis], LINE_WORDS[line]] as const;
    this.#row(
      ...label,
      'whole',
      this.#presentValue(row, term.presentValue),
      (year) =>
        counts[year] === 0
          ? null
          : {
              formula: times ? `${count(year, row)} * ${price(year)}${taxed}` : `${count(year, row)} * tax_rate`,
              result: yearly[year] ?? 0,
            },
      counts,
    );
    if (!delay || !times || prices.late === undefined) return { term, row };
    const delayRow = this.#rows + 1;
    this.#row(
      ...label,
      'demand that a ratchet delays',
      this.#presentValue(delayRow, delay.presentValue),
      (year) =>
        year === 0
          ? null
          : {
              formula: `-${prices.late} * (${count(year, row)} - ${count(year - 1, row)}) * ${price(year)}${taxed}`,
              result: delay.yearly[year] ?? 0,
            },
      '',
    );
    return { term, row, delayRow };
  }

  #presentValue(row: number, result: number): Cell {
    const [from, to] = [this.#at(0), this.#at(this.#settings.horizonYears)];
    return { formula: `SUMPRODUCT(${from}${row}:${to}${row}, ${from}$${DISCOUNT_ROW}:${to}$${DISCOUNT_ROW})`, result };
  }

  #growthOf(growth: PriceGrowth): { readonly index: number; readonly late: string | undefined } {
    const known = this.#growths.get(growth);
    if (known) return known;
    const { escalation, firstYearDemandShare } = growth;
    const name =
      typeof escalation === 'number'
        ? this.#assumptions.stated('energy_price_escalation', escalation, '1/a', 'Growth of energy and demand prices a year')
        : undefined;
    const rate = this.#rows + 1;
    this.#row('', 'Growth of energy and demand prices after the year', '', '', null, (year) => {
      if (year === 0) return null;
      const value = ofYear(escalation, year - 1);
      return name === undefined ? value : { formula: name, result: value };
    });
    const index = this.#rows + 1;
    this.#row('', 'Energy and demand prices, year 1 being 1', '', '', null, (year) => {
      if (year === 0) return null;
      if (year === 1) return 1;
      const before = this.#at(year - 1);
      return { formula: `${before}${index} * (1 + ${before}${rate})`, result: priceIndex(escalation, year - 1) };
    });
    const late =
      firstYearDemandShare === 1
        ? undefined
        : this.#assumptions.stated(
            'demand_saving_late',
            1 - firstYearDemandShare,
            '1',
            'Share of a demand saving that a ratchet keeps from the first year',
          );
    const made = { index, late };
    this.#growths.set(growth, made);
    return made;
  }

  #row(
    plan: string,
    basis: string,
    line: string,
    part: string,
    presentValue: Cell,
    of: (year: number) => Cell,
    beside: string | readonly number[] = '',
  ): void {
    const years = Array.from({ length: this.#settings.horizonYears + 1 }, (_, year) => of(year));
    this.#rows += 1;
    this.#write([plan, basis, line, part, presentValue, ...years, null, ...(typeof beside === 'string' ? [beside] : beside)]);
  }
}
