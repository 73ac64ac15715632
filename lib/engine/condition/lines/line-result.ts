import type { Finding } from '../../quantity/finding';
import type { Figure } from '../../result';

/** Speed and load at which lines would part. */
export interface PartedAtResult {
  readonly speed_rpm: number;
  readonly load_fraction: number;
}

export interface LineResult {
  readonly id: string;
  readonly spectrum: 'current' | 'vibration';
  /** A hypothesis of the results, or `always` for what every sound motor shows. */
  readonly cause: string;
  readonly meaning: string;
  readonly relation: string;
  readonly frequency: Figure;
  readonly source: string;
  readonly status: string;
}

export interface CoincidenceResult {
  readonly spectrum: 'current' | 'vibration';
  readonly lines: readonly [string, string];
  readonly apart_hz: number;
  readonly needed_hz: number;
  /** A resolution that would part them at this speed. */
  readonly resolution_hz?: number;
  /** True when no speed parts them, since both follow supply and shaft alike. */
  readonly always: boolean;
  readonly parted_at?: PartedAtResult;
}

interface BarFitResult {
  readonly bars: number;
  readonly line: string;
  readonly relation: string;
  readonly frequency: Figure;
  readonly off_hz: number;
  readonly stated: boolean;
  readonly always: boolean;
  readonly parted_at?: PartedAtResult;
}

/** The lines to expect of one motor at one reading: what `study lines` writes and the page of lines shows. */
export interface LineTable {
  readonly site: string;
  readonly tag: string;
  readonly row?: number;
  readonly taken_at?: string;
  readonly load_fraction?: Figure;
  readonly speed?: Figure;
  readonly supply_frequency?: Figure;
  readonly slip?: Figure;
  readonly pole_pass?: Figure;
  /** `read` with the spectrum, or `assumed`. */
  readonly resolution?: { readonly value_hz: number; readonly known: 'read' | 'assumed' };
  /** What parts the pole-pass sidebands from the supply line. */
  readonly sidebands_need?: { readonly resolution_hz: number; readonly record_s: number };
  readonly lines: readonly LineResult[];
  readonly coincide: readonly CoincidenceResult[];
  readonly observed: readonly { readonly frequency_hz: number; readonly may_be: readonly string[] }[];
  readonly bar_counts: readonly { readonly frequency_hz: number; readonly fits: readonly BarFitResult[] }[];
  /** Columns that are empty, with the lines that they would add. */
  readonly missing: readonly { readonly column: string; readonly adds: string }[];
  readonly findings: readonly Finding[];
}
