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
  /** Id of the decided option, as derivations name it. */
  readonly option: string;
  /** Rating and class of the motor to be bought; absent where none is. */
  readonly bought: { readonly ratedPowerKw: number; readonly efficiencyClass: string | undefined } | undefined;
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
  /** Motors so decided, those that are not usable too. */
  readonly count: number;
  /** Those of them whose figures may be used: the sums are theirs alone. */
  readonly usable: number;
  readonly cost: number;
  readonly saved: number;
  readonly value: number;
}

export interface RankingSum {
  readonly total: number;
  readonly notUsable: number;
  /** Replacements now with usable figures whose payback keeps the policy's limit with the odds it asks for. */
  readonly withinPolicy: number;
  readonly groups: readonly DecisionSum[];
}
