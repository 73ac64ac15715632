import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { AssumedStrayRow, Table } from '../tables';
import type { FittedCircuit } from './circuit-from-tests';
import type { CorrectedPoint, TestedPoint } from './load-point';
import type { BenchMethod } from './method';
import type { NoLoad } from './no-load';
import type { Winding } from './resistance';
import type { ReverseRotation } from './reverse-rotation';
import type { StrayLine } from './stray-line';
import type { BenchLoad, BenchPlate, BenchTest } from './test';

/** Load side of a test: tested and corrected columns, the stray-load line, and the standard loads. */
export interface LoadSide {
  readonly tested: readonly TestedPoint[];
  readonly corrected: readonly CorrectedPoint[];
  readonly line?: StrayLine | undefined;
  readonly reverse?: ReverseRotation | undefined;
  readonly correction?: Quantity<'N m'> | undefined;
  readonly circuit?: FittedCircuit | undefined;
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
