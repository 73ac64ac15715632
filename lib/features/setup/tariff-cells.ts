import { readNumber } from '../fleet/number';
import type { TariffFile } from '../study/tariff-schema';
import { asPerCent, readPerCent } from './per-cent';

/** One cell of a row, or one field, of the tariff form. */
export interface TariffCell {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly note: string;
  readonly kind: 'number' | 'per-cent' | 'text' | 'months' | 'list' | 'per-cents' | 'use' | 'word';
  readonly words?: readonly { readonly value: string; readonly label: string }[];
}

/** A table of rows in the tariff form. */
export interface TariffRows {
  readonly part: 'energy' | 'blocks' | 'demand' | 'taxes';
  readonly title: string;
  readonly note: string;
  readonly cells: readonly TariffCell[];
}

const cell = (name: string, label: string, kind: TariffCell['kind'], unit = '', note = ''): TariffCell => ({
  name,
  label,
  kind,
  unit,
  note,
});

const NAME = cell('name', 'Name', 'text');
const MONTHS = cell('months', 'Months', 'months', '1 to 12');
const HOURS = cell('when', 'Hours', 'text', 'such as Mo-Fr 07:00-22:00');

/** The rows of the form, in order; a row left empty counts for nothing. */
export const TARIFF_ROWS: readonly TariffRows[] = [
  {
    part: 'energy',
    title: 'Energy',
    note: 'Of several prices that fit an hour the first listed holds: narrow ones first, and a last one without months and hours. Empty months or hours: all.',
    cells: [NAME, MONTHS, HOURS, cell('price_per_kwh', 'Price', 'number', 'per kWh')],
  },
  {
    part: 'demand',
    title: 'Demand',
    note: 'What the highest demand of a month costs. A ratchet bills at least a share of the highest of some months before.',
    cells: [
      NAME,
      MONTHS,
      HOURS,
      cell('price', 'Price', 'number', 'per unit and month'),
      {
        ...cell('unit', 'Unit', 'word'),
        words: [
          { value: 'kW', label: 'kW' },
          { value: 'kVA', label: 'kVA' },
        ],
      },
      cell('ratchet_share', 'Ratchet share', 'per-cent', '%'),
      cell('ratchet_months', 'Ratchet months', 'number', '1 to 12'),
      cell('minimum', 'Minimum', 'number', 'kW or kVA'),
    ],
  },
  {
    part: 'blocks',
    title: 'Blocks',
    note: 'What a kilowatt-hour costs beside the price of its hours, by the month’s energy of the whole site. The last block has no end.',
    cells: [
      cell('up_to_kwh', 'Up to', 'number', 'kWh a month'),
      cell('up_to_kwh_per_kw', 'or up to', 'number', 'kWh for each kW'),
      cell('price_per_kwh', 'Price', 'number', 'per kWh'),
    ],
  },
  {
    part: 'taxes',
    title: 'Taxes',
    note: 'Each on the sum of all that stands above.',
    cells: [NAME, cell('rate', 'Rate', 'per-cent', '%')],
  },
];

/** Single fields of the form, before and after the rows. */
export const TARIFF_FIELDS = {
  head: [cell('name', 'Name of the tariff', 'text', '', 'As the bill calls it; may be left out.')],
  other: [
    {
      ...cell('power_factor.kind', 'Low power factor', 'word', '', 'How the tariff charges it, if it does.'),
      words: [
        { value: '', label: 'costs nothing' },
        { value: 'scaled-demand', label: 'raises the billed kilowatts' },
        { value: 'per-point', label: 'costs on each kWh for each point below a limit' },
        { value: 'reactive-energy', label: 'costs for each kvarh beyond what is free' },
      ],
    },
    cell(
      'power_factor.limit',
      'Its limit',
      'number',
      '0 to 1',
      'Target or limit of the power factor; of reactive energy the free kvarh for each kWh.',
    ),
    cell(
      'power_factor.price',
      'Its price',
      'number',
      '',
      'On each kWh for each point (0.01), or of each kvarh; not for billed kilowatts.',
    ),
    cell('fixed_per_month', 'Fixed charge', 'number', 'a month', 'Whatever is billed without use.'),
    cell(
      'escalation',
      'Escalation',
      'per-cents',
      '% a year',
      'Of all its prices; one figure, or one a year, separated by semicolons. Empty: that of the study.',
    ),
  ],
  usage: [
    cell(
      'usage.energy_kwh',
      'Energy of the whole site',
      'use',
      'kWh a month',
      'One figure, or twelve from January on, separated by semicolons; or a line for each price above: name: figures.',
    ),
    cell(
      'usage.demand_kw',
      'Highest demand of the whole site',
      'use',
      'kW a month',
      'In the same way; by name of the demand charge where they differ.',
    ),
    cell(
      'usage.power_factor',
      'Power factor of the site',
      'list',
      '0 to 1',
      'One figure or twelve, separated by semicolons; empty: 1.',
    ),
  ],
} as const satisfies Readonly<Record<string, readonly TariffCell[]>>;

