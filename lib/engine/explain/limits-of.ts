import type { Evaluation } from '../evaluate';
import { type FigureLimits, figureLimits, figureLimitsByDraws } from '../load/figure-limits';
import { type Limits, widened } from '../quantity/coverage';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import { INDICATOR_PATH } from './figures';

/** 95 % limits of a figure, and whether they were drawn. */
export interface LimitsFound extends Limits {
  readonly drawn: boolean;
  /** Standard uncertainty that the results give, where it follows wider limits: that of the efficiency does. */
  readonly widened?: number | undefined;
}

const OF: Readonly<Record<string, keyof Omit<FigureLimits, 'finding'>>> = {
  shaft_power: 'shaftPower',
  load_fraction: 'loadFraction',
  input_power: 'inputPower',
  efficiency: 'efficiency',
  'losses.total': 'totalLoss',
};

/** A widening that no printed digit shows goes without saying. */
const TOLD = 1.01;

/** 95 % limits of a figure by its path: of the operating point, drawn where the estimate is not linear, or of an indicator. `undefined` for other figures. */
export function limitsOf(evaluation: Evaluation, path: string, quantity: Quantity): LimitsFound | undefined {
  const of = OF[path];
  const indicator = evaluation.condition.indicators.find(({ id }) => `${INDICATOR_PATH}${id}` === path)?.limits;
  if (indicator) return { ...indicator, drawn: false };
  if (of === undefined) return undefined;
  const found = figureLimits(evaluation);
  const drawn = found?.finding && figureLimitsByDraws(evaluation);
  const limits = (drawn ?? found)?.[of];
  if (!limits) return undefined;
  const firstOrder = standardUncertainty(quantity);
  const u = of === 'efficiency' ? widened(quantity, found?.efficiency) : firstOrder;
  return { ...limits, drawn: drawn !== undefined, widened: u > TOLD * firstOrder ? u : undefined };
}
