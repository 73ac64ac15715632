import { database } from '@/lib/platform/db';
import { columnByName } from '../fleet/columns';
import { readStudyMotors } from '../fleet/data';
import { type HistoryOutcome, readHistory } from '../fleet/indicator-history';
import { type FileProblem, type ParsedFleet, parseFleet, type RowIssue } from '../fleet/parse';
import { readHistoryValues } from '../fleet/stored-history';
import { horsepowerOf } from '../fleet/write-cells';
import { rejectedCsv } from '../fleet/write-csv';
import { readStudy, type StoredStudy } from '../study/data';
import { bookOf, type StudyBook } from './book';
import { type ImportEntry, readImports, readRecipe, readRejections, rejectedOfBatch, type StoredIssue } from './data';
import { type HistoryPlan, isHistory, planHistory } from './plan-history';
import { type FactChange, factKey, type ImportPlan, type MotorChange, planImport } from './plan-import';
import { firstLook, parseOptions, suggestRecipe } from './recipe';
import { placeOf } from './recipe-form';
import { type SheetSample, sampleSheet } from './sample-sheet';
import type { Recipe, UploadAbout } from './schema';
import { readUpload, readUploads, saveUpload, uploadFile } from './upload-store';

export type { ImportEntry, StoredIssue } from './data';

/** Rows that a screen shows of a long list; the rest are counted, and stand in the files. */
const SHOWN = 100;

/** What the import's first screen shows. */
export async function loadImports(
  studyId: string,
): Promise<{ readonly imports: readonly ImportEntry[]; readonly waiting: readonly UploadAbout[] }> {
  return { imports: await readImports(database().read, studyId), waiting: await readUploads(studyId) };
}

/** One import with its first rejected rows; `undefined` when the study has no such import. */
export async function loadImport(
  studyId: string,
  batchId: string,
): Promise<{ readonly entry: ImportEntry; readonly rejections: readonly StoredIssue[] } | undefined> {
  const [entry] = await readImports(database().read, studyId, batchId);
  return entry === undefined ? undefined : { entry, rejections: await readRejections(database().read, batchId, SHOWN) };
}

/** The rejected rows of an import as a file. */
export async function loadRejectedOfImport(studyId: string, batchId: string) {
  return rejectedOfBatch(database().read, studyId, batchId);
}

/** A warning that stands for all of its kind in one column. */
export interface WarningGroup {
  readonly column: string;
  readonly text: string;
  readonly remedy: string;
  readonly rows: readonly number[];
  readonly count: number;
}

/** A fact that the sheet states otherwise than it is kept. */
export interface ShownConflict {
  /** Names it in the form. */
  readonly key: string;
  readonly motor: string;
  readonly fact: string;
  readonly kept: string;
  readonly sheet: string;
}

/** What the import of a sheet would do. */
export interface PreviewResult {
  readonly rows: number;
  readonly repeats: number;
  readonly motorsAdded: number;
  readonly motorsChanged: number;
  readonly motorsUnchanged: number;
  readonly readingsAdded: number;
  readonly readingsRepeated: number;
  readonly factsFilled: number;
  readonly rowsRejected: number;
  /** Columns that rows are rejected for and the sheet does not have. */
  readonly missing: readonly { readonly name: string; readonly label: string }[];
  readonly rejections: readonly StoredIssue[];
  readonly warnings: readonly WarningGroup[];
  readonly conflicts: readonly ShownConflict[];
  readonly conflictCount: number;
}

export interface Preview {
  readonly study: StoredStudy;
  readonly about: UploadAbout;
  readonly recipe: Recipe;
  /** Absent when the file cannot be opened at all. */
  readonly sample: SheetSample | undefined;
  readonly problem: FileProblem | undefined;
  /** Absent while something is to be said first, or the file cannot be read; and where the file is an indicator history. */
  readonly result: PreviewResult | undefined;
  /** What the import of an indicator history would do. */
  readonly history?: HistoryPreview;
}

/** What the import of an indicator history would do, as the screen shows it. */
export interface HistoryPreview {
  readonly rows: number;
  readonly valuesAdded: number;
  readonly valuesRepeated: number;
  readonly motors: number;
  /** New values by the word of the history, most first. */
  readonly byIndicator: readonly { readonly name: string; readonly count: number }[];
  readonly rowsRejected: number;
  readonly rejections: readonly StoredIssue[];
  readonly warnings: readonly WarningGroup[];
}

const BLIND: Recipe = { decimal: '.', delimiter: ',', encoding: 'utf-8', emptyWords: [], mapping: {} };

