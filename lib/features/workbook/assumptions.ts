import type { Mover, Settings } from '@/lib/engine';

/** Name of the sheet with every value that may be changed. */
export const ASSUMPTIONS = 'Assumptions';

/** One value that formulas name. */
interface Assumption {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly meaning: string;
  readonly source: string;
}

/** Head rows of the sheet, above the first assumption. */
export const HEAD_ROWS = 3;

/** Collects what formulas name, each once; the sheet is written when all motors have been seen. */
export class Assumptions {
  readonly list: Assumption[] = [];
  readonly #names = new Map<string, string>();
  readonly #settings: Settings;

  constructor(settings: Settings) {
    this.#settings = settings;
    const money = settings.moneyTerms;
    this.#add('discount_rate', settings.discountRate, '1/a', `Discount rate, in ${money} terms`, 'setting discount_rate');
    this.#add('tax_rate', settings.taxRate, '1', 'Tax on what is saved', 'setting tax_rate');
    const inflation = money === 'nominal' ? settings.inflation : 0;
    this.#add(
      'price_growth',
      inflation,
      '1/a',
      'Growth of prices of motors and repairs (nil in real terms)',
      'setting inflation, in nominal terms',
    );
    this.#add('hours_factor', 1, '1', 'All hours a year times this', 'to try what other hours would mean');
    this.#add('cost_factor', 1, '1', 'Listed and quoted prices of motors and repairs times this', 'to try other prices');
    // The usual prices come first even where a site has its own tariff.
    this.nameOf(
      { kind: 'assumption', label: 'price of energy', source: 'setting energy_price_per_kwh' },
      { value: settings.energyPricePerKwh, unit: 'currency/kWh' },
    );
    this.nameOf(
      { kind: 'assumption', label: 'price of demand', source: 'setting demand_price_per_kw_month' },
      { value: settings.demandPricePerKwMonth, unit: 'currency/(kW month)' },
    );
  }

  /** What a formula writes for a value that moves with an assumption. */
  nameOf(
    mover: Extract<Mover, { kind: 'assumption' }>,
    { value, unit }: { readonly value: number; readonly unit: string },
  ): string {
    const key = `${mover.source}|${mover.label}|${value}`;
    return this.#names.get(key) ?? this.#named(key, baseName(mover), { value, unit, mover });
  }

  /** A value of the study that no line of working carries, such as the growth of a tariff's prices. */
  stated(base: string, value: number, unit: string, meaning: string): string {
    const key = `${base}|${meaning}|${value}`;
    return (
      this.#names.get(key) ??
      this.#named(key, base, { value, unit, mover: { kind: 'assumption', label: meaning, source: 'settings' } })
    );
  }

  #named(
    key: string,
    base: string,
    given: { readonly value: number; readonly unit: string; readonly mover: Extract<Mover, { kind: 'assumption' }> },
  ): string {
    const taken = new Set(this.list.map((entry) => entry.name));
    let name = base;
    for (let number = 2; taken.has(name); number++) name = `${base}_${number}`;
    const { value, unit, mover } = given;
    this.#add(name, value, unit.replace('currency', this.#settings.currency), mover.label, mover.source);
    this.#names.set(key, name);
    return name;
  }

  #add(name: string, value: number, unit: string, meaning: string, source: string): void {
    this.list.push({ name, value, unit, meaning, source });
  }
}

/** A setting keeps its name; a tariff's price is named by what it is. */
function baseName({ label, source }: Extract<Mover, { kind: 'assumption' }>): string {
  const setting = /^setting ([a-z][a-z_]+)$/.exec(source)?.[1];
  const words = setting ?? `tariff ${label}`;
  return words
    .replace(/,.*$/, '')
    .trim()
    .toLowerCase()
    .replaceAll(/[^a-z]+/g, '_');
}
