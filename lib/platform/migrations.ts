/**
 * Applies the migrations in `prisma/migrations`, oldest first, each in a transaction of its own.
 *
 * Applied files are recorded with their SHA-256; a file that was edited afterwards, or a database that knows a migration this
 * program does not, is refused. Works on libsql's synchronous interface, because foreign keys must be switched off outside the
 * transaction while tables are rebuilt, and are checked before it is committed.
 */
import { createHash, randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { openSqlite, type Sqlite } from './sqlite';

export interface Migration {
  readonly name: string;
  readonly sql: string;
  /** SHA-256 of the file, in hex. */
  readonly checksum: string;
}

export interface MigrationState {
  readonly applied: readonly string[];
  readonly pending: readonly string[];
  /** Sentences; empty when sound. */
  readonly problems: readonly string[];
}

/** Raised when the recorded migrations and the files disagree, or when one fails; nothing of the failing one is kept. */
export class MigrationRefused extends Error {
  override readonly name = 'MigrationRefused';
}

const RECORD = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME, "migration_name" TEXT NOT NULL,
  "logs" TEXT, "rolled_back_at" DATETIME, "started_at" DATETIME NOT NULL DEFAULT current_timestamp,
  "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`;

/** Reads `<folder>/<name>/migration.sql` in order of name. */
export function readMigrations(folder: string): Migration[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && existsSync(path.join(folder, entry.name, 'migration.sql')))
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(path.join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

function hasRecord(db: Sqlite): boolean {
  return db.all("SELECT name FROM sqlite_master WHERE type = 'table' AND name = '_prisma_migrations'").length > 0;
}

/** Compares what an open database has recorded with the files. */
export function stateOf(db: Sqlite, migrations: readonly Migration[]): MigrationState {
  const recorded = hasRecord(db)
    ? db.all(
        'SELECT migration_name AS name, checksum FROM "_prisma_migrations" WHERE rolled_back_at IS NULL ORDER BY migration_name',
      )
    : [];
  const known = new Map(migrations.map((migration) => [migration.name, migration]));
  const applied: string[] = [];
  const problems: string[] = [];
  for (const row of recorded) {
    const name = String(row.name);
    const migration = known.get(name);
    applied.push(name);
    if (migration === undefined)
      problems.push(`The database has the migration ${name}, which this version does not know: it was made by a newer version.`);
    else if (migration.checksum !== row.checksum) problems.push(`The migration ${name} was edited after it had been applied.`);
  }
  const done = new Set(applied);
  const pending = migrations.filter((migration) => !done.has(migration.name)).map((migration) => migration.name);
  const last = applied.at(-1);
  const late = last === undefined ? undefined : pending.find((name) => name < last);
  if (late !== undefined) problems.push(`The migration ${late} is older than ${last ?? ''}, which has been applied already.`);
  return { applied, pending, problems };
}

function applyOne(db: Sqlite, migration: Migration): void {
  db.exec('PRAGMA foreign_keys = OFF');
  db.exec('BEGIN IMMEDIATE');
  try {
    // Another process may have been first while this one waited for the lock.
    const there = db.all('SELECT id FROM "_prisma_migrations" WHERE migration_name = ?', migration.name);
    if (there.length === 0) {
      db.exec(migration.sql);
      const broken = db.all('PRAGMA foreign_key_check');
      if (broken.length > 0) throw new Error(`${broken.length} rows would point at nothing`);
      db.run(
        'INSERT INTO "_prisma_migrations" (id, checksum, finished_at, migration_name, applied_steps_count) VALUES (?, ?, ?, ?, 1)',
        randomUUID(),
        migration.checksum,
        new Date().toISOString(),
        migration.name,
      );
    }
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction()) db.exec('ROLLBACK');
    const why = error instanceof Error ? error.message : String(error);
    throw new MigrationRefused(`The migration ${migration.name} failed and was taken back: ${why}`);
  } finally {
    db.exec('PRAGMA foreign_keys = ON');
  }
}

/**
 * Applies what is pending to the database file, making it if there is none.
 * @returns the names of the migrations applied now.
 * @throws MigrationRefused when files and record disagree, or one fails.
 */
export function applyMigrations(file: string, migrations: readonly Migration[]): string[] {
  const db = openSqlite(file);
  try {
    db.exec('PRAGMA journal_mode = WAL');
    db.exec(RECORD);
    const state = stateOf(db, migrations);
    if (state.problems.length > 0) throw new MigrationRefused(state.problems.join(' '));
    const pending = new Set(state.pending);
    for (const migration of migrations) if (pending.has(migration.name)) applyOne(db, migration);
    return [...pending];
  } finally {
    db.close();
  }
}
