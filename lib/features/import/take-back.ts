import type { Motor, Plate } from '@/lib/engine';
import { recordChange } from '@/lib/platform/audit';
import { selectRows } from '@/lib/platform/bulk';
import type { Prisma, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { formatInstant } from '@/lib/platform/format';
import { newId } from '@/lib/platform/id';
import { fromMinor } from '@/lib/platform/money';
import type { LineGeometry } from '../fleet/column';
import { columnByName } from '../fleet/columns';
import { readStudyMotors, type StoredMotor } from '../fleet/data';
import { ensurePlaces, notesText } from '../fleet/mutations';
import { setField } from '../fleet/set-field';
import { drivenLoadColumns, dutyColumns, motorColumns } from '../fleet/stored-motor';
import { readStudy } from '../study/data';
import { dutyOf, type KeptDuty } from './plan-import';
import { writeFacts } from './write-import';

interface TakeBack {
  readonly studyId: string;
  readonly batchId: string;
  readonly who: string;
  readonly at: Date;
}

type Event = Prisma.ChangeEventGetPayload<object>;
/** Motors named in a refusal; the rest are counted. */
const NAMED = 5;

/**
 * Takes an import back whole: what it added goes, what it changed is as it was. Refused, naming the motors, when one of them was changed
 * since, unless that change was itself taken back.
 */
export async function takeBack(tx: Tx, { studyId, batchId, who, at }: TakeBack): Promise<Result<{ readonly fileName: string }>> {
  const batch = await tx.importBatch.findUnique({ where: { id: batchId } });
  const study = await readStudy(tx, studyId);
  if (batch === null || study === undefined || batch.studyId !== studyId) {
    return refuse('no-import', 'There is no such import in this study.', 'Load the page again.');
  }
  if (batch.undoneAt !== null) {
    return refuse('already-undone', `${batch.fileName} was taken back already.`, 'Load the page again.');
  }
  const own = new Map<string, Event[]>();
  for (const event of await selectRows<Event>(tx, 'ChangeEvent', { importBatchId: batchId, subject: 'motor' })) {
    const list = own.get(event.subjectId);
    if (list === undefined) own.set(event.subjectId, [event]);
    else list.push(event);
  }
  const added = new Set(
    (await tx.motor.findMany({ where: { importBatchId: batchId }, select: { id: true } })).map(({ id }) => id),
  );
  const changed = [...own.keys()].filter((id) => !added.has(id));
  const blocking = await builtOn(tx, { studyId, batchId, since: batch.createdAt, motors: new Set([...added, ...changed]) });
  const stored = await readStudyMotors(tx, studyId, { ids: changed });
  const restored = stored.map((motor) => restore(motor, own.get(motor.id) ?? [], study.settings.currency));
  for (const { differing, motor } of restored) if (differing) blocking.add(labelOf(motor));
  if (blocking.size > 0 || stored.length < changed.length) return refuseBuiltOn(blocking, batch.fileName);

  await tx.reading.deleteMany({ where: { importBatchId: batchId } });
  await tx.indicatorReading.deleteMany({ where: { importBatchId: batchId } });
  await tx.motor.deleteMany({ where: { importBatchId: batchId } });
  const places = await ensurePlaces(
    tx,
    restored.map(({ motor }) => motor),
    { studyId, at },
  );
  await writeFacts(
    tx,
    restored.map(({ id, motor, duty, notes, version }) => ({
      id,
      columns: {
        ...motorColumns(motor, study.settings.currency),
        areaId: places.areaOf(motor),
        notes: notesText(notes),
        version: version + 1,
        updatedAt: at,
      },
      load: { ...drivenLoadColumns(motor), ...dutyColumns(duty) },
    })),
    { studyId, at },
  );
  const emptied = { studyId, createdAt: batch.createdAt, motors: { none: {} } };
  await tx.area.deleteMany({ where: emptied });
  await tx.site.deleteMany({ where: { ...emptied, areas: { none: {} } } });
  await tx.importBatch.update({ where: { id: batchId }, data: { undoneAt: at, undoneBy: who } });
  await tx.study.update({ where: { id: studyId }, data: { version: { increment: 1 } } });
  await recordChange(
    tx,
    {
      studyId,
      who,
      subject: 'import',
      subjectId: batchId,
      subjectLabel: batch.fileName,
      what: 'undone',
      batch: newId(at.getTime()),
      undoes: batchId,
    },
    at,
  );
  return ok({ fileName: batch.fileName });
}

function refuseBuiltOn(blocking: ReadonlySet<string>, fileName: string): Result<never> {
  const named = [...blocking].slice(0, NAMED);
  const more = blocking.size - named.length;
  const list = `${named.join('; ')}${more > 0 ? `; and ${more} more` : ''}`;
  return refuse(
    'built-on',
    `${fileName} cannot be taken back, since its motors were changed afterwards: ${list === '' ? 'some were removed' : list}.`,
    'Take those changes back first, the latest one first; or leave the import and correct single motors.',
  );
}

/** Labels of motors that somebody changed since the import, with who did it and when. */
async function builtOn(
  tx: Tx,
  { studyId, batchId, since, motors }: { studyId: string; batchId: string; since: Date; motors: ReadonlySet<string> },
): Promise<Set<string>> {
  const readings = await tx.reading.findMany({
    where: { studyId },
    select: { id: true, motorId: true, importBatchId: true, excludedAt: true, createdAt: true },
  });
  const subjects = new Set(motors);
  const foreign = new Set<string>();
  for (const { id, motorId, importBatchId, excludedAt, createdAt } of readings) {
    if (!motors.has(motorId)) continue;
    subjects.add(id);
    if (importBatchId === batchId ? excludedAt !== null : createdAt > since) foreign.add(motorId);
  }
  // Values of a history that came later would go with their motor.
  const values = motors.size === 0 ? [] : await tx.indicatorReading.findMany({ where: { studyId, createdAt: { gt: since } } });
  for (const value of values) if (motors.has(value.motorId) && value.importBatchId !== batchId) foreign.add(value.motorId);
  const later = await tx.changeEvent.findMany({ where: { studyId, at: { gte: since }, subject: { not: 'import' } } });
  const blocking = new Set(
    standing(later, await undoEvents(tx, studyId, since))
      .filter(isForeign)
      .map(eventLabel),
  );
  if (foreign.size > 0) {
    const rows = await tx.motor.findMany({
      where: { id: { in: [...foreign].slice(0, 1_000) } },
      select: { siteName: true, tag: true },
    });
    for (const { siteName, tag } of rows) {
      const label = labelOf({ site: siteName, tag });
      if (![...blocking].some((text) => text.startsWith(`${label} (`))) blocking.add(label);
    }
  }
  return blocking;

  function isForeign(event: Event): boolean {
    return event.importBatchId !== batchId && subjects.has(event.subjectId);
  }
}

function undoEvents(tx: Tx, studyId: string, since: Date): Promise<Event[]> {
  return tx.changeEvent.findMany({ where: { studyId, at: { gte: since }, undoes: { not: null } } });
}

/** Changes that still hold: neither taken back since, nor the taking back of one of these. */
function standing(events: readonly Event[], undoing: readonly Event[]): Event[] {
  const batches = new Set(events.map(({ batch }) => batch));
  const undone = new Set(undoing.map(({ undoes }) => undoes));
  return events.filter(({ batch, undoes }) => {
    const wasUndone = batch !== null && undone.has(batch);
    const undoesLater = undoes !== null && batches.has(undoes);
    return !wasUndone && !undoesLater;
  });
}

function eventLabel({ subjectLabel, who, at }: Event): string {
  return `${subjectLabel} (${who}, ${formatInstant(at)})`;
}

function labelOf({ site, tag }: Pick<Motor, 'site' | 'tag'>): string {
  return site === '' ? tag : `${site} / ${tag}`;
}

interface Restored {
  readonly id: string;
  readonly version: number;
  readonly motor: Motor;
  readonly duty: KeptDuty | undefined;
  readonly notes: Readonly<Record<string, string>>;
  /** A fact is no longer as the import left it. */
  readonly differing: boolean;
}

/** A motor as it was before the import, from the history of what the import changed. */
function restore(stored: StoredMotor, own: readonly Event[], currency: string): Restored {
  const plate: Plate = { ...stored.motor.plate };
  const geometry: LineGeometry = { ...stored.motor.lineGeometry };
  const motor: Motor = { ...stored.motor, plate };
  let duty = dutyOf(
    stored.motor.plateDuty,
    stored.readings.map(({ reading }) => reading),
  );
  let notes = stored.notes;
  let differing = false;
  const check = (now: unknown, to: unknown): void => {
    if (JSON.stringify(now ?? null) !== JSON.stringify(to)) differing = true;
  };
  for (const { field, fromValue, toValue, what } of own) {
    if (field === null || what !== 'changed') continue;
    const [from, to] = [fromValue, toValue].map((text): unknown => (text === null ? null : JSON.parse(text)));
    const target = columnByName(field)?.target;
    const kind = columnByName(field)?.kind;
    const money = kind?.type === 'number' && kind.unit === 'currency';
    const plain = (value: unknown): unknown =>
      value === null ? undefined : money && typeof value === 'string' ? fromMinor(BigInt(value), currency) : value;
    if (field === 'notes') {
      check(notes, to);
      notes = isTexts(from) ? from : {};
    } else if (field === 'duty_profile') {
      check(duty?.steps, isDuty(to) ? to.steps : null);
      duty = isDuty(from) ? from : undefined;
    } else if (field === 'rated_power_kw') {
      check({ kw: plate.ratedPowerKw, unit: plate.ratedPowerUnit }, to);
      if (!isPower(from)) continue;
      setField(plate, 'ratedPowerKw', from.kw);
      setField(plate, 'ratedPowerUnit', from.unit);
    } else if (target !== undefined && 'key' in target && target.of !== 'reading') {
      const into = target.of === 'plate' ? plate : target.of === 'geometry' ? geometry : motor;
      check(Reflect.get(into, target.key), plain(to) ?? null);
      setField(into, target.key, plain(from));
    }
  }
  const lengths = Object.values(geometry).some((value) => value !== undefined);
  setField(motor, 'lineGeometry', lengths ? geometry : undefined);
  setField(motor, 'plateDuty', duty === undefined ? undefined : { row: 1, steps: duty.steps });
  return { id: stored.id, version: stored.version, motor, duty, notes, differing };
}

function isTexts(value: unknown): value is Readonly<Record<string, string>> {
  return typeof value === 'object' && value !== null && Object.values(value).every((text) => typeof text === 'string');
}

function isDuty(value: unknown): value is KeptDuty {
  return (
    typeof value === 'object' && value !== null && 'steps' in value && Array.isArray(value.steps) && 'afterReadings' in value
  );
}

function isPower(value: unknown): value is { readonly kw: number; readonly unit: 'kW' | 'hp' } {
  return typeof value === 'object' && value !== null && 'kw' in value && typeof value.kw === 'number' && 'unit' in value;
}
