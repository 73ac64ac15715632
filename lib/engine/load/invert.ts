import { PARAMETERS } from '../circuit/parameters';
import { type Solution, solveAtPower } from '../circuit/solve';
import type { MotorScope } from '../context';
import { solved } from '../formula/apply';
import { PARAMETER_NUDGE } from '../machine/fit';
import type { Machine } from '../machine/model';
import { assumedAmbient, heatOf } from '../machine/operate';
import { HEAT } from '../machine/predict';
import { combineParts, type Parts, type Quantity } from '../quantity/quantity';
import type { Metered } from './metered';

/** Loads between which a reading is looked for: free running and beyond any lasting load. */
export const LOWEST = -0.15;
export const HIGHEST = 2;

/** A way of reading one measurable value off a solved point. */
export interface Measurable {
  readonly read: (solution: Solution) => number;
  readonly tex: string;
  readonly label: string;
}

const STEP = 1e-5;

/**
 * The load at which the machine shows what was measured: the model of the plate alone, turned round.
 *
 * Newton steps on the solved circuit; doubts by the implicit-function rule: each doubt of the machine and of the conditions counts against
 * that of the meter, over the slope of the measurable against load. Where the slope is small, the doubt grows by itself.
 * Returns `undefined` where no load within {@link LOWEST} and {@link HIGHEST} shows the value.
 */
export function invert(
  scope: MotorScope,
  machine: Machine,
  metered: Metered,
  measured: Quantity<'1'>,
  what: Measurable,
  guess: number,
): Quantity<'1'> | undefined {
  const { model } = machine;
  const ambient = metered.ambient ?? assumedAmbient(scope);
  const heat = heatOf(scope, metered.row, metered.windingTemperature !== undefined);
  const at = {
    voltage: metered.voltageRatio.value,
    frequency: metered.frequencyRatio,
    ambient: ambient.value,
    winding: metered.windingTemperature?.value,
    negativeSequence: metered.negativeSequence,
  };
  let near: Solution | undefined;
  const readAt = (load: number, circuit = model.circuit, other = at, hotter = 0): number | undefined => {
    const solution = solveAtPower(circuit, { ...other, load, hotter, near });
    if (other === at && circuit === model.circuit) near = solution ?? near;
    return solution && what.read(solution);
  };
  let x = Math.min(Math.max(guess, 0.02), 1.4);
  let slope = 0;
  let residual = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 40; i++) {
    const here = readAt(x);
    const next = readAt(x + STEP);
    if (here === undefined || next === undefined) {
      // Beyond breakdown: come back towards loads that the machine can carry.
      x *= 0.8;
      continue;
    }
    slope = (next - here) / STEP;
    residual = measured.value - here;
    if (!(Math.abs(slope) > 1e-9)) return undefined;
    const step = Math.min(Math.max(residual / slope, -0.4), 0.4);
    x += step;
    if (x < LOWEST || x > HIGHEST) return undefined;
    if (Math.abs(step) < 1e-10) break;
  }
  if (!(Math.abs(residual) < 1e-7)) return undefined;
  const base = readAt(x);
  if (base === undefined) return undefined;
  const terms: (readonly [number, Parts])[] = [[1 / slope, measured.parts]];
  const against = (parts: Parts, moved: number | undefined, step: number): void => {
    if (moved !== undefined && parts.at.length > 0) terms.push([-(moved - base) / step / slope, parts]);
  };
  model.nudged().forEach((circuit, k) => {
    const parameter = model.parameters[k];
    if (circuit && parameter) against(parameter.parts, readAt(x, circuit), PARAMETER_NUDGE);
  });
  against(metered.voltageRatio.parts, readAt(x, model.circuit, { ...at, voltage: at.voltage + STEP }), STEP);
  against(heat.parts, readAt(x, model.circuit, at, STEP * HEAT), STEP);
  if (at.winding === undefined) against(ambient.parts, readAt(x, model.circuit, { ...at, ambient: at.ambient + 0.01 }), 0.01);
  const quantity: Quantity<'1'> = { unit: '1', value: x, parts: combineParts(terms) };
  const inputs: Record<string, Quantity> = { measured, voltage_ratio: metered.voltageRatio };
  if (scope.trace)
    PARAMETERS.forEach((name, k) => {
      const parameter = model.parameters[k];
      if (parameter) inputs[name.replaceAll('-', '_')] = parameter;
    });
  return solved(
    scope,
    quantity,
    {
      label: what.label,
      tex: what.tex,
      residual: Math.abs(residual),
      source: 'exact per-phase circuit of the plate, solved for the load',
    },
    inputs,
  );
}
