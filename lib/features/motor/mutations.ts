import type { Motor, Reading } from '@/lib/engine';
import { type Change, recordChanges } from '@/lib/platform/audit';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readMotor, type StoredMotor } from '../fleet/data';
import { addReadings, ensurePlaces } from '../fleet/mutations';
import { drivenLoadColumns, motorColumns, readingHash } from '../fleet/stored-motor';
import { writeFacts } from '../import/write-import';
import { readStudy } from '../study/data';
import { plateCells } from './typed-motor';

/** Who changes which motor, and at which version they saw it. */
export interface EditKey {
  readonly studyId: string;
  readonly motorId: string;
  readonly version: number;
  readonly who: string;
  readonly why?: string | undefined;
}

/** What an edit left: its batch in the history, how many facts it changed, and the motor's new version. */
export interface EditDone {
  readonly batch: string;
  readonly changes: number;
  readonly version: number;
}

type Open = { readonly stored: StoredMotor; readonly currency: string };

async function openMotor(tx: Tx, key: EditKey): Promise<Result<Open>> {
  const stored = await readMotor(tx, key.motorId);
  const study = await readStudy(tx, key.studyId);
  if (!stored || !study || stored.studyId !== key.studyId)
    return refuse('no-motor', 'The study has no such motor any more.', 'Go back to the fleet.');
  if (stored.version !== key.version) {
    return refuse(
      'changed-meanwhile',
      'Somebody else changed this motor while the form was open; nothing was saved.',
      'Load the page again, look at what changed, and enter yours anew.',
    );
  }
  return ok({ stored, currency: study.settings.currency });
}

function about(key: EditKey, { stored }: Open, batch: string): Omit<Change, 'what'> {
  const { site, tag } = stored.motor;
  return {
    studyId: key.studyId,
    who: key.who,
    subject: 'motor',
    subjectId: key.motorId,
    subjectLabel: site === '' ? tag : `${site} / ${tag}`,
    why: key.why,
    batch,
  };
}

async function raise(tx: Tx, key: EditKey, at: Date): Promise<number> {
  await tx.motor.update({ where: { id: key.motorId }, data: { version: { increment: 1 }, updatedAt: at } });
  return finish(tx, key);
}

async function finish(tx: Tx, key: EditKey): Promise<number> {
  await tx.study.update({ where: { id: key.studyId }, data: { version: { increment: 1 } } });
  await enqueueEvaluation(tx, key.studyId);
  return key.version + 1;
}

/** Writes a motor's plate and driven load; every changed fact becomes an entry of the history. `undoes` names the batch taken back. */
export async function changePlate(
  db: Database,
  key: EditKey,
  motor: Motor,
  undoes?: string,
  at = new Date(),
): Promise<Result<EditDone>> {
  return db.write(async (tx) => {
    const open = await openMotor(tx, key);
    if (!open.ok) return open;
    const before = plateCells(open.value.stored.motor);
    const after = plateCells(motor);
    const changed = [...after].filter(([name, text]) => text !== before.get(name));
    const batch = newId(at.getTime());
    if (changed.length === 0) return ok({ batch, changes: 0, version: key.version });
    const places = await ensurePlaces(tx, [motor], { studyId: key.studyId, at });
    await writeFacts(
      tx,
      [
        {
          id: key.motorId,
          columns: {
            ...motorColumns(motor, open.value.currency),
            areaId: places.areaOf(motor),
            version: key.version + 1,
            updatedAt: at,
          },
          load: drivenLoadColumns(motor),
        },
      ],
      { studyId: key.studyId, at },
    );
    const own = about(key, open.value, batch);
    await recordChanges(
      tx,
      changed.map(([field, to]) => ({
        ...own,
        what: undoes === undefined ? 'changed' : 'undone',
        field,
        from: before.get(field),
        to,
        undoes,
      })),
      at,
    );
    return ok({ batch, changes: changed.length, version: await finish(tx, key) });
  });
}

/** Adds a typed-in reading. The same reading twice is refused in words. */
export async function addReading(db: Database, key: EditKey, reading: Reading, at = new Date()): Promise<Result<EditDone>> {
  return db.write(async (tx) => {
    const open = await openMotor(tx, key);
    if (!open.ok) return open;
    const { stored, currency } = open.value;
    if (stored.readings.some((entry) => entry.contentHash === readingHash(reading))) {
      return refuse('same-reading', 'This very reading is stored already.', 'Change what is different, or leave it.');
    }
    await addReadings(tx, [{ motorId: key.motorId, motor: { readings: [reading] } }], {
      studyId: key.studyId,
      currency,
      at,
      typedIn: true,
    });
    const batch = newId(at.getTime());
    await recordChanges(
      tx,
      [{ ...about(key, open.value, batch), what: 'added', field: 'reading', to: reading.takenAt ?? 'no date' }],
      at,
    );
    return ok({ batch, changes: 1, version: await raise(tx, key, at) });
  });
}

/** Leaves a reading, or a single value of an indicator history, out of every evaluation, with a reason; or takes it back in. It is never rewritten. */
export async function setExclusion(
  db: Database,
  key: EditKey,
  what: { readonly kind: 'reading' | 'value'; readonly id: string },
  reason: string | undefined,
  at = new Date(),
): Promise<Result<EditDone>> {
  return db.write(async (tx) => {
    const open = await openMotor(tx, key);
    if (!open.ok) return open;
    const entry = what.kind === 'value' ? await storedValueOf(tx, key, what.id) : readingOf(open.value, what.id);
    if (!entry) return refuse(`no-${what.kind}`, `The motor has no such ${what.kind}.`, 'Load the page again.');
    if (entry.excluded === (reason !== undefined))
      return refuse('already-so', `The ${what.kind} is so already.`, 'Load the page again.');
    const data =
      reason === undefined
        ? { excludedAt: null, excludedBy: null, excludedReason: null }
        : { excludedAt: at, excludedBy: key.who, excludedReason: reason };
    if (what.kind === 'value') await tx.indicatorReading.update({ where: { id: what.id }, data });
    else await tx.reading.update({ where: { id: what.id }, data });
    const batch = newId(at.getTime());
    await recordChanges(
      tx,
      [
        {
          ...about({ ...key, why: reason }, open.value, batch),
          subject: 'reading',
          subjectId: what.id,
          what: reason === undefined ? 'included' : 'excluded',
          field: entry.field,
          from: entry.label,
        },
      ],
      at,
    );
    return ok({ batch, changes: 1, version: await raise(tx, key, at) });
  });
}

/** What the history of changes says of a reading or a value. */
interface Excludable {
  readonly excluded: boolean;
  readonly field: string;
  readonly label: string;
}

function readingOf({ stored }: Open, id: string): Excludable | undefined {
  const entry = stored.readings.find((candidate) => candidate.id === id);
  return entry && { excluded: entry.excluded !== undefined, field: 'reading', label: entry.reading.takenAt ?? 'no date' };
}

async function storedValueOf(tx: Tx, key: EditKey, id: string): Promise<Excludable | undefined> {
  const row = await tx.indicatorReading.findFirst({ where: { id, motorId: key.motorId, studyId: key.studyId } });
  if (row === null) return undefined;
  const measure = row.unit === '1' ? '' : ` ${row.unit}`;
  const label = `${row.value}${measure}, ${row.takenAt ?? 'no date'}`;
  return { excluded: row.excludedReason !== null, field: row.indicator.replaceAll('_', ' '), label };
}
