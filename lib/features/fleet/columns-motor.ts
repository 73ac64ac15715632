import { MOST_HOURS_PER_YEAR } from '@/lib/engine';
import {
  bearing,
  type Column,
  duty,
  geometryColumn,
  letter,
  number,
  plateColumn,
  positive,
  signed,
  specialColumn,
  teeth,
  text,
  word,
  yesNo,
} from './column';

const rated = { rated: 'positive' } as const;
const count = { whole: true } as const;
const identity = (name: 'site' | 'tag' | 'area' | 'description', label: string, meaning: string): Column => ({
  name,
  kind: text,
  target: { of: 'motor', key: name },
  scope: 'motor',
  group: 'identity',
  label,
  meaning,
});

/** Columns that describe the motor: the same on all its rows, or empty on all but the first. */
export const MOTOR_COLUMNS: readonly Column[] = [
  {
    ...identity('tag', 'Tag', 'The name by which the motor goes on its site; together with the site it names one motor.'),
    required: 'always',
  },
  identity('site', 'Site', 'The site on which the motor stands; empty when the sheet covers one site.'),
  identity('area', 'Area', 'The part of the site, such as a hall or a line.'),
  identity('description', 'Description', 'In words, what the motor drives.'),

  specialColumn(
    'rated_power_kw',
    number('kW', { ...rated, usual: [0.1, 20_000] }),
    'motor',
    'plate',
    ['Rated power', 'Rated shaft output in kilowatts; counts when horsepower are given as well.'],
    'one-of-power',
  ),
  specialColumn(
    'rated_power_hp',
    number('hp', { ...rated, usual: [0.125, 27_000] }),
    'motor',
    'plate',
    ['Rated power in hp', 'Rated shaft output in horsepower, 1 hp = 0.745700 kW.'],
    'one-of-power',
  ),
  plateColumn('status', 'status', word('running', 'failed', 'spare', 'retired'), 'plate', [
    'Status',
    'Whether the motor is in service; running when empty, and a failed motor must be dealt with first.',
  ]),
  plateColumn(
    'rated_voltage_v',
    'ratedVoltageV',
    number('V', { ...rated, usual: [24, 15_000] }),
    'plate',
    ['Rated voltage', 'Line-to-line voltage stamped for the connection in use.'],
    'always',
  ),
  plateColumn('rated_current_a', 'ratedCurrentA', number('A', rated), 'plate', [
    'Rated current',
    'Line current stamped for rated load and the connection in use.',
  ]),
  plateColumn('rated_speed_rpm', 'ratedSpeedRpm', number('r/min', { ...rated, usual: [50, 30_000] }), 'plate', [
    'Rated speed',
    'Shaft speed stamped for rated load.',
  ]),
  plateColumn('rated_frequency_hz', 'ratedFrequencyHz', number('Hz', { ...rated, usual: [16, 500] }), 'plate', [
    'Rated frequency',
    'Stamped supply frequency; that of the study when empty.',
  ]),
  plateColumn('poles', 'poles', number('poles', { whole: true, even: true }), 'plate', [
    'Poles',
    'Number of poles, an even number; follows from speed and frequency when empty.',
  ]),
  plateColumn(
    'nominal_efficiency_pct',
    'nominalEfficiencyPct',
    number('%', { rated: 'positive', possible: [0, 100], fractionCode: 'efficiency-as-fraction' }),
    'plate',
    ['Nominal efficiency', 'Efficiency stamped for rated load, in per cent.'],
  ),
  plateColumn(
    'rated_power_factor_pct',
    'ratedPowerFactorPct',
    signed('%', { rated: 'either-sign', possible: [-100, 100], fractionCode: 'power-factor-as-fraction' }),
    'plate',
    ['Rated power factor', 'Power factor stamped for rated load, in per cent; lagging positive, leading negative.'],
  ),
  plateColumn(
    'efficiency_class',
    'efficiencyClass',
    word('IE1', 'IE2', 'IE3', 'IE4', 'standard', 'energy-efficient', 'premium'),
    'plate',
    ['Efficiency class', 'Class as stamped or as known otherwise.'],
  ),
  plateColumn('machine_kind', 'machineKind', word('cage', 'wound-rotor', 'synchronous'), 'plate', [
    'Kind of machine',
    'Cage induction when empty.',
  ]),
  plateColumn('enclosure', 'enclosure', word('open', 'enclosed'), 'plate', ['Enclosure', 'Open to the cooling air or enclosed.']),
  plateColumn('design_letter', 'designLetter', word('A', 'B', 'C', 'D', 'N', 'H'), 'plate', [
    'Design letter',
    'Torque and starting-current design.',
  ]),
  plateColumn('code_letter', 'codeLetter', letter, 'plate', [
    'Code letter',
    'Locked-rotor apparent power per horsepower, as one letter.',
  ]),
  plateColumn('service_factor', 'serviceFactor', positive('1'), 'plate', [
    'Service factor',
    'Permissible lasting overload as a multiple of the rating; 1.0 when empty.',
  ]),
  plateColumn('insulation_class', 'insulationClass', word('A', 'B', 'F', 'H'), 'plate', [
    'Insulation class',
    'Thermal class of the winding insulation.',
  ]),
  plateColumn('temperature_rise_class', 'temperatureRiseClass', word('A', 'B', 'F', 'H'), 'plate', [
    'Temperature rise class',
    'Thermal class to which the rated temperature rise keeps.',
  ]),
  plateColumn('frame', 'frame', text, 'plate', ['Frame', 'Frame designation as stamped, such as 326T or 180M.']),

  plateColumn('winding', 'winding', word('random', 'form'), 'build', [
    'Winding',
    'Random or form wound; random below 1 kV when empty.',
  ]),
  plateColumn('insulation_system', 'insulationSystem', word('thermoplastic', 'thermosetting'), 'build', [
    'Insulation system',
    'Thermosetting when empty and wound after 1970, the last rewind counting; otherwise no verdict.',
  ]),
  plateColumn('mounting', 'mounting', word('foot', 'flange', 'vertical', 'brake', 'multi-speed'), 'build', [
    'Mounting',
    'Anything but foot makes a replacement subject to a check on site.',
  ]),
  plateColumn('hazardous_location', 'hazardousLocation', yesNo, 'build', [
    'Hazardous location',
    'Whether the place demands a certified motor; replacements there are subject to a check.',
  ]),
  plateColumn('foundation', 'foundation', word('rigid', 'flexible'), 'build', [
    'Foundation',
    'Support of the machine; without it vibration gets no service zone.',
  ]),
  plateColumn('altitude_m', 'altitudeM', signed('m'), 'build', ['Altitude', 'Height above sea level; 0 to 1000 m when empty.']),
  plateColumn('year_built', 'yearBuilt', number('year', { whole: true, possible: [1880, 2200] }), 'build', [
    'Year built',
    'Year of manufacture.',
  ]),
  plateColumn('rotor_bars', 'rotorBars', positive('1', count), 'build', ['Rotor bars', 'Number of bars of the cage.']),
  plateColumn('stator_slots', 'statorSlots', positive('1', count), 'build', ['Stator slots', 'Number of slots of the stator.']),
  plateColumn('rotor_bars_source', 'rotorBarsSource', word('counted', 'manufacturer', 'estimated'), 'build', [
    'Source of the bar count',
    'How the number of bars is known.',
  ]),
  plateColumn('rewind_count', 'rewindCount', number('1', count), 'build', ['Rewinds', 'How often the stator was rewound.']),
  plateColumn('last_rewind_year', 'lastRewindYear', number('year', { whole: true, possible: [1880, 2200] }), 'build', [
    'Last rewind',
    'Year of the latest rewind.',
  ]),

  plateColumn('stator_resistance_ohm', 'statorResistanceOhm', positive('Ω'), 'tests', [
    'Stator resistance',
    'Terminal-to-terminal resistance, mean of the three pairs.',
  ]),
  plateColumn('stator_resistance_temp_c', 'statorResistanceTempC', signed('°C', { possible: [-100, 400] }), 'tests', [
    'Temperature of that resistance',
    'Winding temperature at which the stator resistance was measured.',
  ]),
  plateColumn('no_load_current_a', 'noLoadCurrentA', positive('A'), 'tests', [
    'No-load current',
    'Line current running uncoupled.',
  ]),
  plateColumn('no_load_power_kw', 'noLoadPowerKw', positive('kW'), 'tests', ['No-load power', 'Input power running uncoupled.']),
  plateColumn('no_load_voltage_v', 'noLoadVoltageV', positive('V'), 'tests', [
    'No-load voltage',
    'Line-to-line voltage during the uncoupled run.',
  ]),
  plateColumn('friction_windage_kw', 'frictionWindageKw', number('kW'), 'tests', [
    'Friction and windage',
    'Mechanical loss where a test has given it.',
  ]),

  plateColumn(
    'driven_machine',
    'drivenMachine',
    word('pump', 'fan', 'blower', 'compressor', 'conveyor', 'crusher', 'mixer', 'mill', 'hoist', 'machine-tool', 'other'),
    'load',
    ['Driven machine', 'What the motor drives.'],
  ),
  plateColumn('load_torque_exponent', 'loadTorqueExponent', number('1', { oneOf: [0, 1, 2] }) as LoadTorqueKind, 'load', [
    'Torque law of the load',
    'Exponent n of load torque over speed; 2 for pump, fan, blower and mixer when empty, else 0; state 0 for positive-displacement pumps.',
  ]),
  plateColumn('load_curve', 'loadCurve', text, 'load', [
    'Load curve',
    'Name of a curve in load_curves of the settings: torque of the load by given points of speed, in place of the exponent.',
  ]),
  plateColumn('flow_control', 'flowControl', word('none', 'throttle', 'damper', 'bypass', 'on-off', 'drive'), 'load', [
    'Flow control',
    'How the flow is adjusted.',
  ]),
  plateColumn('coupling', 'coupling', word('direct', 'v-belt', 'notched-belt', 'synchronous-belt', 'gear'), 'load', [
    'Coupling',
    'What connects motor and load.',
  ]),
  plateColumn('drive_fed', 'driveFed', yesNo, 'load', ['Fed by a drive', 'Whether an adjustable-speed drive feeds the motor.']),
  plateColumn('driven_speed_rpm', 'drivenSpeedRpm', positive('r/min'), 'load', [
    'Speed of the driven shaft',
    'Measured speed of the driven machine, for belt slip.',
  ]),
  plateColumn('speed_ratio', 'speedRatio', positive('1'), 'load', [
    'Speed ratio',
    'Motor speed over driven speed without belt slip.',
  ]),
  plateColumn('peak_load_kw', 'peakLoadKw', number('kW'), 'load', ['Peak load', 'Highest shaft load ever demanded.']),
  plateColumn('load_inertia_kgm2', 'loadInertiaKgm2', number('kg·m²'), 'load', [
    'Load inertia',
    'Moment of inertia of the load at the motor shaft, without the rotor.',
  ]),
  plateColumn('starts_per_hour', 'startsPerHour', number('1/h'), 'load', ['Starts per hour', 'How often the motor is started.']),

  {
    name: 'hours_per_year',
    kind: number('h', { limits: [0, MOST_HOURS_PER_YEAR] }),
    target: { of: 'motor', key: 'hoursPerYear' },
    scope: 'motor',
    group: 'duty',
    label: 'Hours per year',
    meaning: 'Hours in operation in a year, all at the load of the latest usable reading.',
  },
  specialColumn('duty_profile', duty, 'duty', 'duty', [
    'Duty profile',
    'Steps fraction@hours joined by semicolons, in place of hours per year; fractions of the load read on the same row, or of rated power.',
  ]),
  plateColumn('schedule', 'schedule', text, 'duty', [
    'Schedule',
    'Hours of operation for time-of-use tariffs, such as Mo-Fr 06:00-22:00.',
  ]),
  plateColumn('demand_coincidence', 'demandCoincidence', number('1', { limits: [0, 1] }), 'duty', [
    'Demand coincidence',
    'Share of a saved kilowatt that falls into the billed peak; that of the study when empty.',
  ]),
  plateColumn('quoted_price', 'quotedPrice', number('currency'), 'duty', [
    'Quoted price',
    'A real quotation for the replacement.',
  ]),
  plateColumn('quoted_repair', 'quotedRepair', number('currency'), 'duty', ['Quoted repair', 'A real quotation for the repair.']),
  plateColumn('unplanned_stop_cost', 'unplannedStopCost', number('currency'), 'duty', [
    'Cost of an unplanned stop',
    'What production loses when the motor stops unplanned.',
  ]),
  plateColumn('standby', 'standby', yesNo, 'duty', ['Standby', 'Whether an installed spare takes over.']),

  geometryColumn('belt_length_mm', 'beltLengthMm', positive('mm'), ['Belt length', 'Pitch length of the belt.']),
  geometryColumn('motor_sheave_mm', 'motorSheaveMm', positive('mm'), [
    'Motor sheave',
    'Pitch diameter of the sheave on the motor.',
  ]),
  geometryColumn('driven_sheave_mm', 'drivenSheaveMm', positive('mm'), [
    'Driven sheave',
    'Pitch diameter of the sheave on the load.',
  ]),
  geometryColumn('gear_teeth', 'gearTeeth', teeth, ['Gear teeth', 'Teeth of pinion and wheel, written n;m.']),
  geometryColumn('bearing_de', 'bearingDe', bearing, [
    'Bearing, drive end',
    'Geometry as balls/ball_mm/pitch_mm/angle_deg: number of rolling elements, their diameter, pitch diameter, contact angle.',
  ]),
  geometryColumn('bearing_nde', 'bearingNde', bearing, [
    'Bearing, other end',
    'Geometry of the bearing at the other end, written alike.',
  ]),
];

/** The exponent's kind: the rule admits only these three values. */
type LoadTorqueKind = ReturnType<typeof number> & { readonly reads?: 0 | 1 | 2 };
