import { PARAMETERS } from '../circuit/parameters';
import { BY, OF_POINT, POINT_COLUMNS, POINT_SLOPES, pointSlopes } from '../circuit/point-slopes';
import { atLoad, type Solution, solveAtPower, type Terminals } from '../circuit/solve';
import type { MotorScope } from '../context';
import { solved } from '../formula/apply';
import type { Machine } from '../machine/model';
import { assumedAmbient, heatOf } from '../machine/operate';
import { HEAT } from '../machine/predict';
import { combineParts, EXACT, Later, type Parts, PartsTable, type Quantity, scaleParts } from '../quantity/quantity';
import { copied } from '../room';
import type { Metered } from './metered';

/** Loads between which a reading is looked for: free running and beyond any lasting load. */
export const LOWEST = -0.15;
export const HIGHEST = 2;

/** A measurable value of a solved point: which, and whether its logarithm is meant. */
export interface Measurable {
  readonly of: 'input' | 'current' | 'slip';
  readonly logarithm: boolean;
  readonly tex: string;
  readonly label: string;
}

/** Misfit of the measured value, over its slope against load, at which the load is found. */
const SETTLED = 1e-12;

const slopes = new Float64Array(POINT_SLOPES);

/** The machine of the plate running free at the voltage and frequency of a reading. */
export function freeRunning({ model }: Machine, metered: Metered): Solution | undefined {
  return solveAtPower(model.circuit, {
    load: 0,
    voltage: metered.voltageRatio.value,
    frequency: metered.frequencyRatio,
    ambient: 25,
    winding: undefined,
    hotter: 0,
    negativeSequence: metered.negativeSequence,
    near: undefined,
  });
}

/** On which side of all loads a reading lies that none shows: below what the machine shows running free, else above all that it carries there. */
export function sideOf(machine: Machine, metered: Metered, of: Measurable['of'], shown: number): 'below' | 'above' {
  const free = freeRunning(machine, metered);
  return free && shown < free[of] ? 'below' : 'above';
}

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
  const at: Terminals = {
    load: 0,
    voltage: metered.voltageRatio.value,
    frequency: metered.frequencyRatio,
    ambient: ambient.value,
    winding: metered.windingTemperature?.value,
    hotter: 0,
    negativeSequence: metered.negativeSequence,
    near: undefined,
  };
  const row = OF_POINT[what.of];
  let near: Solution | undefined;
  let x = Math.min(Math.max(guess, 0.02), 1.4);
  let slope = 0;
  let scale = 1;
  let residual = Number.POSITIVE_INFINITY;
  for (let i = 0; i < 40; i++) {
    const terminals = atLoad(at, x, near);
    const point = solveAtPower(model.circuit, terminals);
    if (!point || (what.logarithm && !(point[what.of] > 0))) {
      // Beyond breakdown, or fed by its load: come back towards loads that the machine can carry.
      x = x > 0.3 ? x * 0.8 : x + 0.05;
      continue;
    }
    near = point;
    pointSlopes(model.circuit, model.slopes(), terminals, point, slopes, [row]);
    scale = what.logarithm ? 1 / point[what.of] : 1;
    slope = scale * (slopes[row * POINT_COLUMNS + BY.load] as number);
    residual = measured.value - (what.logarithm ? Math.log(point[what.of]) : point[what.of]);
    if (!(Math.abs(slope) > 1e-9)) return undefined;
    if (Math.abs(residual) < SETTLED * Math.max(1, Math.abs(slope))) break;
    x += Math.min(Math.max(residual / slope, -0.4), 0.4);
    if (x < LOWEST || x > HIGHEST) return undefined;
  }
  if (!(Math.abs(residual) < 1e-7)) return undefined;
  const weights = copied(slopes, row * POINT_COLUMNS, POINT_COLUMNS);
  // Each doubt of the machine and of the conditions moves what is shown, and over its slope the load.
  const workOut = (): Parts =>
    combineParts([
      [1 / slope, measured.parts],
      [
        1,
        new PartsTable([
          ...model.parameters.map(({ parts }) => parts),
          EXACT,
          metered.voltageRatio.parts,
          metered.windingTemperature ? EXACT : ambient.parts,
          scaleParts(heat.parts, HEAT),
        ]).sum(weights, 0, -scale / slope),
      ],
    ]);
  const quantity = new Later('1', x, workOut);
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
