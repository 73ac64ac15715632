import type { Wanted } from './schema';

/** The three phases, and the mean for whoever reads one only. */
const VOLTAGES = ['voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v', 'voltage_v'];
const CURRENTS = ['current_a_a', 'current_b_a', 'current_c_a', 'current_a'];

/** Columns of a reading that a wanted reading fills; none where it is no reading: the plate, what stands under the motor. */
const COLUMNS_OF: Readonly<Record<Wanted, readonly string[]>> = {
  plate: [],
  'insulation-class': [],
  foundation: [],
  ambient: ['ambient_c'],
  'bearing-temperature': ['bearing_temp_c'],
  vibration: ['vibration_mm_s'],
  voltages: VOLTAGES,
  currents: CURRENTS,
  power: ['input_power_kw'],
  'power-factor': ['power_factor_pct'],
  frequency: ['frequency_hz'],
  harmonics: ['thd_voltage_pct'],
  'drive-output': ['input_power_kw', 'frequency_hz'],
  'winding-temperature': ['winding_temp_c', 'winding_temp_method'],
  speed: ['shaft_speed_rpm'],
  'driven-speed': [],
  spectrum: ['rotor_sideband_db', 'rotor_sideband_sides', 'eccentricity_sideband_db', 'spectrum_resolution_hz'],
  resistance: ['resistance_ab_ohm', 'resistance_bc_ohm', 'resistance_ca_ohm', 'resistance_at'],
  insulation: ['insulation_resistance_mohm', 'insulation_temp_c', 'insulation_test_voltage_v'],
  polarization: ['insulation_resistance_mohm', 'polarization_index'],
  'no-load': [...VOLTAGES, ...CURRENTS, 'input_power_kw'],
};

/** The columns of a reading that are wanted, each once, in the order of a round. */
export function wantedColumns(wanted: readonly Wanted[]): readonly string[] {
  return [...new Set(wanted.flatMap((each) => COLUMNS_OF[each]))];
}
