import type { IndicatorResult } from '../result';
import { figure } from '../result-figure';
import type { IndicatorJudgement } from './indicator';

/** An indicator as plain results. */
export function indicatorResult(judged: IndicatorJudgement, currency: string): IndicatorResult {
  return {
    id: judged.id,
    value: figure(judged.value, currency),
    ...(judged.band !== undefined && { band: judged.band }),
    limit: judged.limit,
    source: judged.source,
    status: judged.status,
    ...(judged.takenAt !== undefined && { taken_at: judged.takenAt }),
    findings: judged.findings,
  };
}
