import type { Motor, Plate, Reading } from '@/lib/engine';
import { buildReading, KEPT } from './build-reading';
import type { CellValue, LineGeometry } from './column';
import { COLUMNS } from './columns';
import { issue, type RowIssue } from './issue-codes';
import { indexOf, type ParsedRow } from './parse-row';
import { comparePower, type RatedPower, ratedPower } from './rated-power';
import { setField } from './set-field';
import { instantOf, timeKey } from './taken-at';

/** A motor of the sheet with the rows it came from and what was written under unknown columns. */
export interface SheetMotor {
  readonly motor: Motor;
  readonly rows: readonly number[];
  readonly notes: Readonly<Record<string, string>>;
  /** Facts of the plate that no row states: they are defaults, or come from what is kept of the motor. */
  readonly unstated: ReadonlySet<'ratedPowerKw' | 'ratedVoltageV' | 'status' | 'machineKind'>;
}

/** What is kept already of the motors that a sheet speaks of. */
export interface MotorBook {
  /** The plate without which nothing can be said; `undefined` for a motor that is not kept. */
  plateOf(site: string, tag: string): { readonly power: RatedPower; readonly ratedVoltageV: number } | undefined;
  /** Why a reading cannot stand beside those that are kept. */
  refuse(site: string, tag: string, reading: Reading): RowIssue | undefined;
}

/** What became of a row: taken in, a repeat that adds nothing, refused, or put off since a row to come may have its motor's plate. */
interface RowOutcome {
  readonly state: 'taken' | 'repeat' | 'rejected' | 'put-off';
  readonly errors: readonly RowIssue[];
  readonly warnings: readonly RowIssue[];
}

/** The values that describe the motor itself, its power aside; area and description are free text and may differ. */
const OWN = COLUMNS.flatMap((column, index) =>
  column.scope === 'motor' && column.target.of !== 'special' ? [{ column, index }] : [],
);
const FREE_TEXT = new Set(['area', 'description']);
const REQUIRED = OWN.filter(({ column }) => column.required === 'always' && column.name !== 'tag');
/** Facts that every plate has although no row need state them, with their places among OWN. */
const DEFAULTED = (['ratedVoltageV', 'status', 'machineKind'] as const).map((key) => ({
  key,
  at: OWN.findIndex(({ column: { target } }) => target.of === 'plate' && target.key === key),
}));
const TAG = indexOf('tag');
const SITE = indexOf('site');
const HOURS = indexOf('hours_per_year');
const DUTY = indexOf('duty_profile');

/** Every field, so that all plates share one shape, with what holds when the sheet says nothing. */
const EMPTY_PLATE: Plate = {
  ...Object.fromEntries(COLUMNS.flatMap(({ target }) => (target.of === 'plate' ? [[target.key, undefined]] : []))),
  ratedPowerKw: 0,
  ratedPowerUnit: 'kW',
  ratedVoltageV: 0,
  status: 'running',
  machineKind: 'cage',
};

/** The two columns that state the torque law of the load, with their places. */
const LAWS = (['load_curve', 'load_torque_exponent'] as const).map((name) => ({
  name,
  index: indexOf(name),
  at: OWN.findIndex(({ column }) => column.name === name),
}));

const NOTE_JOINT = ' | ';

interface Group {
  readonly site: string;
  readonly tag: string;
  readonly rows: number[];
  /** Motor values in the order of OWN, and the row of those that did not come from the first row. */
  readonly own: (CellValue | undefined)[];
  readonly laterRows: Map<number, number>;
  power: RatedPower;
  powerStated: boolean;
  /** Of the motor as it is kept, until a row states it. */
  readonly keptVoltageV: number | undefined;
  readonly readings: Reading[];
  readonly byKey: Map<string, Reading>;
  notes: Map<string, Set<string>> | undefined;
  plateDuty: Motor['plateDuty'];
}

/**
 * Puts the rows of a sheet together into motors, in order of first appearance. Rows with the same site and tag are
 * one motor: the first valid row gives its plate, others add readings and may fill in what was empty but may not
 * contradict. A refused row leaves no trace.
 */