const SINGLE: readonly TariffCell[] = Object.values(TARIFF_FIELDS).flat();

/** Rows of a part that the form may have at most; what lies beyond is not read. */
export const MOST_ROWS = 100;

/** The cells of a tariff as the form shows them, by name such as `energy.0.months`. */
export function tariffCells(file: TariffFile): Readonly<Record<string, string>> {
  const cells: Record<string, string> = {};
  for (const { part, cells: columns } of TARIFF_ROWS)
    (file[part] ?? []).forEach((row, index) => {
      const flat = flatRow(row);
      for (const { name, kind } of columns) put(cells, `${part}.${index}.${name}`, kind, flat[name]);
    });
  const charge = file.power_factor;
  const flat: Readonly<Record<string, unknown>> = {
    ...file,
    'power_factor.kind': charge?.kind,
    'power_factor.limit':
      charge?.kind === 'scaled-demand' ? charge.target : charge?.kind === 'per-point' ? charge.below : charge?.free_kvarh_per_kwh,
    'power_factor.price':
      charge?.kind === 'per-point'
        ? charge.price_per_kwh_per_point
        : charge?.kind === 'reactive-energy'
          ? charge.price_per_kvarh
          : undefined,
    'usage.energy_kwh': file.usage?.energy_kwh,
    'usage.demand_kw': file.usage?.demand_kw,
    'usage.power_factor': file.usage?.power_factor,
  };
  for (const { name, kind } of SINGLE) put(cells, name, kind, flat[name]);
  return cells;
}

function flatRow(row: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const { price_per_kw, price_per_kva, ratchet } = row;
  const rule = (typeof ratchet === 'object' && ratchet !== null ? ratchet : {}) as { share?: unknown; months?: unknown };
  return {
    ...row,
    price: price_per_kw ?? price_per_kva,
    unit: price_per_kva === undefined ? 'kW' : 'kVA',
    ratchet_share: rule.share,
    ratchet_months: rule.months,
  };
}

function put(cells: Record<string, string>, name: string, kind: TariffCell['kind'], value: unknown): void {
  if (value !== undefined) cells[name] = shown(kind, value);
}

function shown(kind: TariffCell['kind'], value: unknown): string {
  if (kind === 'months' && Array.isArray(value)) return monthsText(value);
  if (Array.isArray(value)) return value.map((each) => shown(kind, each)).join('; ');
  if (typeof value === 'number' && (kind === 'per-cent' || kind === 'per-cents')) return asPerCent(value);
  if (typeof value === 'object' && value !== null)
    return Object.entries(value)
      .map(([name, part]) => `${name}: ${shown('list', part)}`)
      .join('\n');
  return String(value);
}

/** Months as spans: 1-3, 6. */
function monthsText(months: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const month of [...months].sort((a, b) => a - b)) {
    const last = spans[spans.length - 1];
    if (last && month === last[1] + 1) last[1] = month;
    else spans.push([month, month]);
  }
  return spans.map(([from, to]) => (from === to ? `${from}` : `${from}-${to}`)).join(', ');
}

/** What became of the typed form: a tariff to be checked by its schema, or refusals by cell. */
export interface TypedTariff {
  readonly file: Readonly<Record<string, unknown>>;
  readonly refused: Readonly<Record<string, string>>;
  /** By place in the file, such as `energy.0`, the row of the form that it came from, such as `energy.2`. */
  readonly rows: ReadonlyMap<string, string>;
}

/** Reads the typed cells strictly; rows without a typed cell are left out. */
export function typedTariff(typed: ReadonlyMap<string, string>): TypedTariff {
  const refused: Record<string, string> = {};
  const rows = new Map<string, string>();
  const read = (key: string, kind: TariffCell['kind']): unknown => {
    const text = (typed.get(key) ?? '').trim();
    if (text === '') return undefined;
    const value = readTyped(kind, text);
    if (!isRefusal(value)) return value;
    refused[key] = value.refusal;
    return undefined;
  };
  const file: Record<string, unknown> = {};
  for (const { part, cells } of TARIFF_ROWS) {
    const list: Record<string, unknown>[] = [];
    for (let index = 0; index < MOST_ROWS; index++) {
      const key = `${part}.${index}`;
      // A chosen unit alone is no row.
      if (cells.every(({ name, kind }) => kind === 'word' || (typed.get(`${key}.${name}`) ?? '').trim() === '')) continue;
      const row: Record<string, unknown> = {};
      for (const { name, kind } of cells) {
        const value = read(`${key}.${name}`, kind);
        if (value !== undefined) row[name] = value;
      }
      rows.set(`${part}.${list.length}`, key);
      list.push(part === 'demand' ? demandRow(row) : row);
    }
    if (list.length > 0 || part === 'energy') file[part] = list;
  }
  for (const name of ['name', 'fixed_per_month', 'escalation']) set(file, name, read(name, kindOf(name)));
  const charge = powerFactor(read);
  if (charge) file.power_factor = charge;
  const usage: Record<string, unknown> = {};
  for (const key of ['energy_kwh', 'demand_kw', 'power_factor']) set(usage, key, read(`usage.${key}`, kindOf(`usage.${key}`)));
  if (Object.keys(usage).length > 0) file.usage = usage;
  return { file, refused, rows };
}

