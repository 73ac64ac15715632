import { createReadStream, existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { Readable } from 'node:stream';
import { type BackupEntry, isBackupName, listBackups } from '@/lib/platform/backup-file';
import { readEnv } from '@/lib/platform/env';

/** The backups, newest first, and the folder they lie in. */
export function loadBackups(): { readonly folder: string; readonly backups: readonly BackupEntry[] } {
  const { backupFolder } = readEnv();
  return { folder: backupFolder, backups: listBackups(backupFolder) };
}

/** A backup as a stream for downloading; `undefined` when there is none of that name. */
export function openBackup(name: string): { readonly bytes: number; readonly body: ReadableStream } | undefined {
  const file = path.join(readEnv().backupFolder, name);
  if (!isBackupName(name) || !existsSync(file)) return undefined;
  const body = Readable.toWeb(createReadStream(file));
  return { bytes: statSync(file).size, body: body as ReadableStream };
}
