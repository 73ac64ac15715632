import gammainc from '@stdlib/math-base-special-gammainc';
import { COUNT } from '../circuit/parameters';
import type { MotorScope } from '../context';
import { type Fit, leastMisfit, leastSquares, type Problem } from '../estimate/least-squares';
import { apply, leaf } from '../formula/apply';
import * as N from '../generated/nameplate';
import { machineOf, type PlateMachine } from '../machine/build';
import { doubtsOf, modelOf, problemOf, unknownOf } from '../machine/fit';
import type { CompletedPlate, Machine } from '../machine/model';
import { logarithm, type Observation, observation, withDoubt } from '../machine/observation';
import { heatOf } from '../machine/operate';
import { type KnownConditions, PER_READING } from '../machine/predict';
import type { Quantity } from '../quantity/quantity';
import type { Agreement } from '../result';
import { doubles } from '../room';
import type { Metered } from './metered';
import { CURRENT_MODEL, INPUT_MODEL, slipModel } from './model-doubt';

/** Load of an industrial motor before anything is read: the one broad prior of the joint estimate (common practice: 40 to 90 %). */
export const PRIOR_LOAD = { value: 0.65, u: 0.3 } as const;

/** Load of a motor that is supposed to run free. */
const FREE_LOAD = { value: 0.003, u: 0.004 } as const;

/** Below this chance stamps and readings are taken to disagree. */
export const DISAGREEMENT = 0.01;

/** What one stamp or reading does to the joint estimate. */
export interface Pull {
  readonly observation: Observation;
  readonly name: string;
  readonly evidence: boolean;
  /** What the fit finds in its place; as the observed value, often a logarithm. */
  readonly fitted: number;
  /** Its residual over the residual's own standard uncertainty. */
  readonly residual: number;
  /** Share of itself that its prediction takes from it: 0 without influence, 1 where nothing else speaks. */
  readonly influence: number;
  /** Load of each reading without it, in the order of the readings. */
  readonly loadsWithout: readonly number[];
  /** Its share in the variance of each reading's load, were all observations independent. */
  readonly shares: readonly number[];
}

/** One reading's part of the joint estimate. */
export interface JointReading {
  readonly loadFraction: Quantity<'1'>;
  readonly voltageRatio: Quantity<'1'>;
  readonly heat: Quantity<'1'>;
}

/** The machine and the loads that stamps and readings describe together. */
export interface Joint {
  readonly machine: Machine;
  readonly readings: readonly JointReading[];
  readonly agreement?: Agreement | undefined;
  /** Factor by which all doubts were widened; 1 when stamps and readings agree. */
  readonly birgeRatio: number;
  /** How far the search had settled. */
  readonly search: { readonly iterations: number; readonly residual: number };
  /** The fit that all of this is made of. */
  readonly fitted: JointFit;
  /** What each stamp and reading does to it; worked out when asked for. */
  readonly pulls: () => readonly Pull[];
}

/** Observations and misfit of a joint fit, before anything is made of it. */
export interface JointFit {
  readonly chiSquared: number;
  readonly degreesOfFreedom: number;
  readonly observations: readonly Observation[];
  readonly fit: Fit;
  /** The problem that was solved; other observed values may be put into it. */
  readonly problem: Problem;
}

/**
 * The problem of fitting machine and loads together to all stamps and readings.
 *
 * Unknowns: the machine's parameters, and for each reading its load, its voltage and how much hotter the winding is than reckoned. Each stamp,
 * meter and typical value is one observation weighted by its doubt; readings share the machine, not the load.
 * `free` is the place of a reading supposed to be taken running free.
 */
function jointProblem(
  scope: MotorScope,
  plate: PlateMachine,
  readings: readonly Metered[],
  free: number,
): { readonly observations: readonly Observation[]; readonly problem: Problem } {
  const observations: Observation[] = [...plate.evidence.observations];
  const conditions: KnownConditions[] = [];
  const start = doubles(COUNT + PER_READING * readings.length);
  start.set(plate.fit.unknowns);
  readings.forEach((metered, r) => {
    observations.push(...readingObservations(scope, plate.machine, metered, r, r === free ? FREE_LOAD : PRIOR_LOAD));
    conditions.push({
      frequency: metered.frequencyRatio,
      ambient: metered.ambient?.value ?? 25,
      winding: metered.windingTemperature?.value,
      negativeSequence: metered.negativeSequence,
    });
    start[COUNT + PER_READING * r] = r === free ? FREE_LOAD.value : guess(plate.machine, metered);
    start[COUNT + PER_READING * r + 1] = metered.voltageRatio.value;
  });
  return { observations, problem: problemOf({ observations, conditions, start, rotorShare: plate.evidence.rotorShare }) };
}