/** Whether a cell of the form, such as `demand.1.ratchet_share`, is typed in per cent where the file has a fraction. */
export function isPerCent(name: string): boolean {
  const [part = '', , cell] = name.split('.');
  const kind = TARIFF_ROWS.find((rows) => rows.part === part)?.cells.find((each) => each.name === cell)?.kind ?? kindOf(name);
  return kind === 'per-cent' || kind === 'per-cents';
}

function kindOf(name: string): TariffCell['kind'] {
  return SINGLE.find((field) => field.name === name)?.kind ?? 'text';
}

function set(target: Record<string, unknown>, key: string, value: unknown): void {
  if (value !== undefined) target[key] = value;
}

function demandRow({ price, unit, ratchet_share, ratchet_months, ...rest }: Record<string, unknown>): Record<string, unknown> {
  const row: Record<string, unknown> = { ...rest };
  set(row, unit === 'kVA' ? 'price_per_kva' : 'price_per_kw', price);
  if (ratchet_share !== undefined || ratchet_months !== undefined) row.ratchet = { share: ratchet_share, months: ratchet_months };
  return row;
}

function powerFactor(read: (key: string, kind: TariffCell['kind']) => unknown): Record<string, unknown> | undefined {
  const kind = read('power_factor.kind', 'word');
  const limit = read('power_factor.limit', 'number');
  const price = read('power_factor.price', 'number');
  if (kind === undefined) return undefined;
  if (kind === 'scaled-demand') return { kind, target: limit };
  if (kind === 'per-point') return { kind, below: limit, price_per_kwh_per_point: price };
  return { kind, price_per_kvarh: price, ...(limit !== undefined && { free_kvarh_per_kwh: limit }) };
}

interface Refusal {
  readonly refusal: string;
}

function isRefusal(value: unknown): value is Refusal {
  return typeof value === 'object' && value !== null && 'refusal' in value && typeof value.refusal === 'string';
}

function readTyped(kind: TariffCell['kind'], text: string): unknown {
  switch (kind) {
    case 'number':
      return readOne(text);
    case 'per-cent':
      return readPerCent(text);
    case 'per-cents':
      return readList(text, readPerCent);
    case 'months':
      return readMonths(text);
    case 'list':
      return readList(text);
    case 'use':
      return readUse(text);
    default:
      return text;
  }
}

function readOne(text: string): number | Refusal {
  const read = readNumber(text, { decimal: '.' });
  return read.ok ? read.value : { refusal: `${read.text} ${read.remedy}` };
}

function readList(text: string, read: (part: string) => number | Refusal = readOne): unknown {
  const values = text.split(';').map((part) => read(part.trim()));
  return values.find(isRefusal) ?? (values.length === 1 ? values[0] : values);
}

function readUse(text: string): unknown {
  if (!text.includes(':')) return readList(text);
  const byName: Record<string, unknown> = {};
  for (const line of text.split('\n').map((part) => part.trim())) {
    if (line === '') continue;
    const at = line.lastIndexOf(':');
    if (at < 0) return { refusal: `“${line}” has no name before its figures. Write name: figures in each line.` };
    const value = readList(line.slice(at + 1).trim());
    if (isRefusal(value)) return value;
    byName[line.slice(0, at).trim()] = value;
  }
  return byName;
}

function readMonths(text: string): number[] | Refusal {
  const months: number[] = [];
  for (const part of text.split(',')) {
    const match = /^\s*(\d{1,2})(?:\s*[-–]\s*(\d{1,2}))?\s*$/.exec(part);
    const from = Number(match?.[1]);
    const to = Number(match?.[2] ?? match?.[1]);
    if (!match || from < 1 || from > 12 || to < 1 || to > 12)
      return { refusal: `“${part.trim()}” is no month. Write months from 1 to 12, such as 6-9 or 1-3, 11-12.` };
    // A span may run over the turn of the year: 11-2.
    for (let month = from; ; month = (month % 12) + 1) {
      if (!months.includes(month)) months.push(month);
      if (month === to) break;
    }
  }
  return months.sort((a, b) => a - b);
}
