import type { Settings } from '../settings';
import { type Basis, flowCounts, type PlanKind, type PlanLine } from './flow-counts';

/** One term of the cash flow: so much of a basis in each year, option against baseline, positive when less is spent. */
export interface FlowTerm {
  readonly basis: Basis;
  readonly line: PlanLine;
  /** True when the term counts as outlay in the savings-to-investment ratio. */
  readonly outlay: boolean;
  /** By year, 0 first; price growth and tax are in it, discounting is not. */
  readonly yearly: readonly number[];
  readonly presentValue: number;
  /** Change of the present value by the logarithm of the failure rate. */
  readonly slope: number;
}

/** The cash flow of one kind of option, linear in what the motor brings along: the same for every motor of a study. */
export interface FlowPlan {
  /** What the value and the cash flow consist of; failure cost is among them only if the settings ask for it. */
  readonly terms: readonly FlowTerm[];
  /** Failure cost alone. */
  readonly failure: readonly FlowTerm[];
  /** Present values when carried out at the start of year 1, 2, …: by year of the budget, the first being that of `terms`. */
  readonly later: readonly (readonly { readonly basis: Basis; readonly line: PlanLine; readonly presentValue: number }[])[];
}

const plans = new WeakMap<Settings, Map<PlanKind, FlowPlan>>();

/** The plan of a kind of option under a study's settings; computed once a study. */
export function flowPlan(settings: Settings, kind: PlanKind): FlowPlan {
  const known = plans.get(settings) ?? new Map<PlanKind, FlowPlan>();
  plans.set(settings, known);
  const plan = known.get(kind) ?? makePlan(settings, kind);
  known.set(kind, plan);
  return plan;
}

/** Step of the failure rate in the numerical slope. */
const STEP = 0.01;

function makePlan(settings: Settings, kind: PlanKind): FlowPlan {
  const rate = settings.failureRatePerYear;
  const base = priced(settings, kind, rate, 0);
  const up = priced(settings, kind, rate * (1 + STEP), 0);
  const down = priced(settings, kind, rate * (1 - STEP), 0);
  const years = Math.min(settings.budget.length, settings.horizonYears);
  const counted = (term: { readonly line: PlanLine }) => term.line !== 'failure' || settings.includeFailureCost;
  const later: FlowPlan['later'][number][] = [];
  for (let start = 1; start < years; start++) later.push(priced(settings, kind, rate, start).filter(counted));
  const terms = base.map((term, index) => ({
    ...term,
    slope: ((up[index]?.presentValue ?? 0) - (down[index]?.presentValue ?? 0)) / (2 * STEP),
  }));
  return { terms: terms.filter(counted), failure: terms.filter((term) => term.line === 'failure'), later };
}

/** Counts of events turned into money: prices grow, the tax is taken, present values are formed. */
function priced(settings: Settings, kind: PlanKind, failureRate: number, start: number): Omit<FlowTerm, 'slope'>[] {
  const counts = flowCounts({
    kind,
    failureRate,
    start,
    horizon: settings.horizonYears,
    policy: settings.policy.atFailure,
  });
  const general = settings.moneyTerms === 'nominal' ? settings.inflation : 0;
  return counts.map((term) => {
    const running = term.line === 'running';
    const taxed = running || term.line === 'failure';
    const kept = taxed ? 1 - settings.taxRate : 1;
    let presentValue = 0;
    const yearly = term.counts.map((count, year) => {
      // Energy prices are those of the study's date in year 1; other prices are those of the study's date at year 0.
      const growth = running ? (1 + settings.energyPriceEscalation) ** (year - 1) : (1 + general) ** year;
      const flow = count * growth * kept;
      presentValue += flow / (1 + settings.discountRate) ** year;
      return flow;
    });
    return { basis: term.basis, line: term.line, outlay: term.outlay, yearly, presentValue };
  });
}