/**
 * Fits machine and loads together to all stamps and readings, see {@link jointProblem}.
 * Returns `undefined` when nothing converges. Source: JCGM 102 (multivariate least squares), JCGM 100 5.2 for what is common.
 */
export function fitJointly(scope: MotorScope, plate: PlateMachine, readings: readonly Metered[]): JointFit | undefined {
  const { observations, problem } = jointProblem(scope, plate, readings, -1);
  const fit = leastSquares(problem);
  if (!fit) return undefined;
  // The prior of the load is no evidence: neither its residual nor its row counts in the agreement.
  let chiSquared = fit.chiSquared;
  observations.forEach((each, i) => {
    if (each.target.of === 'load') chiSquared -= ((each.value.value - (fit.predicted[i] ?? 0)) / each.u) ** 2;
  });
  return {
    fit,
    observations,
    problem,
    chiSquared: Math.max(0, chiSquared),
    degreesOfFreedom: observations.length - problem.start.length - readings.length,
  };
}

/** The misfit that is left at best, priors of the loads included, and the loads there: all that a comparison of suspicions needs. */
export function jointMisfit(
  scope: MotorScope,
  plate: PlateMachine,
  readings: readonly Metered[],
  free = -1,
): { readonly chiSquared: number; readonly loads: readonly number[] } | undefined {
  const found = leastMisfit(jointProblem(scope, plate, readings, free).problem);
  return (
    found && {
      chiSquared: found.chiSquared,
      loads: readings.map((_, r) => found.unknowns[COUNT + PER_READING * r] as number),
    }
  );
}

/** Chance of so large a misfit, were stamps, meters and model as good as stated. */
export function chanceOf(chiSquared: number, degreesOfFreedom: number): number {
  return degreesOfFreedom > 0 ? gammainc(chiSquared / 2, degreesOfFreedom / 2, true, true) : 1;
}

/** The machine and loads of a joint fit as quantities; doubts are widened by the Birge ratio where the misfit is beyond chance. */
export function jointOf(
  scope: MotorScope,
  plate: PlateMachine,
  completed: CompletedPlate,
  joint: JointFit,
  readings: readonly Metered[],
): Joint | undefined {
  const { fit, observations, chiSquared, degreesOfFreedom } = joint;
  const p = chanceOf(chiSquared, degreesOfFreedom);
  const birgeRatio = p < DISAGREEMENT ? Math.sqrt(Math.max(1, chiSquared / degreesOfFreedom)) : 1;
  const doubts = doubtsOf(fit, observations, birgeRatio);
  const model = modelOf(scope, doubts, plate.evidence.rotorShare, plate.machine.model.base, '');
  const machine = model && machineOf(scope, completed, model, '');
  if (!machine) return undefined;
  const tex = '(\\hat{\\theta}, \\hat{x}) = \\arg\\min \\sum_i \\left(\\frac{o_i - m_i(\\theta, x)}{u_i}\\right)^2';
  const unknown = (k: number, label: string) => unknownOf(scope, doubts, k, { label, tex });
  return {
    machine,
    birgeRatio,
    fitted: joint,
    agreement: degreesOfFreedom > 0 ? { chi_squared: chiSquared, degrees_of_freedom: degreesOfFreedom, p } : undefined,
    readings: readings.map((metered, r) => ({
      loadFraction: unknown(COUNT + PER_READING * r, `Load of row ${metered.row} by all stamps and readings together`),
      voltageRatio: unknown(COUNT + PER_READING * r + 1, `Voltage ratio of row ${metered.row} by all together`),
      heat: unknown(COUNT + PER_READING * r + 2, `Winding hotter than reckoned in row ${metered.row}, in tens of kelvins`),
    })),
    search: { iterations: fit.iterations, residual: fit.residual },
    pulls: () => pullsOf(joint, readings.length),
  };
}

