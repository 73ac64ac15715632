import type { FleetColumn } from './fleet-column';
import type { FleetFact, FleetRow } from './fleet-row';
import { paybackWords } from './payback-words';

/** Words for what the results call by a code, in the order in which they sort. */
export const TRUST_WORDS = { sound: 'sound', provisional: 'provisional', 'not-usable': 'not usable' } as const;
export const BAND_WORDS = { within: 'within', near: 'near', beyond: 'beyond' } as const;
const DECISION_WORDS = {
  keep: 'keep',
  'repair-now': 'repair now',
  'repair-at-failure': 'repair at failure',
  'replace-now': 'replace now',
  'replace-at-failure': 'replace at failure',
  'resize-now': 'resize now',
  'resize-at-failure': 'resize at failure',
} as const;
const STATUS_WORDS = { running: 'running', failed: 'failed', spare: 'spare', retired: 'retired' } as const;

type Facts<Type> = { readonly [Name in FleetFact]: FleetRow[Name] extends Type ? Name : never }[FleetFact];
type NumberFact = Facts<number | undefined>;

const scaled =
  (fact: NumberFact, scale: number) =>
  (row: FleetRow): number | undefined => {
    const value = row[fact];
    return value === undefined ? undefined : value * scale;
  };

function figure(
  fact: NumberFact & FleetFact,
  doubt: NumberFact,
  column: Omit<FleetColumn, 'id' | 'kind' | 'value' | 'doubt'>,
  scale = 1,
): FleetColumn {
  return { id: fact, kind: 'number', value: scaled(fact, scale), doubt: scaled(doubt, scale), ...column };
}

/** Figures of the operating point, whose limits are facts of their own. */
type LimitedFact = { readonly [Name in FleetFact]: `${Name}_high` extends FleetFact ? Name : never }[FleetFact];

function limited(
  fact: LimitedFact & NumberFact,
  column: Omit<FleetColumn, 'id' | 'kind' | 'value' | 'doubt' | 'limits'>,
  scale = 1,
): FleetColumn {
  const limits = { low: scaled(`${fact}_low`, scale), high: scaled(`${fact}_high`, scale) };
  return figure(fact, `${fact}_u`, { limits, ...column }, scale);
}

const NO_READING = 'no usable reading';
const NO_SAVING = 'not given for this decision';

/** The path of a figure of the chosen option. */
const ofOption = (figureName: string) => (row: FleetRow) =>
  row.option === undefined || row.action === 'keep' ? undefined : `options.${row.option}.${figureName}`;

