import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { loadPreview, loadReading } from '@/lib/features/import/loaders';
import { commitImport } from '@/lib/features/import/mutations';
import { keepUpload, uploadFile } from '@/lib/features/import/upload-store';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { closeDatabase, database } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { newId } from '@/lib/platform/id';
import { prepareDatabase } from '@/lib/platform/prepare-database';
import type { Measure } from './engine';
import { perfSheet } from './sheet';

const MOTORS = 10_000;

/** The import of 10,000 rows as the screen does it: the file kept, the preview made, the rows committed; then the same sheet once more. */
export async function importTimes(): Promise<Measure[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-perf-import-'));
  const before = process.env.LOSSBOOK_DATA;
  // The upload store and the database of the program are found by the environment, as in the server.
  process.env.LOSSBOOK_DATA = folder;
  try {
    const prepared = prepareDatabase(readEnv());
    if (!prepared.ok) throw new Error(prepared.problem.text);
    return await steps();
  } finally {
    await closeDatabase();
    if (before === undefined) delete process.env.LOSSBOOK_DATA;
    else process.env.LOSSBOOK_DATA = before;
    rmSync(folder, { recursive: true, force: true });
  }
}

async function steps(): Promise<Measure[]> {
  const studyId = newId();
  await database().read.study.create({
    data: { id: studyId, name: 'Import', settings: JSON.stringify(settingsToJson(defaultSettings())) },
  });
  const sheet = new File([readFileSync(perfSheet(MOTORS))], 'fleet.csv');
  const measures: Measure[] = [];
  const timed = async <T>(what: string, work: () => Promise<T>): Promise<T> => {
    const start = performance.now();
    const done = await work();
    measures.push({ what, value: (performance.now() - start) / 1000, unit: 's' });
    return done;
  };
  for (const which of ['first time', 'same sheet again']) {
    const upload = await timed(`${which}: file kept`, () => keepUpload(studyId, sheet));
    const preview = await timed(`${which}: preview`, () => loadPreview(studyId, upload.id));
    const rows = preview?.result?.rows ?? 0;
    // Some motors have more than one reading, and so more than one row.
    if (rows < MOTORS || preview?.result === undefined) throw new Error(`The preview found ${rows} rows of ${MOTORS} motors.`);
    const done = await timed(`${which}: commit`, () => commit(studyId, upload.id));
    if (done.motorsAdded !== preview.result.motorsAdded) throw new Error('The commit added other motors than the preview said.');
  }
  const first = measures.slice(0, 3).reduce((sum, { value }) => sum + value, 0);
  return [...measures, { what: 'import of 10,000 motors with preview', value: first, unit: 's', bar: '10 s' }];
}

async function commit(studyId: string, uploadId: string) {
  const reading = await loadReading(studyId, uploadId);
  if (reading === undefined) throw new Error('The upload is gone.');
  const { about, recipe, sample } = reading;
  const file = { path: uploadFile(uploadId), name: about.fileName, bytes: about.bytes, hash: about.hash };
  const order = { studyId, file, kind: sample.kind, recipe, conflicts: 'sheet', who: 'Perf' } as const;
  const done = await commitImport(database(), order);
  if (!done.ok) throw new Error(done.problem.text);
  return done.value;
}
