import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect } from '@playwright/test';
import { generateDemo } from '@/lib/features/demo/generate';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { addMotors } from '@/lib/features/fleet/mutations';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { recordChange } from '@/lib/platform/audit';
import { openDatabase } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';

/** Puts a study with motors of the invented works beside those of other tests; with their evaluation if wanted. Returns its id. */
export async function plantStudy(name: string, count: number, { evaluated }: { evaluated: boolean }): Promise<string> {
  const db = openDatabase(path.join(process.env.E2E_DATA ?? '', 'lossbook.db'));
  const id = newId();
  const settings = defaultSettings();
  const motors = generateDemo({ asOf: settings.asOf }).slice(0, count);
  try {
    await db.write(async (tx) => {
      await tx.study.create({
        // Not marked as the demonstration: the first page would then no longer offer to open it.
        data: { id, name: `${name} ${id}`, settings: JSON.stringify(settingsToJson(settings)), demo: false },
      });
      await addMotors(tx, motors, { studyId: id, currency: settings.currency, at: new Date() });
      if (evaluated) await enqueueEvaluation(tx, id);
    });
    if (evaluated) {
      await workThroughQueue(db, { otherServers: () => true, jobs: 1 });
      // The program's own runner may have taken it first: then the queue is empty before the results are there.
      await expect
        .poll(() => db.read.evaluationRun.count({ where: { studyId: id, state: 'done' } }), { timeout: 60_000 })
        .toBeGreaterThan(0);
    }
  } finally {
    await db.close();
  }
  return id;
}

/** Puts changes into a study's history, one a second, named `change 0` and on. */
export async function plantChanges(studyId: string, count: number): Promise<void> {
  const db = openDatabase(path.join(process.env.E2E_DATA ?? '', 'lossbook.db'));
  const about = { studyId, who: 'R. Example', subject: 'study', subjectId: studyId, subjectLabel: 'the study' };
  try {
    await db.write(async (tx) => {
      for (let at = 0; at < count; at++)
        await recordChange(tx, { ...about, what: `change ${at}` }, new Date(Date.UTC(2026, 0, 1, 0, 0, at)));
    });
  } finally {
    await db.close();
  }
}

/**
 * A study of so many evaluated motors that tests share because they only read it: planted by the first that asks, in whichever worker.
 * Whoever changes a study plants one of its own.
 */
export async function sharedStudy(count: number): Promise<string> {
  const place = path.join(process.env.E2E_DATA ?? '', `shared-${count}`);
  const file = path.join(place, 'id');
  if (!isFirst(place)) {
    await expect.poll(() => textOf(file), { timeout: 60_000 }).not.toBe('');
    return textOf(file);
  }
  try {
    const id = await plantStudy('Shared', count, { evaluated: true });
    // Whole or not at all: the other worker looks for it meanwhile.
    writeFileSync(`${file}.new`, id);
    renameSync(`${file}.new`, file);
    return id;
  } catch (error) {
    rmSync(place, { recursive: true });
    throw error;
  }
}

/** Makes the folder; false where another was first. */
function isFirst(folder: string): boolean {
  try {
    mkdirSync(folder);
    return true;
  } catch {
    return false;
  }
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
