import { OF_CIRCUIT } from '../../circuit/from-rated-point';
import { negativeSequence } from '../../circuit/negative-sequence';
import type { MotorScope } from '../../context';
import { apply, leaf, solved } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Machine } from '../../machine/model';
import { combineParts, exact, onePart, type Parts, type Quantity } from '../../quantity/quantity';
import { sequenceMagnitudes } from '../../quantity/sequence';
import { limitOf } from '../limit';
import { INSTRUMENT, share } from './shared';

/** Three line-to-line voltages and three line currents of one reading, and what is known of its load. */
interface ThreePhase {
  readonly row: number;
  readonly voltages: readonly [number, number, number];
  readonly currents: readonly [number, number, number];
  /** The current with the doubt of its meter, where the reading gave one. */
  readonly meter?: Quantity<'A'> | undefined;
  readonly slip?: number | undefined;
}

/** What the voltages explain of the currents' unbalance: so many times their own. */
interface Explained {
  readonly voltageUnbalance: Quantity<'%'>;
  readonly multiple: Quantity<'1'>;
  /** Which unbalance of the voltage is meant, in words. */
  readonly words: string;
}

/**
 * Largest deviation from the mean over negative sequence of three nearly equal values: the greatest of |cos| of three angles 120° apart,
 * 0.87 to 1, equally likely over all angles: mean 3/π, standard deviation 0.040 (integrals over ± 30°).
 */
const SHAPE = { value: 3 / Math.PI, u: 0.04 } as const;
/**
 * Impedance at twice line frequency in the rotor over that of the running circuit: deep bars lower the leakage, but without the saturation
 * of a start, which together take about a fifth off (common practice); so midway, equally likely over the range.
 */
const DEEP_BARS = { value: 0.9, u: 0.1 / Math.sqrt(3) } as const;
/** Step by which the unbalance of three values is differentiated, as a share. */
const STEP = 1e-5;

/**
 * Unbalance of the currents that the voltages explain, through the negative-sequence circuit of the motor.
 *
 * Units: %, and a bare multiple. Valid for: cage and wound-rotor motors whose three voltages and three currents close a triangle each;
 * `undefined` otherwise: a synchronous motor's dampers are not in the circuit, and values that cannot close one were misread.
 * Doubt: the circuit's parameters, deep bars, the angle between the two unbalances, and the meter between its phases.
 * Source: symmetrical components, any textbook; {@link negativeSequence}.
 */
export function explainedByCircuit(scope: MotorScope, machine: Machine, at: ThreePhase): Explained | undefined {
  const voltage = sequenceMagnitudes(at.voltages);
  const current = sequenceMagnitudes(at.currents);
  if (!voltage || !current) return undefined;
  const { model, plate } = machine;
  const multiple = apply(scope, C.unbalance_multiple, {
    shape: leaf(scope, {
      value: SHAPE.value,
      unit: '1',
      label: 'largest deviation over negative sequence, by an angle nobody knows',
      origin: 'derived',
      source: 'mean over all angles',
      doubts: [{ id: `row ${at.row}:unbalance-angle`, label: 'angle between the unbalances of voltage and current', u: SHAPE.u }],
    }),
    voltage_ratio: exact(voltage.positive / plate.ratedVoltage.value, '1'),
    base_current: exact(model.base.currentA, 'A'),
    impedance: impedanceOf(scope, machine, at.slip ?? model.circuit.slip),
    current: { unit: 'A', value: current.positive, parts: at.meter?.parts ?? exact(1, 'A').parts },
  });
  const voltageUnbalance = negativeShare(scope, at);
  return voltageUnbalance && { voltageUnbalance, multiple, words: 'negative-sequence' };
}

