import { spawn } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import path from 'node:path';
import { afterEach, expect, test, vi } from 'vitest';
import { loadBackups, openBackup } from '@/lib/features/backup/loaders';
import { makeBackup, restoreNamed, restoreSent } from '@/lib/features/backup/mutations';
import { restoreForm, sentForm } from '@/lib/features/backup/schema';
import { inspectDatabase } from '@/lib/platform/backup-file';
import { openDatabase } from '@/lib/platform/db';
import { applyMigrations, readMigrations } from '@/lib/platform/migrations';
import { restoreBackup } from '@/lib/platform/restore-file';
import { openSqlite } from '@/lib/platform/sqlite';
import { temporaryFolders } from '../platform/temp-folder';

const folder = temporaryFolders();
const MIGRATIONS = readMigrations('prisma/migrations');

afterEach(() => vi.unstubAllEnvs());

/** A data folder with a book of one study of the given name, made the one that the program uses. */
function book(name: string) {
  const data = folder();
  vi.stubEnv('LOSSBOOK_DATA', data);
  const place = {
    databaseFile: path.join(data, 'lossbook.db'),
    backupFolder: path.join(data, 'backups'),
    migrations: MIGRATIONS,
  };
  applyMigrations(place.databaseFile, MIGRATIONS);
  addStudy(place.databaseFile, name);
  return { data, ...place };
}

function addStudy(file: string, name: string): void {
  const db = openSqlite(file);
  try {
    db.run(
      `INSERT INTO "Study" (id, name, settings, updatedAt) VALUES (?, ?, '{}', '2026-01-01T00:00:00.000+00:00')`,
      name,
      name,
    );
    db.run('INSERT INTO "Site" (id, studyId, name) VALUES (?, ?, ?)', `site of ${name}`, name, 'North');
  } finally {
    db.close();
  }
}

function studies(file: string): string[] {
  const db = openSqlite(file);
  try {
    return db.all('SELECT name FROM "Study" ORDER BY name').map((row) => String(row.name));
  } finally {
    db.close();
  }
}

function nameOf(result: ReturnType<typeof makeBackup>): string {
  if (!result.ok) throw new Error(result.problem.text);
  return result.value.name;
}

test('a backup is a sound copy in one file, made while the program writes', async () => {
  const b = book('first');
  const db = openDatabase(b.databaseFile);
  const name = await db.write(async (tx) => {
    await tx.study.create({ data: { name: 'not yet committed', settings: '{}' } });
    return nameOf(makeBackup());
  });
  await db.close();
  expect(readdirSync(b.backupFolder)).toEqual([name]);
  expect(studies(path.join(b.backupFolder, name))).toEqual(['first']);
  expect(loadBackups().backups).toMatchObject([{ name, bytes: statSync(path.join(b.backupFolder, name)).size }]);
});

test('a restore brings back what was there, keeps aside what it replaces, and open connections see it', async () => {
  const b = book('first');
  const name = nameOf(makeBackup());
  addStudy(b.databaseFile, 'second');
  const db = openDatabase(b.databaseFile);
  expect(await db.read.study.count()).toBe(2);
  const done = restoreNamed(name);
  expect(done).toMatchObject({ ok: true, value: { rows: { Study: 1, Site: 1, Motor: 0 } } });
  expect((await db.read.study.findMany()).map((study) => study.name)).toEqual(['first']);
  await db.write((tx) => tx.study.create({ data: { name: 'third', settings: '{}' } }));
  await db.close();
  const kept = done.ok ? (done.value.keptAside ?? '') : '';
  expect(studies(kept)).toEqual(['first', 'second']);
  expect(studies(b.databaseFile)).toEqual(['first', 'third']);
  expect(inspectDatabase(b.databaseFile, MIGRATIONS).ok).toBe(true);
});

test('a restore waits its turn behind a writer', async () => {
  const b = book('first');
  const name = nameOf(makeBackup());
  const db = openDatabase(b.databaseFile);
  await db.write((tx) => tx.study.create({ data: { name: 'second', settings: '{}' } }));
  expect(restoreNamed(name).ok).toBe(true);
  expect(await db.read.study.count()).toBe(1);
  await db.close();
});

