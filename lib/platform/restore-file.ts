/** Puts a backup in the place of the current database, after it has been tried. */
import { copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { backUp, fileStamp, inspectDatabase, quoted, tableNames } from './backup-file';
import { messageOf, ok, type Result, refuse } from './errors';
import { applyMigrations, type Migration } from './migrations';
import { openSqlite } from './sqlite';

export interface Restored {
  /** Rows by table, as they are now. */
  readonly rows: Readonly<Record<string, number>>;
  /** Where the database that was replaced is kept; absent when there was none. */
  readonly keptAside?: string;
}

interface RestorePlace {
  readonly databaseFile: string;
  readonly backupFolder: string;
  readonly migrations: readonly Migration[];
  /** Whether another process may have the database open; a damaged one is then left alone. */
  readonly inUse: boolean;
}

const PARTS = ['', '-wal', '-shm'] as const;

function removeDatabase(file: string): void {
  for (const part of PARTS) rmSync(`${file}${part}`, { force: true });
}

/**
 * Copies a file with its log, if it has one, and brings the copy up to this version.
 * @param whole where the tried copy is written, as one plain file that nothing has open.
 */
function trial(
  from: string,
  copy: string,
  whole: string,
  migrations: readonly Migration[],
): Result<Readonly<Record<string, number>>> {
  removeDatabase(copy);
  removeDatabase(whole);
  copyFileSync(from, copy);
  if (existsSync(`${from}-wal`)) copyFileSync(`${from}-wal`, `${copy}-wal`);
  const before = inspectDatabase(copy, migrations);
  if (!before.ok) return before;
  applyMigrations(copy, migrations);
  const db = openSqlite(copy);
  try {
    // A connection of this driver may outlive its closing, so the copy's own log cannot be folded in.
    db.run('VACUUM INTO ?', whole);
  } finally {
    db.close();
  }
  const after = inspectDatabase(whole, migrations);
  return after.ok ? ok(after.value.rows) : after;
}

/** Replaces all rows in one transaction: open connections, the running program's too, see the old book or the new one. */
function replaceRows(databaseFile: string, copy: string): void {
  const db = openSqlite(databaseFile);
  try {
    db.run('ATTACH DATABASE ? AS incoming', copy);
    db.exec('PRAGMA foreign_keys = OFF');
    db.exec('BEGIN IMMEDIATE');
    try {
      // Triggers keep what may never be rewritten or removed; here the whole book changes, and they come back with it.
      const triggers = db.all(`SELECT name, sql FROM main.sqlite_master WHERE type = 'trigger' ORDER BY name`);
      for (const { name } of triggers) db.exec(`DROP TRIGGER main.${quoted(String(name))}`);
      for (const table of tableNames(db)) db.exec(`DELETE FROM main.${quoted(table)}`);
      for (const table of tableNames(db, 'incoming')) {
        const columns = db.all(`PRAGMA main.table_info(${quoted(table)})`).map((row) => quoted(String(row.name)));
        db.exec(
          `INSERT INTO main.${quoted(table)} (${columns.join(', ')}) SELECT ${columns.join(', ')} FROM incoming.${quoted(table)}`,
        );
      }
      for (const { sql } of triggers) db.exec(String(sql));
      if (db.all('PRAGMA main.foreign_key_check').length > 0) throw new Error('rows would point at nothing');
      db.exec('COMMIT');
    } catch (error) {
      if (db.inTransaction()) db.exec('ROLLBACK');
      throw error;
    }
  } finally {
    db.close();
  }
}

/** Moves a database with its log out of the way. */
function moveAside(databaseFile: string, folder: string): string {
  mkdirSync(folder, { recursive: true });
  const target = path.join(folder, `replaced-${fileStamp(new Date())}.db`);
  for (const part of PARTS) if (existsSync(`${databaseFile}${part}`)) renameSync(`${databaseFile}${part}`, `${target}${part}`);
  return target;
}

/**
 * Restores a backup. First the file is copied and the copy is tried: opened, checked page by page, its migrations recognised and
 * completed, its rows counted. Then the current database is kept aside, and only then replaced: row by row in one transaction
 * where the current one is sound, as a whole file where it is damaged or missing.
 */
export function restoreBackup(from: string, place: RestorePlace): Result<Restored> {
  if (!existsSync(from)) return refuse('no-file', `There is no file ${path.basename(from)}.`, 'Look at the name of the file.');
  const folder = path.dirname(place.databaseFile);
  mkdirSync(folder, { recursive: true });
  const copy = path.join(folder, `restore-${process.pid}.partial`);
  const whole = path.join(folder, `restore-${process.pid}.whole.partial`);
  try {
    const tried = trial(from, copy, whole, place.migrations);
    if (!tried.ok) return tried;
    if (!existsSync(place.databaseFile)) {
      renameSync(whole, place.databaseFile);
      applyMigrations(place.databaseFile, place.migrations);
      return ok({ rows: tried.value });
    }
    const current = inspectDatabase(place.databaseFile, place.migrations);
    if (current.ok && current.value.migrations.pending.length === 0) {
      const kept = backUp(place.databaseFile, place.backupFolder, place.migrations, 'before-restore');
      if (!kept.ok) return kept;
      replaceRows(place.databaseFile, whole);
      return ok({ rows: tried.value, keptAside: path.join(place.backupFolder, kept.value.name) });
    }
    if (place.inUse) {
      return refuse(
        'in-use',
        'The current database cannot be replaced while the program runs, because it is damaged or not up to date.',
        'Stop the program and run `npm run restore -- FILE`.',
      );
    }
    const keptAside = moveAside(place.databaseFile, place.backupFolder);
    renameSync(whole, place.databaseFile);
    // Opens it, and switches it to write-ahead logging.
    applyMigrations(place.databaseFile, place.migrations);
    return ok({ rows: tried.value, keptAside });
  } catch (error) {
    return refuse(
      'restore-failed',
      `The backup could not be restored; nothing was changed (${messageOf(error)}).`,
      'Look whether the disk is full and the data folder can be written to.',
    );
  } finally {
    removeDatabase(copy);
    removeDatabase(whole);
  }
}
