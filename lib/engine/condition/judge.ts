import type { MotorScope } from '../context';
import type { Machine } from '../machine/model';
import type { Motor } from '../motor';
import type { Finding } from '../quantity/finding';
import type { IndicatorJudgement, LoadedReading } from './indicator';
import { INDICATORS } from './registry';

/** Condition of one motor: judged indicators, what they call for, and findings. */
export interface ConditionJudgement {
  readonly indicators: readonly IndicatorJudgement[];
  readonly findings: readonly Finding[];
  /** Work that indicators beyond their limit call for, each kind once. */
  readonly callsForRepair: readonly ('rewind' | 'bearing-job')[];
  /** True when a safety limit is breached: the motor must not be started before it is mended. */
  readonly mustAct: boolean;
}

/** Judges every indicator on the latest reading that carries its data. Readings come oldest first. */
export function judgeCondition(
  scope: MotorScope,
  input: { motor: Motor; machine: Machine; readings: readonly LoadedReading[] },
): ConditionJudgement {
  const indicators: IndicatorJudgement[] = [];
  const findings: Finding[] = [];
  for (const indicator of INDICATORS) {
    const latest = input.readings.findLast((loaded) => indicator.present(loaded));
    if (!latest) continue;
    const judged = indicator.judge(scope, {
      motor: input.motor,
      machine: input.machine,
      reading: latest.reading,
      loadFraction: latest.loadFraction,
    });
    // One missing correction may hinder two indicators: it is said once.
    for (const found of judged.findings)
      if (!findings.some((said) => said.code === found.code && said.text === found.text)) findings.push(found);
    if (judged.value === undefined) continue;
    indicators.push({
      ...judged,
      id: indicator.id,
      title: indicator.title,
      takenAt: latest.reading.takenAt,
      row: latest.reading.row,
    });
  }
  const calls = indicators.flatMap((indicator) => (indicator.callsFor === undefined ? [] : [indicator.callsFor]));
  return {
    indicators,
    findings,
    callsForRepair: [...new Set(calls)],
    mustAct: indicators.some((indicator) => indicator.safety === true),
  };
}