test('the rows of all tables come back equal, the history and compressed values too', async () => {
  const b = book('first');
  const db = openDatabase(b.databaseFile);
  const solution = await db.read.planSolution.create({ data: { studyId: 'first', result: new Uint8Array([0, 255, 7]) } });
  const event = {
    studyId: 'first',
    who: 'A. Nobody',
    subject: 'study',
    subjectId: 'first',
    subjectLabel: 'first',
    what: 'changed',
  };
  await db.read.changeEvent.create({ data: event });
  const before = [await db.read.planSolution.findMany(), await db.read.changeEvent.findMany(), await db.read.site.findMany()];
  const name = nameOf(makeBackup());
  await db.read.planSolution.delete({ where: { id: solution.id } });
  await db.read.changeEvent.deleteMany();
  expect(restoreNamed(name).ok).toBe(true);
  expect([await db.read.planSolution.findMany(), await db.read.changeEvent.findMany(), await db.read.site.findMany()]).toEqual(
    before,
  );
  await db.close();
});

test('a backup of an older version is brought up to this one before it replaces anything', () => {
  const b = book('first');
  const name = nameOf(makeBackup());
  const later = { name: '29990101000000_later', sql: 'ALTER TABLE "Study" ADD COLUMN "motto" TEXT', checksum: 'c' };
  const migrations = [...MIGRATIONS, later];
  applyMigrations(b.databaseFile, migrations);
  const done = restoreBackup(path.join(b.backupFolder, name), { ...b, migrations, inUse: true });
  expect(done).toMatchObject({ ok: true });
  const db = openSqlite(b.databaseFile);
  expect(db.all('SELECT name, motto FROM "Study"')).toEqual([{ name: 'first', motto: null }]);
  db.close();
  expect(inspectDatabase(b.databaseFile, migrations)).toMatchObject({
    ok: true,
    value: { migrations: { pending: [], problems: [] } },
  });
});

/** Damages a copy of a good backup in one way. */
const damages: readonly (readonly [string, string, (file: string) => void])[] = [
  ['no database at all', 'not-a-database', (file) => writeFileSync(file, 'a letter to somebody')],
  ['an empty file', 'not-ours', (file) => writeFileSync(file, '')],
  ['a file that was cut off', 'database-damaged', (file) => truncateSync(file, Math.floor(statSync(file).size / 8192) * 4096)],
  ['pages overwritten', 'database-damaged', overwritePages],
  ["another program's database", 'not-ours', otherProgram],
  ['a database of a newer version', 'other-version', newerVersion],
  ['rows that point at nothing', 'database-damaged', orphan],
];

function overwritePages(file: string): void {
  const bytes = readFileSync(file);
  for (let page = 2; page < bytes.length / 4096 - 1; page += 2) bytes.fill(0x5a, page * 4096, (page + 1) * 4096);
  writeFileSync(file, bytes);
}

function otherProgram(file: string): void {
  rmSync(file);
  const db = openSqlite(file);
  db.exec('CREATE TABLE "Letters" (id TEXT)');
  db.close();
}

function newerVersion(file: string): void {
  applyMigrations(file, [...MIGRATIONS, { name: '29990101000000_later', sql: 'CREATE TABLE "Later" (id TEXT)', checksum: 'c' }]);
}

function orphan(file: string): void {
  const db = openSqlite(file);
  db.exec('PRAGMA foreign_keys = OFF');
  db.exec(`INSERT INTO "Site" (id, studyId, name) VALUES ('x', 'nobody', 'South')`);
  db.close();
}

test.each(damages)('%s is refused, and nothing is touched', (_, code, damage) => {
  const b = book('first');
  const good = path.join(b.backupFolder, nameOf(makeBackup()));
  const bad = path.join(b.backupFolder, 'lossbook-bad.db');
  copyFileSync(good, bad);
  damage(bad);
  addStudy(b.databaseFile, 'second');
  expect(restoreNamed('lossbook-bad.db')).toMatchObject({ ok: false, problem: { code } });
  expect(studies(b.databaseFile)).toEqual(['first', 'second']);
  expect(readdirSync(b.data).filter((name) => name.includes('partial'))).toEqual([]);
});

test('a damaged database is replaced as a whole, but only while nobody has it open', () => {
  const b = book('first');
  const file = path.join(b.backupFolder, nameOf(makeBackup()));
  for (const end of ['-wal', '-shm']) rmSync(`${b.databaseFile}${end}`, { force: true });
  writeFileSync(b.databaseFile, 'x'.repeat(10_000));
  expect(restoreBackup(file, { ...b, inUse: true })).toMatchObject({ ok: false, problem: { code: 'in-use' } });
  const done = restoreBackup(file, { ...b, inUse: false });
  expect(done).toMatchObject({ ok: true, value: { rows: { Study: 1 } } });
  expect(studies(b.databaseFile)).toEqual(['first']);
  expect(readFileSync(done.ok ? (done.value.keptAside ?? '') : '', 'utf8')).toBe('x'.repeat(10_000));
});

