import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { listBackups } from '@/lib/platform/backup-file';
import { applyMigrations, type Migration, MigrationRefused, readMigrations, stateOf } from '@/lib/platform/migrations';
import { prepareDatabase } from '@/lib/platform/prepare-database';
import { openSqlite } from '@/lib/platform/sqlite';
import { diffToSchema } from '@/scripts/schema-engine';
import { temporaryFolders } from './temp-folder';

const folder = temporaryFolders();
const MIGRATIONS = path.resolve('prisma/migrations');
const SCHEMA = path.resolve('prisma/schema.prisma');

function place() {
  const root = folder();
  const migrationsFolder = path.join(root, 'migrations');
  cpSync(MIGRATIONS, migrationsFolder, { recursive: true });
  return {
    dataFolder: path.join(root, 'data'),
    databaseFile: path.join(root, 'data', 'lossbook.db'),
    backupFolder: path.join(root, 'data', 'backups'),
    migrationsFolder,
  };
}

function addMigration(migrationsFolder: string, name: string, sql: string): void {
  mkdirSync(path.join(migrationsFolder, name));
  writeFileSync(path.join(migrationsFolder, name, 'migration.sql'), sql);
}

function query(file: string, sql: string) {
  const db = openSqlite(file);
  try {
    return db.all(sql);
  } finally {
    db.close();
  }
}

function stateOfFile(file: string, migrations: readonly Migration[]) {
  const db = openSqlite(file, { readonly: true });
  try {
    return stateOf(db, migrations);
  } finally {
    db.close();
  }
}

const STUDY = `INSERT INTO "Study" (id, name, settings, updatedAt) VALUES ('s', 'Invented works', '{}', '2026-01-01T00:00:00.000+00:00')`;

function run(file: string, sql: string): void {
  const db = openSqlite(file);
  try {
    db.exec(sql);
  } finally {
    db.close();
  }
}

test('the migrations add up to the schema: the schema engine finds no difference', async () => {
  const file = path.join(folder(), 'book.db');
  applyMigrations(file, readMigrations(MIGRATIONS));
  expect(await diffToSchema(file, SCHEMA)).toBe('');
});

test('the comparison with the schema sees a column that is missing', async () => {
  const file = path.join(folder(), 'book.db');
  applyMigrations(file, readMigrations(MIGRATIONS));
  run(file, 'ALTER TABLE "Study" DROP COLUMN "version"');
  expect(await diffToSchema(file, SCHEMA)).toContain('version');
});

test('a fresh database gets every migration, write-ahead logging, and nothing the second time', () => {
  const file = path.join(folder(), 'book.db');
  const migrations = readMigrations(MIGRATIONS);
  expect(migrations.length).toBeGreaterThan(0);
  expect(applyMigrations(file, migrations)).toEqual(migrations.map((migration) => migration.name));
  expect(applyMigrations(file, migrations)).toEqual([]);
  expect(stateOfFile(file, migrations)).toEqual({ applied: migrations.map((m) => m.name), pending: [], problems: [] });
  expect(query(file, 'PRAGMA journal_mode')).toEqual([{ journal_mode: 'wal' }]);
});

test('an evaluation from before runs lost their freezing columns keeps its results', () => {
  const file = path.join(folder(), 'book.db');
  const migrations = readMigrations(MIGRATIONS);
  const at = migrations.findIndex(({ name }) => name.endsWith('_drop-frozen-runs'));
  applyMigrations(file, migrations.slice(0, at));
  run(file, STUDY);
  run(
    file,
    `INSERT INTO "EvaluationRun" (id, studyId, engineVersion, tableEditions, settings, settingsHash, inputsHash, state, progressDone)
     VALUES ('r', 's', '0.1.0', '[]', '{}', 'a', 'b', 'done', 1)`,
  );
  run(
    file,
    `INSERT INTO "MotorEvaluation" (id, studyId, runId, siteName, tag, naturalKey, inputHash, ratedPowerKw, trust, action, timing, "option", rankGroup, rank, details)
     VALUES ('e', 's', 'r', '', 'P-1', 'p1', 'h', 37, 'sound', 'keep', 'now', 'keep', 0, 1, x'00')`,
  );
  expect(query(file, 'SELECT frozen FROM "EvaluationRun"')).toEqual([{ frozen: 0 }]);
  applyMigrations(file, migrations);
  const [kept] = query(file, 'SELECT * FROM "EvaluationRun"');
  expect(kept).toMatchObject({ id: 'r', settingsHash: 'a', inputsHash: 'b', state: 'done', progressDone: 1 });
  expect(Object.keys(kept ?? {}).filter((name) => name.startsWith('frozen') || name === 'inputs')).toEqual([]);
  expect(query(file, 'SELECT id, runId, tag FROM "MotorEvaluation"')).toEqual([{ id: 'e', runId: 'r', tag: 'P-1' }]);
});

test('the schema keeps to what both databases can do: no enum, no list, no Json', () => {
  const schema = readFileSync(SCHEMA, 'utf8').replace(/\/\/.*$/gm, '');
  expect(schema).not.toMatch(/^\s*enum\s/m);
  const models = [...schema.matchAll(/^model (\w+) \{([^}]*)\}/gm)];
  const names = models.map((model) => model[1]);
  expect(names.length).toBeGreaterThan(10);
  for (const [, name, body] of models) {
    for (const line of (body ?? '').split('\n')) {
      const type = /^\s*\w+\s+(\w+)(\[\])?/.exec(line);
      if (type === null || line.trim().startsWith('@@')) continue;
      if (type[2] !== undefined) expect(names, `${name}: ${line}`).toContain(type[1]);
      expect(type[1], `${name}: ${line}`).not.toBe('Json');
      if (/minor/i.test(line)) expect(type[1], `${name}: money is whole: ${line}`).toBe('BigInt');
    }
    if (name !== 'Study') expect(body, `${name} belongs to a study`).toMatch(/study\s+Study\s+@relation\(.*onDelete: Cascade\)/);
  }
});

