/**
 * `npm run restore -- FILE`: tries the backup, keeps the current database aside, then replaces it. Also while the program runs,
 * if the current database is sound.
 */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { readEnv } from '@/lib/platform/env';
import { readMigrations } from '@/lib/platform/migrations';
import { restoreBackup } from '@/lib/platform/restore-file';
import { runningServers } from '@/lib/platform/running';

const given = process.argv[2];
if (given === undefined || process.argv.length > 3) {
  console.error('Say which backup to restore: npm run restore -- FILE');
  process.exit(2);
}
const env = readEnv();
// A bare name is one of the backup folder.
const inFolder = path.join(env.backupFolder, given);
const file = existsSync(given) ? path.resolve(given) : inFolder;
const done = restoreBackup(file, {
  databaseFile: env.databaseFile,
  backupFolder: env.backupFolder,
  migrations: readMigrations(env.migrationsFolder),
  inUse: runningServers(env.dataFolder).length > 0,
});
if (done.ok) {
  const { Study: studies = 0, Motor: motors = 0, Reading: readings = 0 } = done.value.rows;
  console.log(`Restored: ${studies} studies, ${motors} motors, ${readings} readings.`);
  if (done.value.keptAside !== undefined) console.log(`The database it replaced is kept as ${done.value.keptAside}.`);
} else {
  console.error(`${done.problem.text}\n${done.problem.remedy}`);
  process.exitCode = 1;
}