/** Every column, in the order of the screen. The tag stands first and stays. */
export const FLEET_COLUMNS: readonly FleetColumn[] = [
  {
    id: 'tag',
    name: 'Tag',
    unit: '',
    meaning: "The motor's own name on site.",
    kind: 'text',
    initial: true,
    value: (row) => row.tag,
  },
  {
    id: 'site',
    name: 'Site',
    unit: '',
    meaning: 'Where the motor stands.',
    kind: 'word',
    initial: false,
    value: (row) => row.site,
  },
  {
    id: 'area',
    name: 'Area',
    unit: '',
    meaning: 'The part of the site.',
    kind: 'word',
    initial: true,
    value: (row) => row.area,
    absent: 'no area is stated',
  },
  {
    id: 'description',
    name: 'Drives',
    unit: '',
    meaning: 'What the motor drives, in words.',
    kind: 'text',
    initial: false,
    value: (row) => row.description,
    absent: 'no description is stated',
  },
  {
    id: 'driven_machine',
    name: 'Machine',
    unit: '',
    meaning: 'The kind of driven machine.',
    kind: 'word',
    initial: false,
    value: (row) => row.driven_machine,
    absent: 'not stated',
  },
  {
    id: 'status',
    name: 'Status',
    unit: '',
    meaning: 'Whether the motor runs, has failed, is a spare or is retired.',
    kind: 'word',
    initial: false,
    value: (row) => row.status,
    words: STATUS_WORDS,
  },
  {
    id: 'rated_power_kw',
    name: 'Rating',
    unit: 'kW',
    meaning: 'Rated shaft output.',
    kind: 'number',
    initial: true,
    shaft: true,
    value: (row) => row.rated_power_kw,
  },
  {
    id: 'poles',
    name: 'Poles',
    unit: '',
    meaning: 'Number of poles, as stated.',
    kind: 'number',
    initial: false,
    decimals: 0,
    value: (row) => row.poles,
    absent: 'not stated; derived from the speed where needed',
  },
  {
    id: 'efficiency_class',
    name: 'Class',
    unit: '',
    meaning: 'Efficiency class as stamped or known.',
    kind: 'word',
    initial: false,
    value: (row) => row.efficiency_class,
    absent: 'not stated',
  },
  {
    id: 'year_built',
    name: 'Built',
    unit: '',
    meaning: 'Year of building.',
    kind: 'number',
    initial: false,
    plain: true,
    value: (row) => row.year_built,
    absent: 'not stated',
  },
  {
    id: 'hours_per_year',
    name: 'Hours',
    unit: 'h/a',
    meaning: 'Hours of operation in a year.',
    kind: 'number',
    initial: false,
    decimals: 0,
    value: (row) => row.hours_per_year,
    absent: 'not stated, or given as a duty profile',
  },
  limited(
    'load_fraction',
    {
      name: 'Load',
      unit: '%',
      meaning: 'Shaft power over rated output at the latest usable reading.',
      initial: true,
      why: () => 'load_fraction',
      absent: NO_READING,
    },
    100,
  ),
  limited('shaft_power_kw', {
    name: 'Shaft power',
    unit: 'kW',
    meaning: 'Power at the shaft at the latest usable reading.',
    initial: false,
    shaft: true,
    why: () => 'shaft_power',
    absent: NO_READING,
  }),
  limited('input_power_kw', {
    name: 'Input power',
    unit: 'kW',
    meaning: 'Electrical input at the latest usable reading.',
    initial: false,
    why: () => 'input_power',
    absent: NO_READING,
  }),
  limited(
    'efficiency',
    {
      name: 'Efficiency',
      unit: '%',
      meaning: 'Shaft power over motor input at the operating point.',
      initial: true,
      why: () => 'efficiency',
      absent: NO_READING,
    },
    100,
  ),
  limited('loss_total_kw', {
    name: 'Total loss',
    unit: 'kW',
    meaning: 'Sum of the five losses at the operating point.',
    initial: true,
    why: () => 'losses.total',
    absent: NO_READING,
  }),
  {
    id: 'trust',
    name: 'Trust',
    unit: '',
    meaning: 'Whether the energy figures may be used.',
    kind: 'word',
    initial: true,
    value: (row) => row.trust,
    words: TRUST_WORDS,
    absent: 'not yet evaluated',
  },
  {
    id: 'band',
    name: 'Condition',
    unit: 'worst band',
    meaning: 'Worst band of the condition indicators that gave a verdict.',
    kind: 'word',
    initial: true,
    value: (row) => row.band,
    words: BAND_WORDS,
    absent: 'no indicator gave a verdict',
  },
  {
    id: 'decision',
    name: 'Decision',
    unit: '',
    meaning: 'What to do about the motor, and when.',
    kind: 'word',
    initial: true,
    value: decisionOf,
    words: DECISION_WORDS,
    absent: 'not yet evaluated',
  },
  {
    id: 'cost',
    name: 'Cost',
    unit: 'currency',
    meaning: 'Cost of the chosen option.',
    kind: 'number',
    initial: false,
    decimals: 0,
    value: (row) => row.cost,
    absent: 'not yet evaluated',
  },
  figure('money_saved', 'money_saved_u', {
    name: 'Saved a year',
    unit: 'currency/a',
    meaning: 'Money saved in a year at prices of the study’s date.',
    initial: false,
    why: ofOption('money_saved'),
    absent: NO_SAVING,
  }),
  figure('energy_saved_kwh_a', 'energy_saved_kwh_a_u', {
    name: 'Energy saved',
    unit: 'kWh/a',
    meaning: 'Energy saved in a year.',
    initial: false,
    why: ofOption('energy_saved'),
    absent: NO_SAVING,
  }),
  figure('simple_payback_a', 'simple_payback_a_u', {
    name: 'Payback',
    unit: 'years',
    meaning: 'Simple payback of the chosen option; “or never” where the saving may be nothing.',
    initial: true,
    why: ofOption('simple_payback'),
    instead: (row, { horizonYears, locale }) =>
      row.simple_payback_a === undefined
        ? undefined
        : paybackWords(
            { value: row.simple_payback_a, u: row.simple_payback_a_u ?? 0 },
            row.money_saved === undefined ? undefined : { value: row.money_saved, u: row.money_saved_u ?? 0 },
            horizonYears,
            locale,
          ),
    absent: NO_SAVING,
  }),
  figure('net_present_value', 'net_present_value_u', {
    name: 'Present value',
    unit: 'currency',
    meaning: 'Net present value of the chosen option against going on as before.',
    initial: true,
    why: ofOption('net_present_value'),
    absent: NO_SAVING,
  }),
  {
    id: 'internal_rate_of_return',
    name: 'Return',
    unit: '% a year',
    meaning: 'Internal rate of return of the chosen option.',
    kind: 'number',
    initial: false,
    decimals: 1,
    value: scaled('internal_rate_of_return', 100),
    absent: NO_SAVING,
  },
  {
    id: 'probability_within_policy',
    name: 'Odds',
    unit: '%',
    meaning: 'Chance that the payback stays within the policy.',
    kind: 'number',
    initial: false,
    decimals: 0,
    value: scaled('probability_within_policy', 100),
    absent: NO_SAVING,
  },
  {
    id: 'readings',
    name: 'Readings',
    unit: '',
    meaning: 'Number of readings that are not excluded.',
    kind: 'number',
    initial: false,
    decimals: 0,
    value: (row) => row.readings,
  },
  {
    id: 'rank',
    name: 'Rank',
    unit: '',
    meaning: 'Place in the ranking of the fleet.',
    kind: 'number',
    initial: true,
    decimals: 0,
    value: (row) => row.rank,
    absent: 'not yet evaluated',
  },
];

/** The decision as one word of {@link DECISION_WORDS}. */
function decisionOf(row: Pick<FleetRow, 'action' | 'timing'>): string | undefined {
  if (row.action === undefined) return undefined;
  return row.action === 'keep' ? 'keep' : `${row.action}-${row.timing ?? 'now'}`;
}

const BY_ID = new Map(FLEET_COLUMNS.map((column) => [column.id, column]));

/** The column of this name; `undefined` when there is none. */
export function fleetColumn(id: string): FleetColumn | undefined {
  return BY_ID.get(id);
}
