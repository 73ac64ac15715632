import type { Unit } from '../quantity/unit';
import type { RowStatus } from '../tables';

/** A limit in force: the table's, or the user's with a reason. */
export interface Limit {
  readonly id: string;
  readonly value: number;
  /** Upper end where the table gives a range; absent once the user has set one number. */
  readonly high?: number | undefined;
  readonly unit: string;
  readonly source: string;
  readonly status: RowStatus;
}

/** What is left between a value and the limit at which `beyond` begins; below zero beyond it. In the unit of what is limited, `u` at k = 1. */
export interface Margin {
  readonly value: number;
  readonly u: number;
  readonly unit: Unit;
}
