import type { Motor, Plate, Reading } from '@/lib/engine';

/** Groups under which the columns stand in the blank sheet, the documentation and the import screen. */
export const COLUMN_GROUPS = {
  identity: 'Which motor',
  plate: 'Nameplate',
  build: 'Construction and history',
  tests: 'Tests made once',
  load: 'Driven load',
  duty: 'Hours and money',
  visit: 'When and how it was read',
  electrical: 'Electrical readings',
  thermal: 'Temperatures and meter errors',
  condition: 'Condition readings',
  lines: 'Dimensions for spectral lines',
  returned: 'Written into a file of rejected rows',
} as const;
type ColumnGroup = keyof typeof COLUMN_GROUPS;

/** Rolling-element bearing geometry, as the sheet writes it: `balls/ball_mm/pitch_mm/angle_deg`. */
export type BearingGeometry = NonNullable<NonNullable<Motor['lineGeometry']>['bearingDe']>;
export type LineGeometry = NonNullable<Motor['lineGeometry']>;

/** What a number column refuses (the row is rejected) and what it questions (the row is kept with a warning). */
interface NumberRule {
  readonly unit: string;
  readonly whole?: boolean;
  readonly even?: boolean;
  /** A rated value: zero or less is a row error; `either-sign` admits negative ones (leading power factor). */
  readonly rated?: 'positive' | 'either-sign';
  /** The only values that the format knows. */
  readonly oneOf?: readonly number[];
  /** Limits of the format itself, inclusive: outside is a row error. */
  readonly limits?: readonly [low: number, high: number];
  /** Physically possible values, inclusive: outside is a warning and the number stays as typed. */
  readonly possible?: readonly [low: number, high: number];
  /** Values that motors of this kind have (common practice), inclusive: outside is a warning, since the unit may be another; the number counts as typed. */
  readonly usual?: readonly [low: number, high: number];
  /** A value above 0 and up to 1 was probably meant as a fraction of one: a warning with this code. */
  readonly fractionCode?: 'efficiency-as-fraction' | 'power-factor-as-fraction';
}

interface KindShape<Type extends string, Value> {
  readonly type: Type;
  /** Never set: carries the type of the values that the kind reads. */
  readonly reads?: Value;
}
interface TextKind extends KindShape<'text', string> {}
interface LetterKind extends KindShape<'letter', string> {}
export interface NumberKind extends KindShape<'number', number>, NumberRule {}
interface WordKind<Word extends string = string> extends KindShape<'word', Word> {
  readonly words: readonly Word[];
}
interface YesNoKind extends KindShape<'yes-no', boolean> {}
interface DateKind extends KindShape<'date', string> {}
interface NumberListKind extends KindShape<'number-list', readonly number[]> {
  readonly unit: string;
}
interface TeethKind extends KindShape<'teeth', readonly [number, number]> {}
interface BearingKind extends KindShape<'bearing', BearingGeometry> {}
interface DutyKind extends KindShape<'duty', NonNullable<Reading['duty']>> {}
/** Text of our own making that an import passes over: reasons in a file of rejected rows. */
interface PassedOverKind extends KindShape<'passed-over', never> {}

export type ColumnKind =
  | TextKind
  | LetterKind
  | NumberKind
  | WordKind
  | YesNoKind
  | DateKind
  | NumberListKind
  | TeethKind
  | BearingKind
  | DutyKind
  | PassedOverKind;

/** A cell once read. */
export type CellValue =
  | string
  | number
  | boolean
  | readonly number[]
  | readonly [number, number]
  | BearingGeometry
  | NonNullable<Reading['duty']>;

/** Where a column's value goes; `special` ones are put together with others by the builder. */
type ColumnTarget =
  | { readonly of: 'motor'; readonly key: 'site' | 'tag' | 'area' | 'description' | 'hoursPerYear' }
  | { readonly of: 'plate'; readonly key: keyof Plate }
  | { readonly of: 'geometry'; readonly key: keyof LineGeometry }
  | { readonly of: 'reading'; readonly key: keyof Reading }
  | { readonly of: 'special' };

/** One column of the fleet sheet, declared once for the parser, the blank sheet, the exports, the screens and the manual. */
export interface Column {
  readonly name: string;
  readonly kind: ColumnKind;
  readonly target: ColumnTarget;
  /** Does the value belong to the motor (the same on all its rows) or to the row's reading? */
  readonly scope: 'motor' | 'reading' | 'duty' | 'none';
  readonly group: ColumnGroup;
  /** Short name for screens. */
  readonly label: string;
  /** One sentence: what the value means. */
  readonly meaning: string;
  /** Required in every sheet and for every motor; `one-of-power` means one of the two rated powers. */
  readonly required?: 'always' | 'one-of-power';
}

export const text: TextKind = { type: 'text' };
export const letter: LetterKind = { type: 'letter' };
export const yesNo: YesNoKind = { type: 'yes-no' };
export const date: DateKind = { type: 'date' };
export const teeth: TeethKind = { type: 'teeth' };
export const bearing: BearingKind = { type: 'bearing' };
export const duty: DutyKind = { type: 'duty' };

/** A plain number with its unit; `possible` defaults to zero and above. */
export function number(unit: string, rule: Omit<NumberRule, 'unit'> = {}): NumberKind {
  return { type: 'number', unit, possible: [0, Number.MAX_VALUE], ...rule };
}

/** A number for which zero is impossible as well as anything below it, such as a measured voltage. */
export function positive(unit: string, rule: Omit<NumberRule, 'unit'> = {}): NumberKind {
  return number(unit, { possible: [Number.MIN_VALUE, Number.MAX_VALUE], ...rule });
}

/** A number of either sign. */
export function signed(unit: string, rule: Omit<NumberRule, 'unit'> = {}): NumberKind {
  return { type: 'number', unit, ...rule };
}

export function word<const Word extends string>(...words: readonly Word[]): WordKind<Word> {
  return { type: 'word', words };
}

export function numberList(unit: string): NumberListKind {
  return { type: 'number-list', unit };
}

/** The kinds whose values fit a field of this type: a misspelt word or a text for a number does not compile. */
type KindFor<Field> = ColumnKind & { readonly reads?: NonNullable<Field> };

type Describe = readonly [label: string, meaning: string];

export function plateColumn<Key extends keyof Plate>(
  name: string,
  key: Key,
  kind: KindFor<Plate[Key]>,
  group: ColumnGroup,
  [label, meaning]: Describe,
  required?: Column['required'],
): Column {
  const column: Column = { name, kind, target: { of: 'plate', key }, scope: 'motor', group, label, meaning };
  return required === undefined ? column : { ...column, required };
}

export function readingColumn<Key extends keyof Reading>(
  name: string,
  key: Key,
  kind: KindFor<Reading[Key]>,
  group: ColumnGroup,
  [label, meaning]: Describe,
): Column {
  return { name, kind, target: { of: 'reading', key }, scope: 'reading', group, label, meaning };
}

export function geometryColumn<Key extends keyof LineGeometry>(
  name: string,
  key: Key,
  kind: KindFor<LineGeometry[Key]>,
  [label, meaning]: Describe,
): Column {
  return { name, kind, target: { of: 'geometry', key }, scope: 'motor', group: 'lines', label, meaning };
}

export function specialColumn(
  name: string,
  kind: ColumnKind,
  scope: Column['scope'],
  group: ColumnGroup,
  [label, meaning]: Describe,
  required?: Column['required'],
): Column {
  const column: Column = { name, kind, target: { of: 'special' }, scope, group, label, meaning };
  return required === undefined ? column : { ...column, required };
}
