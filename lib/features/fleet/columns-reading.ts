import { type Column, date, number, numberList, positive, readingColumn, signed, specialColumn, text, word } from './column';

const ofWinding = { possible: [-100, 400] } as const;

/** Columns of a set of readings: each row of a motor carries its own. */
export const READING_COLUMNS: readonly Column[] = [
  readingColumn('taken_at', 'takenAt', date, 'visit', [
    'Taken at',
    'Date, or date and time, of the readings in ISO 8601; site time unless an offset is given.',
  ]),
  readingColumn('readings_at', 'readingsAt', word('motor', 'starter', 'drive-input', 'drive-output'), 'visit', [
    'Read at',
    'Where the meter was connected; at the motor when empty.',
  ]),
  readingColumn('reading_condition', 'readingCondition', word('coupled', 'uncoupled'), 'visit', [
    'Condition',
    'Whether the motor drove its load while it was read; coupled when empty.',
  ]),
  readingColumn('taken_by', 'takenBy', text, 'visit', ['Taken by', 'Who took the readings.']),
  readingColumn('instrument', 'instrument', text, 'visit', ['Instrument', 'Which instrument was used.']),

  specialColumn('voltage_ab_v', positive('V'), 'reading', 'electrical', [
    'Voltage ab',
    'Line-to-line voltage between phases a and b.',
  ]),
  specialColumn('voltage_bc_v', positive('V'), 'reading', 'electrical', [
    'Voltage bc',
    'Line-to-line voltage between phases b and c.',
  ]),
  specialColumn('voltage_ca_v', positive('V'), 'reading', 'electrical', [
    'Voltage ca',
    'Line-to-line voltage between phases c and a.',
  ]),
  specialColumn('voltage_v', positive('V', { usual: [10, 16_000] }), 'reading', 'electrical', [
    'Voltage',
    'Mean line-to-line voltage where the three were not read one by one.',
  ]),
  specialColumn('current_a_a', number('A'), 'reading', 'electrical', ['Current a', 'Line current of phase a.']),
  specialColumn('current_b_a', number('A'), 'reading', 'electrical', ['Current b', 'Line current of phase b.']),
  specialColumn('current_c_a', number('A'), 'reading', 'electrical', ['Current c', 'Line current of phase c.']),
  specialColumn('current_a', number('A'), 'reading', 'electrical', [
    'Current',
    'Mean line current where the three were not read one by one.',
  ]),
  readingColumn('input_power_kw', 'inputPowerKw', number('kW', { usual: [0, 25_000] }), 'electrical', [
    'Input power',
    'Three-phase input power.',
  ]),
  readingColumn(
    'power_factor_pct',
    'powerFactorPct',
    signed('%', { possible: [-100, 100], fractionCode: 'power-factor-as-fraction' }),
    'electrical',
    ['Power factor', 'Power factor in per cent; lagging positive, leading negative.'],
  ),
  readingColumn('frequency_hz', 'frequencyHz', positive('Hz'), 'electrical', [
    'Frequency',
    'Supply frequency while it was read; the rated frequency when empty.',
  ]),
  readingColumn('shaft_speed_rpm', 'shaftSpeedRpm', number('r/min'), 'electrical', [
    'Shaft speed',
    'Measured speed of the motor shaft.',
  ]),
  readingColumn('thd_voltage_pct', 'thdVoltagePct', number('%'), 'electrical', [
    'Voltage distortion',
    'Total harmonic distortion of the voltage, per cent of its fundamental.',
  ]),
  readingColumn('thd_current_pct', 'thdCurrentPct', number('%'), 'electrical', [
    'Current distortion',
    'Total harmonic distortion of the current, per cent of its fundamental.',
  ]),

  readingColumn('ambient_c', 'ambientC', signed('°C', { possible: [-60, 100] }), 'thermal', [
    'Ambient temperature',
    'Temperature of the cooling air at the motor.',
  ]),
  readingColumn('winding_temp_c', 'windingTempC', signed('°C', ofWinding), 'thermal', [
    'Winding temperature',
    'Temperature of the winding.',
  ]),
  readingColumn('winding_temp_method', 'windingTempMethod', word('resistance', 'embedded', 'surface'), 'thermal', [
    'Method of the winding temperature',
    'How the winding temperature was found; a surface reading never judges the class.',
  ]),
  readingColumn('voltage_accuracy_pct', 'voltageAccuracyPct', number('%'), 'thermal', [
    'Voltage accuracy',
    'Maximum permissible error of the voltage, per cent of reading.',
  ]),
  readingColumn('current_accuracy_pct', 'currentAccuracyPct', number('%'), 'thermal', [
    'Current accuracy',
    'Maximum permissible error of the current, per cent of reading.',
  ]),
  readingColumn('power_accuracy_pct', 'powerAccuracyPct', number('%'), 'thermal', [
    'Power accuracy',
    'Maximum permissible error of the power, per cent of reading.',
  ]),
  readingColumn('speed_accuracy_rpm', 'speedAccuracyRpm', number('r/min'), 'thermal', [
    'Speed accuracy',
    'Maximum permissible error of the speed.',
  ]),

  readingColumn('vibration_mm_s', 'vibrationMmS', number('mm/s'), 'condition', [
    'Vibration',
    'Vibration velocity, RMS over 10 to 1000 Hz, at the bearing where it is highest.',
  ]),
  readingColumn('vibration_axial_mm_s', 'vibrationAxialMmS', number('mm/s'), 'condition', [
    'Axial vibration',
    'Vibration velocity along the shaft, RMS.',
  ]),
  readingColumn('vibration_1x_mm_s', 'vibration1xMmS', number('mm/s'), 'condition', [
    'Vibration at shaft speed',
    'Vibration velocity at one times shaft speed, RMS.',
  ]),
  readingColumn('vibration_2x_mm_s', 'vibration2xMmS', number('mm/s'), 'condition', [
    'Vibration at twice shaft speed',
    'Vibration velocity at two times shaft speed, RMS.',
  ]),
  readingColumn('vibration_2xline_mm_s', 'vibration2xlineMmS', number('mm/s'), 'condition', [
    'Vibration at twice line frequency',
    'Vibration velocity at two times line frequency, RMS.',
  ]),
  readingColumn('bearing_envelope_g', 'bearingEnvelopeG', number('g'), 'condition', [
    'Bearing envelope',
    'Enveloped acceleration, followed as a trend only.',
  ]),
  readingColumn('insulation_resistance_mohm', 'insulationResistanceMohm', number('MΩ'), 'condition', [
    'Insulation resistance',
    'Winding to earth after one minute of test voltage.',
  ]),
  readingColumn('insulation_temp_c', 'insulationTempC', signed('°C', ofWinding), 'condition', [
    'Temperature of the insulation test',
    'Winding temperature while the insulation was tested.',
  ]),
  readingColumn('insulation_test_voltage_v', 'insulationTestVoltageV', positive('V'), 'condition', [
    'Insulation test voltage',
    'Direct voltage of the insulation test.',
  ]),
  readingColumn('polarization_index', 'polarizationIndex', number('1'), 'condition', [
    'Polarization index',
    'Insulation resistance after ten minutes over that after one.',
  ]),
  specialColumn('resistance_ab_ohm', positive('Ω'), 'reading', 'condition', [
    'Resistance ab',
    'Resistance between terminals a and b, of one test at one temperature.',
  ]),
  specialColumn('resistance_bc_ohm', positive('Ω'), 'reading', 'condition', [
    'Resistance bc',
    'The same between terminals b and c.',
  ]),
  specialColumn('resistance_ca_ohm', positive('Ω'), 'reading', 'condition', [
    'Resistance ca',
    'The same between terminals c and a.',
  ]),
  readingColumn('resistance_at', 'resistanceAt', word('motor', 'starter'), 'condition', [
    'Resistance read at',
    'Where the three resistances were measured; at the starter they include cable and joints.',
  ]),
  readingColumn('rotor_sideband_db', 'rotorSidebandDb', number('dB'), 'condition', [
    'Rotor sideband',
    'How far the mean of the two pole-pass sidebands lies below the line-frequency current, as a positive number.',
  ]),
  readingColumn('rotor_sideband_sides', 'rotorSidebandSides', word('both', 'one'), 'condition', [
    'Sidebands seen',
    'Whether both pole-pass sidebands were seen or only one.',
  ]),
  readingColumn('eccentricity_sideband_db', 'eccentricitySidebandDb', number('dB'), 'condition', [
    'Eccentricity sideband',
    'How far the sideband at rotational frequency lies below the line-frequency current, as a positive number.',
  ]),
  readingColumn('bearing_temp_c', 'bearingTempC', signed('°C', { possible: [-60, 300] }), 'condition', [
    'Bearing temperature',
    'Temperature of the hotter bearing.',
  ]),
  readingColumn('observed_lines_hz', 'observedLinesHz', numberList('Hz'), 'lines', [
    'Observed lines',
    'Frequencies seen in a spectrum, joined by semicolons.',
  ]),
  readingColumn('spectrum_resolution_hz', 'spectrumResolutionHz', positive('Hz'), 'lines', [
    'Spectrum resolution',
    'Distance between neighbouring lines of the spectrum.',
  ]),
  readingColumn('readings_note', 'note', text, 'visit', ['Note', 'Anything worth saying about these readings.']),
];