export class MotorBuilder {
  readonly #groups = new Map<string, Group>();
  /** First rejected row of a motor that has no valid row yet. */
  readonly #rejected = new Map<string, number>();
  readonly #asOf: string | undefined;
  readonly #hasDates: boolean;
  readonly #book: MotorBook | undefined;
  undatedReadings = 0;

  constructor(options: {
    readonly asOf?: string | undefined;
    readonly hasDates: boolean;
    readonly book?: MotorBook | undefined;
  }) {
    this.#book = options.book;
    this.#asOf = options.asOf;
    this.#hasDates = options.hasDates;
  }

  /** @param last whether no row is to come that could have the plate: a row of an unknown motor without one is put off before, and refused then. */
  add(parsed: ParsedRow, last: boolean): RowOutcome {
    const tag = parsed.values[TAG];
    const site = parsed.values[SITE] ?? '';
    const key = `${site}\0${tag}`;
    const group = tag === undefined ? undefined : this.#groups.get(key);
    const power = ratedPower(parsed);
    const kept = group === undefined && typeof tag === 'string' ? this.#book?.plateOf(String(site), tag) : undefined;
    const errors = [...parsed.errors, ...power.errors];
    if (tag === undefined) this.#requireCell(errors, parsed, 'tag', undefined);
    if (group !== undefined) errors.push(...contradictions(group, parsed, power.value));
    else if (kept === undefined) {
      for (const { column } of REQUIRED) this.#requireCell(errors, parsed, column.name, key);
      if (power.value === undefined && power.errors.length === 0) this.#requirePower(errors, parsed, key);
    }
    if (!last && errors.some(({ code, column }) => code === 'missing-required' && column !== 'tag'))
      return { state: 'put-off', errors: [], warnings: [] };
    errors.push(...twoLaws(group, parsed));
    const built = buildReading(parsed);
    const readingKey = built.reading === undefined ? undefined : keyOf(built.reading);
    const same = readingKey === undefined ? undefined : group?.byKey.get(readingKey);
    const differing = same === undefined || built.reading === undefined ? undefined : firstDifference(same, built.reading);
    if (same !== undefined && differing !== undefined) {
      errors.push(issue('reading-contradiction', parsed.row, differing, { otherRow: same.row }));
    }
    if (built.reading !== undefined && typeof tag === 'string') {
      const refusal = this.#book?.refuse(String(site), tag, built.reading);
      if (refusal !== undefined) errors.push(refusal);
    }
    const rating = power.value ?? kept?.power;
    if (errors.length > 0 || typeof tag !== 'string' || (group === undefined && rating === undefined)) {
      if (group === undefined && tag !== undefined && !this.#rejected.has(key)) this.#rejected.set(key, parsed.row);
      return { state: 'rejected', errors, warnings: [] };
    }
    const known = group ?? this.#start(key, String(site), tag, rating, kept?.ratedVoltageV);
    if (known === undefined) return { state: 'rejected', errors, warnings: [] };
    const warnings = [...parsed.warnings, ...power.warnings];
    if (known.powerStated) warnings.push(...comparePower(parsed.row, known, power.value).warnings);
    else if (power.value !== undefined) {
      known.power = power.value;
      known.powerStated = true;
    }
    const isNew = same === undefined && built.reading !== undefined;
    let adds = group === undefined || isNew;
    if (isNew && built.reading !== undefined && readingKey !== undefined) {
      known.readings.push(built.reading);
      known.byKey.set(readingKey, built.reading);
      warnings.push(...built.warnings, ...this.#timeWarnings(built.reading));
      for (const [name, text] of built.notes) addNote(known, name, text);
    }
    if (this.#fill(known, parsed, warnings, built.reading !== undefined)) adds = true;
    for (const [name, text] of parsed.notes) if (addNote(known, name, text)) adds = true;
    if (adds) known.rows.push(parsed.row);
    return { state: adds ? 'taken' : 'repeat', errors, warnings: adds ? warnings : [] };
  }

  /** Motors so far. */
  get count(): number {
    return this.#groups.size;
  }

  /** The motors, each with its readings oldest first, one by one; what was kept of a motor is let go with it. Ends the building. */
  *finish(): Generator<SheetMotor> {
    for (const [key, group] of this.#groups) {
      this.#groups.delete(key);
      yield finishGroup(group);
    }
  }

  #requireCell(errors: RowIssue[], { row, values }: ParsedRow, column: string, key: string | undefined): void {
    if (values[indexOf(column)] !== undefined || errors.some((error) => error.column === column)) return;
    errors.push(
      issue('missing-required', row, column, { otherRow: (key === undefined ? undefined : this.#rejected.get(key)) ?? 0 }),
    );
  }

  #requirePower(errors: RowIssue[], { row }: ParsedRow, key: string): void {
    if (errors.some(({ column }) => column === 'rated_power_kw' || column === 'rated_power_hp')) return;
    errors.push(issue('missing-required', row, 'rated_power_kw', { otherRow: this.#rejected.get(key) ?? 0 }));
  }

  #start(
    key: string,
    site: string,
    tag: string,
    power: RatedPower | undefined,
    keptVoltageV: number | undefined,
  ): Group | undefined {
    if (power === undefined) return undefined;
    const group: Group = {
      site,
      tag,
      rows: [],
      own: new Array<CellValue | undefined>(OWN.length).fill(undefined),
      laterRows: new Map(),
      power,
      powerStated: false,
      keptVoltageV,
      readings: [],
      byKey: new Map(),
      notes: undefined,
      plateDuty: undefined,
    };
    this.#groups.set(key, group);
    this.#rejected.delete(key);
    return group;
  }

  /** Takes over motor values that were empty so far; tells whether there were any. */
  #fill(group: Group, parsed: ParsedRow, warnings: RowIssue[], hasReading: boolean): boolean {
    let filled = false;
    const first = group.rows[0] ?? parsed.row;
    for (const [at, { column, index }] of OWN.entries()) {
      const value = parsed.values[index];
      if (value === undefined) continue;
      const earlier = group.own[at];
      if (earlier === undefined) {
        group.own[at] = value;
        if (parsed.row !== first) group.laterRows.set(at, parsed.row);
        filled = true;
      } else if (FREE_TEXT.has(column.name) && earlier !== value && addNote(group, `${KEPT}${column.name}`, String(value))) {
        const otherRow = group.laterRows.get(at) ?? first;
        warnings.push(issue('text-differs', parsed.row, column.name, { value: String(value), other: `“${earlier}”`, otherRow }));
        filled = true;
      }
    }
    const steps = parsed.values[DUTY];
    if (steps === undefined) return filled;
    if (parsed.values[HOURS] !== undefined) warnings.push(issue('hours-and-duty', parsed.row, 'duty_profile'));
    if (hasReading) return filled;
    const repeats = JSON.stringify(group.plateDuty?.steps) === JSON.stringify(steps);
    // A row that was put off is taken in after those below it, whose profile stands.
    if (parsed.row > (group.plateDuty?.row ?? 0)) setField(group, 'plateDuty', { row: parsed.row, steps });
    return filled || !repeats;
  }

  #timeWarnings({ row, takenAt }: Reading): RowIssue[] {
    if (takenAt === undefined) {
      this.undatedReadings++;
      return this.#hasDates ? [issue('reading-undated', row, 'taken_at', { words: 'A reading' })] : [];
    }
    if (this.#asOf === undefined || takenAt.slice(0, 10) <= this.#asOf) return [];
    return [issue('reading-after-as-of', row, 'taken_at', { value: takenAt, other: this.#asOf })];
  }
}

/** Keeps a note; tells whether it is new. Different texts of one name are kept side by side. */
function addNote(group: Group, name: string, text: string): boolean {
  group.notes ??= new Map();
  const texts = group.notes.get(name);
  if (texts?.has(text)) return false;
  if (texts === undefined) group.notes.set(name, new Set([text]));
  else texts.add(text);
  return true;
}

function contradictions(group: Group, parsed: ParsedRow, power: RatedPower | undefined): RowIssue[] {
  const errors = group.powerStated ? [...comparePower(parsed.row, group, power).errors] : [];
  for (const [at, { column, index }] of OWN.entries()) {
    const value = parsed.values[index];
    const earlier = group.own[at];
    if (value === undefined || earlier === undefined || FREE_TEXT.has(column.name) || sameValue(value, earlier)) continue;
    const otherRow = group.laterRows.get(at) ?? group.rows[0] ?? 0;
    errors.push(
      issue('plate-contradiction', parsed.row, column.name, { value: words(value), other: `“${words(earlier)}”`, otherRow }),
    );
  }
  return errors;
}

/** A torque law stated twice: in one row, or against an earlier row of the motor. */
function twoLaws(group: Group | undefined, { row, values }: ParsedRow): RowIssue[] {
  const [curve, exponent] = LAWS;
  if (!curve || !exponent) return [];
  if (values[curve.index] !== undefined && values[exponent.index] !== undefined)
    return [issue('curve-and-exponent', row, curve.name, { otherRow: 0 })];
  for (const [here, there] of [
    [curve, exponent],
    [exponent, curve],
  ] as const) {
    if (values[here.index] === undefined || group?.own[there.at] === undefined) continue;
    const otherRow = group.laterRows.get(there.at) ?? group.rows[0] ?? 0;
    return [issue('curve-and-exponent', row, here.name, { otherRow, other: there.name })];
  }
  return [];
}

function words(value: CellValue): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'object' ? Object.values(value).join('/') : String(value);
}

function sameValue(a: CellValue, b: CellValue): boolean {
  return a === b || (typeof a === 'object' && JSON.stringify(a) === JSON.stringify(b));
}

/** A dated reading is known by its time; an undated one by all that was read. */
function keyOf(reading: Reading): string {
  return reading.takenAt === undefined ? `?${JSON.stringify({ ...reading, row: 0 })}` : timeKey(reading.takenAt);
}

/** The column in which two readings differ first, their rows and times aside. */
export function firstDifference(a: Reading, b: Reading): string | undefined {
  const one: Record<string, unknown> = { ...a };
  const two: Record<string, unknown> = { ...b };
  for (const key of Object.keys(one)) {
    if (key === 'row' || key === 'takenAt') continue;
    if (JSON.stringify(one[key]) !== JSON.stringify(two[key])) return columnOfField(key);
  }
  return undefined;
}

const FIELD_COLUMNS: Readonly<Record<string, string>> = {
  voltagesV: 'voltage_ab_v',
  voltageV: 'voltage_v',
  currentsA: 'current_a_a',
  currentA: 'current_a',
  resistancesOhm: 'resistance_ab_ohm',
  duty: 'duty_profile',
};

function columnOfField(key: string): string {
  return FIELD_COLUMNS[key] ?? COLUMNS.find(({ target }) => target.of === 'reading' && target.key === key)?.name ?? key;
}

function finishGroup(group: Group): SheetMotor {
  const plate: Plate = {
    ...EMPTY_PLATE,
    ratedPowerKw: group.power.kw,
    ratedPowerUnit: group.power.unit,
    ratedVoltageV: group.keptVoltageV ?? 0,
  };
  const motor: Motor = { site: group.site, tag: group.tag, plate, readings: sorted(group.readings) };
  const geometry: LineGeometry = {};
  for (const [at, { column }] of OWN.entries()) {
    const value = group.own[at];
    const { target } = column;
    if (value === undefined || target.of === 'special') continue;
    setField(target.of === 'plate' ? plate : target.of === 'geometry' ? geometry : motor, target.key, value);
  }
  if (Object.keys(geometry).length > 0) setField(motor, 'lineGeometry', geometry);
  if (group.plateDuty !== undefined) setField(motor, 'plateDuty', group.plateDuty);
  const notes = [...(group.notes ?? [])].map(([name, texts]) => [name, [...texts].join(NOTE_JOINT)] as const);
  const unstated = DEFAULTED.flatMap(({ key, at }) => (group.own[at] === undefined ? [key] : []));
  return {
    motor,
    rows: group.rows.sort((a, b) => a - b),
    notes: Object.fromEntries(notes),
    unstated: new Set(group.powerStated ? unstated : [...unstated, 'ratedPowerKw' as const]),
  };
}

/** Undated readings first, in the order of the sheet; then by time. */
function sorted(readings: Reading[]): Reading[] {
  if (readings.length < 2) return readings;
  const instant = (reading: Reading): number =>
    reading.takenAt === undefined ? Number.NEGATIVE_INFINITY : instantOf(reading.takenAt);
  const timed = readings.map((reading) => ({ reading, at: instant(reading) }));
  timed.sort((a, b) => (a.at === b.at ? a.reading.row - b.reading.row : a.at - b.at));
  return timed.map(({ reading }) => reading);
}
