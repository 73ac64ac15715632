import type { MotorScope } from '../context';
import type { PlateMachine } from '../machine/build';
import type { CompletedPlate, Machine, OperatingPoint } from '../machine/model';
import { operatingPoint } from '../machine/operate';
import type { Plate, Reading } from '../motor';
import { NORMAL_FACTOR } from '../quantity/coverage';
import type { Finding } from '../quantity/finding';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import { spaced } from '../quantity/words';
import type { Agreement } from '../result';
import { type Alone, type Estimate, evaluateAlone, HIGHEST, isUsable, LOWEST, possibleOnly } from './alone';
import { diagnose, isImpossible, type Suspicion } from './diagnose';
import { LOAD } from './findings';
import { chanceOf, DISAGREEMENT, fitJointly, type Joint, type JointFit, jointOf } from './joint';
import type { Metered } from './metered';
import { type Rival, rivalOf } from './rival';
import { extraLoss } from './supply-loss';
import { SUSPICION } from './suspicion';

export type { Estimate } from './alone';

/** The joint load of one reading and how well all that speaks of the motor agrees. */
export interface Combination {
  readonly loadFraction: Quantity<'1'>;
  /** Terminal over rated voltage, and how much hotter than reckoned the winding is in units of HEAT K, both as the fit finds them. */
  readonly voltageRatio: Quantity<'1'>;
  readonly heat: Quantity<'1'>;
  readonly agreement?: Agreement | undefined;
  /** Factor by which the interval was widened; 1 when stamps and readings agree. */
  readonly birgeRatio: number;
}

/** A reading with what follows from it. */
export interface ReadingEvaluation {
  readonly reading: Reading;
  readonly metered: Metered;
  readonly estimates: readonly Estimate[];
  readonly combination?: Combination | undefined;
  /** The consistent operating point at the combined load; absent when the reading gives no usable load. */
  readonly point?: OperatingPoint | undefined;
  readonly findings: readonly Finding[];
}

/** All readings of a motor with the machine that they and the plate describe together. */
export interface MotorReadings {
  readonly machine: Machine;
  readonly joint?: Joint | undefined;
  readonly readings: readonly ReadingEvaluation[];
}

/**
 * Evaluates the readings of a motor: each way to the load alone, then machine and loads together, and the operating point of each.
 * Where they do not fit, the usual mistakes are tried; what a named mistake touches is left out.
 */
export function evaluateReadings(
  scope: MotorScope,
  plate: Plate,
  completed: CompletedPlate,
  fromPlate: PlateMachine,
  readings: readonly Reading[],
): MotorReadings {
  const alone = readings.map((reading) => evaluateAlone(scope, plate, fromPlate.machine, reading));
  const fit = fitOf(scope, fromPlate, alone);
  const doubtful =
    alone.some(isImpossible) || (fit ? chanceOf(fit.chiSquared, fit.degreesOfFreedom) < SUSPICIOUS : alone.some(isUsable));
  const suspicion = doubtful ? diagnose(scope, plate, fromPlate, alone) : undefined;
  if (!suspicion) {
    const found = together(scope, completed, fromPlate, alone, fit);
    // Where they disagree that is said already, and nothing is as likely as it stands.
    const rival = found.joint?.birgeRatio === 1 ? rivalOf(scope, plate, fromPlate, alone, fit) : undefined;
    return rival ? withRival(found, rival) : found;
  }
  const mended = alone.map((each) =>
    each.reading.row === suspicion.row ? withSuspicion(scope, plate, fromPlate, each, suspicion) : each,
  );
  return together(scope, completed, fromPlate, mended, fitOf(scope, fromPlate, mended));
}

/** The finding that a mistake of the power meter would fit as well, with the reading that it is about. */
function withRival(found: MotorReadings, rival: Rival): MotorReadings {
  return {
    ...found,
    readings: found.readings.map((each) => {
      const load = each.combination?.loadFraction.value;
      if (each.reading.row !== rival.row || load === undefined) return each;
      const finding = SUSPICION.make('power-not-confirmed', { row: rival.row, mistake: rival.mistake, load, other: rival.load });
      return { ...each, findings: [...each.findings, finding] };
    }),
  };
}

/** Loads below this that may as well be none are remarked upon; above it an interval that reaches down to none is but wide. */
const HARDLY_ANY = 0.15;