/** An upload as it is read by now, with what its import would do; `undefined` when it is gone. */
export async function loadPreview(studyId: string, uploadId: string): Promise<Preview | undefined> {
  const study = await readStudy(database().read, studyId);
  const found = await readUpload(studyId, uploadId);
  if (study === undefined || found === undefined) return undefined;
  const { about, sample, problem } = await looked(found);
  const recipe = about.recipe ?? BLIND;
  const base = { study, about, recipe, sample };
  if (sample === undefined || recipe.decimal === undefined) return { ...base, problem, result: undefined };
  if (isHistory(sample)) {
    const whole = await readWholeHistory(about, sample, recipe, study);
    if (!whole.ok) return { ...base, problem: whole.problem, result: undefined };
    return { ...base, problem: undefined, result: undefined, history: historyOf(whole.plan) };
  }
  const read = await readWhole(about, sample, recipe, study);
  if (!read.parsed.ok) return { ...base, problem: read.parsed.problem, result: undefined };
  const plan = planImport(read.parsed, read.book, 'sheet');
  return { ...base, problem: undefined, result: resultOf(read.parsed, plan, titlesOf(sample, recipe)) };
}

/** The rejected rows of an upload as a file. */
export async function loadRejectedOfUpload(
  studyId: string,
  uploadId: string,
): Promise<{ readonly fileName: string; readonly csv: string } | undefined> {
  const study = await readStudy(database().read, studyId);
  const found = await readUpload(studyId, uploadId);
  if (study === undefined || found === undefined) return undefined;
  const { about, sample } = await looked(found);
  if (sample === undefined || about.recipe === undefined) return undefined;
  if (isHistory(sample)) {
    const whole = await readWholeHistory(about, sample, about.recipe, study);
    if (!whole.ok) return undefined;
    const { read, plan } = whole;
    const rejected = plan.rejected.map((issue) => ({ row: issue.row, issues: [issue], cells: read.cells.get(issue.row) ?? [] }));
    const { decimal = '.' } = about.recipe;
    return {
      fileName: about.fileName,
      csv: rejectedCsv({ header: read.header, rejected, dialect: { delimiter: sample.delimiter, decimal } }),
    };
  }
  const { parsed } = await readWhole(about, sample, about.recipe, study);
  return parsed.ok ? { fileName: about.fileName, csv: rejectedCsv(parsed) } : undefined;
}

/** How an upload is to be read, without reading all of it; `undefined` when it is gone or cannot be opened. */
export async function loadReading(
  studyId: string,
  uploadId: string,
): Promise<{ readonly about: UploadAbout; readonly recipe: Recipe; readonly sample: SheetSample } | undefined> {
  const found = await readUpload(studyId, uploadId);
  if (found === undefined) return undefined;
  const { about, sample } = await looked(found);
  return sample === undefined ? undefined : { about, sample, recipe: about.recipe ?? BLIND };
}

interface Looked {
  readonly about: UploadAbout;
  readonly sample: SheetSample | undefined;
  readonly problem: FileProblem | undefined;
}

/** Looks at the head of a file; the first time with guesses, which are then kept as its recipe. */
async function looked(about: UploadAbout): Promise<Looked> {
  if (about.recipe !== undefined) {
    const outcome = await sampleSheet(uploadFile(about.id), about.fileName, about.recipe);
    return outcome.ok
      ? { about, sample: outcome.sample, problem: undefined }
      : { about, sample: undefined, problem: outcome.problem };
  }
  const { encoding, outcome } = await firstLook(uploadFile(about.id), about.fileName);
  if (!outcome.ok) return { about, sample: undefined, problem: outcome.problem };
  const titles = outcome.sample.columns.map(({ title }) => title);
  const remembered = await readRecipe(database().read, about.studyId, titles);
  const suggested = suggestRecipe(outcome.sample, encoding);
  const read: UploadAbout =
    remembered === undefined
      ? { ...about, recipe: suggested }
      : {
          ...about,
          // Delimiter and encoding are facts of this very file; the rest is what people decided.
          recipe: { ...remembered.recipe, delimiter: suggested.delimiter, encoding: suggested.encoding },
          remembered: { name: remembered.name, usedAt: remembered.usedAt.toISOString() },
        };
  await saveUpload(read);
  return { about: read, sample: outcome.sample, problem: undefined };
}

async function readWhole(about: UploadAbout, sample: SheetSample, recipe: Recipe, study: StoredStudy) {
  const book: StudyBook = bookOf(await readStudyMotors(database().read, study.id));
  const options = { ...parseOptions(recipe, sample.kind), asOf: study.settings.asOf, book };
  return { book, parsed: await parseFleet({ path: uploadFile(about.id), name: about.fileName }, options) };
}

type WholeHistory =
  | { readonly ok: false; readonly problem: FileProblem }
  | { readonly ok: true; readonly read: Extract<HistoryOutcome, { ok: true }>; readonly plan: HistoryPlan };

async function readWholeHistory(
  about: UploadAbout,
  sample: SheetSample,
  recipe: Recipe,
  study: StoredStudy,
): Promise<WholeHistory> {
  const db = database().read;
  const options = { ...parseOptions(recipe, sample.kind), asOf: study.settings.asOf };
  const read = await readHistory({ path: uploadFile(about.id), name: about.fileName }, options);
  if (!read.ok) return read;
  const motors = await readStudyMotors(db, study.id, { withHistory: true });
  return { ok: true, read, plan: planHistory(read, motors, await readHistoryValues(db, study.id)) };
}