test('a migration that was edited after it had been applied is refused', () => {
  const p = place();
  expect(prepareDatabase(p).ok).toBe(true);
  const name = readMigrations(p.migrationsFolder)[0]?.name ?? '';
  const file = path.join(p.migrationsFolder, name, 'migration.sql');
  writeFileSync(file, `${readFileSync(file, 'utf8')}\n-- a late thought\n`);
  const again = prepareDatabase(p);
  expect(again).toMatchObject({ ok: false, problem: { code: 'other-version' } });
  expect(() => applyMigrations(p.databaseFile, readMigrations(p.migrationsFolder))).toThrow(MigrationRefused);
});

test('a database of a newer version is refused', () => {
  const p = place();
  addMigration(p.migrationsFolder, '29990101000000_later', 'CREATE TABLE "Later" (id TEXT PRIMARY KEY)');
  expect(prepareDatabase(p).ok).toBe(true);
  const older = prepareDatabase({ ...p, migrationsFolder: MIGRATIONS });
  expect(older).toMatchObject({ ok: false, problem: { code: 'other-version', text: expect.stringContaining('newer version') } });
});

test('a failing migration is taken back whole, and the ones before it stand', () => {
  const p = place();
  prepareDatabase(p);
  addMigration(p.migrationsFolder, '29990101000000_good', 'CREATE TABLE "Good" (id TEXT PRIMARY KEY)');
  addMigration(
    p.migrationsFolder,
    '29990102000000_bad',
    'CREATE TABLE "Half" (id TEXT PRIMARY KEY);\nINSERT INTO "Nowhere" VALUES (1);',
  );
  const result = prepareDatabase(p);
  expect(result).toMatchObject({
    ok: false,
    problem: { code: 'migration-refused', text: expect.stringContaining('29990102000000_bad') },
  });
  const tables = query(p.databaseFile, "SELECT name FROM sqlite_master WHERE name IN ('Good', 'Half')");
  expect(tables).toEqual([{ name: 'Good' }]);
  expect(stateOfFile(p.databaseFile, readMigrations(p.migrationsFolder)).pending).toEqual(['29990102000000_bad']);
});

test('a migration that would leave rows pointing at nothing is taken back', () => {
  const p = place();
  prepareDatabase(p);
  run(p.databaseFile, STUDY);
  run(p.databaseFile, `INSERT INTO "Site" (id, studyId, name) VALUES ('a', 's', 'North')`);
  addMigration(p.migrationsFolder, '29990101000000_orphans', `DELETE FROM "Study" WHERE id = 's'`);
  expect(prepareDatabase(p)).toMatchObject({ ok: false, problem: { text: expect.stringContaining('point at nothing') } });
  expect(query(p.databaseFile, 'SELECT id FROM "Study"')).toEqual([{ id: 's' }]);
});

test('before an update a database with rows is copied and the copy checked; an empty one is not', () => {
  const p = place();
  prepareDatabase(p);
  addMigration(p.migrationsFolder, '29990101000000_first', 'CREATE TABLE "First" (id TEXT PRIMARY KEY)');
  expect(prepareDatabase(p).ok).toBe(true);
  expect(listBackups(p.backupFolder)).toEqual([]);
  run(p.databaseFile, STUDY);
  addMigration(p.migrationsFolder, '29990102000000_second', 'CREATE TABLE "Second" (id TEXT PRIMARY KEY)');
  expect(prepareDatabase(p, new Date('2026-03-14T09:30:00Z')).ok).toBe(true);
  const [backup, ...others] = listBackups(p.backupFolder);
  expect(others).toEqual([]);
  expect(backup?.name).toBe('lossbook-20260314T093000Z-before-update.db');
  const copy = path.join(p.backupFolder, backup?.name ?? '');
  expect(query(copy, 'SELECT name FROM "Study"')).toEqual([{ name: 'Invented works' }]);
  expect(query(copy, "SELECT name FROM sqlite_master WHERE name = 'Second'")).toEqual([]);
});

test('a file that is no database is left as it is', () => {
  const p = place();
  mkdirSync(p.dataFolder, { recursive: true });
  writeFileSync(p.databaseFile, 'a letter to somebody');
  expect(prepareDatabase(p)).toMatchObject({ ok: false, problem: { code: 'not-a-database' } });
  expect(readFileSync(p.databaseFile, 'utf8')).toBe('a letter to somebody');
});

test("another program's database is left as it is", () => {
  const p = place();
  mkdirSync(p.dataFolder, { recursive: true });
  run(p.databaseFile, 'CREATE TABLE "Letters" (id TEXT)');
  expect(prepareDatabase(p)).toMatchObject({ ok: false, problem: { code: 'not-ours' } });
  expect(query(p.databaseFile, "SELECT name FROM sqlite_master WHERE type = 'table'")).toEqual([{ name: 'Letters' }]);
  expect(existsSync(p.backupFolder)).toBe(false);
});
