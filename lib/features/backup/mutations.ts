import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type BackupEntry, backUp, fileStamp, isBackupName } from '@/lib/platform/backup-file';
import { readEnv } from '@/lib/platform/env';
import { messageOf, type Result, refuse } from '@/lib/platform/errors';
import { readMigrations } from '@/lib/platform/migrations';
import { type Restored, restoreBackup } from '@/lib/platform/restore-file';

/** Writes a checked copy of the running database. */
export function makeBackup(): Result<BackupEntry> {
  const env = readEnv();
  return backUp(env.databaseFile, env.backupFolder, readMigrations(env.migrationsFolder), 'manual');
}

/**
 * Replaces what is in the running database by a backup that has been tried, in one transaction; the pages that are open see the
 * old book or the new one. The replaced database is kept among the backups.
 */
export function restoreNamed(name: string): Result<Restored> {
  const env = readEnv();
  if (!isBackupName(name)) return refuse('no-file', 'There is no backup of that name.', 'Choose a backup from the list.');
  return restoreBackup(path.join(env.backupFolder, name), {
    databaseFile: env.databaseFile,
    backupFolder: env.backupFolder,
    migrations: readMigrations(env.migrationsFolder),
    inUse: true,
  });
}

/** Restores a file that was sent from elsewhere; it stays among the backups, unless it is refused. */
export function restoreSent(content: Uint8Array): Result<Restored> {
  const { backupFolder } = readEnv();
  const name = `lossbook-${fileStamp(new Date())}-sent-${process.hrtime.bigint().toString(36)}.db`;
  const file = path.join(backupFolder, name);
  try {
    mkdirSync(backupFolder, { recursive: true });
    writeFileSync(`${file}.partial`, content);
    renameSync(`${file}.partial`, file);
  } catch (error) {
    rmSync(`${file}.partial`, { force: true });
    return refuse(
      'data-folder',
      `The file could not be kept (${messageOf(error)}).`,
      'Look whether the disk is full and the data folder can be written to.',
    );
  }
  const done = restoreNamed(name);
  if (!done.ok) rmSync(file, { force: true });
  return done;
}
