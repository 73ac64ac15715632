import { type DutyStep, isSameRating, type Motor, type Plate, type Reading } from '@/lib/engine';
import type { Column, LineGeometry } from '../fleet/column';
import { COLUMNS } from '../fleet/columns';
import type { StoredMotor } from '../fleet/data';
import type { ParsedFleet, SheetMotor } from '../fleet/parse';
import { dutyAfterReadings, readingHash } from '../fleet/stored-motor';
import { readingAt, type StudyBook } from './book';
import type { ConflictRule } from './schema';

const NOTE_JOINT = ' | ';

/** A fact of a kept motor that the sheet states otherwise, or for the first time. */
export interface FactChange {
  /** Column of the fleet sheet, or `notes`. */
  readonly field: string;
  readonly from: unknown;
  readonly to: unknown;
  /** Both the sheet and the book state it, and they differ. */
  readonly conflict: boolean;
}

/** Conflicts that were decided one by one, by {@link factKey}. */
export type ConflictsApart = ReadonlyMap<string, ConflictRule>;

const NONE_APART: ConflictsApart = new Map();

/** Names one fact of one kept motor. */
export function factKey(motorId: string, field: string): string {
  return `${motorId} ${field}`;
}

/** What an import does to a motor that is kept already. */
export interface MotorChange {
  readonly stored: StoredMotor;
  /** The motor as it will be, but for its duty; `readings` are the new ones alone. */
  readonly merged: Motor;
  readonly duty: KeptDuty | undefined;
  readonly notes: Readonly<Record<string, string>>;
  /** Changes that will be made. */
  readonly changes: readonly FactChange[];
  /** Conflicts in which the book keeps its fact. */
  readonly kept: readonly FactChange[];
  readonly rows: readonly number[];
}

/** What an import would do, before anything is done. */
export interface ImportPlan {
  readonly added: readonly SheetMotor[];
  /** Motors of which a fact, a note or the readings change. */
  readonly changed: readonly MotorChange[];
  readonly unchanged: number;
  readonly readingsAdded: number;
  /** Readings that are kept already. */
  readonly readingsRepeated: number;
  readonly conflicts: number;
}

/**
 * Compares a sheet with the book. Nothing in the sheet empties what is kept: an empty cell means "not known".
 * @param rule for all conflicts that were not decided apart.
 * @param apart the conflicts that were, by {@link factKey}.
 */
export function planImport(
  parsed: Pick<ParsedFleet, 'motors'>,
  book: StudyBook,
  rule: ConflictRule,
  apart: ConflictsApart = NONE_APART,
): ImportPlan {
  const added: SheetMotor[] = [];
  const changed: MotorChange[] = [];
  let [unchanged, readingsAdded, readingsRepeated, conflicts] = [0, 0, 0, 0];
  for (const sheet of parsed.motors) {
    const stored = book.find(sheet.motor.site, sheet.motor.tag);
    if (stored === undefined) {
      added.push(sheet);
      readingsAdded += sheet.motor.readings.length;
      continue;
    }
    const change = compareMotor(sheet, stored, (field) => apart.get(factKey(stored.id, field)) ?? rule);
    readingsAdded += change.merged.readings.length;
    readingsRepeated += sheet.motor.readings.length - change.merged.readings.length;
    conflicts += change.kept.length + change.changes.filter(({ conflict }) => conflict).length;
    if (change.changes.length > 0 || change.merged.readings.length > 0 || change.kept.length > 0) changed.push(change);
    else unchanged++;
  }
  return { added, changed, unchanged, readingsAdded, readingsRepeated, conflicts };
}

/** Whether a change writes anything, or only tells of conflicts that the book wins. */
export function writesSomething({ changes, merged }: MotorChange): boolean {
  return changes.length > 0 || merged.readings.length > 0;
}

function compareMotor(sheet: SheetMotor, stored: StoredMotor, ruleOf: (field: string) => ConflictRule): MotorChange {
  const { motor } = stored;
  const plate: Plate = { ...motor.plate };
  const geometry: LineGeometry = { ...motor.lineGeometry };
  const merged: Motor = { ...motor, plate, readings: newReadings(sheet.motor, stored) };
  const found: FactChange[] = [];
  const state: State = (field, from, to, write, mayConflict = true) => {
    if (to === undefined || same(from, to)) return;
    const change = { field, from, to, conflict: mayConflict && from !== undefined };
    found.push(change);
    if (!change.conflict || ruleOf(field) === 'sheet') write();
  };
  const law = lawTakenOver(sheet, motor.plate);
  const refused = law && ruleOf(law.kept) === 'kept' ? law.stated : undefined;
  for (const column of COLUMNS)
    if (column.name !== refused) compareFact(column, sheet, { motor, merged, plate, geometry }, state);
  if (law) found.push({ field: law.kept, from: law.from, to: undefined, conflict: true });
  if (law && !refused) set(plate, LAWS[law.kept], undefined);
  comparePower(sheet, plate, state);
  const duty = compareDuty(sheet.motor, stored, merged.readings, state);
  if (Object.values(geometry).some((value) => value !== undefined)) Object.assign(merged, { lineGeometry: geometry });
  const earlier = law && !refused ? { [`earlier ${law.kept}`]: String(law.from) } : {};
  const notes = joinNotes(joinNotes(stored.notes, sheet.notes), earlier);
  if (!same(stored.notes, notes)) found.push({ field: 'notes', from: stored.notes, to: notes, conflict: false });
  const wins = (change: FactChange): boolean => change.conflict && ruleOf(change.field) === 'kept';
  return {
    stored,
    merged,
    duty,
    notes,
    changes: found.filter((change) => !wins(change)),
    kept: found.filter(wins),
    rows: sheet.rows,
  };
}

