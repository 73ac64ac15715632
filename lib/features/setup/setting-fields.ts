import { readNumber } from '../fleet/number';
import { repeatedKey, repeatedWords } from '../study/repeated-key';
import { asPerCent, readPerCent } from './per-cent';

/** One key of the settings as the form shows it. Nested keys are written with a point. */
interface SettingField {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly meaning: string;
  readonly kind: 'number' | 'text' | 'date' | 'yes-no' | 'json' | 'numbers' | 'by-year';
  /** Shown and typed in per cent; the file has a fraction. */
  readonly perCent?: true;
  readonly words?: readonly string[];
  /** Words of the file as people say them; those without an entry are plain enough. */
  readonly said?: Readonly<Record<string, string>>;
}

interface SettingGroup {
  readonly title: string;
  readonly fields: readonly SettingField[];
}

const number = (key: string, label: string, unit: string, meaning: string): SettingField => ({
  key,
  label,
  unit,
  meaning,
  kind: 'number',
});
const byYear = (key: string, label: string, unit: string, meaning: string): SettingField => ({
  ...number(key, label, unit, meaning),
  kind: 'by-year',
});
/** A share or rate of its own unit: `of rating`, `a year`. */
const perCent = (key: string, label: string, of: string, meaning: string): SettingField => ({
  ...number(key, label, `% ${of}`.trim(), meaning),
  perCent: true,
});
const word = (key: string, label: string, said: Readonly<Record<string, string>>, meaning: string): SettingField => ({
  key,
  label,
  unit: '',
  meaning,
  kind: 'text',
  words: Object.keys(said),
  said,
});

/** What a plan can be best by. */
export const OBJECTIVES = {
  'net-present-value': 'the most present value',
  energy: 'the most energy saved',
  emissions: 'the most emissions saved',
  risk: 'the least risk of failures',
} as const;

