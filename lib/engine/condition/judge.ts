import type { MotorScope } from '../context';
import type { Machine } from '../machine/model';
import type { Motor } from '../motor';
import { once } from '../once';
import type { Finding } from '../quantity/finding';
import { withValue } from '../quantity/quantity';
import type { Observation } from './hypotheses/evidence';
import { type Suspicions, weighSuspicions } from './hypotheses/weigh';
import type { Indicator, IndicatorJudgement, Judgement, LoadedReading } from './indicator';
import { INDICATORS } from './registry';
import { type DatedValue, lowerIsWorse, type Trend, trendOf } from './trend';

/** Condition of one motor: judged indicators, what they call for, and findings. */
export interface ConditionJudgement {
  readonly indicators: readonly IndicatorJudgement[];
  readonly findings: readonly Finding[];
  /** Weighed when they are asked for: a list of one line a motor shows none. */
  readonly suspicions: () => Suspicions;
  /** Work that indicators beyond their limit call for, each kind once. */
  readonly callsForRepair: readonly ('rewind' | 'bearing-job')[];
  /** True when a safety limit is breached: the motor must not be started before it is mended. */
  readonly mustAct: boolean;
}

/**
 * Judges every indicator on the latest reading that carries its data, and weighs what they say together. Readings come oldest first;
 * `agreement` is what the readings say of one another.
 */
export function judgeCondition(
  scope: MotorScope,
  input: { motor: Motor; machine: Machine; readings: readonly LoadedReading[]; agreement?: () => Observation | undefined },
): ConditionJudgement {
  const { motor, machine, readings } = input;
  const indicators: IndicatorJudgement[] = [];
  const findings: Finding[] = [];
  for (const indicator of INDICATORS) {
    const carrying: LoadedReading[] = [];
    for (const loaded of readings) if (indicator.present(loaded, motor.plate, motor)) carrying.push(loaded);
    const latest = carrying.at(-1);
    if (!latest) continue;
    const judged = indicator.judge(scope, {
      motor,
      machine,
      reading: latest.reading,
      loadFraction: latest.loadFraction,
      turning: latest.turning,
      earlier: carrying.slice(0, -1),
    });
    // One missing correction may hinder two indicators: it is said once.
    for (const found of judged.findings)
      if (!findings.some((said) => said.code === found.code && said.text === found.text)) findings.push(found);
    if (judged.value === undefined) continue;
    // Field by field: spreading objects of many forms costs more than most indicators do.
    indicators.push({
      value: judged.value,
      limits: judged.limits,
      band: judged.band,
      margin: judged.margin,
      limit: judged.limit,
      source: judged.source,
      status: judged.status,
      findings: judged.findings,
      callsFor: judged.callsFor,
      safety: judged.safety,
      weight: judged.weight,
      sharedWith: judged.sharedWith,
      id: indicator.id,
      title: indicator.title,
      takenAt: judged.takenAt ?? latest.reading.takenAt,
      row: latest.reading.row,
      trend: carrying.length > 1 ? trendAlong(scope, indicator, input, carrying) : undefined,
    });
  }
  const callsForRepair: NonNullable<Judgement['callsFor']>[] = [];
  for (const { callsFor } of indicators)
    if (callsFor !== undefined && !callsForRepair.includes(callsFor)) callsForRepair.push(callsFor);
  return {
    indicators,
    findings,
    suspicions: once(() => weighSuspicions(scope, motor.plate, indicators, input.agreement?.())),
    callsForRepair,
    mustAct: indicators.some((indicator) => indicator.safety === true),
  };
}

/** Deviations that are bad on either side: their size counts. */
const EITHER_SIDE: ReadonlySet<string> = new Set(['voltage-deviation', 'frequency-deviation']);
/** Facts of the plate, which no reading moves, and ratios to the first reading, which are a trend already. */
const WITHOUT_TREND: ReadonlySet<string> = new Set(['starts-per-hour', 'belt-slip', 'tested-efficiency']);
/** Readings are compared with the latest where their loads lie within so much of each other, or are not known (common practice). */
const SAME_LOAD = 0.15;

/** The trend of an indicator over its dated readings at about the load of the latest. */
function trendAlong(
  scope: MotorScope,
  indicator: Indicator,
  { motor, machine }: { motor: Motor; machine: Machine },
  carrying: readonly LoadedReading[],
): Trend | undefined {
  const latest = carrying.at(-1);
  if (!latest || WITHOUT_TREND.has(indicator.id)) return undefined;
  const values: DatedValue[] = [];
  carrying.forEach((loaded, index) => {
    const { takenAt } = loaded.reading;
    const [a, b] = [loaded.loadFraction?.value, latest.loadFraction?.value];
    if (takenAt === undefined || (a !== undefined && b !== undefined && Math.abs(a - b) > SAME_LOAD)) return;
    const judged = indicator.judge(scope, { motor, machine, ...loaded, earlier: carrying.slice(0, index) });
    if (judged.value === undefined) return;
    const value = EITHER_SIDE.has(indicator.id) ? withValue(judged.value, Math.abs(judged.value.value)) : judged.value;
    values.push({ takenAt, value });
  });
  // An uncorrected value stands beside corrected ones in another unit: only like is compared with like.
  const unit = values.at(-1)?.value.unit;
  const alike = values.filter((entry) => entry.value.unit === unit);
  return trendOf(alike, unit !== undefined && lowerIsWorse(indicator.id, unit));
}
