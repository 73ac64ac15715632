import { taxTerms } from '../money/tax-relief';
import type { Settings } from '../settings';
import { priceIndex } from '../tariff/tariff';
import { type Basis, type CountTerm, flowCounts, type PlanKind, type PlanLine } from './flow-counts';
import type { PriceGrowth } from './running-prices';

/** Amounts of a basis by year, 0 first, and what they come to. */
interface YearlyCounts {
  /** Price growth and tax are in it, discounting is not. */
  readonly yearly: readonly number[];
  readonly presentValue: number;
  /** Change of the present value by the logarithm of the failure rate. */
  readonly slope: number;
}

/** One term of the cash flow: so much of a basis in each year, option against baseline, positive when less is spent. */
export interface FlowTerm extends YearlyCounts {
  readonly basis: Basis;
  readonly line: PlanLine;
  /** True when the term counts as outlay in the savings-to-investment ratio. */
  readonly outlay: boolean;
  /** How often the basis is spared in each year, before prices and tax; absent for tax, which is no event. */
  readonly times?: readonly number[] | undefined;
  /** What is to be added for the demand in the basis, where a ratchet delays what it saves. */
  readonly delay?: YearlyCounts | undefined;
}

/** A term of an option that is carried out later; by how much the failure rate moves it is not worked out. */
export type LaterTerm = Omit<FlowTerm, 'slope' | 'delay'> & { readonly delay?: Omit<YearlyCounts, 'slope'> | undefined };

/** The cash flow of one kind of option, linear in what the motor brings along: the same for every motor of a site. */
export interface FlowPlan {
  /** What the value and the cash flow consist of; failure cost is among them only if the settings ask for it. */
  readonly terms: readonly FlowTerm[];
  /** Failure cost alone. */
  readonly failure: readonly FlowTerm[];
  /** The same when carried out at the start of year 1, 2, …: by year of the budget, the first being that of `terms`. */
  readonly later: readonly (readonly LaterTerm[])[];
}

const plans = new WeakMap<Settings, Map<PriceGrowth, Map<PlanKind, FlowPlan>>>();

/** The plan of a kind of option under a study's settings and a site's growth of prices; computed once for each. */
export function flowPlan(settings: Settings, growth: PriceGrowth, kind: PlanKind): FlowPlan {
  const byGrowth = plans.get(settings) ?? new Map<PriceGrowth, Map<PlanKind, FlowPlan>>();
  plans.set(settings, byGrowth);
  const byKind = byGrowth.get(growth) ?? new Map<PlanKind, FlowPlan>();
  byGrowth.set(growth, byKind);
  const plan = byKind.get(kind) ?? makePlan(settings, growth, kind);
  byKind.set(kind, plan);
  return plan;
}

/** Step of the failure rate in the numerical slope. */
const STEP = 0.01;

function makePlan(settings: Settings, growth: PriceGrowth, kind: PlanKind): FlowPlan {
  const rate = settings.failureRatePerYear;
  const years = Math.min(settings.budget.length, settings.horizonYears);
  const counted = (term: { readonly line: PlanLine }) => term.line !== 'failure' || settings.includeFailureCost;
  const later: FlowPlan['later'][number][] = [];
  for (let start = 1; start < years; start++)
    later.push(priced(settings, growth, { kind, failureRate: rate, start }).filter(counted));
  const terms = withSlopes(settings, growth, kind, 0);
  return { terms: terms.filter(counted), failure: terms.filter((term) => term.line === 'failure'), later };
}

/**
 * What the value of an option consists of that is carried out at the start of a year of the budget, 0 first, with how the failure rate moves it:
 * for the few options of which that is asked.
 */
export function termsFrom(settings: Settings, growth: PriceGrowth, kind: PlanKind, start: number): readonly FlowTerm[] {
  return withSlopes(settings, growth, kind, start).filter(({ line }) => line !== 'failure' || settings.includeFailureCost);
}

