import type { Quantity } from '../../quantity/quantity';
import type { RowStatus } from '../../tables';
import type { HypothesisId } from '../hypothesis-id';

/** Where a line is looked for. Lines of different spectra cannot be taken for one another. */
type Spectrum = 'current' | 'vibration';

/** How fast things turn: supply and shaft frequency of one reading, with their doubt. */
export interface Rotation {
  readonly supply: Quantity<'Hz'>;
  readonly shaft: Quantity<'Hz'>;
  readonly poles: number;
}

/** One expected line: `supplyMultiple` times the supply frequency plus `shaftMultiple` times the shaft frequency. */
export interface Line {
  readonly id: string;
  readonly spectrum: Spectrum;
  /** What a raised line speaks for; `always` where it stands in every sound motor. */
  readonly cause: HypothesisId | 'always';
  readonly meaning: string;
  /** The relation in the symbols of the trade: f₁ supply, f_r shaft, s slip. */
  readonly relation: string;
  readonly source: string;
  readonly status: RowStatus;
  readonly supplyMultiple: Quantity<'1'>;
  readonly shaftMultiple: Quantity<'1'>;
  readonly frequency: Quantity<'Hz'>;
}

/** A line before its frequency is worked out. */
export interface LineRule extends Omit<Line, 'supplyMultiple' | 'shaftMultiple' | 'frequency'> {
  readonly supply: number | Quantity<'1'>;
  readonly shaft: number | Quantity<'1'>;
}
