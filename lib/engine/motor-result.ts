import { likenessOf, type SisterFacts, sisterFacts } from './condition/likeness';
import { conditionResult } from './condition/result';
import type { Evaluation } from './evaluate';
import { type FigureLimits, figureLimits } from './load/figure-limits';
import { type ByCause, lossesByCause } from './load/losses-by-cause';
import type { ReadingEvaluation } from './load/reading';
import { meterEffects } from './meter-effects';
import { optionResult } from './options/result';
import { doubtsOf } from './plan/doubts';
import { decisionResult, pointResult, trustResult } from './point-result';
import type { Limits } from './quantity/coverage';
import { type Quantity, scaleParts } from './quantity/quantity';
import { type RankKey, rankKeyOf } from './rank';
import type { EstimateResult, LossesByCause, Metered, ReadingResult, UnrankedMotor } from './result';
import { figure, tidy } from './result-figure';

/**
 * The plain results of one motor, ready to be written. What is absent stays undefined, which no file shows: one form for all motors is read
 * and written faster than many. The rank is put in when the whole fleet is known.
 */
export function motorResult(evaluation: Evaluation): UnrankedMotor {
  const { motor, inUse, point } = evaluation;
  const currency = evaluation.scope.settings.currency;
  const doubts = doubtsOf(evaluation);
  const meters = meterEffects(evaluation);
  const agreement = inUse?.combination?.agreement;
  const causes = lossesByCause(evaluation);
  const limits = figureLimits(evaluation);
  const figures = pointResult(evaluation, limits);
  return {
    site: motor.site,
    tag: motor.tag,
    area: motor.area,
    description: motor.description,
    rated_power_kw: tidy(motor.plate.ratedPowerKw),
    shaft_power: figures.shaft_power,
    load_fraction: figures.load_fraction,
    input_power: figures.input_power,
    efficiency: figures.efficiency,
    losses: figures.losses,
    losses_by_cause: point && causes && byCauseResult(causes, currency),
    estimates: inUse ? estimatesResult(evaluation, inUse, limits) : [],
    readings: evaluation.readings.map((evaluated) =>
      readingResult(evaluated, currency, evaluated === inUse ? limits : undefined),
    ),
    agreement: agreement && {
      chi_squared: tidy(agreement.chi_squared),
      degrees_of_freedom: agreement.degrees_of_freedom,
      p: tidy(agreement.p),
    },
    trust: trustResult(evaluation, limits),
    condition: conditionResult(evaluation.condition, currency),
    options: evaluation.options.map((option) => optionResult(option, currency)),
    ...(doubts.length > 0 && { doubts }),
    ...(meters.length > 0 && { meters }),
    decision: decisionResult(evaluation),
    ranking: evaluation.decision.ranking,
    likeness: likenessOf(motor, evaluation.machine),
  };
}

function byCauseResult(causes: ByCause, currency: string): LossesByCause {
  return {
    fundamental: figure(causes.fundamental, currency),
    ...(causes.unbalance && { unbalance: figure(causes.unbalance, currency) }),
    ...(causes.harmonics && { harmonics: figure(causes.harmonics, currency) }),
    ...(causes.drive && { drive: figure(causes.drive, currency) }),
  };
}

function estimatesResult(evaluation: Evaluation, inUse: ReadingEvaluation, limits: FigureLimits | undefined): EstimateResult[] {
  const currency = evaluation.scope.settings.currency;
  const rated = evaluation.machine.plate.ratedPower.value;
  const inKilowatts = (quantity: Quantity<'1'>, within?: Limits) =>
    figure({ unit: 'kW', value: quantity.value * rated, parts: scaleParts(quantity.parts, rated) }, currency, within);
  const single = inUse.estimates.map((estimate) => ({
    method: estimate.method,
    shaft_power: inKilowatts(estimate.loadFraction),
    used: estimate.used,
    why: estimate.why,
  }));
  const combined = inUse.combination;
  if (!combined) return single;
  const ways = inUse.estimates.filter((estimate) => estimate.used).map((estimate) => estimate.method);
  return [
    ...single,
    {
      method: 'combined',
      shaft_power: inKilowatts(combined.loadFraction, limits?.shaftPower),
      used: true,
      why: [
        ways.length === 1 ? `from ${ways[0]} alone` : `inverse-variance mean of ${ways.join(', ')}`,
        ...(combined.birgeRatio > 1
          ? [`interval widened ${combined.birgeRatio.toFixed(1)} times, since readings and stamps disagree`]
          : []),
      ],
    },
  ];
}

function readingResult(
  evaluated: Evaluation['readings'][number],
  currency: string,
  limits: FigureLimits | undefined,
): ReadingResult {
  const { reading, point } = evaluated;
  return {
    row: reading.row,
    taken_at: reading.takenAt,
    shaft_power: point && figure(point.shaftPower, currency, limits?.shaftPower),
    load_fraction: point && figure(point.loadFraction, currency, limits?.loadFraction),
    trust: evaluated.level,
    metered: meteredResult(reading),
  };
}

function meteredResult(reading: ReadingEvaluation['reading']): Metered {
  return {
    input_power: reading.inputPowerKw,
    voltage: reading.voltageV === undefined ? undefined : tidy(reading.voltageV),
    current: reading.currentA === undefined ? undefined : tidy(reading.currentA),
    power_factor: reading.powerFactorPct,
    frequency: reading.frequencyHz,
    speed: reading.shaftSpeedRpm,
  };
}

/** What the steps over the fleet need of a motor: ranking, and the comparison of like motors. */
export interface FleetKey extends RankKey {
  readonly sisters: SisterFacts;
}

/** The little that the steps over the fleet need, so that the rest of a result can be let go. */
export function fleetKeyOf(result: UnrankedMotor): FleetKey {
  return { ...rankKeyOf(result), sisters: sisterFacts(result) };
}
