import type { MeteredKind } from './quantity/quantity';
import type { MotorResult } from './result';

/** One motor's part of a sum over motors. */
export interface Summand {
  readonly value: number;
  /** Standard uncertainty, all causes together. */
  readonly u: number;
  /** What shared causes contribute to it, by what names the cause in the whole fleet. */
  readonly shared: readonly (readonly [cause: string, contribution: number])[];
}

/** A sum with its standard uncertainty. */
export interface Sum {
  readonly value: number;
  readonly u: number;
}

/**
 * Sum over motors whose figures share causes of doubt: what a cause does to each adds up with its sign before it is squared, the rest adds by
 * squares. Units: those of the summands. Source: JCGM 100 (GUM) 5.2.2, and its example of ten resistors calibrated against one standard.
 */
export function sumOverMotors(summands: readonly Summand[]): Sum {
  let value = 0;
  let squares = 0;
  const common = new Map<string, number>();
  for (const summand of summands) {
    value += summand.value;
    let own = summand.u ** 2;
    for (const [cause, contribution] of summand.shared) {
      own -= contribution ** 2;
      common.set(cause, (common.get(cause) ?? 0) + contribution);
    }
    // Rounding may leave a little below nothing where shared causes are all there is.
    squares += Math.max(0, own);
  }
  for (const contribution of common.values()) squares += contribution ** 2;
  return { value, u: Math.sqrt(squares) };
}

/**
 * What names a meter in a fleet. An instrument with a name is the same wherever it was taken; where the sheet names none, one set of meters is taken
 * to have served the site, since the other way would promise a surer sum than anybody knows (own judgement).
 */
export function meterCause(
  site: string,
  { instrument, reads }: { readonly instrument?: string | undefined; readonly reads: MeteredKind },
): string {
  return instrument === undefined ? `site ${site}: ${reads}` : `instrument ${instrument}: ${reads}`;
}

/** Figures of an option of which a result says what the meters do to them. */
export type SavedFigure = 'energy_saved' | 'demand_saved' | 'money_saved';

/** What the meters of a motor contribute to a figure of one of its options. Results of earlier engines know of no meters. */
export function sharedInOption(
  { site, options, meters = [] }: Pick<MotorResult, 'site' | 'options' | 'meters'>,
  option: string,
  what: SavedFigure,
): Summand['shared'] {
  const place = options.findIndex(({ id }) => id === option);
  return meters.map((meter) => [meterCause(site, meter), meter[what]?.[place] ?? 0] as const);
}
