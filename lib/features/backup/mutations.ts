import path from 'node:path';
import { type BackupEntry, backUp, isBackupName } from '@/lib/platform/backup-file';
import { readEnv } from '@/lib/platform/env';
import { type Result, refuse } from '@/lib/platform/errors';
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
