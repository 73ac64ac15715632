import type { Figure } from '../result';
import { tidy } from '../result-figure';
import type { BenchCircuit } from './load-side';
import type { PowerLaw, ReverseRotation, StrayPoint } from './reverse-rotation';
import { celsius, plain } from './shown';

/** One column of the runs with the rotor out and driven backwards. */
interface StrayColumn {
  readonly row: number;
  readonly current: Figure;
  readonly input_power: Figure;
  readonly winding_temp: Figure;
  readonly resistance: Figure;
  readonly stator: Figure;
  /** Mechanical power that drives the rotor; of the driven run only. */
  readonly shaft_power?: Figure;
  /** This part of the stray-load loss, W. */
  readonly loss: Figure;
}

/** One part of the stray-load loss as a power of the current. */
interface PowerLawFigures {
  readonly at_reference: Figure;
  readonly exponent: Figure;
}

/** The direct test of stray-load loss as plain data. */
export interface ReverseRotationResult {
  readonly reference_current_a: number;
  readonly fundamental: PowerLawFigures;
  readonly harmonic: PowerLawFigures;
  readonly shaft_power_without_field: Figure;
  readonly rotor_removed: readonly StrayColumn[];
  readonly driven: readonly StrayColumn[];
}

/** The circuit of methods F and F1 as plain data. */
export interface CircuitResult {
  readonly r1: Figure;
  readonly x1: Figure;
  readonly r2: Figure;
  readonly x2: Figure;
  readonly xm: Figure;
  readonly rfe: Figure;
  readonly friction_windage: Figure;
}

function strayColumn(point: StrayPoint): StrayColumn {
  return {
    row: point.row,
    current: plain(point.current),
    input_power: plain(point.inputPower),
    winding_temp: celsius(point.winding.temperature),
    resistance: plain(point.winding.resistance),
    stator: plain(point.stator),
    ...(point.shaft && { shaft_power: plain(point.shaft) }),
    loss: plain(point.loss),
  };
}

const lawFigures = (law: PowerLaw): PowerLawFigures => ({
  at_reference: plain(law.atReference),
  exponent: plain(law.exponent),
});

/** The two runs with every column, and the two laws. */
export function reverseResult(found: ReverseRotation): ReverseRotationResult {
  return {
    reference_current_a: tidy(found.referenceA),
    fundamental: lawFigures(found.fundamental),
    harmonic: lawFigures(found.harmonic),
    shaft_power_without_field: plain(found.dead),
    rotor_removed: found.removed.map(strayColumn),
    driven: found.driven.map(strayColumn),
  };
}

/** The circuit's elements with their doubts. */
export function circuitResult(circuit: BenchCircuit): CircuitResult {
  return {
    r1: plain(circuit.r1),
    x1: plain(circuit.x1),
    r2: plain(circuit.r2),
    x2: plain(circuit.x2),
    xm: plain(circuit.xm),
    rfe: plain(circuit.rfe),
    friction_windage: plain(circuit.frictionWindage),
  };
}
