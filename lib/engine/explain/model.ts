import { ratedPoint } from '../circuit/rated-point.system';
import { runningPoint } from '../circuit/running-point.system';
import { solveAtPower } from '../circuit/solve';
import type { Evaluation } from '../evaluate';
import type { Equation, SystemDeclaration } from '../formula/system';
import { EQUATIONS as RATED } from '../generated/rated-point';
import { EQUATIONS as RUNNING } from '../generated/running-point';
import { assumedAmbient } from '../machine/operate';
import { HEAT } from '../machine/predict';

/** One number of the circuit or of its solution. */
interface ModelNumber {
  /** TeX of the symbol, as in the equations. */
  readonly symbol: string;
  readonly meaning: string;
  /** Per unit of rated shaft power and voltage, but for slip, exponent, and temperatures in °C. */
  readonly value: number;
}

/** A system of equations with what its solution leaves. */
interface ModelSystem {
  readonly title: string;
  readonly equations: readonly Equation[];
  readonly valid: string;
  readonly source: string;
  /** Largest imbalance left by the iterative solution, per unit; absent where the circuit could not be solved at its own rating. */
  readonly residual?: number;
}

/** The machine's model as it was solved for the reading in use. */
export interface Model {
  readonly numbers: readonly ModelNumber[];
  readonly systems: readonly ModelSystem[];
  /** The fit of machine and loads: steps taken, and the largest last step of an unknown. */
  readonly fit: { readonly iterations: number; readonly residual: number };
}

/** Equations, numbers and residuals of the machine's model; `undefined` without a usable reading. */
export function modelOfEvaluation(evaluation: Evaluation): Model | undefined {
  const { machine, joint, inUse } = evaluation;
  const combined = inUse?.combination;
  if (!joint || !inUse || !combined) return undefined;
  const { circuit: c } = machine.model;
  const { metered } = inUse;
  const solution = solveAtPower(c, {
    load: combined.loadFraction.value,
    voltage: combined.voltageRatio.value,
    frequency: metered.frequencyRatio,
    ambient: (metered.ambient ?? assumedAmbient({ ...evaluation.scope, trace: undefined })).value,
    winding: metered.windingTemperature?.value,
    hotter: combined.heat.value * HEAT,
    negativeSequence: metered.negativeSequence,
  });
  if (!solution) return undefined;
  // The rated point balances when a load of one at rated voltage and temperature gives back its own slip.
  const atRating = solveAtPower(c, { load: 1, voltage: 1, frequency: 1, ambient: 25, winding: 25 + c.rise });
  return {
    numbers: [
      { symbol: 'R_1', meaning: 'resistance of the stator', value: c.r1 },
      { symbol: 'X_1', meaning: 'leakage reactance of the stator', value: c.x1 },
      { symbol: 'R_2', meaning: 'resistance of the rotor', value: c.r2 },
      { symbol: 'X_2', meaning: 'leakage reactance of the rotor', value: c.x2 },
      { symbol: 'E_r', meaning: 'air-gap voltage at rated load', value: c.gapVoltage },
      { symbol: 'I_m', meaning: 'magnetising current at that voltage', value: c.magnetising },
      { symbol: 'k', meaning: 'its exponent by the voltage', value: c.saturation },
      { symbol: 'P_{fe,r}', meaning: 'core loss at rated load', value: c.core },
      { symbol: 'P_{fw,r}', meaning: 'friction and windage at rated load', value: c.friction },
      { symbol: 'R_{LL}', meaning: 'stray-load loss over rotor current squared', value: c.stray / c.rotorCurrentSquared },
      { symbol: 's_r', meaning: 'rated slip', value: c.slip },
      { symbol: '\\Delta t_r', meaning: 'rise of the winding at rated load, K', value: c.rise },
      { symbol: 'P', meaning: 'shaft power of the reading', value: combined.loadFraction.value },
      { symbol: 'V', meaning: 'terminal voltage of the reading', value: combined.voltageRatio.value },
      { symbol: '\\Delta t', meaning: 'winding hotter than reckoned, K', value: combined.heat.value * HEAT },
      { symbol: 'E', meaning: 'air-gap voltage found', value: solution.gapVoltage },
      { symbol: 's', meaning: 'slip found', value: solution.slip },
      { symbol: 't_1', meaning: 'temperature of the winding, °C', value: solution.winding },
    ],
    systems: [
      systemOf(ratedPoint, RATED, atRating && Math.max(atRating.residual, Math.abs(atRating.slip - c.slip))),
      systemOf(runningPoint, RUNNING, solution.residual),
    ],
    fit: joint.search,
  };
}

function systemOf(declared: SystemDeclaration, equations: readonly Equation[], residual: number | undefined): ModelSystem {
  const { title, valid, source } = declared;
  return { title, equations, valid, source, ...(residual !== undefined && { residual }) };
}