test('a backup is restored where there is no database yet', () => {
  const b = book('first');
  const file = path.join(b.backupFolder, nameOf(makeBackup()));
  const elsewhere = folder();
  const place = {
    databaseFile: path.join(elsewhere, 'data', 'lossbook.db'),
    backupFolder: path.join(elsewhere, 'backups'),
    migrations: MIGRATIONS,
  };
  expect(restoreBackup(file, { ...place, inUse: false })).toMatchObject({ ok: true });
  expect(studies(place.databaseFile)).toEqual(['first']);
});

test('a file that is sent is tried, kept and restored; a bad one leaves nothing behind', () => {
  const b = book('first');
  const bytes = readFileSync(path.join(b.backupFolder, nameOf(makeBackup())));
  addStudy(b.databaseFile, 'second');
  expect(restoreSent(bytes)).toMatchObject({ ok: true });
  expect(studies(b.databaseFile)).toEqual(['first']);
  const before = readdirSync(b.backupFolder);
  expect(restoreSent(Buffer.from('a letter'))).toMatchObject({ ok: false });
  expect(readdirSync(b.backupFolder)).toEqual(before);
});

test('names that lead elsewhere are refused', () => {
  const b = book('first');
  for (const name of ['../lossbook.db', 'lossbook-../../x.db', '/etc/passwd', 'lossbook.db', 'lossbook-a.db/..', '']) {
    expect(restoreNamed(name), name).toMatchObject({ ok: false, problem: { code: 'no-file' } });
    expect(openBackup(name), name).toBeUndefined();
    expect(restoreForm.safeParse({ name, confirmed: 'yes' }).success, name).toBe(false);
  }
  expect(restoreForm.safeParse({ name: nameOf(makeBackup()), confirmed: 'yes' }).success).toBe(true);
  expect(restoreForm.safeParse({ name: 'lossbook-a.db' }).success).toBe(false);
  expect(sentForm.safeParse({ file: new File([], 'empty.db'), confirmed: 'yes' }).success).toBe(false);
  expect(existsSync(b.databaseFile)).toBe(true);
});

/** Runs a program until it has said `word` so many times, then kills it without warning. */
function killAfter(script: string, args: readonly string[], word: string, times: number): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', 'tsx', script, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    let wrong = '';
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      if (said.split(word).length > times) child.kill('SIGKILL');
    });
    child.stderr.on('data', (chunk: Buffer) => {
      wrong += chunk.toString();
    });
    child.on('exit', (_, signal) => (signal === 'SIGKILL' ? resolve(said) : reject(new Error(`It ended by itself: ${wrong}`))));
  });
}

test('kill -9 in the middle of writing loses nothing that was acknowledged and leaves no half of a transaction', async () => {
  const b = book('first');
  const said = await killAfter('tests/features/backup-writer.ts', [b.databaseFile], 'kept', 5);
  const acknowledged = said.split('kept').length - 1;
  const seen = inspectDatabase(b.databaseFile, MIGRATIONS);
  expect(seen).toMatchObject({ ok: true });
  const rows = seen.ok ? seen.value.rows : {};
  const written = (rows.Study ?? 0) - 1;
  // One more may have been committed before its acknowledgement came through.
  expect(written).toBeGreaterThanOrEqual(acknowledged);
  expect(rows.Site).toBe(1 + written * 200);
  expect(rows.ChangeEvent).toBe(written);
});

test('kill -9 while restoring leaves the old book or the new one', async () => {
  const b = book('first');
  const name = nameOf(makeBackup());
  addStudy(b.databaseFile, 'second');
  cpSync(path.join(b.backupFolder, name), path.join(b.data, 'copy.db'));
  mkdirSync(path.join(b.data, 'running'));
  await killAfter('tests/features/backup-restorer.ts', [b.data, name], 'restored', 3);
  expect(inspectDatabase(b.databaseFile, MIGRATIONS)).toMatchObject({ ok: true });
  expect([['first'], ['first', 'second']]).toContainEqual(studies(b.databaseFile));
  expect(restoreNamed(name).ok).toBe(true);
  expect(studies(b.databaseFile)).toEqual(['first']);
});