/** The multiple of the table of limits, or of the study: between 6 and 10 near rated load, of the deviation from the mean. */
export function explainedByRule(scope: MotorScope, voltageUnbalance: Quantity<'%'>): Explained {
  const limit = limitOf(scope, 'C4');
  const high = limit.high ?? limit.value;
  const multiple = leaf(scope, {
    value: (limit.value + high) / 2,
    unit: '1',
    label: 'current unbalance for each per cent of voltage unbalance',
    origin: 'table',
    source: limit.source,
    doubts: [
      { id: 'unbalance-multiple', label: 'multiple of the voltage unbalance', u: (high - limit.value) / 2 / Math.sqrt(3) },
    ],
  });
  return { voltageUnbalance, multiple, words: 'voltage' };
}

/** Step of a parameter along the circuit's slopes. */
const ALONG = 1e-5;

function impedanceOf(scope: MotorScope, { model }: Machine, slip: number): Quantity<'1'> {
  const running = Math.sqrt(negativeSequence(model.circuit, slip).squared);
  const value = DEEP_BARS.value * running;
  const deep = scope.sources.number('deep-bars', 'rotor leakage at twice line frequency');
  const { r1, x1, r2, x2 } = model.circuit;
  const { parameters } = model;
  const slopes = model.slopes();
  const terms: (readonly [number, Parts])[] = [];
  for (const [k, { parts }] of parameters.entries()) {
    if (parts.at.length === 0) continue;
    const by = (row: number) => ALONG * (slopes[row * parameters.length + k] as number);
    const moved = {
      r1: r1 + by(OF_CIRCUIT.r1),
      x1: x1 + by(OF_CIRCUIT.x1),
      r2: r2 + by(OF_CIRCUIT.r2),
      x2: x2 + by(OF_CIRCUIT.x2),
    };
    const change = Math.sqrt(negativeSequence(moved, slip).squared) - running;
    terms.push([(DEEP_BARS.value * change) / ALONG, parts]);
  }
  terms.push([1, onePart(deep, DEEP_BARS.u * running)]);
  return solved(
    scope,
    { unit: '1', value, parts: combineParts(terms) },
    {
      label: `Impedance that the negative sequence meets, per unit: ${DEEP_BARS.value} of the running circuit’s, for deep bars`,
      tex: "z_2 = \\left| R_1 + \\frac{R_2'}{2 - s} + j (X_1 + X_2) \\right|",
      residual: 0,
      source: 'per-phase circuit fitted to plate, tests and readings',
    },
    {},
  );
}

/** Negative over positive sequence of the three voltages, per cent. The meter's gain cancels; what differs between its readings counts. */
function negativeShare(scope: MotorScope, { row, voltages }: ThreePhase): Quantity<'%'> | undefined {
  const ratio = (values: readonly [number, number, number]) => {
    const found = sequenceMagnitudes(values);
    return found && (100 * found.negative) / found.positive;
  };
  const value = ratio(voltages);
  if (value === undefined) return undefined;
  const terms = ([0, 1, 2] as const).map((index): readonly [number, Parts] => {
    const moved = ratio(voltages.map((each, at) => (at === index ? each * (1 + STEP) : each)) as unknown as typeof voltages);
    const slope = ((moved ?? value) - value) / (voltages[index] * STEP);
    const source = scope.sources.number(
      `row ${row}:unbalance-voltage-${index + 1}`,
      'voltage between phases: error of the meter',
    );
    return [slope, onePart(source, share(voltages[index], INSTRUMENT.voltageBetweenPhasesPct) / Math.sqrt(3))];
  });
  return solved(
    scope,
    { unit: '%', value, parts: combineParts(terms) },
    {
      label: 'Voltage unbalance: negative over positive sequence',
      tex: 'U_2 / U_1 = \\sqrt{\\frac{Q - 2A/\\sqrt{3}}{Q + 2A/\\sqrt{3}}},\\; Q = \\frac{a^2 + b^2 + c^2}{6}',
      residual: 0,
      source: 'IEC 61000-4-30 (from memory), from the three line-to-line voltages; A is the area of their triangle',
    },
    {},
  );
}
