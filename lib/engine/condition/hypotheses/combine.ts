import type { HypothesisId } from '../hypothesis-id';
import type { Evidence } from './evidence';

/** Share of motors that have a fault before anything was read. */
export interface Prior {
  readonly hypothesis: HypothesisId;
  readonly chance: number;
}

/** For and against, as logarithms, of one group of evidence on one hypothesis. */
interface GroupSum {
  forIt: number;
  againstIt: number;
}

/**
 * Chance of each fault, given the evidence.
 *
 * States: no fault, one fault, or two at once; a third is left out. The weight of a state is the product of the odds of its faults before
 * anything was read and of what each group of evidence says. Within a group only the strongest evidence for and the strongest against a
 * fault count, since readings of one cause or instrument move together. With two faults a reading that speaks for both is explained by
 * the one that explains it better; what speaks against either counts against both. So a reading that one fault explains says nothing for
 * another, two faults can stand beside each other, and evidence against is never averaged away.
 *
 * Units: chances from 0 to 1. Valid for: priors well below one. Errors: none; without evidence the priors come back, but for the pairs.
 * Source: Bayes' theorem with conditionally independent groups; one or two faults by own choice.
 */
export function combine(priors: readonly Prior[], evidence: readonly Evidence[]): ReadonlyMap<HypothesisId, number> {
  const sums = priors.map(({ hypothesis }) => groupSums(evidence.filter((entry) => entry.hypothesis === hypothesis)));
  const logOdds = priors.map(({ chance }) => Math.log(chance / (1 - chance)));
  // What each group says for each fault, side by side: looking it up for every pair would take longer than all the rest.
  const groups = [...new Set(evidence.map((entry) => entry.group))];
  const forIt = sums.map((sum) => groups.map((group) => sum.get(group)?.forIt ?? 0));
  const against = sums.map((sum) => total(sum, 'againstIt'));
  const single = priors.map((_, i) => Math.exp((logOdds[i] ?? 0) + total(sums[i], 'forIt') + (against[i] ?? 0)));
  const withFault = [...single];
  let all = 1 + single.reduce((sum, weight) => sum + weight, 0);
  for (let i = 0; i < priors.length; i++)
    for (let j = i + 1; j < priors.length; j++) {
      let log = (logOdds[i] ?? 0) + (logOdds[j] ?? 0) + (against[i] ?? 0) + (against[j] ?? 0);
      for (let g = 0; g < groups.length; g++) log += Math.max(forIt[i]?.[g] ?? 0, forIt[j]?.[g] ?? 0);
      const weight = Math.exp(log);
      withFault[i] = (withFault[i] ?? 0) + weight;
      withFault[j] = (withFault[j] ?? 0) + weight;
      all += weight;
    }
  return new Map(priors.map(({ hypothesis }, i) => [hypothesis, (withFault[i] ?? 0) / all]));
}

function groupSums(evidence: readonly Evidence[]): ReadonlyMap<string, GroupSum> {
  const sums = new Map<string, GroupSum>();
  for (const { group, logRatio } of evidence) {
    const sum = sums.get(group) ?? { forIt: 0, againstIt: 0 };
    sum.forIt = Math.max(sum.forIt, logRatio);
    sum.againstIt = Math.min(sum.againstIt, logRatio);
    sums.set(group, sum);
  }
  return sums;
}

function total(sums: ReadonlyMap<string, GroupSum> | undefined, side: keyof GroupSum): number {
  let sum = 0;
  for (const group of sums?.values() ?? []) sum += group[side];
  return sum;
}