function pullsOf({ fit, observations }: JointFit, readings: number): Pull[] {
  const n = fit.unknowns.length;
  const share = (i: number, k: number): number => ((fit.gain[i * n + k] as number) * (observations[i] as Observation).u) ** 2;
  const variances = Array.from({ length: readings }, (_, r) =>
    observations.reduce((sum, _each, i) => sum + share(i, COUNT + PER_READING * r), 0),
  );
  return observations.map((each, i) => {
    let influence = 0;
    for (let k = 0; k < n; k++) influence += (fit.jacobian[i * n + k] as number) * (fit.gain[i * n + k] as number);
    const left = Math.max(1 - influence, 1e-9);
    const residual = each.value.value - (fit.predicted[i] as number);
    return {
      observation: each,
      name: each.name,
      evidence: each.evidence,
      fitted: fit.predicted[i] as number,
      influence,
      shares: variances.map((variance, r) => share(i, COUNT + PER_READING * r) / variance),
      residual: influence > 1 - 1e-6 ? 0 : residual / (each.u * Math.sqrt(left)),
      loadsWithout: Array.from({ length: readings }, (_, r) => {
        const k = COUNT + PER_READING * r;
        return (fit.unknowns[k] as number) - ((fit.gain[i * n + k] as number) * residual) / left;
      }),
    };
  });
}

/** Where the search for a reading's load starts. */
function guess(machine: Machine, metered: Metered): number {
  const { circuit, base } = machine.model;
  const bounded = (x: number) => Math.min(Math.max(x, 0.05), 1.3);
  if (metered.inputPower) {
    const loss = circuit.core + circuit.friction;
    return bounded((metered.inputPower.value / base.powerKw - loss) / (circuit.current * circuit.powerFactor - loss));
  }
  if (metered.speed) return bounded((1 - metered.speed.value / metered.synchronousSpeed.value) / circuit.slip);
  if (metered.current) {
    const ratio = metered.current.value / base.currentA;
    return bounded(
      Math.sqrt(Math.max(0, ratio ** 2 - circuit.magnetising ** 2) / (circuit.current ** 2 - circuit.magnetising ** 2)),
    );
  }
  return PRIOR_LOAD.value;
}

function readingObservations(
  scope: MotorScope,
  machine: Machine,
  metered: Metered,
  reading: number,
  prior: typeof PRIOR_LOAD | typeof FREE_LOAD,
): Observation[] {
  const { row } = metered;
  const { base } = machine.model;
  const found: Observation[] = [];
  if (metered.inputPower)
    found.push(
      observation(
        `input_power_row_${row}`,
        true,
        { of: 'input', reading },
        withDoubt(
          scope,
          logarithm(scope, metered.inputPower, base.powerKw, 'input power'),
          `row ${row}:model:input`,
          'what the circuit leaves out of the input',
          INPUT_MODEL,
        ),
      ),
    );
  if (metered.current)
    found.push(
      observation(
        `current_row_${row}`,
        true,
        { of: 'current', reading },
        withDoubt(
          scope,
          logarithm(scope, metered.current, base.currentA, 'line current'),
          `row ${row}:model:current`,
          'saturation and what the circuit leaves out',
          CURRENT_MODEL,
        ),
      ),
    );
  if (metered.speed) {
    const slip = apply(scope, N.slip_fraction, { synchronous_speed: metered.synchronousSpeed, shaft_speed: metered.speed });
    found.push(
      observation(
        `speed_row_${row}`,
        true,
        { of: 'slip', reading },
        withDoubt(scope, slip, `row ${row}:model:slip`, 'skin effect and straight parts of the model', slipModel(slip.value)),
      ),
    );
  }
  found.push(
    observation(`voltage_row_${row}`, metered.voltage !== undefined, { of: 'voltage', reading }, metered.voltageRatio),
    observation(`heat_row_${row}`, false, { of: 'heat', reading }, heatOf(scope, row, metered.windingTemperature !== undefined)),
    observation(
      `prior_load_row_${row}`,
      false,
      { of: 'load', reading },
      leaf(scope, {
        value: prior.value,
        unit: '1',
        label: 'load before anything is read',
        origin: 'assumed',
        source: 'common practice: most industrial motors run at 40 to 90 % of rating',
        doubts: [{ id: `row ${row}:prior-load`, label: 'load before anything is read', u: prior.u }],
      }),
    ),
  );
  return found;
}

/** True where a reading holds something from which a load follows. */
export function speaksOfLoad(metered: Metered): boolean {
  return metered.inputPower !== undefined || metered.current !== undefined || metered.speed !== undefined;
}
