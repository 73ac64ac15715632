import type { Evaluation } from '../evaluate';
import { type FigureLimits, figureLimits, figureLimitsByDraws } from '../load/figure-limits';
import type { Limits } from '../quantity/coverage';

/** 95 % limits of a figure, and whether they were drawn. */
export interface LimitsFound extends Limits {
  readonly drawn: boolean;
}

const OF: Readonly<Record<string, keyof Omit<FigureLimits, 'finding'>>> = {
  shaft_power: 'shaftPower',
  load_fraction: 'loadFraction',
  input_power: 'inputPower',
  efficiency: 'efficiency',
  'losses.total': 'totalLoss',
};

/** 95 % limits of a figure of the operating point by its path; drawn where the estimate is not linear. `undefined` for other figures. */
export function limitsOf(evaluation: Evaluation, path: string): LimitsFound | undefined {
  const of = OF[path];
  if (of === undefined) return undefined;
  const found = figureLimits(evaluation);
  const drawn = found?.finding && figureLimitsByDraws(evaluation);
  const limits = (drawn ?? found)?.[of];
  return limits && { ...limits, drawn: drawn !== undefined };
}
