import type { Machine } from '../machine/model';
import type { Finding } from '../quantity/finding';

/** A premium motor on offer, as a machine. */
export interface Replacement {
  readonly ratedPowerKw: number;
  readonly machine: Machine;
  readonly nominalEfficiencyPct: number;
  readonly findings: readonly Finding[];
}
