import type { Action, Because, Timing } from '../result';

/** What is done with one motor in one year. */
export interface PlanItem {
  readonly site: string;
  readonly tag: string;
  readonly option: string;
  readonly action: Action;
  readonly timing: Timing;
  readonly rated_power_kw: number;
  readonly efficiency_class?: string;
  readonly cost: number;
  /** Of the option in that year, dated as of the study. Absent where only what must be done is known of it. */
  readonly net_present_value?: number;
  /** Present where somebody let a motor in whose figures are not usable. */
  readonly override?: { readonly by: string; readonly reason: string };
}

export interface PlanYear {
  readonly year: number;
  readonly budget: number;
  readonly spent: number;
  readonly items: readonly PlanItem[];
  /** What one more unit of money in this year would bring, by the objective. */
  readonly shadow_price: number;
}

/** The plan of a fleet: the key `plan` of the results. */
export interface Plan {
  readonly objective: 'net-present-value' | 'energy' | 'risk';
  /** Sum over the items of the years, by the objective. */
  readonly value: number;
  /** No plan within the limits is worth more than this. */
  readonly bound: number;
  readonly gap: number;
  /** The same by the plain ranking: each motor in its order, its best option, the first year with room. */
  readonly greedy_value: number;
  readonly years: readonly PlanYear[];
  readonly at_failure: readonly {
    readonly site: string;
    readonly tag: string;
    readonly option: string;
    readonly expected_spend: readonly number[];
  }[];
  readonly left_out: readonly { readonly site: string; readonly tag: string; readonly because: Because }[];
}

/** Why there is no plan, each a whole sentence. */
export interface NoPlan {
  readonly problems: readonly Because[];
}