/** The two columns that state the torque law of a load, of which a motor has one. */
const LAWS = { load_curve: 'loadCurve', load_torque_exponent: 'loadTorqueExponent' } as const;

/** The kept torque law whose place one in the sheet takes: both on one motor could not be read again. */
function lawTakenOver(
  { motor: { plate: sheet } }: SheetMotor,
  kept: Plate,
): { readonly stated: keyof typeof LAWS; readonly kept: keyof typeof LAWS; readonly from: string | number } | undefined {
  if (sheet.loadCurve !== undefined && kept.loadTorqueExponent !== undefined)
    return { stated: 'load_curve', kept: 'load_torque_exponent', from: kept.loadTorqueExponent };
  if (sheet.loadTorqueExponent !== undefined && kept.loadCurve !== undefined)
    return { stated: 'load_torque_exponent', kept: 'load_curve', from: kept.loadCurve };
  return undefined;
}

type State = (field: string, from: unknown, to: unknown, write: () => void, mayConflict?: boolean) => void;

function compareFact(
  { name, target }: Column,
  { motor: sheet, unstated }: SheetMotor,
  into: { readonly motor: Motor; readonly merged: Motor; readonly plate: Plate; readonly geometry: LineGeometry },
  state: State,
): void {
  if (target.of === 'plate') {
    if (target.key === 'ratedPowerKw' || target.key === 'ratedPowerUnit' || isUnstated(unstated, target.key)) return;
    state(name, into.plate[target.key], sheet.plate[target.key], () => set(into.plate, target.key, sheet.plate[target.key]));
  } else if (target.of === 'geometry') {
    const to = sheet.lineGeometry?.[target.key];
    state(name, into.geometry[target.key], to, () => set(into.geometry, target.key, to));
  } else if (target.of === 'motor' && target.key !== 'site' && target.key !== 'tag') {
    state(name, into.motor[target.key], sheet[target.key], () => set(into.merged, target.key, sheet[target.key]));
  }
}

function isUnstated(unstated: SheetMotor['unstated'], key: string): boolean {
  return (unstated as ReadonlySet<string>).has(key);
}

function comparePower({ motor: sheet, unstated }: SheetMotor, plate: Plate, state: State): void {
  if (unstated.has('ratedPowerKw')) return;
  const [from, to] = [powerOf(plate), powerOf(sheet.plate)];
  const close = isSameRating(to.kw, from.kw);
  if (from.unit === to.unit ? from.kw === to.kw : close) return;
  state('rated_power_kw', from, to, () => {
    set(plate, 'ratedPowerKw', to.kw);
    set(plate, 'ratedPowerUnit', to.unit);
  });
}

const powerOf = ({ ratedPowerKw: kw, ratedPowerUnit: unit }: Plate): { kw: number; unit: 'kW' | 'hp' } => ({ kw, unit });

/** The duty of a motor with the word on whether it stands after the readings that carry one. */
export interface KeptDuty {
  readonly steps: readonly DutyStep[];
  readonly afterReadings: boolean;
}

function compareDuty(sheet: Motor, stored: StoredMotor, fresh: readonly Reading[], state: State): KeptDuty | undefined {
  const earlier = stored.readings.map(({ reading }) => reading);
  const kept = dutyOf(stored.motor.plateDuty, earlier);
  const carrying = fresh.filter(({ duty }) => duty !== undefined);
  const stated = sheet.plateDuty;
  let result = kept;
  if (stated !== undefined && !same(stated.steps, kept?.steps)) {
    const replaced = carrying.some(({ row }) => row > stated.row);
    const carried = carrying.length > 0 || earlier.some(({ duty }) => duty !== undefined);
    const to: KeptDuty = { steps: stated.steps, afterReadings: carried && !replaced };
    state('duty_profile', kept, to, () => {
      result = to;
    });
  }
  // The duty of a new reading replaces the motor's own, which was in force until now.
  if (result !== kept || kept?.afterReadings !== true || carrying.length === 0) return result;
  result = { steps: kept.steps, afterReadings: false };
  state('duty_profile', kept, result, () => {}, false);
  return result;
}

/** A motor's own duty as it is kept. */
export function dutyOf(plateDuty: Motor['plateDuty'], readings: readonly Reading[]): KeptDuty | undefined {
  if (plateDuty === undefined) return undefined;
  return { steps: plateDuty.steps, afterReadings: dutyAfterReadings({ plateDuty, readings }) };
}

/** Readings that are not kept yet, excluded ones counting as kept when all their values are the same. */
function newReadings({ readings }: Motor, stored: StoredMotor): Reading[] {
  if (readings.length === 0) return [];
  const hashes = new Set(stored.readings.map(({ contentHash }) => contentHash));
  return readings.filter((reading) => !hashes.has(readingHash(reading)) && readingAt(stored, reading) === undefined);
}

/** Notes side by side: a text that is there already is not added again. */
function joinNotes(
  kept: Readonly<Record<string, string>>,
  sheet: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const joined: Record<string, string> = { ...kept };
  for (const [name, text] of Object.entries(sheet)) {
    const texts = new Set((joined[name] ?? '').split(NOTE_JOINT).filter((part) => part !== ''));
    for (const part of text.split(NOTE_JOINT)) texts.add(part);
    joined[name] = [...texts].join(NOTE_JOINT);
  }
  return joined;
}

function set<Target extends object, Key extends keyof Target>(target: Target, key: Key, value: Target[Key] | undefined): void {
  Object.assign(target, { [key]: value });
}

function same(a: unknown, b: unknown): boolean {
  return a === b || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b));
}
