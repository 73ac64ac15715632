import { apply } from '../formula/apply';
import * as B from '../generated/bench';
import * as M from '../generated/machine';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import { BENCH } from './findings';
import { coefficient, type Fit, fitAt, fitPowers } from './least-squares';
import { type BenchScope, METER, read } from './meters';
import { type Winding, windingAt } from './resistance';
import type { BenchPoint, BenchSections } from './test';

/** Stray-load loss by direct test: so many watts for each square ampere of test current. */
export interface ReverseRotation {
  readonly slope: Quantity<'W/A²'>;
  readonly points: readonly { readonly row: number; readonly currentSquared: Quantity<'A²'>; readonly stray: Quantity<'W'> }[];
}

/** Least number of points of each of the two runs. */
const LEAST = 3;

/**
 * Stray-load loss by the reverse-rotation test.
 *
 * Units: A line, W. Two runs at the same currents: with the rotor taken out (power less stator loss is the loss at line frequency, a
 * quantity in proportion to the square of the current), and with the rotor driven at synchronous speed against the field by a machine whose
 * torque is measured. The row of the second run without current gives the mechanical power with no field. Stray-load loss is fitted
 * through zero over the square of the test current, which stands for that of the rotor current.
 * Source: IEEE 112-2017 clause 5.7.2 (from memory; the standard takes powers of the current near two, here two is fixed).
 */
export function reverseRotation(
  scope: BenchScope,
  sections: BenchSections,
  reference: Winding,
  copper: number,
): { found?: ReverseRotation; findings: Finding[] } {
  const removed = sections['rotor-removed'].flatMap((point) => electrical(scope, point, reference, copper) ?? []);
  const driven = sections['reverse-rotation'].flatMap((point) => {
    const side = electrical(scope, point, reference, copper);
    const shaft = mechanical(scope, point);
    return side && shaft ? [{ ...side, shaft }] : [];
  });
  const dead = sections['reverse-rotation'].find((point) => point.currentA === undefined || point.currentA === 0);
  const deadPower = dead && mechanical(scope, dead);
  const points = Math.min(removed.length, driven.length);
  const fundamental = fitPowers(
    scope,
    'bench:stray-fundamental',
    [1],
    removed.map((entry) => ({
      x: entry.squared,
      y: apply(scope, B.stray_fundamental, { input_power: entry.inputPower, stator: entry.stator }),
    })),
  );
  if (points < LEAST || !deadPower || !fundamental) {
    return { findings: [BENCH.make('reverse-rotation-missing', { points, least: LEAST })] };
  }
  const stray = driven.map((entry) => ({
    row: entry.row,
    currentSquared: entry.squared,
    stray: total(scope, entry, deadPower, fundamental),
  }));
  const line = fitPowers(
    scope,
    'bench:stray-direct',
    [1],
    stray.map((entry) => ({ x: entry.currentSquared, y: entry.stray })),
  );
  if (!line) return { findings: [BENCH.make('reverse-rotation-missing', { points, least: LEAST })] };
  const slope = coefficient(line, 0, 'W/A²');
  if (slope.value <= 0) return { findings: [BENCH.make('stray-slope-not-positive', { slope: slope.value })] };
  return { found: { slope, points: stray }, findings: [] };
}

interface Electrical {
  readonly row: number;
  readonly squared: Quantity<'A²'>;
  readonly inputPower: Quantity<'kW'>;
  readonly stator: Quantity<'kW'>;
}

function electrical(scope: BenchScope, point: BenchPoint, reference: Winding, copper: number): Electrical | undefined {
  const current = read(scope, METER.current, point);
  const inputPower = read(scope, METER.power, point);
  if (!current || !inputPower || current.value <= 0) return undefined;
  const { resistance } = windingAt(scope, point, reference, copper) ?? reference;
  const stator = apply(scope, M.stator_loss_from_resistance, { resistance, current });
  const squared: Quantity<'A²'> = {
    unit: 'A²',
    value: current.value ** 2,
    parts: { at: current.parts.at, by: current.parts.by.map((part) => 2 * current.value * part) },
  };
  return { row: point.row, squared, inputPower, stator };
}

function mechanical(scope: BenchScope, point: BenchPoint): Quantity<'kW'> | undefined {
  const torque = read(scope, METER.torque, point);
  const speed = read(scope, METER.speed, point);
  return torque && speed && apply(scope, B.shaft_power_from_torque, { torque, speed });
}

function total(
  scope: BenchScope,
  entry: Electrical & { readonly shaft: Quantity<'kW'> },
  dead: Quantity<'kW'>,
  fit: Fit,
): Quantity<'W'> {
  const fundamental = fitAt(fit, entry.squared, 'W');
  const harmonic = apply(scope, B.stray_harmonic, {
    shaft_power: entry.shaft,
    shaft_power_dead: dead,
    input_power: entry.inputPower,
    stator: entry.stator,
    fundamental,
  });
  return apply(scope, B.stray_sum, { fundamental, harmonic });
}

/** Stray-load loss of a line current, by the square of its rotor part. */
export function strayOfCurrent(
  scope: BenchScope,
  found: ReverseRotation,
  current: Quantity<'A'>,
  noLoadCurrent: Quantity<'A'>,
): Quantity<'kW'> {
  if (current.value <= noLoadCurrent.value) return exact(0, 'kW');
  return apply(scope, B.stray_of_rotor_current, { slope: found.slope, current, no_load_current: noLoadCurrent });
}
