import type { ReadingEvaluation } from '../../load/reading';
import { SUSPICION } from '../../load/suspicion';
import type { Finding } from '../../quantity/finding';
import { oftenWords } from '../../quantity/words';
import type { Observation } from './evidence';

/** Chance of so large a disagreement by meter errors alone, below which readings contradict one another, and below which they may (common practice). */
const BEYOND_P = 0.01;
const NEAR_P = 0.05;

/**
 * Whether the readings agree among themselves: the ways to the load by their chi-squared, impossible values, and mistakes that were named. Undefined where nothing was
 * read that could be compared.
 */
export function readingsAgreement(
  inUse: ReadingEvaluation | undefined,
  latest: { readonly findings: readonly Finding[] } | undefined,
): Observation | undefined {
  const base = { indicator: 'readings-agreement', title: 'Agreement of the readings', weight: 1, sharedWith: [] };
  const impossible = latest?.findings.find(
    ({ code, severity }) => severity === 'disqualifies' || Object.hasOwn(SUSPICION.kinds, code),
  );
  if (impossible) return { ...base, band: 'beyond', words: `beyond: ${impossible.text.replace(/\.$/, '')}` };
  const p = inUse?.combination?.agreement?.p;
  if (p === undefined) return undefined;
  const band = p < BEYOND_P ? 'beyond' : p < NEAR_P ? 'near' : 'within';
  return { ...base, band, words: `${band} (were all in order, they would disagree so much ${oftenWords(p)})` };
}
