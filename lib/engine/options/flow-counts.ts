/** What a flow is counted in: a year's running of one of the machines, an outlay, a value left, or one unplanned stop. */
export type Basis =
  | 'old'
  | 'oldRepaired'
  | 'same'
  | 'option'
  | 'optionRepaired'
  | 'investment'
  | 'investmentAgain'
  | 'rebate'
  | 'rebateSame'
  | 'repairNow'
  | 'repairAtFailure'
  | 'repairLater'
  | 'repairOptionFirst'
  | 'repairOption'
  | 'workNow'
  | 'workAtFailure'
  | 'workLater'
  | 'workOptionFirst'
  | 'workOption'
  | 'sameInstalled'
  | 'sameAgain'
  | 'purchaseOption'
  | 'purchaseSame'
  | 'oldWorth'
  | 'stop';

/** Line of the cash flow that a term belongs to; `running` is shown as energy and demand. */
export type PlanLine = 'running' | 'avoided_repair' | 'residual' | 'investment' | 'rebate' | 'failure' | 'tax';

/**
 * Kinds of options as their cash flows differ:
 * `change-now` replaces a running motor at the start of a year, `change-at-failure` waits for the failure, `change-failed` replaces a
 * failed one; `repair-failed`, `rewind-now` and `bearings-now` repair.
 */
export type PlanKind = 'change-now' | 'change-at-failure' | 'change-failed' | 'repair-failed' | 'rewind-now' | 'bearings-now';

/** Expected number of times that a basis is spared (positive) or spent (negative) in each year, 0 first. */
export interface CountTerm {
  readonly basis: Basis;
  readonly line: PlanLine;
  readonly outlay: boolean;
  readonly counts: number[];
}

interface Given {
  readonly kind: PlanKind;
  /** Unplanned failures a year. */
  readonly failureRate: number;
  /** Year at whose start the option is carried out; 0 is now. */
  readonly start: number;
  readonly horizon: number;
  readonly policy: 'repair' | 'replace';
}

/** The work of each repair without removal and fitting: what is left of it at the horizon is counted in that. */
const WORK = {
  repairNow: 'workNow',
  repairAtFailure: 'workAtFailure',
  repairLater: 'workLater',
  repairOptionFirst: 'workOptionFirst',
  repairOption: 'workOption',
} as const satisfies { readonly [B in Basis]?: Basis };

/** A machine fails at most once a year in this model; the rate is kept below this. */
const HIGHEST_RATE = 0.9;

/**
 * Expected flows of an option against the baseline, as counts.
 *
 * Baseline: the old motor runs; at each expected failure (constant rate λ, end of year) the policy repairs it or puts in a premium motor of
 * the same rating. The option's motor fails at the same rate and gets the same treatment, so a healthy pair differs in energy alone. A
 * repaired motor keeps its age and its reduced efficiency; further repairs change it no more. A quotation for a repair is for the next
 * one, of the old motor or of the one that took its place before it failed; what is bought by the policy in place of the old motor earns the rebate that the option would.
 * What fits a motor to its place, as a frame adapter, is bought with the first of its kind and stays: the next ones are bought without it.
 * Value left at the horizon: purchase price by the straight line over a life of 1/λ years, and in the same way the work of a rewind, since a rewound motor fails at
 * the same rate; the next failure or a new motor ends what a rewind has bought. Bearings are upkeep, of which nothing is left.
 *
 * With S(j) = (1 − λ)^j the chance of j years without failure, running in year t counts S(t−1) for the first motor and the rest for what
 * follows it.
 * Units: counts; years from the start of the study. Valid for: λ from 0 to 0.9 a year, a whole number of years.
 * Source: own derivation from the baseline (docs/methods/options-and-money.md); straight line as W. R. Murphy and G. McKay, Energy Management, 3.5;
 * replacements less what is left of them as 10 CFR 436.19.
 */
export function flowCounts({ kind, failureRate, start, horizon, policy }: Given): CountTerm[] {
  const rate = Math.min(Math.max(failureRate, 0), HIGHEST_RATE);
  const model: Model = {
    rate,
    horizon,
    policy,
    alive: (years) => (1 - rate) ** years,
    worth: (age) => Math.max(0, 1 - age * rate),
  };
  const book = new Book(model);
  switch (kind) {
    case 'bearings-now':
    case 'rewind-now':
      repairRunning(book, model, start, kind === 'rewind-now');
      break;
    case 'repair-failed':
      repairFailed(book, model);
      break;
    case 'change-at-failure':
      changeAtFailure(book, model);
      break;
    default:
      change(book, model, start, kind === 'change-failed');
  }
  return book.terms();
}

