import type { Option } from '../options/option';
import { combineParts, type Parts, standardUncertainty } from '../quantity/quantity';

/** What an option has brought in by the end of a year, discounted to the start. */
export interface FlowSoFar {
  readonly year: number;
  readonly value: number;
  /** Standard uncertainty from load, efficiencies, prices and costs; that of the failure rate is not in it. */
  readonly u: number;
}

/**
 * The discounted sum of an option's cash flow up to each year, with its doubt. The last is the net present value.
 *
 * Linear in what the motor brings along, so that doubts shared by old and new motor cancel as far as they do; empty for an option without
 * value. Units: currency; rate a fraction a year. Source: ASTM E917 (from memory) for the sum, GUM 5.2 for the doubt.
 */
export function flowSoFar({ workings }: Option, { discountRate }: { readonly discountRate: number }): readonly FlowSoFar[] {
  if (!workings) return [];
  const { plan, worths } = workings;
  const years = plan.terms[0]?.yearly.length ?? 0;
  const weights = plan.terms.map(() => ({ whole: 0, delayed: 0 }));
  const found: FlowSoFar[] = [];
  for (let year = 0; year < years; year++) {
    const factor = (1 + discountRate) ** -year;
    let value = 0;
    const parts: (readonly [number, Parts])[] = [];
    plan.terms.forEach(({ basis, yearly, delay }, index) => {
      const weight = weights[index];
      const worth = worths[basis];
      if (!weight || !worth) return;
      weight.whole += (yearly[year] ?? 0) * factor;
      value += weight.whole * worth.quantity.value;
      parts.push([weight.whole, worth.quantity.parts]);
      if (!delay || !worth.demandCost) return;
      weight.delayed += (delay.yearly[year] ?? 0) * factor;
      value += weight.delayed * worth.demandCost.value;
      parts.push([weight.delayed, worth.demandCost.parts]);
    });
    found.push({ year, value, u: standardUncertainty({ parts: combineParts(parts) }) });
  }
  return found;
}
