import type { Motor, Reading } from '@/lib/engine';
import { selectRows } from '@/lib/platform/bulk';
import { type Reader, storedSettings } from '../study/data';
import { joinHistories, readHistoryValues } from './stored-history';
import { type DrivenLoadRow, type MotorRow, motorOfRows, type ReadingRow, readingOfRow, readingRows } from './stored-motor';
import { instantOf } from './taken-at';

/** Why a reading does not count. */
interface Exclusion {
  readonly at: Date;
  readonly by: string;
  readonly reason: string;
}

/** A reading as it is kept; `reading.row` is its number among the motor's readings. */
interface StoredReading {
  readonly id: string;
  readonly reading: Reading;
  readonly excluded?: Exclusion;
  readonly importBatchId: string | undefined;
  readonly contentHash: string;
}

/** A motor as it is kept. Excluded readings are listed, but are not in `motor.readings`. */
export interface StoredMotor {
  readonly id: string;
  /** Rises with every change of the motor: the guard against overwriting one another. */
  readonly version: number;
  readonly motor: Motor;
  /** Cells of columns that the sheet does not know, by column name. */
  readonly notes: Readonly<Record<string, string>>;
  /** All readings, in the order in which they were stored. */
  readonly readings: readonly StoredReading[];
  /** The import that first brought the motor. */
  readonly importBatchId: string | undefined;
  readonly naturalKey: string;
}

interface ReadOptions {
  /** Only these motors. */
  readonly ids?: readonly string[] | undefined;
  /** Whether `motor.readings` hold the indicator histories as well: so for evaluating, not for comparing sheets or changing motors. */
  readonly withHistory?: boolean | undefined;
}

/** The motors of a study in natural order, with their readings. Empty when there is no such study. */
export async function readStudyMotors(db: Reader, studyId: string, options: ReadOptions = {}): Promise<StoredMotor[]> {
  const study = await db.study.findUnique({ where: { id: studyId }, select: { settings: true } });
  if (study === null) return [];
  const { currency } = storedSettings(study.settings).settings;
  const areas = new Map((await db.area.findMany({ where: { studyId } })).map(({ id, name }) => [id, name]));
  const motors = assemble(await readRows(db, studyId, options.ids), areas, currency);
  return options.withHistory === true ? joinHistories(motors, await readHistoryValues(db, studyId, options.ids)) : motors;
}

/** Ids of the motors of a site whose rating lies within a share of the given one, the motor itself among them. */
export async function readIdsLike(
  db: Reader,
  studyId: string,
  { site, ratedPowerKw, within }: { readonly site: string; readonly ratedPowerKw: number; readonly within: number },
): Promise<string[]> {
  const between = { gte: ratedPowerKw * (1 - within), lte: ratedPowerKw * (1 + within) };
  const rows = await db.motor.findMany({ where: { studyId, siteName: site, ratedPowerKw: between }, select: { id: true } });
  return rows.map(({ id }) => id);
}

/** One motor by its id, whatever its study. */
export async function readMotor(
  db: Reader,
  motorId: string,
  options: Pick<ReadOptions, 'withHistory'> = {},
): Promise<(StoredMotor & { readonly studyId: string }) | undefined> {
  const row = await db.motor.findUnique({ where: { id: motorId }, select: { studyId: true } });
  if (row === null) return undefined;
  const [motor] = await readStudyMotors(db, row.studyId, { ...options, ids: [motorId] });
  return motor === undefined ? undefined : { ...motor, studyId: row.studyId };
}

interface Rows {
  readonly motors: readonly MotorRow[];
  readonly loads: readonly DrivenLoadRow[];
  readonly readings: readonly ReadingRow[];
}

async function readRows(db: Reader, studyId: string, ids: readonly string[] | undefined): Promise<Rows> {
  const theirs = ids === undefined ? {} : { motorId: ids };
  const motors = await selectRows<MotorRow>(db, 'Motor', { studyId, ...(ids === undefined ? {} : { id: ids }) }, 'naturalKey');
  const loads = await selectRows<DrivenLoadRow>(db, 'DrivenLoad', { studyId, ...theirs });
  const readings = await selectRows<ReadingRow>(db, 'Reading', { studyId, ...theirs });
  return { motors, loads, readings };
}

function assemble({ motors, loads, readings }: Rows, areas: ReadonlyMap<string, string>, currency: string): StoredMotor[] {
  const loadOf = new Map(loads.map((load) => [load.motorId, load]));
  const readingsOf = new Map<string, ReadingRow[]>();
  for (const reading of readings) {
    const list = readingsOf.get(reading.motorId);
    if (list === undefined) readingsOf.set(reading.motorId, [reading]);
    else list.push(reading);
  }
  return motors.map((row) => {
    const stored = storedReadings(readingsOf.get(row.id) ?? []);
    const used = oldestFirst(stored.filter(({ excluded }) => excluded === undefined).map(({ reading }) => reading));
    const area = row.areaId === null ? undefined : areas.get(row.areaId);
    const lastRow = stored.at(-1)?.reading.row ?? 1;
    return {
      id: row.id,
      version: row.version,
      motor: motorOfRows(row, loadOf.get(row.id), used, { area, currency, lastRow }),
      notes: readNotes(row.notes),
      readings: stored,
      importBatchId: row.importBatchId ?? undefined,
      naturalKey: row.naturalKey,
    };
  });
}

function storedReadings(rows: ReadingRow[]): StoredReading[] {
  rows.sort(
    (a, b) => a.createdAt.getTime() - b.createdAt.getTime() || (a.sheetRow ?? 0) - (b.sheetRow ?? 0) || compareKeys(a.id, b.id),
  );
  const numbers = readingRows(rows);
  return rows.map((row, at) => ({
    id: row.id,
    reading: readingOfRow(row, numbers[at] ?? at + 2),
    ...(row.excludedAt === null
      ? {}
      : { excluded: { at: row.excludedAt, by: row.excludedBy ?? '', reason: row.excludedReason ?? '' } }),
    importBatchId: row.importBatchId ?? undefined,
    contentHash: row.contentHash,
  }));
}

/** Undated readings first, in the order of storing; then by time. */
function oldestFirst(readings: Reading[]): Reading[] {
  const at = ({ takenAt }: Reading): number => (takenAt === undefined ? Number.NEGATIVE_INFINITY : instantOf(takenAt));
  return readings.sort((a, b) => {
    const [one, two] = [at(a), at(b)];
    return one === two ? a.row - b.row : one - two;
  });
}

/** Notes from their JSON text; anything but an object of texts counts as none. */
function readNotes(text: string | null): Readonly<Record<string, string>> {
  if (text === null) return {};
  const value: unknown = JSON.parse(text);
  if (typeof value !== 'object' || value === null) return {};
  return Object.fromEntries(Object.entries(value).filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
}

function compareKeys(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
