import { apply } from '../formula/apply';
import * as B from '../generated/bench';
import * as L from '../generated/load';
import * as M from '../generated/machine';
import * as N from '../generated/nameplate';
import { exact, type Quantity } from '../quantity/quantity';
import { type Fit, fitAt, fitPowers } from './least-squares';
import type { CorrectedPoint } from './load-point';
import type { BenchScope } from './meters';
import { synchronousSpeed } from './slip';
import type { BenchLoad } from './test';

/** Loads at which performance is stated. */
export const STANDARD_LOADS = [0.25, 0.5, 0.75, 1, 1.25, 1.5] as const;

/** A load may lie this far beyond the highest tested one (contract of the results), and this far below the lowest (own judgement). */
const BEYOND = 0.05;
const BELOW = 0.12;

/** Smooth curves of the corrected columns over shaft power. */
export interface LoadCurves {
  readonly stator: Fit;
  readonly rotor: Fit;
  readonly core: Fit;
  readonly friction: Fit;
  readonly slip: Fit;
  readonly currentSquared: Fit;
  readonly lowest: number;
  readonly highest: number;
}

/** Losses, slip and current squared as cubics (quadratics or lines with few points) over the corrected load fraction. */
export function loadCurves(scope: BenchScope, points: readonly CorrectedPoint[], ratedPowerKw: number): LoadCurves | undefined {
  const rated_power = exact(ratedPowerKw, 'kW');
  const loads = points.map((point) => apply(scope, L.load_fraction, { shaft_power: point.shaftPower, rated_power }));
  const degree = points.length >= 6 ? 3 : points.length >= 4 ? 2 : 1;
  const powers = [0, 1, 2, 3].slice(0, degree + 1);
  const curve = (name: string, of: (point: CorrectedPoint) => Quantity) =>
    fitPowers(
      scope,
      `bench:curve:${name}`,
      powers,
      points.map((point, i) => ({ x: loads[i] ?? exact(0, '1'), y: of(point) })),
    );
  const stator = curve('stator', (point) => point.losses.stator);
  const rotor = curve('rotor', (point) => point.losses.rotor);
  const core = curve('core', (point) => point.losses.core);
  const friction = curve('friction', (point) => point.losses.frictionWindage);
  const slip = curve('slip', (point) => point.slip);
  const currentSquared = curve('current', (point) => square(point.tested.current));
  if (!stator || !rotor || !core || !friction || !slip || !currentSquared) return undefined;
  const values = loads.map((load) => load.value);
  return { stator, rotor, core, friction, slip, currentSquared, lowest: Math.min(...values), highest: Math.max(...values) };
}

function square(current: Quantity<'A'>): Quantity<'A²'> {
  return {
    unit: 'A²',
    value: current.value ** 2,
    parts: { at: current.parts.at, by: current.parts.by.map((part) => 2 * current.value * part) },
  };
}

/** Line current, A, at a load (fraction of the rated one), as the root of the curve of its square. */
export function currentAt(curves: LoadCurves, load: number): Quantity<'A'> {
  const squared = fitAt(curves.currentSquared, exact(load, '1'), 'A²');
  const value = Math.sqrt(Math.max(squared.value, 0));
  return {
    unit: 'A',
    value,
    parts: { at: squared.parts.at, by: squared.parts.by.map((part) => (value > 0 ? part / (2 * value) : 0)) },
  };
}

/** The standard loads that a test between its lowest and highest load (fractions of the rated one) reaches, and those that it does not. */
export function reachedLoads(lowest: number, highest: number): { reached: number[]; notReached: number[] } {
  const reached = STANDARD_LOADS.filter((load) => load <= highest + BEYOND && load >= lowest - BELOW);
  const notReached = STANDARD_LOADS.filter((load) => load < lowest - BELOW || (load === 1 && load > highest + BEYOND));
  return { reached, notReached };
}

/** One standard load and what its performance is worked out from. Units: kW, V, Hz; load as a fraction. */
interface LoadPlace {
  readonly curves: LoadCurves;
  readonly load: number;
  readonly ratedPowerKw: number;
  readonly ratedVoltageV: number;
  readonly frequencyHz: number;
  readonly poles: number;
  readonly strayAt: (at: { readonly torque: Quantity<'N m'>; readonly current: Quantity<'A'> }) => Quantity<'kW'>;
}

/**
 * Performance at one standard load: each loss from its curve, stray-load loss by its own law, input as output and losses.
 *
 * Units: kW, A, r/min. Valid for: loads within the tested range. The curves are least-squares polynomials through all load points, since
 * neither standard fixes how points are carried to round loads. Source: IEEE 112-2017 clause 6.4 (from memory); GUM annex H.3.
 */
export function performanceAt(scope: BenchScope, given: LoadPlace): BenchLoad {
  const { curves, load } = given;
  const x = exact(load, '1');
  const shaftPower = apply(scope, M.shaft_power_at_load, { load_fraction: x, rated_power: exact(given.ratedPowerKw, 'kW') });
  const synchronous = synchronousSpeed(scope, given.frequencyHz, given.poles);
  const speed = apply(scope, N.speed_from_slip, { synchronous_speed: synchronous, slip: fitAt(curves.slip, x, '1') });
  const current = currentAt(curves, load);
  const torque = apply(scope, B.torque_from_power, { power: shaftPower, speed });
  const stator = fitAt(curves.stator, x, 'kW');
  const rotor = fitAt(curves.rotor, x, 'kW');
  const core = fitAt(curves.core, x, 'kW');
  const frictionWindage = fitAt(curves.friction, x, 'kW');
  const stray = given.strayAt({ torque, current });
  const total = apply(scope, M.total_loss, { stator, rotor, core, friction_windage: frictionWindage, stray });
  const inputPower = apply(scope, M.input_power, { shaft_power: shaftPower, total_loss: total });
  return {
    loadFraction: load,
    inputPower,
    shaftPower,
    efficiency: apply(scope, M.efficiency, { shaft_power: shaftPower, total_loss: total }),
    powerFactor: apply(scope, B.bench_power_factor, {
      input_power: inputPower,
      voltage: exact(given.ratedVoltageV, 'V'),
      current,
    }),
    current,
    speed,
    losses: { stator, rotor, core, frictionWindage, stray, total },
  };
}