function withSlopes(settings: Settings, growth: PriceGrowth, kind: PlanKind, start: number): FlowTerm[] {
  const rate = settings.failureRatePerYear;
  const of = (failureRate: number) => priced(settings, growth, { kind, failureRate, start });
  const up = of(rate * (1 + STEP));
  const down = of(rate * (1 - STEP));
  const slope = (above: number | undefined, below: number | undefined) => ((above ?? 0) - (below ?? 0)) / (2 * STEP);
  return of(rate).map(
    (term, index): FlowTerm => ({
      ...term,
      slope: slope(up[index]?.presentValue, down[index]?.presentValue),
      delay: term.delay && {
        ...term.delay,
        slope: slope(up[index]?.delay?.presentValue, down[index]?.delay?.presentValue),
      },
    }),
  );
}

/** Motors that are bought at failures, which the tax writes off over years. */
const BOUGHT: ReadonlySet<Basis> = new Set<Basis>(['sameInstalled', 'sameAgain', 'investmentAgain']);

type Amounts = Omit<YearlyCounts, 'slope'>;

/** Counts of events turned into money: prices grow, the tax is taken, present values are formed. */
function priced(
  settings: Settings,
  growth: PriceGrowth,
  given: { readonly kind: PlanKind; readonly failureRate: number; readonly start: number },
): LaterTerm[] {
  const counts = flowCounts({ ...given, horizon: settings.horizonYears, policy: settings.policy.atFailure });
  const general = settings.moneyTerms === 'nominal' ? settings.inflation : 0;
  const terms = counts.map(({ basis, line, outlay, counts: times }): LaterTerm => {
    const running = line === 'running';
    const kept = running || line === 'failure' ? 1 - settings.taxRate : 1;
    // Energy prices are those of the study's date in year 1; other prices are those of the study's date at year 0.
    const price = (year: number) => (running ? priceIndex(growth.escalation, year - 1) : (1 + general) ** year);
    const amounts = valued(
      settings,
      times.map((count, year) => count * price(year) * kept),
    );
    return {
      basis,
      line,
      outlay,
      ...amounts,
      times,
      ...(running && { delay: delayOf(settings, growth, times, (year) => price(year) * kept) }),
    };
  });
  return [...terms, ...taxOn(settings, given.kind, terms)];
}

/** What a ratchet takes from the demand saving in each year: it is billed as the mix of this year's and last year's peak. */
function delayOf(
  settings: Settings,
  { firstYearDemandShare }: PriceGrowth,
  times: CountTerm['counts'],
  price: (year: number) => number,
): Amounts | undefined {
  if (firstYearDemandShare === 1) return undefined;
  const late = 1 - firstYearDemandShare;
  return valued(
    settings,
    times.map((count, year) => (year === 0 ? 0 : -late * (count - (times[year - 1] ?? 0)) * price(year))),
  );
}

function taxOn(settings: Settings, kind: PlanKind, terms: readonly LaterTerm[]): LaterTerm[] {
  const repair = kind === 'repair-failed' || kind === 'rewind-now' || kind === 'bearings-now';
  return taxTerms(settings, terms, ({ basis, line }) => {
    if (line === 'residual') return 'proceeds';
    if (line === 'rebate') return 'purchase';
    if (line !== 'investment' && line !== 'avoided_repair') return undefined;
    const bought = BOUGHT.has(basis) || (basis === 'investment' && !repair);
    if (bought) return 'purchase';
    // What is repaired now, or in a later year by choice, opens that year; a failure closes its own.
    return basis === 'investment' || basis === 'repairNow' ? 'expense-at-start' : 'expense';
  }).map(({ term, yearly }) => ({
    basis: term.basis,
    line: 'tax',
    outlay: term.line === 'residual' && term.outlay,
    ...valued(settings, yearly),
  }));
}

function valued(settings: Settings, yearly: readonly number[]): Amounts {
  let presentValue = 0;
  yearly.forEach((flow, year) => {
    presentValue += flow / (1 + settings.discountRate) ** year;
  });
  return { yearly, presentValue };
}
