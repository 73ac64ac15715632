import { type MotorResult, motorKey, type OptionResult } from '@/lib/engine';
import type { ProgrammeItem } from '../plan/programme';
import type { Content } from './content';

/** An option of a funded motor that the programme does not carry out. */
export interface OtherOption {
  readonly id: string;
  /** At the prices of the study's day. */
  readonly cost: number;
  /** If it were carried out in the year of the programme; absent for what waits until the motor fails. */
  readonly worth?: number | undefined;
  /** What it changes in each year of the horizon, as if carried out at once, before discounting. */
  readonly cashFlow: readonly number[];
  readonly against: Against;
}

/** How it stands to the option that was chosen. */
export type Against =
  | { readonly kind: 'ruled-out'; readonly text: string }
  | { readonly kind: 'waits' }
  | { readonly kind: 'unknown' }
  /** Present value of the chosen one less its own, in the year of the programme. */
  | { readonly kind: 'worth'; readonly less: number }
  /** Somebody asked for the chosen one. */
  | { readonly kind: 'pinned'; readonly less: number | undefined };

/** A funded motor with the options that it was chosen from. */
export interface MotorChoice {
  readonly year: number;
  readonly item: ProgrammeItem;
  readonly others: readonly OtherOption[];
}

/** The options of each funded motor that were not chosen, from its frozen result; keeping it as it is, which changes nothing, is not among them. */
export function notChosen({ programme, results }: Pick<Content, 'programme' | 'results'>): MotorChoice[] {
  const known = new Map((results as readonly MotorResult[]).map((result) => [motorKey(result), result.options]));
  const wishes = programme.method === 'plan' ? programme.wishes : [];
  const pinned = new Set(wishes.filter(({ kind }) => kind === 'pinned').map(motorKey));
  return programme.years.flatMap(({ year, items }, at) =>
    items.map((item): MotorChoice => {
      const others = (known.get(motorKey(item)) ?? []).filter(({ id, action }) => id !== item.option && action !== 'keep');
      return {
        year,
        item,
        others: others.map((option) => {
          const worth = option.timing === 'now' ? option.net_present_value_by_year[at] : undefined;
          return {
            id: option.id,
            cost: option.cost,
            ...(worth !== undefined && { worth }),
            cashFlow: option.cash_flow,
            against: againstOf(option, { worth, chosen: item.net_present_value, pinned: pinned.has(motorKey(item)) }),
          };
        }),
      };
    }),
  );
}

function againstOf(
  option: OptionResult,
  {
    worth,
    chosen,
    pinned,
  }: { readonly worth: number | undefined; readonly chosen: number | undefined; readonly pinned: boolean },
): Against {
  const bar = option.findings.find(({ severity }) => severity === 'disqualifies');
  if (bar) return { kind: 'ruled-out', text: bar.text };
  if (option.timing === 'at-failure') return { kind: 'waits' };
  const less = worth === undefined || chosen === undefined ? undefined : chosen - worth;
  if (pinned) return { kind: 'pinned', less };
  return less === undefined ? { kind: 'unknown' } : { kind: 'worth', less };
}