/** Load that a machine may take with nothing to do: the friction of bearings, seals and belts (common practice). */
const IDLE = 0.02;

/** Below this chance the usual mistakes are tried; named they are only on their odds. */
const SUSPICIOUS = 0.05;

/** All that may be used, fitted together; `undefined` when there is nothing. */
function fitOf(scope: MotorScope, fromPlate: PlateMachine, alone: readonly Alone[]): JointFit | undefined {
  const usable = alone.filter(isUsable);
  return usable.length > 0 ? fitJointly(scope, fromPlate, usable.map(possibleOnly)) : undefined;
}

/** A reading without what a named mistake touches; what was found in it as read stays said, unless it was but the mistake's trace. */
function withSuspicion(scope: MotorScope, plate: Plate, fromPlate: PlateMachine, asRead: Alone, suspicion: Suspicion): Alone {
  const { without, finding, alone } = suspicion;
  const mended = evaluateAlone(scope, plate, fromPlate.machine, without(asRead.reading));
  const kept = mended.findings.filter(({ code }) => !asRead.findings.some((found) => found.code === code));
  const stillUsable = isUsable(mended) || (alone && mended.reading.readingCondition === 'uncoupled');
  return {
    ...mended,
    findings: [
      ...asRead.findings.filter(({ severity }) => severity !== 'disqualifies' || !stillUsable),
      ...kept.filter(({ code }) => code !== 'uncoupled-reading'),
      finding,
    ],
  };
}

function together(
  scope: MotorScope,
  completed: CompletedPlate,
  fromPlate: PlateMachine,
  alone: readonly Alone[],
  fit: JointFit | undefined,
): MotorReadings {
  const usable = alone.filter(isUsable);
  const joint = fit && jointOf(scope, fromPlate, completed, fit, usable.map(possibleOnly));
  const machine = joint?.machine ?? fromPlate.machine;
  return {
    machine,
    joint,
    readings: alone.map((each) => {
      const found = joint?.readings[usable.indexOf(each)];
      const estimates = each.estimates.map((estimate) => ({
        method: estimate.method,
        loadFraction: estimate.loadFraction,
        why: estimate.why,
        used: found !== undefined && !each.failed.includes(estimate.method),
      }));
      const { reading, metered } = each;
      if (!found || !joint) {
        const silent = each.disqualified || reading.readingCondition === 'uncoupled';
        const missing = each.missing.join(', ') || 'nothing usable';
        const findings = silent
          ? each.findings
          : [...each.findings, LOAD.make('reading-without-load', { row: reading.row, missing })];
        return { reading, metered, estimates, combination: undefined, point: undefined, findings };
      }
      const { loadFraction, voltageRatio, heat } = found;
      const { row } = reading;
      const findings = [...each.findings];
      if (joint.agreement && joint.agreement.p < DISAGREEMENT) {
        const ways = estimates.filter(({ used }) => used);
        findings.push(LOAD.make('estimates-disagree', { row, p: joint.agreement.p, ways: ways.length, spread: spreadOf(ways) }));
      }
      const load = loadFraction.value;
      if (load >= HIGHEST) findings.push(LOAD.make('load-impossible', { row, method: 'all together', load, found: 'yes' }));
      if (load < HARDLY_ANY) {
        const u = standardUncertainty(loadFraction);
        if (load - NORMAL_FACTOR * u < IDLE) findings.push(LOAD.make('load-not-told-from-none', { row, load, u }));
      }
      const point = operatingPoint(scope, machine, loadFraction, {
        voltageRatio,
        windingTemperature: metered.windingTemperature,
        ambient: metered.ambient,
        frequencyRatio: metered.frequencyRatio,
        negativeSequence: metered.negativeSequence,
        heat,
        extraLoss: extraLoss(metered.supplyLoss),
      });
      return {
        reading,
        metered,
        estimates,
        combination: { loadFraction, voltageRatio, heat, agreement: joint.agreement, birgeRatio: joint.birgeRatio },
        point: load > LOWEST && load < HIGHEST ? point : undefined,
        findings,
      };
    }),
  };
}

function spreadOf(estimates: readonly Estimate[]): string {
  return estimates
    .map(
      (estimate) =>
        `${spaced(estimate.method)} ${(estimate.loadFraction.value * 100).toFixed(0)} ± ${(100 * NORMAL_FACTOR * standardUncertainty(estimate.loadFraction)).toFixed(0)} %`,
    )
    .join(', ');
}
