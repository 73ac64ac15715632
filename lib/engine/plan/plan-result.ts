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
  /** The same in the low case of prices and hours, where the plan knows it. */
  readonly low_case_value?: number;
  /** Present where something had to be done with the motor. */
  readonly must?: boolean;
  /** Why it had to be; present where it had. */
  readonly because?: readonly Because[];
  readonly pinned?: boolean;
  /** Present where somebody let a motor in whose figures are not usable. */
  readonly override?: { readonly by: string; readonly reason: string };
}

interface PlanYear {
  readonly year: number;
  readonly budget: number;
  readonly spent: number;
  readonly items: readonly PlanItem[];
  /** What one more unit of money in this year would bring, by the objective. */
  readonly shadow_price: number;
}

/** The plan of a fleet: the key `plan` of the results. */
export interface Plan {
  readonly objective: 'net-present-value' | 'energy' | 'emissions' | 'risk';
  /** Sum over the items of the years, by the objective. */
  readonly value: number;
  /** No plan within the limits is worth more than this. */
  readonly bound: number;
  readonly gap: number;
  /** The same by the plain ranking: each motor in its order, its best option, the first year with room. */
  readonly greedy_value: number;
  readonly years: readonly PlanYear[];
  /** Limits of hours, each year by itself. */
  readonly limits: readonly PlanHours[];
  /** Present where asked for. */
  readonly frontier?: readonly FrontierPoint[];
  readonly at_failure: readonly {
    readonly site: string;
    readonly tag: string;
    readonly option: string;
    readonly expected_spend: readonly number[];
  }[];
  /** Greatest advantage first; readings that cannot change a choice are left out. */
  readonly measure_next: readonly MeasureNext[];
  readonly left_out: readonly { readonly site: string; readonly tag: string; readonly because: Because }[];
}

/** What a limit of hours leaves. */
interface PlanHours {
  readonly kind: 'outage' | 'crew';
  readonly name: string;
  readonly year: number;
  /** In hours, as is `used`. */
  readonly limit: number;
  readonly used: number;
  readonly shadow_price: number;
}

/** The best plan at a multiple of every year's budget. */
export interface FrontierPoint {
  readonly multiple: number;
  readonly budget: number;
  /** These three are absent where what must be done does not fit. */
  readonly spent?: number;
  readonly value?: number;
  readonly bound?: number;
}

/** What a wish takes from the plan's worth: the best plan without it, less the best with it. */
export interface WishCost {
  readonly wish: 'pin' | 'forbid' | 'must-do' | 'bundle';
  /** Place in its list. */
  readonly index: number;
  readonly cost: number;
  /** The two plans are proven to so much; a cost within it may be none. */
  readonly within: number;
}

/** What resolving one doubt of a motor would be worth, in currency, against what the reading costs. */
export interface MeasureNext {
  readonly site: string;
  readonly tag: string;
  readonly about: 'load' | 'hours' | 'efficiency';
  readonly value_of_perfect: number;
  readonly value_of_reading: number;
  readonly cost: number;
  readonly net: number;
}

/** Why there is no plan, each a whole sentence. */
export interface NoPlan {
  readonly problems: readonly Because[];
}
