import { spawn } from 'node:child_process';
import { afterEach, expect, test } from 'vitest';
import { inspectDatabase } from '@/lib/platform/backup-file';
import { openDatabase } from '@/lib/platform/db';
import { readMigrations } from '@/lib/platform/migrations';
import { imported, newStudy, sheetFile } from './support/import-sheet';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase | undefined;
afterEach(async () => {
  await temporary?.remove();
});

const ROWS = 1_600;
const HEAD = 'tag,site,rated_power_kw,rated_voltage_v,rated_current_a,taken_at,input_power_kw,colour';
const SHEET = [
  HEAD,
  ...Array.from({ length: ROWS }, (_, at) => `M-${at},North,30,460,${40 + (at % 9)},2025-01-01,20.5,blue`),
].join('\n');
/** Changes motors that are there, and adds others. */
const LATER = [HEAD, ...Array.from({ length: ROWS }, (_, at) => `M-${2 * at},North,30,460,50,2025-06-01,21.5,green`)].join('\n');

function killWhileHolding(args: readonly string[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'tests/features/import-writer.ts', ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes('holding')) child.kill('SIGKILL');
    });
    child.stderr.on('data', (chunk: Buffer) => {
      said += chunk.toString();
    });
    child.on('exit', (_, signal) => (signal === 'SIGKILL' ? resolve() : reject(new Error(`It ended by itself: ${said}`))));
  });
}

test.each([
  ['the new motors', 1],
  ['the changed plates', 4],
  ['the first part of the history', 7],
])('kill -9 inside the transaction, after %s, leaves the state before, and the import can be repeated', async (_, statements) => {
  temporary = temporaryDatabase();
  const { env } = temporary;
  const studyId = await newStudy(temporary.db, 'killed');
  await imported(temporary.db, studyId, SHEET);
  const counts = async () => {
    const db = openDatabase(env.databaseFile);
    const where = { studyId };
    const found = await Promise.all([
      db.read.motor.count({ where }),
      db.read.motor.count({ where: { studyId, ratedCurrentA: 50 } }),
      db.read.reading.count({ where }),
      db.read.importBatch.count({ where }),
      db.read.changeEvent.count({ where }),
    ]);
    await db.close();
    return found;
  };
  const before = await counts();
  await killWhileHolding([env.databaseFile, studyId, sheetFile(LATER), String(statements)]);
  expect(inspectDatabase(env.databaseFile, readMigrations(env.migrationsFolder))).toMatchObject({ ok: true });
  expect(await counts()).toEqual(before);
  const again = await imported(temporary.db, studyId, LATER);
  expect(again).toMatchObject({ motorsAdded: ROWS / 2, motorsChanged: ROWS / 2, readingsAdded: ROWS });
});
