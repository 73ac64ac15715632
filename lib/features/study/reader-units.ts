import { KILOWATTS_PER_HORSEPOWER } from '@/lib/engine/client';
import type { ShownFigure } from '@/lib/platform/format';

/**
 * In which unit a reader sees shaft power and ratings. Only what is shown changes: figures are stored, exported and filtered in kW.
 * Electrical power and losses are in kW and temperatures in °C for everybody, as IEEE 112 and NEMA MG 1 have them.
 */
export type ReaderUnits = 'kw' | 'hp';

export const UNITS_COOKIE = 'units';

export function readUnits(cookie: string | undefined): ReaderUnits {
  return cookie === 'hp' ? 'hp' : 'kw';
}

/** What a number of kW at the shaft is multiplied by to be shown. */
export function shaftScale(units: ReaderUnits): number {
  return units === 'hp' ? 1 / KILOWATTS_PER_HORSEPOWER : 1;
}

export function shaftUnit(units: ReaderUnits): 'kW' | 'hp' {
  return units === 'hp' ? 'hp' : 'kW';
}

/** A power at the shaft, stored in kW, as the reader sees it. */
export function atShaft(figure: ShownFigure, units: ReaderUnits): ShownFigure {
  if (units === 'kw') return figure;
  const scale = shaftScale(units);
  const { value, u, low, high } = figure;
  return {
    value: value * scale,
    u: u * scale,
    unit: 'hp',
    ...(low !== undefined && { low: low * scale }),
    ...(high !== undefined && { high: high * scale }),
  };
}