/** How long motors live, and what becomes of them. */
interface Model {
  readonly rate: number;
  readonly horizon: number;
  readonly policy: 'repair' | 'replace';
  /** Chance of so many years without failure. */
  readonly alive: (years: number) => number;
  /** Value left at an age, per purchase price. */
  readonly worth: (age: number) => number;
}

/** A running motor is repaired now, and so spares the stops of its worse condition; one that is rewound loses efficiency. */
function repairRunning(book: Book, { rate, horizon, policy, alive }: Model, start: number, rewound: boolean): void {
  book.add('investment', 'investment', start, -1, true);
  if (rewound) {
    book.keep('repairNow', start, 1, true);
    if (policy === 'repair') book.loseRepairs(start);
  }
  for (let year = start + 1; year <= horizon; year++) {
    if (rewound) {
      // Only a motor that has not failed before is rewound to its loss; one that has failed was repaired or replaced anyway.
      book.add('old', 'running', year, alive(year - 1));
      book.add('oldRepaired', 'running', year, -alive(year - 1));
      // The quotation is used up by the rewind now; without it the first failure would be repaired for it.
      if (policy === 'repair') {
        book.repair('repairAtFailure', year, rate * alive(year - 1));
        book.repair('repairLater', year, -rate * alive(year - 1));
      }
    }
    book.add('stop', 'failure', year, extraFailures(rate, year));
  }
}

/** A failed motor is repaired, whatever the policy would do. */
function repairFailed(book: Book, { rate, horizon, policy, alive, worth }: Model): void {
  book.add('investment', 'investment', 0, -1, true);
  book.keep('repairNow', 0, 1, true);
  if (policy === 'repair') book.repair('repairNow', 0, 1, true);
  else {
    book.add('sameInstalled', 'avoided_repair', 0, 1, true);
    book.add('rebateSame', 'rebate', 0, -1, true);
    for (let year = 1; year <= horizon; year++) {
      book.add('same', 'running', year, alive(year - 1));
      book.add('oldRepaired', 'running', year, -alive(year - 1));
      book.add('rebateSame', 'rebate', year, rate * alive(year - 1));
      // The motor that the policy buys after the repair is the first of its kind here, where the baseline buys another of its own.
      book.add('sameInstalled', 'avoided_repair', year, -rate * alive(year - 1));
      book.add('sameAgain', 'avoided_repair', year, rate * alive(year - 1));
    }
    book.add('oldWorth', 'residual', horizon, alive(horizon), true);
    book.add('purchaseSame', 'residual', horizon, -alive(horizon) * worth(horizon), true);
  }
}

/** A running motor is replaced at the start of a year, or a failed one now. */
function change(book: Book, model: Model, start: number, failed: boolean): void {
  const { rate, horizon, policy, alive, worth } = model;
  book.add('investment', 'investment', start, -1, true);
  book.add('rebate', 'rebate', start, 1, true);
  if (failed && policy === 'repair') book.repair('repairNow', 0, 1, true);
  if (failed && policy === 'replace') {
    book.add('sameInstalled', 'avoided_repair', 0, 1, true);
    book.add('rebateSame', 'rebate', 0, -1, true);
  }
  if (policy === 'repair') book.loseRepairs(start);
  for (let year = start + 1; year <= horizon; year++) {
    const oldAlive = failed ? 0 : alive(year - 1);
    const newAlive = alive(year - 1 - start);
    book.add('old', 'running', year, oldAlive);
    if (policy === 'repair') {
      book.add('oldRepaired', 'running', year, 1 - oldAlive);
      book.add('option', 'running', year, -newAlive);
      book.add('optionRepaired', 'running', year, newAlive - 1);
      book.repair('repairAtFailure', year, rate * oldAlive);
      book.repair('repairLater', year, rate * (1 - oldAlive));
      book.repair('repairOptionFirst', year, -rate * oldAlive);
      book.repair('repairOption', year, -rate * (1 - oldAlive));
    } else {
      book.add('same', 'running', year, 1 - oldAlive);
      book.add('option', 'running', year, -1);
      book.add('sameInstalled', 'avoided_repair', year, rate * oldAlive);
      book.add('sameAgain', 'avoided_repair', year, rate * (1 - oldAlive));
      book.add('rebateSame', 'rebate', year, -rate * oldAlive);
      book.add('investmentAgain', 'avoided_repair', year, -rate);
    }
    if (!failed) book.add('stop', 'failure', year, extraFailures(rate, year));
  }
  if (policy === 'repair') {
    book.add('purchaseOption', 'residual', horizon, worth(horizon - start), true);
    book.add('oldWorth', 'residual', horizon, -1, true);
  } else {
    const left = replacedWorth(model, start);
    book.add('purchaseOption', 'residual', horizon, alive(horizon - start) * worth(horizon - start) + left, true);
    book.add('oldWorth', 'residual', horizon, failed ? 0 : -alive(horizon), true);
    book.add(
      'purchaseSame',
      'residual',
      horizon,
      -replacedWorth(model, 0) - (failed ? alive(horizon) * worth(horizon) : 0),
      true,
    );
  }
}

