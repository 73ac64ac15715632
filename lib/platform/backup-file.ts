/**
 * Copies of the database as single files: made while the program runs, checked before they count, and tried before they
 * replace anything.
 */
import { closeSync, existsSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { messageOf, ok, type Result, refuse } from './errors';
import { type Migration, type MigrationState, stateOf } from './migrations';
import { openSqlite, type Sqlite } from './sqlite';

/** What a database file holds. */
interface Inspection {
  readonly migrations: MigrationState;
  /** Rows by table, without the migration record. */
  readonly rows: Readonly<Record<string, number>>;
}

export interface BackupEntry {
  readonly name: string;
  readonly bytes: number;
  /** When the file was written. */
  readonly at: Date;
}

/** The tables of the schema `main` or of an attached one, without SQLite's own and the migration record. */
export function tableNames(db: Sqlite, schema: 'main' | 'incoming' = 'main'): string[] {
  return db
    .all(`SELECT name FROM ${schema}.sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite!_%' ESCAPE '!' ORDER BY name`)
    .map((row) => String(row.name))
    .filter((name) => name !== '_prisma_migrations');
}

/** A name as SQL writes it. */
export function quoted(name: string): string {
  return `"${name.replaceAll('"', '""')}"`;
}

/**
 * Opens a file and looks whether it is a sound database of this program: pages, foreign keys, migrations, rows.
 * A database of an older version is sound; what is pending stands in the result.
 */
export function inspectDatabase(file: string, migrations: readonly Migration[]): Result<Inspection> {
  if (!existsSync(file)) return refuse('no-file', `There is no file ${path.basename(file)}.`, 'Look at the name of the file.');
  let db: Sqlite | undefined;
  try {
    db = openSqlite(file, { readonly: true });
    const faults = db.all('PRAGMA integrity_check').map((row) => String(Object.values(row)[0]));
    if (faults.length !== 1 || faults[0] !== 'ok') {
      return refuse('database-damaged', `The database is damaged: ${faults.slice(0, 3).join('; ')}.`, 'Use another backup.');
    }
    const broken = db.all('PRAGMA foreign_key_check').length;
    if (broken > 0) return refuse('database-damaged', `In the database ${broken} rows point at nothing.`, 'Use another backup.');
    const state = stateOf(db, migrations);
    if (state.applied.length === 0) {
      return refuse(
        'not-ours',
        'The file is a database, but not one of this program.',
        'Choose a file that this program wrote as a backup.',
      );
    }
    const problem = state.problems[0];
    if (problem !== undefined) {
      return refuse('other-version', problem, 'Restore it with the version of the program that wrote it, or a newer one.');
    }
    const rows: Record<string, number> = {};
    for (const name of tableNames(db)) rows[name] = Number(db.all(`SELECT count(*) AS n FROM ${quoted(name)}`)[0]?.n ?? 0);
    return ok({ migrations: state, rows });
  } catch (error) {
    const message = messageOf(error);
    if (/malformed|corrupt/i.test(message)) {
      return refuse('database-damaged', `The database is damaged (${message}).`, 'Use another backup.');
    }
    return refuse(
      'not-a-database',
      `The file cannot be read as a database (${messageOf(error)}).`,
      'Choose a file that this program wrote as a backup.',
    );
  } finally {
    db?.close();
  }
}

function flush(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** A time as it stands in file names: `20260314T093000Z`. */
export function fileStamp(at: Date): string {
  return at.toISOString().replace(/[-:]/g, '').replace(/\.\d+/, '');
}

function freeName(folder: string, stem: string): string {
  for (let n = 1; ; n++) {
    const name = n === 1 ? `${stem}.db` : `${stem}-${n}.db`;
    if (!existsSync(path.join(folder, name))) return name;
  }
}

/**
 * Writes a copy of the database, as it stands at this moment, into the backup folder. The copy is checked and flushed to the
 * disk before it gets its name, so a file with a backup's name is a whole one.
 * @param reason a word for the file's name, such as `manual` or `before-update`.
 */
export function backUp(
  databaseFile: string,
  folder: string,
  migrations: readonly Migration[],
  reason: string,
  at: Date = new Date(),
): Result<BackupEntry> {
  mkdirSync(folder, { recursive: true });
  const name = freeName(folder, `lossbook-${fileStamp(at)}-${reason}`);
  // The bundler would take the backups for files of the program and follow the whole folder.
  const target = path.join(/* turbopackIgnore: true */ folder, name);
  const partial = `${target}.partial`;
  rmSync(partial, { force: true });
  try {
    const db = openSqlite(databaseFile);
    try {
      db.run('VACUUM INTO ?', partial);
    } finally {
      db.close();
    }
    const seen = inspectDatabase(partial, migrations);
    if (!seen.ok) return seen;
    flush(partial);
    renameSync(partial, target);
    const stat = statSync(/* turbopackIgnore: true */ target);
    return ok({ name, bytes: stat.size, at: stat.mtime });
  } catch (error) {
    return refuse(
      'backup-failed',
      `The backup could not be written (${messageOf(error)}).`,
      'Look whether the disk is full and the data folder can be written to.',
    );
  } finally {
    rmSync(partial, { force: true });
  }
}

/** The backups in a folder, newest first. */
export function listBackups(folder: string): BackupEntry[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter(isBackupName)
    .map((name) => {
      const stat = statSync(path.join(folder, name));
      return { name, bytes: stat.size, at: stat.mtime };
    })
    .sort((a, b) => b.at.getTime() - a.at.getTime() || (a.name < b.name ? 1 : -1));
}

/** Whether a name is that of a file in the backup folder, and no path that leads elsewhere. */
export function isBackupName(name: string): boolean {
  return /^lossbook-[A-Za-z0-9-]+\.db$/.test(name);
}