/** Every key of the settings file, in groups, each stated once for the form. A test holds it against the schema. */
export const SETTING_GROUPS: readonly SettingGroup[] = [
  {
    title: 'Study',
    fields: [
      {
        key: 'as_of',
        label: 'Date of the study',
        unit: '',
        meaning: 'Today for the study: ages of readings and the budget count from it.',
        kind: 'date',
      },
      { key: 'currency', label: 'Currency', unit: '', meaning: 'Three capital letters; every amount is in it.', kind: 'text' },
      word('standards', 'Family of standards', { nema: 'NEMA, North America', iec: 'IEC' }, 'Which tables and tolerances serve.'),
      number('frequency_hz', 'Frequency', 'Hz', '50 or 60; a stamped frequency wins.'),
      perCent('assumed_load', 'Assumed load', 'of rating', 'Of motors that were never measured; for screening only.'),
    ],
  },
  {
    title: 'Prices of energy',
    fields: [
      number(
        'energy_price_per_kwh',
        'Energy price',
        'per kWh',
        'What a saved kilowatt-hour is worth, at sites without a tariff.',
      ),
      number(
        'demand_price_per_kw_month',
        'Demand price',
        'per kW and month',
        'What a saved kilowatt of billed demand is worth, at sites without a tariff.',
      ),
      perCent('demand_coincidence', 'Coincidence', '', 'Share of the saved kilowatts that falls into the billed peak.'),
      {
        ...byYear(
          'energy_price_escalation',
          'Escalation',
          '% a year',
          'Yearly rise of energy prices, in the terms of the money below; one figure, or one for each year, separated by semicolons.',
        ),
        perCent: true,
      },
      byYear(
        'emission_factor_kg_per_kwh',
        'Emission factor',
        'kg per kWh',
        'Carbon dioxide of the supply; one figure, or one for each year, separated by semicolons.',
      ),
      {
        key: 'tariffs',
        label: 'Tariffs by site',
        unit: 'JSON',
        meaning: 'By site: prices by the hour, blocks, demand, power factor, taxes. What each site’s comes to stands below.',
        kind: 'json',
      },
    ],
  },
  {
    title: 'Money',
    fields: [
      perCent('discount_rate', 'Discount rate', 'a year', 'By how much money counts less for each year that it comes later.'),
      word(
        'money_terms',
        'Terms of money',
        { real: 'real: without inflation', nominal: 'nominal: with inflation' },
        'Whether rates and escalation are without or with inflation.',
      ),
      perCent('inflation', 'Inflation', 'a year', 'Yearly rise of all prices.'),
      number('horizon_years', 'Horizon', 'years', 'Over which costs and savings are counted.'),
      perCent('tax_rate', 'Tax rate', '', 'On yearly savings; relief by repairs and purchases only with a depreciation.'),
      {
        key: 'budget',
        label: 'Budget',
        unit: 'by year',
        meaning: 'Amounts separated by semicolons, the first for the year of the study.',
        kind: 'numbers',
      },
      {
        key: 'rebates',
        label: 'Rebates',
        unit: 'JSON',
        meaning:
          'List of {"action","per_kw","per_kwh","per_motor","cap","cap_share"}: payments of a programme for a new motor, up to a sum or a share of the cost.',
        kind: 'json',
      },
      {
        key: 'load_curves',
        label: 'Load curves',
        unit: 'JSON',
        meaning:
          'Torque of driven machines by points, by the name that a motor has in load_curve: {"kiln":[{"speed_pct":0,"torque_pct":120},{"speed_pct":100,"torque_pct":80}]}, in per cent of the motor’s rated speed and torque.',
        kind: 'json',
      },
      {
        key: 'depreciation',
        label: 'Depreciation',
        unit: 'JSON',
        meaning:
          'How purchases are written off for tax: {"method":"straight-line","years":7}, or "declining-balance" with a factor.',
        kind: 'json',
      },
      {
        key: 'prices',
        label: 'Price list beside the settings file',
        unit: '',
        meaning: 'For the command line; here the list below serves.',
        kind: 'text',
      },
    ],
  },
  {
    title: 'Policy',
    fields: [
      number('policy.max_simple_payback_years', 'Longest payback', 'years', 'A replacement now must pay back within it.'),
      perCent('policy.min_probability', 'Least odds', '', 'That the payback is met.'),
      word(
        'policy.at_failure',
        'When a motor fails',
        { repair: 'it is repaired', replace: 'it is replaced' },
        'What would be done anyway: the baseline.',
      ),
      number('policy.spare_capacity_pct', 'Spare capacity', '%', 'A smaller motor must carry the highest load with this margin.'),
      perCent('policy.resize_below_load_fraction', 'Resize below', 'of rating', 'Another rating is offered below this load.'),
      number('policy.max_reading_age_years', 'Oldest reading', 'years', 'Older readings cap trust at provisional.'),
      word('objective', 'A plan aims at', OBJECTIVES, 'What a plan is best by.'),
      {
        key: 'include_failure_cost',
        label: 'Failure cost in the value',
        unit: '',
        meaning: 'Whether the change of failure risk counts in the net present value.',
        kind: 'yes-no',
        words: ['yes', 'no'],
      },
      perCent(
        'failure_rate_per_year',
        'Failure rate',
        'a year',
        'Of motors in ordinary condition; published surveys span 1 to 8 % a year.',
      ),
      word(
        'repair_shop',
        'Repair shop',
        { unknown: 'not known', accredited: 'accredited' },
        'Decides what a rewind costs in efficiency.',
      ),
    ],
  },
  {
    title: 'Meters and limits',
    fields: [
      number('accuracy.voltage_pct', 'Voltage', '% of reading', 'Greatest error of a meter whose row states none.'),
      number('accuracy.current_pct', 'Current', '% of reading', 'Greatest error of a meter whose row states none.'),
      number('accuracy.power_pct', 'Power', '% of reading', 'Greatest error of a meter whose row states none.'),
      number('accuracy.speed_rpm', 'Speed', 'r/min', 'Greatest error of a tachometer whose row states none.'),
      {
        key: 'limits',
        label: 'Changed limits',
        unit: 'JSON',
        meaning:
          'By limit id, each above zero and in the unit of the limit: {"C1":{"value":2,"reason":"…"}}. Many ids stand in Tables; one that is not known is answered with all there are.',
        kind: 'json',
      },
    ],
  },
];

