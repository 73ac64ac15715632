/** What happens to the database before the program serves: folder, backup, migrations. */
import { accessSync, constants, existsSync, mkdirSync, statfsSync } from 'node:fs';
import { backUp, inspectDatabase, tableNames } from './backup-file';
import type { Env } from './env';
import { messageOf, ok, type Result, refuse } from './errors';
import { applyMigrations, MigrationRefused, readMigrations } from './migrations';
import { openSqlite } from './sqlite';

/** File system types of network shares (Linux `statfs`): NFS, SMB, CIFS, SMB2. SQLite's locks do not hold on them. */
const NETWORK_TYPES = new Set([0x6969, 0x517b, 0xff534d42, 0xfe534d42]);

/** Whether a folder lies on a network share; `false` where the system does not say. */
function onNetworkShare(folder: string): boolean {
  try {
    return NETWORK_TYPES.has(statfsSync(folder).type >>> 0);
  } catch {
    return false;
  }
}

type Place = Pick<Env, 'dataFolder' | 'databaseFile' | 'backupFolder' | 'migrationsFolder'>;

function prepareFolder(folder: string): Result<undefined> {
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.R_OK | constants.W_OK);
  } catch (error) {
    return refuse(
      'data-folder',
      `The data folder ${folder} cannot be used (${messageOf(error)}).`,
      'Set LOSSBOOK_DATA to a folder that may be written to.',
    );
  }
  if (onNetworkShare(folder)) {
    return refuse(
      'network-share',
      `The data folder ${folder} lies on a network share, where the database could be damaged.`,
      'Set LOSSBOOK_DATA to a folder on a disk of this computer.',
    );
  }
  return ok(undefined);
}

/**
 * Makes the database if there is none, or brings it up to this version after a checked backup.
 * @returns what was done, in sentences; empty when there was nothing to do.
 */
export function prepareDatabase(place: Place, now: Date = new Date()): Result<readonly string[]> {
  const folder = prepareFolder(place.dataFolder);
  if (!folder.ok) return folder;
  const migrations = readMigrations(place.migrationsFolder);
  const said: string[] = [];
  const isNew = !existsSync(place.databaseFile);
  if (!isNew) {
    const seen = inspectDatabase(place.databaseFile, migrations);
    if (!seen.ok && seen.problem.code !== 'not-ours') {
      return refuse(
        seen.problem.code,
        seen.problem.text,
        `Nothing was changed. Restore a backup from ${place.backupFolder} with \`npm run restore -- FILE\`, or use the version of the program that wrote it.`,
      );
    }
    const filled = seen.ok && Object.values(seen.value.rows).some((count) => count > 0);
    if (seen.ok && seen.value.migrations.pending.length > 0 && filled) {
      const copy = backUp(place.databaseFile, place.backupFolder, migrations, 'before-update', now);
      if (!copy.ok) return copy;
      said.push(`The database was backed up before its update: ${copy.value.name}.`);
    }
    // A start that was cut off before the first migration leaves an empty file, which is filled now; anything else is not touched.
    if (!seen.ok && !isEmpty(place.databaseFile)) return seen;
  }
  try {
    const applied = applyMigrations(place.databaseFile, migrations);
    if (isNew) said.push('The database was made.');
    else if (applied.length > 0) said.push(`The database was updated (${applied.join(', ')}).`);
    return ok(said);
  } catch (error) {
    if (error instanceof MigrationRefused)
      return refuse(
        'migration-refused',
        error.message,
        'Nothing was changed by it. Use the version of the program that wrote the database, or report the fault.',
      );
    throw error;
  }
}

function isEmpty(file: string): boolean {
  const db = openSqlite(file, { readonly: true });
  try {
    return tableNames(db).length === 0;
  } finally {
    db.close();
  }
}
