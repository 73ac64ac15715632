import type { MotorScope } from '../context';
import type { Machine } from '../machine/model';
import type { Motor } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Observation } from './hypotheses/evidence';
import { type Suspicions, weighSuspicions } from './hypotheses/weigh';
import type { IndicatorJudgement, LoadedReading } from './indicator';
import { INDICATORS } from './registry';

/** Condition of one motor: judged indicators, what they call for, and findings. */
export interface ConditionJudgement {
  readonly indicators: readonly IndicatorJudgement[];
  readonly findings: readonly Finding[];
  readonly suspicions: Suspicions;
  /** Work that indicators beyond their limit call for, each kind once. */
  readonly callsForRepair: readonly ('rewind' | 'bearing-job')[];
  /** True when a safety limit is breached: the motor must not be started before it is mended. */
  readonly mustAct: boolean;
}

/**
 * Judges every indicator on the latest reading that carries its data, and weighs what they say together. Readings come oldest first;
 * `others` are observations that rest on no single reading.
 */
export function judgeCondition(
  scope: MotorScope,
  input: { motor: Motor; machine: Machine; readings: readonly LoadedReading[]; others?: readonly Observation[] },
): ConditionJudgement {
  const indicators: IndicatorJudgement[] = [];
  const findings: Finding[] = [];
  for (const indicator of INDICATORS) {
    const carrying = input.readings.filter((loaded) => indicator.present(loaded, input.motor.plate));
    const latest = carrying.at(-1);
    if (!latest) continue;
    const judged = indicator.judge(scope, {
      motor: input.motor,
      machine: input.machine,
      reading: latest.reading,
      loadFraction: latest.loadFraction,
      turning: latest.turning,
      earlier: carrying.slice(0, -1),
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
    suspicions: weighSuspicions(scope, input.motor.plate, indicators, input.others ?? []),
    callsForRepair: [...new Set(calls)],
    mustAct: indicators.some((indicator) => indicator.safety === true),
  };
}
