import type { Motor } from '@/lib/engine';
import { type BulkRow, insertRows } from '@/lib/platform/bulk';
import type { Tx } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';
import { drivenLoadColumns, motorColumns, readingColumns } from './stored-motor';

/** A motor to be kept for the first time. */
interface NewMotor {
  readonly id?: string;
  readonly motor: Motor;
  readonly notes?: Readonly<Record<string, string>>;
}

interface AddContext {
  readonly studyId: string;
  readonly currency: string;
  readonly at: Date;
  readonly importBatchId?: string | undefined;
  /** Typed in, not read from a sheet: `reading.row` means nothing and is not kept. */
  readonly typedIn?: boolean;
}

/**
 * Adds motors with their driven loads and readings, and the sites and areas that are new, inside the caller's transaction. The
 * caller writes the history and raises the study's version.
 * @throws when the study already has a motor of one of these sites and tags.
 */
export async function addMotors(tx: Tx, motors: readonly NewMotor[], context: AddContext): Promise<string[]> {
  const places = await ensurePlaces(
    tx,
    motors.map(({ motor }) => motor),
    context,
  );
  const ids = motors.map(({ id }) => id ?? newId(context.at.getTime()));
  const { studyId, at, importBatchId = null } = context;
  const own: BulkRow[] = [];
  const loads: BulkRow[] = [];
  const readings: BulkRow[] = [];
  for (const [index, { motor, notes = {} }] of motors.entries()) {
    const id = ids[index] ?? '';
    own.push({
      id,
      studyId,
      siteId: places.siteOf(motor),
      areaId: places.areaOf(motor),
      ...motorColumns(motor, context.currency),
      notes: notesText(notes),
      importBatchId,
      version: 1,
      createdAt: at,
      updatedAt: at,
    });
    loads.push({ id: newId(at.getTime()), studyId, motorId: id, ...drivenLoadColumns(motor) });
    readings.push(...readingRowsOf(id, motor, context));
  }
  await insertRows(tx, 'Motor', own);
  await insertRows(tx, 'DrivenLoad', loads);
  await insertRows(tx, 'Reading', readings);
  return ids;
}

/** Adds readings to motors that are kept already; see {@link addMotors}. The caller raises the motors' versions. */
export async function addReadings(
  tx: Tx,
  additions: readonly { readonly motorId: string; readonly motor: Pick<Motor, 'readings'> }[],
  context: AddContext,
): Promise<void> {
  const rows = additions.flatMap(({ motorId, motor }) => readingRowsOf(motorId, motor, context));
  await insertRows(tx, 'Reading', rows);
}

function readingRowsOf(motorId: string, { readings }: Pick<Motor, 'readings'>, context: AddContext): BulkRow[] {
  const { studyId, at, importBatchId = null, typedIn } = context;
  return readings.map((reading) => ({
    id: newId(at.getTime()),
    studyId,
    motorId,
    sheetRow: typedIn === true ? null : reading.row,
    ...readingColumns(reading),
    importBatchId,
    createdAt: at,
  }));
}

/** Notes as they are kept; null when there are none. */
export function notesText(notes: Readonly<Record<string, string>>): string | null {
  return Object.keys(notes).length === 0 ? null : JSON.stringify(notes);
}

/** Where motors stand, with sites and areas made where they are new. */
interface Places {
  readonly siteOf: (motor: Pick<Motor, 'site'>) => string;
  readonly areaOf: (motor: Pick<Motor, 'site' | 'area'>) => string | null;
}

/** Finds the sites and areas of motors, making those that are new. */
export async function ensurePlaces(
  tx: Tx,
  motors: readonly Pick<Motor, 'site' | 'area'>[],
  { studyId, at }: Pick<AddContext, 'studyId' | 'at'>,
): Promise<Places> {
  const sites = new Map((await tx.site.findMany({ where: { studyId } })).map(({ id, name }) => [name, id]));
  const areas = new Map(
    (await tx.area.findMany({ where: { studyId } })).map(({ id, siteId, name }) => [`${siteId}\0${name}`, id]),
  );
  const newSites: BulkRow[] = [];
  const newAreas: BulkRow[] = [];
  for (const { site, area } of motors) {
    let siteId = sites.get(site);
    if (siteId === undefined) {
      siteId = newId(at.getTime());
      sites.set(site, siteId);
      newSites.push({ id: siteId, studyId, name: site, createdAt: at });
    }
    if (area === undefined || areas.has(`${siteId}\0${area}`)) continue;
    const areaId = newId(at.getTime());
    areas.set(`${siteId}\0${area}`, areaId);
    newAreas.push({ id: areaId, studyId, siteId, name: area, createdAt: at });
  }
  await insertRows(tx, 'Site', newSites);
  await insertRows(tx, 'Area', newAreas);
  return {
    siteOf: ({ site }) => sites.get(site) ?? '',
    areaOf: ({ site, area }) => (area === undefined ? null : (areas.get(`${sites.get(site)}\0${area}`) ?? null)),
  };
}
