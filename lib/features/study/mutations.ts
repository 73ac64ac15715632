import type { Settings } from '@/lib/engine';
import { recordChange, recordChanges } from '@/lib/platform/audit';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { minorDigits } from '@/lib/platform/money';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readSettingsBatches, readStudy, type StoredStudy } from './data';
import { defaultSettings, readSettings, settingsToJson } from './settings';
import { changedSince, flatSettings, withFormer } from './settings-change';

const GONE = refuse('no-study', 'The study is gone.', 'Go to the first page and choose another one.');

/** What a new study starts with; the rest are the defaults. */
interface NewStudy {
  readonly name: string;
  readonly who: string;
  readonly settings?: Partial<Settings>;
  readonly demo?: boolean;
}

/** Makes a study inside the caller's transaction. Its date is the day on which it is made, unless the settings say otherwise. */
export async function addStudy(tx: Tx, wish: NewStudy, at: Date): Promise<Result<{ readonly id: string }>> {
  const taken = await tx.study.findUnique({ where: { name: wish.name }, select: { id: true } });
  if (taken !== null) {
    return refuse(
      'name-taken',
      `There is a study named ${wish.name} already.`,
      'Give the new one another name, or open the one there is.',
    );
  }
  const id = newId(at.getTime());
  const settings = { ...defaultSettings(), asOf: at.toISOString().slice(0, 10), ...wish.settings };
  await tx.study.create({
    data: {
      id,
      name: wish.name,
      settings: JSON.stringify(settingsToJson(settings)),
      demo: wish.demo ?? false,
      createdAt: at,
    },
  });
  await recordChange(tx, { ...about(id, wish.name, wish.who), what: 'created' }, at);
  return ok({ id });
}

/** Makes a study. */
export async function createStudy(db: Database, wish: NewStudy, at: Date = new Date()): Promise<Result<{ readonly id: string }>> {
  return db.write((tx) => addStudy(tx, wish, at));
}

/** Gives a study another name. */
export async function renameStudy(
  db: Database,
  { id, name, who }: { readonly id: string; readonly name: string; readonly who: string },
): Promise<Result<undefined>> {
  return db.write(async (tx) => {
    const study = await tx.study.findUnique({ where: { id }, select: { name: true } });
    if (study === null) return GONE;
    if (study.name === name) return ok(undefined);
    const taken = await tx.study.findUnique({ where: { name }, select: { id: true } });
    if (taken !== null) return refuse('name-taken', `There is a study named ${name} already.`, 'Choose another name.');
    await tx.study.update({ where: { id }, data: { name, version: { increment: 1 } } });
    await recordChange(tx, { ...about(id, name, who), what: 'changed', field: 'name', from: study.name, to: name });
    return ok(undefined);
  });
}

/** Puts a study aside, or takes it back into the list; nothing of it is lost. */
export async function archiveStudy(
  db: Database,
  { id, archived, who }: { readonly id: string; readonly archived: boolean; readonly who: string },
  at: Date = new Date(),
): Promise<Result<undefined>> {
  return db.write(async (tx) => {
    const study = await tx.study.findUnique({ where: { id }, select: { name: true, archivedAt: true } });
    if (study === null) return GONE;
    if ((study.archivedAt !== null) === archived) return ok(undefined);
    await tx.study.update({ where: { id }, data: { archivedAt: archived ? at : null } });
    await recordChange(tx, { ...about(id, study.name, who), what: archived ? 'archived' : 'brought back' }, at);
    return ok(undefined);
  });
}

/** Removes a study with all that belongs to it, its history included. Only one that was put aside before can be removed. */
export async function deleteStudy(db: Database, id: string): Promise<Result<undefined>> {
  return db.write(async (tx) => {
    const study = await tx.study.findUnique({ where: { id }, select: { archivedAt: true } });
    if (study === null) return GONE;
    if (study.archivedAt === null) return refuse('in-use', 'The study is in use.', 'Put it aside first, then remove it.');
    await tx.study.delete({ where: { id } });
    return ok(undefined);
  });
}

/** New settings of a study. */
export interface SettingsChange {
  readonly id: string;
  readonly settings: Settings;
  readonly pricesFile?: string | undefined;
  readonly who: string;
  readonly why?: string | undefined;
}

