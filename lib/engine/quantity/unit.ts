/**
 * The units that figures carry inside the engine and in the results.
 * `currency` stands for the study's own currency and is replaced by its code on the way out.
 * Temperature differences are `K`; temperatures on a scale are `°C`.
 */
export const UNITS = [
  '1',
  '%',
  'kW',
  'W',
  'kVA',
  'kvar',
  'V',
  'A',
  'Ω',
  'MΩ',
  'Hz',
  'r/min',
  'N m',
  'kg m²',
  '°C',
  'K',
  'h/a',
  'kWh/a',
  'kg/a',
  'kg/kWh',
  'a',
  '1/a',
  'mm/s',
  'dB',
  'month/a',
  'currency',
  'currency/a',
  'currency/kWh',
  'currency/(kW month)',
  'kVA/hp',
  'hp',
  'pole',
  's/min',
  'W/kW',
  'kW/hp',
  'kV',
  'V/kV',
  'mm',
  '1/h',
  's',
  '(N m)²',
  'W/(N m)²',
  'A²',
  'W/A²',
] as const;

/** One of the units that the engine knows. */
export type Unit = (typeof UNITS)[number];