function historyOf(plan: HistoryPlan): HistoryPreview {
  const counts = new Map<string, number>();
  for (const { value } of plan.added) counts.set(value.indicator.name, (counts.get(value.indicator.name) ?? 0) + 1);
  return {
    rows: plan.rows,
    valuesAdded: plan.added.length,
    valuesRepeated: plan.repeated,
    motors: plan.motors,
    byIndicator: [...counts].map(([name, count]) => ({ name, count })).sort((a, b) => b.count - a.count),
    rowsRejected: plan.rejected.length,
    rejections: plan.rejected
      .slice(0, SHOWN)
      .map(({ row, column, text, remedy, value }) => ({ row, column, text, remedy, value })),
    warnings: groupWarnings(plan.warnings),
  };
}

/** The sheet's own names by the names of our columns. */
function titlesOf(sample: SheetSample, recipe: Recipe): ReadonlyMap<string, string> {
  return new Map(sample.columns.map(({ title }) => [placeOf(title, recipe.mapping), title]));
}

function resultOf(parsed: ParsedFleet, plan: ImportPlan, titles: ReadonlyMap<string, string>): PreviewResult {
  const conflicts = plan.changed.flatMap((change) => conflictsOf(change));
  const changes = plan.changed.flatMap((change) => change.changes);
  return {
    rows: parsed.rows,
    repeats: parsed.ignoredRepeats,
    motorsAdded: plan.added.length,
    motorsChanged: plan.changed.length,
    motorsUnchanged: plan.unchanged,
    readingsAdded: plan.readingsAdded,
    readingsRepeated: plan.readingsRepeated,
    factsFilled: changes.filter(({ conflict }) => !conflict).length,
    rowsRejected: parsed.rejected.length,
    missing: missingColumns(parsed, titles),
    rejections: parsed.rejected.slice(0, SHOWN).flatMap(({ issues }) =>
      issues.map(({ row, column, text, remedy, value }) => ({
        row,
        column: titles.get(column) ?? column,
        text,
        remedy,
        value,
      })),
    ),
    warnings: groupWarnings(parsed.warnings),
    conflicts: conflicts.slice(0, SHOWN),
    conflictCount: conflicts.length,
  };
}

/** Required columns for want of which rows are rejected, since the sheet has none that goes there: said once, not row by row. */
function missingColumns({ rejected }: ParsedFleet, titles: ReadonlyMap<string, string>): PreviewResult['missing'] {
  const wanting = new Set(rejected.flatMap(({ issues }) => issues.map(({ column }) => column)));
  const stated = (need: string | undefined) => [...titles.keys()].some((name) => columnByName(name)?.required === need);
  return [...wanting].flatMap((name) => {
    const column = columnByName(name);
    if (column?.required === undefined || titles.has(name)) return [];
    // One column of power is enough, in whichever unit.
    return column.required === 'one-of-power' && stated('one-of-power') ? [] : [{ name, label: column.label }];
  });
}

function conflictsOf({ stored, changes }: MotorChange): ShownConflict[] {
  const { site, tag } = stored.motor;
  return changes
    .filter(({ conflict }) => conflict)
    .map((change) => ({
      key: factKey(stored.id, change.field),
      motor: site === '' ? tag : `${site} / ${tag}`,
      fact: columnByName(change.field)?.label ?? change.field,
      kept: factText(change, change.from),
      sheet: factText(change, change.to),
    }));
}

function factText({ field }: FactChange, value: unknown): string {
  // Only a torque law is ever emptied, by the other way of stating it.
  if (value === undefined) return field === 'load_curve' ? 'an exponent instead' : 'a load curve instead';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (field === 'rated_power_kw' && typeof value === 'object' && value !== null && 'kw' in value && 'unit' in value) {
    return value.unit === 'hp' ? `${horsepowerOf(Number(value.kw))} hp` : `${String(value.kw)} kW`;
  }
  if (typeof value === 'object' && value !== null && 'steps' in value && Array.isArray(value.steps)) {
    return value.steps
      .map((step: { fraction: number; hoursPerYear: number }) => `${step.fraction}@${step.hoursPerYear}`)
      .join(';');
  }
  if (typeof value === 'object' && value !== null) return Object.values(value).join('/');
  const kind = columnByName(field)?.kind;
  const unit = kind?.type === 'number' && kind.unit !== '1' && kind.unit !== 'currency' ? ` ${kind.unit}` : '';
  return `${String(value)}${unit}`;
}

function groupWarnings(warnings: readonly RowIssue[]): WarningGroup[] {
  const groups = new Map<string, { first: RowIssue; rows: number[]; count: number }>();
  for (const warning of warnings) {
    const key = `${warning.code}\0${warning.column}`;
    const group = groups.get(key) ?? { first: warning, rows: [], count: 0 };
    groups.set(key, group);
    group.count++;
    if (group.rows.length < 5) group.rows.push(warning.row);
  }
  return [...groups.values()].map(({ first, rows, count }) => {
    return { column: first.column, text: first.text, remedy: first.remedy, rows, count };
  });
}
