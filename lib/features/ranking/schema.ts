/** One motor of the ranking; amounts in units of the study's currency. */
export interface RankedMotor {
  readonly motorId: string | undefined;
  readonly rank: number;
  readonly site: string;
  readonly tag: string;
  readonly area: string | undefined;
  readonly trust: 'sound' | 'provisional' | 'not-usable';
  readonly action: string;
  readonly timing: string;
  readonly cost: number | undefined;
  readonly moneySaved: number | undefined;
  readonly moneySavedU: number | undefined;
  readonly payback: number | undefined;
  readonly paybackU: number | undefined;
  readonly value: number | undefined;
  readonly valueU: number | undefined;
  /** Chance that the payback stays within policy. */
  readonly odds: number | undefined;
  readonly because: readonly string[];
}

/** What one kind of decision comes to over the fleet. */
export interface DecisionSum {
  readonly action: string;
  readonly timing: string;
  readonly count: number;
  readonly cost: number;
  readonly saved: number;
  readonly value: number;
}

export interface RankingSum {
  readonly total: number;
  readonly notUsable: number;
  readonly groups: readonly DecisionSum[];
}
