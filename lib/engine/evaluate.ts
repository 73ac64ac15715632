import { readingsAgreement } from './condition/hypotheses/agreement';
import { type ConditionJudgement, judgeCondition } from './condition/judge';
import type { MotorScope, StudyContext } from './context';
import { type Decision, decide } from './decide/decide';
import { type Duty, dutyInForce } from './duty';
import type { Step } from './formula/apply';
import type { Joint } from './load/joint';
import { evaluateReadings, type ReadingEvaluation } from './load/reading';
import { buildMachine } from './machine/build';
import type { Machine, OperatingPoint } from './machine/model';
import type { KnownPlate, Motor } from './motor';
import { completePlate } from './nameplate/complete';
import { type Option, weighOptions } from './options/weigh';
import { leaveOutImpossible } from './possible';
import type { Finding } from './quantity/finding';
import { exact, type Quantity, Sources } from './quantity/quantity';
import type { TrustLevel } from './result';
import { judgeTrust, readingTrust, type TrustedReading } from './trust/judge';

/** One motor's evaluation with its quantities: what results, explanations and screens are made of. */
export interface Evaluation {
  readonly motor: Motor;
  readonly scope: MotorScope;
  readonly machine: Machine;
  /** How stamps and readings act together; absent without a usable reading. */
  readonly joint?: Joint | undefined;
  readonly readings: readonly TrustedReading[];
  /** The latest usable reading, at which the figures stand. */
  readonly inUse?: ReadingEvaluation | undefined;
  readonly point?: OperatingPoint | undefined;
  readonly duty?: Duty | undefined;
  readonly trust: { readonly level: TrustLevel; readonly findings: readonly Finding[] };
  readonly condition: ConditionJudgement;
  readonly options: readonly Option[];
  readonly decision: Decision;
}

/** Findings of the condition step that cap the trust of the whole motor. */
const CAPPING_CODES: ReadonlySet<string> = new Set(['signature-under-loaded']);

/**
 * Evaluates one motor: nameplate, machine, load at each reading, trust, condition, options, decision. Pure: the same motor and study
 * give the same numbers, whatever else is in the fleet. With a `trace` every step is recorded, for explanations; the numbers stay the same.
 */
export function evaluateMotor(motor: Motor, study: StudyContext, trace?: Map<Quantity, Step>): Evaluation {
  const scope: MotorScope = {
    settings: study.settings,
    tables: study.tables,
    prices: study.prices,
    sources: new Sources(),
    trace,
  };
  const possible = leaveOutImpossible(motor);
  const plate: KnownPlate = motor.tested ? { ...possible.motor.plate, tested: motor.tested } : possible.motor.plate;
  const measuredSpeed = possible.motor.readings.find((reading) => reading.shaftSpeedRpm !== undefined)?.shaftSpeedRpm;
  const completed = completePlate(scope, plate, '', measuredSpeed);
  const built = buildMachine(scope, plate, completed.plate, '');
  // What the plate refutes is not believed by the way of segregated losses either.
  const refused = built.findings.some(({ code }) => code === 'resistance-contradicts-plate');
  const believed = refused ? { ...plate, statorResistanceOhm: undefined } : plate;
  const together = evaluateReadings(scope, believed, completed.plate, built, possible.motor.readings);
  const { machine } = together;
  const readings = together.readings.map((found, index) => {
    const { metered, estimates, combination, point } = found;
    // What the meters showed stays as it was read.
    const reading = motor.readings[index] ?? found.reading;
    const findings = [...(possible.readings[index] ?? []), ...found.findings];
    const own = readingTrust(study.settings, machine.plate, { reading, metered, estimates, combination, point, findings });
    return { reading, metered, estimates, combination, point, findings, level: own.level, trustFindings: own.findings };
  });
  const inUse = readings.filter((evaluated) => evaluated.point !== undefined).at(-1);
  const condition = judgeCondition(scope, {
    motor: possible.motor,
    machine,
    readings: readings.map((evaluated, index) => ({
      reading: possible.motor.readings[index] ?? evaluated.reading,
      loadFraction: evaluated.point?.loadFraction,
      turning: evaluated,
    })),
    agreement: () => readingsAgreement(inUse, readings.at(-1)),
  });
  const capping = [
    ...possible.plate,
    ...completed.findings,
    ...built.findings,
    ...condition.findings.filter((found) => CAPPING_CODES.has(found.code)),
  ];
  const trust = judgeTrust({ status: motor.plate.status, readings, inUse, capping });
  const duty = dutyInForce(scope, motor, readings, inUse);
  const weighed = weighOptions(scope, {
    motor: possible.motor,
    machine,
    duty: duty?.points,
    point: inUse?.point,
    voltageRatio: inUse?.metered.voltageRatioAtRatedFrequency ?? exact(1, '1'),
    screeningOnly: inUse === undefined || trust.level === 'not-usable',
    callsForRepair: condition.callsForRepair,
  });
  const decision = decide({
    options: weighed.options,
    trust: trust.level,
    callsForRepair: condition.callsForRepair,
    mustAct: condition.mustAct,
    motor,
    settings: study.settings,
  });
  return {
    motor,
    scope,
    machine,
    joint: together.joint,
    readings,
    inUse,
    point: inUse?.point,
    duty,
    trust: {
      level: trust.level,
      findings: [...trust.findings, ...possible.others, ...(motor.tested?.conflicts ?? []), ...weighed.findings],
    },
    condition,
    options: weighed.options,
    decision,
  };
}
