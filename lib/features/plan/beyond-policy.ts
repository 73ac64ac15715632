import { keepsPolicy, type Settings } from '@/lib/engine';
import type { PlannedProgramme } from './programme';

/** How many motors of a plan would not be changed now by the policy on payback; those that something must be done with do not count. */
export function beyondPolicy({ years }: Pick<PlannedProgramme, 'years'>, { policy }: Pick<Settings, 'policy'>): number {
  return years
    .flatMap(({ items }) => items)
    .filter(
      ({ must, simple_payback, probability_within_policy: probability, net_present_value: value }) =>
        must !== true && !keepsPolicy({ payback: simple_payback?.value, probability, value }, policy),
    ).length;
}