/** Nothing until the first failure; then the new motor in place of what the policy would do. */
function changeAtFailure(book: Book, model: Model): void {
  const { rate, horizon, policy, alive, worth } = model;
  for (let year = 1; year <= horizon; year++) {
    const before = year - 1;
    const first = rate * alive(before);
    const again = rate * (1 - alive(before));
    const inPlace = before === 0 ? 0 : before * rate * alive(before - 1);
    book.add('investment', 'investment', year, -first, true);
    book.add('rebate', 'rebate', year, first, true);
    if (policy === 'repair') {
      book.add('oldRepaired', 'running', year, 1 - alive(before));
      book.add('option', 'running', year, -inPlace);
      book.add('optionRepaired', 'running', year, inPlace + alive(before) - 1);
      book.repair('repairAtFailure', year, first, true);
      book.repair('repairLater', year, again);
      book.repair('repairOption', year, -again);
      book.add('purchaseOption', 'residual', horizon, first * worth(horizon - year), true);
    } else {
      book.add('same', 'running', year, 1 - alive(before));
      book.add('option', 'running', year, alive(before) - 1);
      book.add('sameInstalled', 'avoided_repair', year, first, true);
      book.add('rebateSame', 'rebate', year, -first, true);
      book.add('sameAgain', 'avoided_repair', year, again);
      book.add('investmentAgain', 'avoided_repair', year, -again);
    }
  }
  if (policy === 'repair') book.add('oldWorth', 'residual', horizon, alive(horizon) - 1, true);
  else {
    const left = replacedWorth(model, 0);
    book.add('purchaseOption', 'residual', horizon, left, true);
    book.add('purchaseSame', 'residual', horizon, -left, true);
  }
}

/** Value left of motors put in at failures after `from`, per purchase price: by the year of the last one. */
function replacedWorth({ rate, horizon, alive, worth }: Model, from: number): number {
  let sum = 0;
  for (let year = from + 1; year <= horizon; year++) sum += rate * alive(horizon - year) * worth(horizon - year);
  return sum;
}

/** Unplanned stops in a year beyond the ordinary ones, when the old motor's condition doubles its rate until its first failure. */
function extraFailures(rate: number, year: number): number {
  const doubled = Math.min(2 * rate, HIGHEST_RATE);
  return (1 - doubled) ** (year - 1) * (doubled - rate);
}

/** Collects counts by basis and line, in order of first use. */
class Book {
  readonly #terms = new Map<string, CountTerm>();
  readonly #model: Model;

  constructor(model: Model) {
    this.#model = model;
  }

  /** Repairs that are spared, and what would have been left of them. */
  repair(basis: keyof typeof WORK, year: number, count: number, outlay = false): void {
    this.add(basis, 'avoided_repair', year, count, outlay);
    this.keep(basis, year, -count, outlay);
  }

  /** What is left at the horizon of repairs in a year: of a rewind, where no failure has come since. */
  keep(basis: keyof typeof WORK, year: number, count: number, outlay: boolean): void {
    const { horizon, alive, worth } = this.#model;
    this.add(WORK[basis], 'residual', horizon, count * alive(horizon - year) * worth(horizon - year), outlay);
  }

  /** Repairs of the old motor up to a year, of which a new motor or a rewind then leaves nothing; without it they are worth what is left of them. */
  loseRepairs(start: number): void {
    const { rate, alive } = this.#model;
    for (let year = 1; year <= start; year++) {
      this.keep('repairAtFailure', year, -rate * alive(year - 1), false);
      this.keep('repairLater', year, -rate * (1 - alive(year - 1)), false);
    }
  }

  add(basis: Basis, line: PlanLine, year: number, count: number, outlay = false): void {
    const key = `${basis} ${line} ${outlay}`;
    let term = this.#terms.get(key);
    if (!term) {
      term = { basis, line, outlay, counts: new Array<number>(this.#model.horizon + 1).fill(0) };
      this.#terms.set(key, term);
    }
    term.counts[year] = (term.counts[year] ?? 0) + count;
  }

  terms(): CountTerm[] {
    return [...this.#terms.values()];
  }
}
