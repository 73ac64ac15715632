import { apply } from '../formula/apply';
import * as B from '../generated/bench';
import * as M from '../generated/machine';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity, scaleParts } from '../quantity/quantity';
import { BENCH } from './findings';
import { coefficient, fitPowers } from './least-squares';
import { type BenchScope, METER, read } from './meters';
import { type Winding, windingAt } from './resistance';
import type { BenchPoint, BenchSections } from './test';

/** A loss that follows a power of the current. */
export interface PowerLaw {
  /** At the reference current of the test. */
  readonly atReference: Quantity<'W'>;
  readonly exponent: Quantity<'1'>;
}

/** One point of a run, with its part of the stray-load loss. */
export interface StrayPoint {
  readonly row: number;
  readonly current: Quantity<'A'>;
  readonly inputPower: Quantity<'kW'>;
  readonly winding: Winding;
  readonly stator: Quantity<'kW'>;
  /** Mechanical power that drives the rotor; of the driven run only. */
  readonly shaft?: Quantity<'kW'>;
  readonly loss: Quantity<'W'>;
}

/** Stray-load loss by direct test: two parts, each a power of the current. */
export interface ReverseRotation {
  /** Geometric mean of the currents with the rotor out; it only fixes where the two laws are stated. */
  readonly referenceA: number;
  /** Part at line frequency, with the rotor taken out. */
  readonly fundamental: PowerLaw;
  /** Part at high frequency, with the rotor driven backwards. */
  readonly harmonic: PowerLaw;
  /** Mechanical power that drives the rotor with no field. */
  readonly dead: Quantity<'kW'>;
  readonly removed: readonly StrayPoint[];
  readonly driven: readonly StrayPoint[];
}

/** Least number of points of each of the two runs. */
const LEAST = 3;
/** An exponent further from two than this is doubtful (own judgement). */
const EXPONENT_ROOM = 0.5;

/**
 * Stray-load loss by the reverse-rotation test.
 *
 * Units: A line, W. Two runs: with the rotor taken out, power less stator loss is the part at line frequency; with the rotor driven at
 * synchronous speed against the field by a machine whose torque is measured, what drives it more than with no field, less what crosses the
 * gap from the stator, is the part at high frequency. The row of the second run without current gives the power with no field.
 * Each part is fitted as a power of the test current, by a line through the logarithms; the currents of the two runs need not be equal.
 * Errors: too few points, no row without current and negative losses are findings that refuse.
 * Source: IEEE 112-2017 clause 5.7.2 (from memory).
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
  const unfed = sections['reverse-rotation'].find((point) => point.currentA === undefined || point.currentA === 0);
  const dead = unfed && mechanical(scope, unfed);
  const points = Math.min(removed.length, driven.length);
  if (points < LEAST || !dead) return { findings: [BENCH.make('reverse-rotation-missing', { points, least: LEAST })] };
  const out = removed.map((entry): StrayPoint => {
    const loss = apply(scope, B.stray_fundamental, { input_power: entry.inputPower, stator: entry.stator });
    return { ...entry, loss };
  });
  const referenceA = Math.exp(out.reduce((sum, { current }) => sum + Math.log(current.value), 0) / out.length);
  const first = powerLaw(scope, 'bench:stray-fundamental', out, referenceA);
  const negative = negativeOf(out, 'rotor-removed');
  if (negative.length > 0) return { findings: negative };
  if (!first) return { findings: [BENCH.make('reverse-rotation-missing', { points: distinct(out), least: LEAST })] };
  const back = driven.map((entry): StrayPoint => {
    const loss = apply(scope, B.stray_harmonic, {
      shaft_power: entry.shaft,
      shaft_power_dead: dead,
      input_power: entry.inputPower,
      stator: entry.stator,
      fundamental: atCurrent(scope, first, entry.current, referenceA),
    });
    return { ...entry, loss };
  });
  const lost = negativeOf(back, 'reverse-rotation');
  if (lost.length > 0) return { findings: lost };
  const second = powerLaw(scope, 'bench:stray-harmonic', back, referenceA);
  if (!second) return { findings: [BENCH.make('reverse-rotation-missing', { points: distinct(back), least: LEAST })] };
  const findings = [
    ...doubtful(first.exponent.value, 'at line frequency (rotor removed)'),
    ...doubtful(second.exponent.value, 'at high frequency (driven backwards)'),
  ];
  return { found: { referenceA, fundamental: first, harmonic: second, dead, removed: out, driven: back }, findings };
}

const distinct = (points: readonly StrayPoint[]): number => new Set(points.map(({ current }) => current.value)).size;

function negativeOf(points: readonly StrayPoint[], section: string): Finding[] {
  const wrong = points.find(({ loss }) => !(loss.value > 0));
  return wrong ? [BENCH.make('reverse-rotation-negative', { row: wrong.row, section, loss: wrong.loss.value })] : [];
}

function doubtful(exponent: number, part: string): Finding[] {
  return Math.abs(exponent - 2) > EXPONENT_ROOM ? [BENCH.make('reverse-rotation-exponent', { part, exponent })] : [];
}

function electrical(
  scope: BenchScope,
  point: BenchPoint,
  reference: Winding,
  copper: number,
): Omit<StrayPoint, 'loss'> | undefined {
  const current = read(scope, METER.current, point);
  const inputPower = read(scope, METER.power, point);
  if (!current || !inputPower || current.value <= 0) return undefined;
  const winding = windingAt(scope, point, reference, copper) ?? reference;
  const stator = apply(scope, M.stator_loss_from_resistance, { resistance: winding.resistance, current });
  return { row: point.row, current, inputPower, winding, stator };
}

function mechanical(scope: BenchScope, point: BenchPoint): Quantity<'kW'> | undefined {
  const torque = read(scope, METER.torque, point);
  const speed = read(scope, METER.speed, point);
  return torque && speed && apply(scope, B.shaft_power_from_torque, { torque, speed });
}

/** Natural logarithm of a positive quantity over a base of its unit. */
function logarithm(quantity: Quantity, base: number): Quantity<'1'> {
  return { unit: '1', value: Math.log(quantity.value / base), parts: scaleParts(quantity.parts, 1 / quantity.value) };
}

