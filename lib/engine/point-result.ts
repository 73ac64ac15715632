import type { Evaluation } from './evaluate';
import type { FigureLimits } from './load/figure-limits';
import type { LossSet } from './machine/model';
import { type Limits, widened } from './quantity/coverage';
import type { Losses, MotorResult } from './result';
import { figure } from './result-figure';

/** The figures of the operating point as they stand in every form of a motor's result. */
export type PointResult = Pick<MotorResult, 'shaft_power' | 'load_fraction' | 'input_power' | 'efficiency' | 'losses'>;

/** The figures of the operating point with their limits; absent without a usable reading. */
export function pointResult({ point, scope }: Evaluation, limits: FigureLimits | undefined): PointResult {
  const { currency } = scope.settings;
  return {
    shaft_power: point && figure(point.shaftPower, currency, limits?.shaftPower),
    load_fraction: point && figure(point.loadFraction, currency, limits?.loadFraction),
    input_power: point && figure(point.inputPower, currency, limits?.inputPower),
    efficiency: point && figure(point.efficiency, currency, limits?.efficiency, widened(point.efficiency, limits?.efficiency)),
    losses: point && lossesResult(point.losses, currency, limits?.totalLoss),
  };
}

function lossesResult(losses: LossSet, currency: string, total: Limits | undefined): Losses {
  return {
    stator: figure(losses.stator, currency),
    rotor: figure(losses.rotor, currency),
    core: figure(losses.core, currency),
    friction_windage: figure(losses.frictionWindage, currency),
    stray: figure(losses.stray, currency),
    total: figure(losses.total, currency, total),
  };
}

/** Trust with what the limits themselves have to say. */
export function trustResult({ trust }: Evaluation, limits: FigureLimits | undefined): MotorResult['trust'] {
  return limits?.finding ? { level: trust.level, findings: [...trust.findings, limits.finding] } : trust;
}

/** The decision without what ranking needs of it, its reasons in words. */
export function decisionResult({ decision: { action, timing, option, because } }: Evaluation): MotorResult['decision'] {
  return { action, timing, option, because: because.map(({ code, text }) => ({ code, text })) };
}
