import type { Evaluation } from './evaluate';
import { figureLimits } from './load/figure-limits';
import { optionResult } from './options/result';
import { decisionResult, pointResult, trustResult } from './point-result';
import type { RankKey } from './rank';
import type { IndicatorResult, MotorResult } from './result';
import { tidy } from './result-figure';

/** What a list of one line a motor shows: figures, trust, bands and the decision with its option. Every whole result is one as well. */
export interface FlatResult
  extends Pick<
    MotorResult,
    | 'site'
    | 'tag'
    | 'area'
    | 'description'
    | 'rated_power_kw'
    | 'shaft_power'
    | 'load_fraction'
    | 'input_power'
    | 'efficiency'
    | 'losses'
    | 'trust'
    | 'options'
    | 'decision'
  > {
  readonly condition: { readonly indicators: readonly Pick<IndicatorResult, 'id' | 'band'>[] };
}

/** The part of a motor's result that one line shows, of the options the chosen one alone. */
export function flatResult(evaluation: Evaluation): FlatResult & RankKey {
  const { motor, decision } = evaluation;
  const limits = figureLimits(evaluation);
  const point = pointResult(evaluation, limits);
  return {
    site: motor.site,
    tag: motor.tag,
    area: motor.area,
    description: motor.description,
    rated_power_kw: tidy(motor.plate.ratedPowerKw),
    shaft_power: point.shaft_power,
    load_fraction: point.load_fraction,
    input_power: point.input_power,
    efficiency: point.efficiency,
    losses: point.losses,
    trust: trustResult(evaluation, limits),
    condition: evaluation.condition,
    options: evaluation.options
      .filter((option) => option.id === decision.option)
      .map((option) => optionResult(option, evaluation.scope.settings.currency)),
    decision: decisionResult(evaluation),
    ranking: decision.ranking,
  };
}
