import type { Figure, FlatResult, MotorResult, OptionResult } from '@/lib/engine';
import { limitsOf95 } from '@/lib/platform/format';

/** One column of a flat results table: the same for the command line, the downloads and the screens' lists. */
interface ResultColumn<Result = MotorResult> {
  readonly name: string;
  readonly unit: string;
  readonly meaning: string;
  readonly value: (motor: Result) => string | number | undefined;
}
type OwnColumn = ResultColumn<FlatResult>;

function chosen(motor: FlatResult): OptionResult | undefined {
  return motor.options.find((option) => option.id === motor.decision.option);
}

function pair(name: string, unit: string, meaning: string, read: (motor: FlatResult) => Figure | undefined): OwnColumn[] {
  return [
    { name, unit, meaning, value: (motor) => read(motor)?.value },
    { name: `${name}_u`, unit, meaning: `${meaning}: standard uncertainty (k = 1)`, value: (motor) => read(motor)?.u },
  ];
}

/** A figure of the operating point: its limits are not always as far on both sides. */
function limited(name: string, unit: string, meaning: string, read: (motor: FlatResult) => Figure | undefined): OwnColumn[] {
  const limits = (motor: FlatResult) => {
    const figure = read(motor);
    return figure && limitsOf95(figure);
  };
  return [
    ...pair(name, unit, meaning, read),
    { name: `${name}_low`, unit, meaning: `${meaning}: lower limit at 95 %`, value: (motor) => limits(motor)?.low },
    { name: `${name}_high`, unit, meaning: `${meaning}: upper limit at 95 %`, value: (motor) => limits(motor)?.high },
  ];
}

/** The columns of the flat results that follow the rank, in order. Units stand in the names, as in the fleet sheet. */
export const MOTOR_COLUMNS: readonly OwnColumn[] = [
  { name: 'site', unit: '', meaning: 'site', value: (motor) => motor.site },
  { name: 'tag', unit: '', meaning: 'tag', value: (motor) => motor.tag },
  { name: 'area', unit: '', meaning: 'area', value: (motor) => motor.area },
  { name: 'description', unit: '', meaning: 'what it drives', value: (motor) => motor.description },
  { name: 'rated_power_kw', unit: 'kW', meaning: 'rated shaft output', value: (motor) => motor.rated_power_kw },
  ...limited('load_fraction', '1', 'shaft power over rated output', (motor) => motor.load_fraction),
  ...limited('shaft_power_kw', 'kW', 'shaft power', (motor) => motor.shaft_power),
  ...limited('input_power_kw', 'kW', 'input power', (motor) => motor.input_power),
  ...limited('efficiency', '1', 'efficiency at the operating point', (motor) => motor.efficiency),
  ...pair('loss_stator_kw', 'kW', 'stator loss', (motor) => motor.losses?.stator),
  ...pair('loss_rotor_kw', 'kW', 'rotor loss', (motor) => motor.losses?.rotor),
  ...pair('loss_core_kw', 'kW', 'core loss', (motor) => motor.losses?.core),
  ...pair('loss_friction_windage_kw', 'kW', 'friction and windage', (motor) => motor.losses?.friction_windage),
  ...pair('loss_stray_kw', 'kW', 'stray-load loss', (motor) => motor.losses?.stray),
  ...limited('loss_total_kw', 'kW', 'total loss', (motor) => motor.losses?.total),
  { name: 'trust', unit: '', meaning: 'trust in the energy figures', value: (motor) => motor.trust.level },
  {
    name: 'trust_findings',
    unit: '',
    meaning: 'codes of the findings',
    value: (motor) => [...new Set(motor.trust.findings.map((found) => found.code))].join(' '),
  },
  { name: 'condition_beyond', unit: '', meaning: 'indicators beyond their limit', value: (motor) => bandNames(motor, 'beyond') },
  { name: 'condition_near', unit: '', meaning: 'indicators near their limit', value: (motor) => bandNames(motor, 'near') },
  { name: 'action', unit: '', meaning: 'decision', value: (motor) => motor.decision.action },
  { name: 'timing', unit: '', meaning: 'when', value: (motor) => motor.decision.timing },
  { name: 'option', unit: '', meaning: 'option chosen', value: (motor) => motor.decision.option },
  {
    name: 'because',
    unit: '',
    meaning: 'reasons in order of weight',
    value: (motor) => motor.decision.because.map((reason) => reason.text).join(' '),
  },
  {
    name: 'new_rated_power_kw',
    unit: 'kW',
    meaning: 'rating of the chosen option',
    value: (motor) => chosen(motor)?.rated_power_kw,
  },
  { name: 'cost', unit: 'currency', meaning: 'cost of the chosen option', value: (motor) => chosen(motor)?.cost },
  ...pair('energy_saved_kwh_a', 'kWh/a', 'energy saved a year', (motor) => chosen(motor)?.energy_saved),
  ...pair('demand_saved_kw', 'kW', 'billed demand saved', (motor) => chosen(motor)?.demand_saved),
  ...pair('money_saved', 'currency', 'money saved a year', (motor) => chosen(motor)?.money_saved),
  ...pair('simple_payback_a', 'a', 'simple payback', (motor) => chosen(motor)?.simple_payback),
  ...pair('net_present_value', 'currency', 'net present value', (motor) => chosen(motor)?.net_present_value),
  {
    name: 'internal_rate_of_return',
    unit: '1',
    meaning: 'internal rate of return',
    value: (motor) => chosen(motor)?.internal_rate_of_return,
  },
  {
    name: 'probability_within_policy',
    unit: '1',
    meaning: 'chance that payback stays within policy',
    value: (motor) => chosen(motor)?.probability_within_policy,
  },
];

/** The columns of the flat results, in order. */
export const RESULT_COLUMNS: readonly ResultColumn[] = [
  { name: 'rank', unit: '1', meaning: 'rank in the fleet', value: (motor) => motor.rank },
  ...MOTOR_COLUMNS,
];

function bandNames(motor: FlatResult, band: 'near' | 'beyond'): string {
  return motor.condition.indicators
    .filter((indicator) => indicator.band === band)
    .map((indicator) => indicator.id)
    .join(' ');
}
