import type { Unit } from '../quantity/unit';

/** Conversion constants that formulas may name, each with its unit, so that the unit check sees the scale as well. */
export const CONSTANTS = {
  watts_per_kilowatt: { value: 1000, unit: 'W/kW', symbol: '1000' },
  kilowatts_per_horsepower: { value: 0.7457, unit: 'kW/hp', symbol: '0.7457' },
  seconds_per_minute: { value: 60, unit: 's/min', symbol: '60' },
  volts_per_kilovolt: { value: 1000, unit: 'V/kV', symbol: '1000' },
  months_per_year: { value: 12, unit: 'month/a', symbol: '12' },
  pi: { value: Math.PI, unit: '1', symbol: '\\pi' },
  percent: { value: 100, unit: '%', symbol: '100' },
} as const satisfies Record<string, { value: number; unit: Unit; symbol: string }>;

/** 1 hp in kW, as the fleet sheet defines it (0.745700). */
export const KILOWATTS_PER_HORSEPOWER = CONSTANTS.kilowatts_per_horsepower.value;

/** Hours of a leap year: nothing runs longer. */
export const MOST_HOURS_PER_YEAR = 8784;

/** 1 lb·ft² in kg·m². */
export const POUND_FOOT_SQUARED = 0.04214011;
