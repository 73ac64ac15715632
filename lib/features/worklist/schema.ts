import type { HypothesisId, HypothesisResult } from '@/lib/engine';

/** One motor that needs a person. */
export interface WorkItem {
  readonly motorId: string | undefined;
  readonly site: string;
  readonly tag: string;
  readonly area: string | undefined;
  /** True when a safety limit is breached or the motor has failed: it is done first, whatever the odds. */
  readonly mustDo: boolean;
  readonly failed: boolean;
  /** Why it stands here, in a sentence. */
  readonly why: string;
  /** The likeliest suspicion; absent where an indicator alone stands near or beyond its limit. */
  readonly leading:
    | { readonly id: HypothesisId; readonly odds: number; readonly strength: HypothesisResult['strength'] }
    | undefined;
  /** Indicators beyond and near their limits, by title. */
  readonly beyond: readonly string[];
  readonly near: readonly string[];
  /** What to do: the first step of the weightiest finding, or the next reading. */
  readonly next: string;
  /** True when the next step needs the motor stopped and locked out. */
  readonly outage: boolean;
  /** Indicators that stand apart from those of like motors on the bad side, in words. */
  readonly apart: readonly string[];
  /** Expected cost of leaving it, in the study's currency: chance × consequence × urgency; absent where no cost is known. */
  readonly risk?: number | undefined;
  /** The factors of the risk; absent for a failed motor, whose risk is the consequence itself. */
  readonly riskParts?: RiskParts | undefined;
}

/** The factors of a risk. */
export interface RiskParts {
  readonly chance: number;
  /** A repair and, without a standby, an unplanned stop, in the study's currency. */
  readonly consequence: number;
  readonly urgency: number;
  /** What the urgency goes by: `near and getting worse`. */
  readonly because: string;
}

/** A motor within its limits that stands apart from like motors on the bad side. */
export interface ApartItem {
  readonly motorId: string;
  readonly site: string;
  readonly tag: string;
  readonly area: string | undefined;
  readonly apart: readonly string[];
}

/** The worklist of a study. */
export interface Worklist {
  readonly items: readonly WorkItem[];
  /** Motors that are not among the items, and stand apart from like ones. */
  readonly apart: readonly ApartItem[];
  /** Motors of the evaluation. */
  readonly total: number;
}