/** Loss as a power of the current; `undefined` for fewer than two different currents or a loss that is not positive. */
function powerLaw(scope: BenchScope, id: string, points: readonly StrayPoint[], referenceA: number): PowerLaw | undefined {
  if (points.some(({ loss }) => !(loss.value > 0))) return undefined;
  const line = fitPowers(
    scope,
    id,
    [0, 1],
    points.map(({ current, loss }) => ({ x: logarithm(current, referenceA), y: logarithm(loss, 1) })),
  );
  if (!line) return undefined;
  const level = coefficient(line, 0, '1');
  const value = Math.exp(level.value);
  return { atReference: { unit: 'W', value, parts: scaleParts(level.parts, value) }, exponent: coefficient(line, 1, '1') };
}

function atCurrent(scope: BenchScope, law: PowerLaw, current: Quantity<'A'>, referenceA: number): Quantity<'W'> {
  const { atReference: at_reference, exponent } = law;
  return apply(scope, B.loss_of_current, { at_reference, current, reference: exact(referenceA, 'A'), exponent });
}

/** The numbers that make the two laws, and the stray-load loss in W that they give at the rotor's part of a current in A. */
export function lawQuantities({ fundamental, harmonic }: ReverseRotation): readonly Quantity[] {
  return [fundamental.atReference, fundamental.exponent, harmonic.atReference, harmonic.exponent];
}
/** Stray-load loss by the two laws, W, at a rotor current in A; `law` in the order of {@link lawQuantities}. */
export function strayWatts(rotorA: number, referenceA: number, law: readonly number[]): number {
  const [fundamental = 0, first = 0, harmonic = 0, second = 0] = law;
  const part = (watts: number, exponent: number) => B.loss_of_current.f(watts, rotorA, referenceA, exponent);
  return part(fundamental, first) + part(harmonic, second);
}

/** Stray-load loss of a line current, by its rotor part. */
export function strayOfCurrent(
  scope: BenchScope,
  found: ReverseRotation,
  current: Quantity<'A'>,
  noLoadCurrent: Quantity<'A'>,
): Quantity<'kW'> {
  if (current.value <= noLoadCurrent.value) return exact(0, 'kW');
  const rotor = apply(scope, B.rotor_part_of_current, { current, no_load_current: noLoadCurrent });
  return apply(scope, B.stray_sum, {
    fundamental: atCurrent(scope, found.fundamental, rotor, found.referenceA),
    harmonic: atCurrent(scope, found.harmonic, rotor, found.referenceA),
  });
}