/**
 * Writes the settings of a study, each changed key with its line in the history, and has the fleet evaluated again. Amounts are kept in
 * minor units of the currency: when another currency has other minor units, they are rescaled so that the figures stay what was typed.
 */
export async function writeSettings(
  db: Database,
  change: SettingsChange,
  at: Date = new Date(),
): Promise<Result<SettingsWritten>> {
  return db.write((tx) => writeSettingsIn(tx, change, at));
}

/** The same within a transaction of the caller's. */
export async function writeSettingsIn(tx: Tx, change: SettingsChange, at: Date): Promise<Result<SettingsWritten>> {
  const study = await readStudy(tx, change.id);
  return study === undefined ? GONE : ok(await putSettings(tx, study, change, at));
}

/** What became of new settings: how many keys differ, and under which batch the history has them. */
export interface SettingsWritten {
  readonly changed: number;
  readonly batch?: string;
}

/**
 * Gives the keys that one act changed the values they had before it, as a new act. Refused when a key has been changed again since: the
 * later value was meant.
 */
export async function takeBackSettings(
  db: Database,
  { id, batch, who }: { readonly id: string; readonly batch: string; readonly who: string },
  at: Date = new Date(),
): Promise<Result<SettingsWritten>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, id);
    if (study === undefined) return GONE;
    const facts = (await readSettingsBatches(tx, id, [batch])).get(batch);
    if (facts === undefined) return refuse('no-change', 'There is no such change any more.', 'Load the page again.');
    const file = settingsToJson(study.settings, study.pricesFile);
    const later = changedSince(file, facts);
    if (later.length > 0) {
      return refuse(
        'changed-since',
        `Changed again since: ${later.join(', ')}. Nothing was taken back.`,
        'Take the later change back first, or set the values by hand.',
      );
    }
    const former = readSettings(JSON.stringify(withFormer(file, facts)));
    if (!former.ok) return refuse('former-settings', former.problem.text, 'Set the values by hand.');
    const { settings, pricesFile } = former;
    return ok(await putSettings(tx, study, { id, settings, pricesFile, who, undoes: batch }, at));
  });
}

async function putSettings(
  tx: Tx,
  study: StoredStudy,
  change: SettingsChange & { readonly undoes?: string },
  at: Date,
): Promise<SettingsWritten> {
  const before = flatSettings(settingsToJson(study.settings, study.pricesFile));
  const file = settingsToJson(change.settings, change.pricesFile);
  const after = flatSettings(file);
  const keys = [...new Set([...before.keys(), ...after.keys()])].filter(
    (key) => JSON.stringify(before.get(key)) !== JSON.stringify(after.get(key)),
  );
  if (keys.length === 0) return { changed: 0 };
  await tx.study.update({ where: { id: change.id }, data: { settings: JSON.stringify(file), version: { increment: 1 } } });
  await rescaleAmounts(tx, change.id, study.settings.currency, change.settings.currency);
  const batch = newId(at.getTime());
  await recordChanges(
    tx,
    keys.map((key) => ({
      ...about(change.id, study.name, change.who),
      subject: 'settings',
      what: change.undoes === undefined ? 'changed' : 'undone',
      field: key,
      from: before.get(key),
      to: after.get(key),
      why: change.why,
      batch,
      undoes: change.undoes,
    })),
    at,
  );
  await enqueueEvaluation(tx, change.id);
  return { changed: keys.length, batch };
}

function about(id: string, name: string, who: string) {
  return { studyId: id, who, subject: 'study', subjectId: id, subjectLabel: name } as const;
}

async function rescaleAmounts(tx: Tx, studyId: string, from: string, to: string): Promise<void> {
  const shift = minorDigits(to) - minorDigits(from);
  if (shift === 0) return;
  const factor = 10 ** Math.abs(shift);
  for (const column of ['quotedPriceMinor', 'quotedRepairMinor', 'unplannedStopCostMinor']) {
    // Whole numbers stay whole: halves go away from zero where digits are lost.
    const value = shift > 0 ? `"${column}" * ${factor}` : `CAST(ROUND("${column}" * 1.0 / ${factor}) AS INTEGER)`;
    await tx.$executeRawUnsafe(
      `UPDATE "Motor" SET "${column}" = ${value} WHERE "studyId" = ? AND "${column}" IS NOT NULL`,
      studyId,
    );
  }
}
