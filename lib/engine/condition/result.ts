import type { ConditionResult, EvidenceResult, HypothesisResult, IndicatorResult, TrendResult } from '../result';
import { figure, tidy } from '../result-figure';
import type { Evidence } from './hypotheses/evidence';
import type { Hypothesis } from './hypotheses/weigh';
import type { IndicatorJudgement } from './indicator';
import type { ConditionJudgement } from './judge';
import type { Trend } from './trend';

/** The condition of one motor as plain results. */
export function conditionResult({ indicators, suspicions }: ConditionJudgement, currency: string): ConditionResult {
  const { hypotheses, next } = suspicions();
  return {
    indicators: indicators.map((indicator) => indicatorResult(indicator, currency)),
    hypotheses: hypotheses.map(hypothesisResult),
    next_measurement: next,
  };
}

function hypothesisResult({ id, odds, forIt, againstIt, missing, strength }: Hypothesis): HypothesisResult {
  return { id, odds: tidy(odds), for: forIt.map(evidenceResult), against: againstIt.map(evidenceResult), missing, strength };
}

function evidenceResult({ indicator, group, text, logRatio }: Evidence): EvidenceResult {
  return { indicator, group, text, ratio: tidy(Math.exp(logRatio)) };
}

/** An indicator as plain results. */
export function indicatorResult(judged: IndicatorJudgement, currency: string): IndicatorResult {
  return {
    id: judged.id,
    value: figure(judged.value, currency, judged.limits),
    band: judged.band,
    margin: judged.margin && { value: tidy(judged.margin.value), u: tidy(judged.margin.u), unit: judged.margin.unit },
    limit: judged.limit,
    source: judged.source,
    status: judged.status,
    taken_at: judged.takenAt,
    trend: judged.trend && trendResult(judged.trend),
    findings: judged.findings,
  };
}

function trendResult({ perYear, u, unit, readings, since, direction }: Trend): TrendResult {
  return { per_year: { value: tidy(perYear), u: tidy(u), unit }, readings, since, direction };
}
