import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { AssumedStrayRow, Table } from '../tables';
import type { CorrectedPoint, TestedPoint } from './load-point';
import type { BenchMethod } from './method';
import type { NoLoad } from './no-load';
import type { Winding } from './resistance';
import type { ReverseRotation } from './reverse-rotation';
import type { StrayLine } from './stray-line';
import type { BenchLoad, BenchPlate, BenchTest } from './test';

/** The circuit that methods F and F1 found, for each phase of the star at rated frequency and the specified temperature. */
export interface BenchCircuit {
  readonly r1: Quantity<'Ω'>;
  readonly x1: Quantity<'Ω'>;
  readonly r2: Quantity<'Ω'>;
  readonly x2: Quantity<'Ω'>;
  readonly xm: Quantity<'Ω'>;
  /** Resistance of core loss, beside xm. */
  readonly rfe: Quantity<'Ω'>;
  readonly frictionWindage: Quantity<'kW'>;
}

/** Load side of a test: tested and corrected columns, the stray-load line, and the standard loads. */
export interface LoadSide {
  readonly tested: readonly TestedPoint[];
  readonly corrected: readonly CorrectedPoint[];
  readonly line?: StrayLine | undefined;
  readonly reverse?: ReverseRotation | undefined;
  readonly correction?: Quantity<'N m'> | undefined;
  readonly circuit?: BenchCircuit | undefined;
  readonly loads: readonly BenchLoad[];
  readonly findings: readonly Finding[];
}

/** What the load side of every method starts from. */
export interface Prepared {
  readonly test: BenchTest;
  readonly plate: BenchPlate;
  readonly method: BenchMethod;
  readonly frequencyHz: number;
  readonly reference: Winding;
  readonly noLoad: NoLoad;
  readonly specified: Quantity<'K'>;
  readonly coolant: Quantity<'K'>;
  readonly assumedStray: Table<AssumedStrayRow>;
}