export const SETTING_FIELDS: readonly SettingField[] = SETTING_GROUPS.flatMap((group) => group.fields);

/** The value of a key as the form shows it. */
export function shownSetting(file: Readonly<Record<string, unknown>>, field: SettingField): string {
  const [outer = '', inner] = field.key.split('.');
  const top: unknown = file[outer];
  const value: unknown =
    inner === undefined ? top : typeof top === 'object' && top !== null ? Reflect.get(top, inner) : undefined;
  if (value === null || value === undefined) return '';
  if (field.kind === 'json') return JSON.stringify(value);
  if (Array.isArray(value)) return value.map((each) => shownNumber(field, each)).join('; ');
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return shownNumber(field, value);
}

function shownNumber(field: SettingField, value: unknown): string {
  return field.perCent && typeof value === 'number' ? asPerCent(value) : String(value);
}

/** What became of the typed form: a settings object to be checked by the one schema, or refusals by key. */
export function typedSettings(typed: ReadonlyMap<string, string>): {
  readonly file: Record<string, unknown>;
  readonly refused: Record<string, string>;
} {
  const file: Record<string, unknown> = { schema: 1 };
  const refused: Record<string, string> = {};
  for (const field of SETTING_FIELDS) {
    const text = (typed.get(field.key) ?? '').trim();
    const value = readField(field, text);
    if (typeof value === 'object' && value !== null && 'refusal' in value) {
      refused[field.key] = String(value.refusal);
      continue;
    }
    const [outer = '', inner] = field.key.split('.');
    if (inner === undefined) {
      if (value !== undefined) file[outer] = value;
    } else if (value !== undefined) file[outer] = { ...(file[outer] as object | undefined), [inner]: value };
  }
  return { file, refused };
}

function readField(field: SettingField, text: string): unknown {
  if (text === '') return field.key === 'prices' || field.key === 'depreciation' ? null : undefined;
  const readOne = field.perCent ? readPerCent : readPlain;
  if (field.kind === 'number') return readOne(text);
  if (field.kind === 'numbers' || field.kind === 'by-year') {
    const values = text.split(';').map((part) => readOne(part.trim()));
    const refused = values.find((value) => typeof value === 'object');
    return refused ?? (field.kind === 'by-year' && values.length === 1 ? values[0] : values);
  }
  if (field.kind === 'yes-no') return text === 'yes';
  if (field.kind === 'json') {
    try {
      const value: unknown = JSON.parse(text);
      const twice = repeatedKey(text);
      return twice ? { refusal: Object.values(repeatedWords(twice)).join(' ') } : value;
    } catch {
      return { refusal: 'This is not JSON. Check quotes, commas and brackets.' };
    }
  }
  return text;
}

function readPlain(text: string): number | { refusal: string } {
  const read = readNumber(text, { decimal: '.' });
  return read.ok ? read.value : { refusal: `${read.text} ${read.remedy}` };
}

/** Says of a share or rate that was newly typed as a part of one per cent what it now is: somebody may have typed the fraction. */
export function smallPerCents(typed: ReadonlyMap<string, string>, before: ReadonlyMap<string, string>): string[] {
  return SETTING_FIELDS.flatMap(({ key, label, kind, perCent }) => {
    const text = (typed.get(key) ?? '').trim().replace(/\s*%$/, '');
    const small = Number(text) > 0 && Number(text) < 1;
    if (!perCent || kind !== 'number' || !small || text === before.get(key)) return [];
    return [`${label} is now ${text} %, less than one in a hundred; 8 % is written 8.`];
  });
}
