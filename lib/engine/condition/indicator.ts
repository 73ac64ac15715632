import type { MotorScope } from '../context';
import type { Machine } from '../machine/model';
import type { Motor, Plate, Reading } from '../motor';
import type { Limits } from '../quantity/coverage';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { Band } from '../result';
import type { RowStatus } from '../tables';
import type { HypothesisId } from './hypothesis-id';
import type { Margin } from './limit-model';
import type { Turning } from './lines/rotation';
import type { Trend } from './trend';

/** A reading with the load at which it was taken, when that is known. */
export interface LoadedReading {
  readonly reading: Reading;
  readonly loadFraction?: Quantity<'1'> | undefined;
  /** Meters and operating point of the reading, for indicators that need speeds or losses. */
  readonly turning?: Turning | undefined;
}

/** What an indicator is judged on: the motor, and the latest reading that carries the indicator's data. */
export interface IndicatorInput {
  readonly motor: Motor;
  readonly machine: Machine;
  readonly reading: Reading;
  readonly loadFraction?: Quantity<'1'> | undefined;
  readonly turning?: Turning | undefined;
  /** Readings before this one that carry the indicator's data, oldest first. */
  readonly earlier: readonly LoadedReading[];
}

/** A verdict, or a value without one and a finding that says why. */
export interface Judgement {
  readonly value: Quantity;
  /** 95 % limits in the unit of the value, where the doubt is uneven. */
  readonly limits?: Limits | undefined;
  readonly band?: Band | undefined;
  /** What is left to the limit; absent without a limit that holds here. */
  readonly margin?: Margin | undefined;
  /** The limit in words, with number and unit. */
  readonly limit: string;
  readonly source: string;
  readonly status: RowStatus;
  readonly findings: readonly Finding[];
  /** Work that a value beyond the limit calls for. */
  readonly callsFor?: 'rewind' | 'bearing-job' | undefined;
  /** True when the motor must not be started before the fault is mended. */
  readonly safety?: boolean | undefined;
  /** How far the reading counts as evidence, 0 to 1; 1 where nothing weakens it. */
  readonly weight?: number | undefined;
  /** When the value was taken, where that is not the reading's own time. */
  readonly takenAt?: string | undefined;
  /** Other causes for which the same reading speaks, since their lines cannot be told apart. */
  readonly sharedWith?: readonly HypothesisId[] | undefined;
}

/** A value with what it is held against, in words. */
export type Held = Pick<Judgement, 'value' | 'limit' | 'source' | 'status'>;

/** The judgement of a value by its band, or why there is none. Written out, since judgements of one form are made and read faster than many. */
export function judgement(
  held: Held,
  verdict: Pick<Judgement, 'band' | 'margin' | 'findings'>,
  means?: Pick<Judgement, 'callsFor' | 'safety' | 'weight'>,
): Judgement {
  return {
    value: held.value,
    limits: undefined,
    band: verdict.band,
    margin: verdict.margin,
    limit: held.limit,
    source: held.source,
    status: held.status,
    findings: verdict.findings,
    callsFor: means?.callsFor,
    safety: means?.safety,
    weight: means?.weight,
    takenAt: undefined,
    sharedWith: undefined,
  };
}

/** A registered condition indicator. */
export interface Indicator {
  readonly id: string;
  readonly title: string;
  /** Columns of the fleet sheet without which there is nothing to judge. */
  readonly needs: readonly string[];
  /** Ids of the limits that it uses and that a study may set. */
  readonly limits: readonly string[];
  /** True when a reading, or the load found from it, carries the indicator's data. */
  present(loaded: LoadedReading, plate: Plate, motor: Motor): boolean;
  judge(
    scope: MotorScope,
    input: IndicatorInput,
  ): Judgement | { readonly value: undefined; readonly findings: readonly Finding[] };
}

/** A judged indicator of one motor. */
export interface IndicatorJudgement extends Judgement {
  readonly trend?: Trend | undefined;
  readonly id: string;
  readonly title: string;
  readonly takenAt?: string | undefined;
  readonly row: number;
}
