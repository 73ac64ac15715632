import { netPresentValue } from './present-value';
import { type RateOfReturn, rateOfReturn } from './rate-of-return';

/** One way of doing it, with its flows against the common baseline. */
interface Alternative {
  readonly id: string;
  /** Currency; index 0 at the start, then at each year's end. */
  readonly flows: readonly number[];
}

/** What the dearer of two alternatives brings for what it costs more. */
export interface Increment {
  /** The alternative that stood so far; absent: the baseline, nothing being done. */
  readonly from: string | undefined;
  readonly to: string;
  readonly extraCost: number;
  readonly netPresentValue: number;
  readonly rateOfReturn: RateOfReturn;
  readonly accepted: boolean;
}

/** The increments in order of cost, and what is chosen in the end; absent: nothing. */
export interface IncrementalAnalysis {
  readonly increments: readonly Increment[];
  readonly chosen: string | undefined;
}

/**
 * Compares alternatives of which one can be chosen, by what each next dearer one adds: it is taken when the increment is worth more than
 * nothing at the discount rate. Alternatives are never ranked by their own rates of return, which favour the small ones.
 *
 * Units: currency, rate a fraction a year. Of equal first costs the one worth more comes first; of equal worth the cheaper one is kept.
 * The chosen one is that of the highest net present value.
 * Source: NIST Handbook 135, incremental analysis of mutually exclusive alternatives (from memory); E. L. Grant and W. G. Ireson,
 * Principles of Engineering Economy (from memory).
 */
export function incrementalAnalysis(alternatives: readonly Alternative[], discountRate: number): IncrementalAnalysis {
  const rated = alternatives
    .map((alternative) => ({
      ...alternative,
      cost: -(alternative.flows[0] ?? 0),
      worth: netPresentValue(alternative.flows, discountRate),
    }))
    .sort((a, b) => a.cost - b.cost || b.worth - a.worth || (a.id < b.id ? -1 : 1));
  const increments: Increment[] = [];
  let standing: (typeof rated)[number] | undefined;
  for (const challenger of rated) {
    const flows = difference(challenger.flows, standing?.flows ?? []);
    const worth = netPresentValue(flows, discountRate);
    const accepted = worth > 0;
    increments.push({
      from: standing?.id,
      to: challenger.id,
      extraCost: challenger.cost - (standing?.cost ?? 0),
      netPresentValue: worth,
      rateOfReturn: rateOfReturn(flows),
      accepted,
    });
    if (accepted) standing = challenger;
  }
  return { increments, chosen: standing?.id };
}

function difference(more: readonly number[], less: readonly number[]): number[] {
  return Array.from({ length: Math.max(more.length, less.length) }, (_, year) => (more[year] ?? 0) - (less[year] ?? 0));
}
