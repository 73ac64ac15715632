/** `npm run backup`: writes a checked copy of the database into the backup folder, whether the program runs or not. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import { backUp } from '@/lib/platform/backup-file';
import { readEnv } from '@/lib/platform/env';
import { readMigrations } from '@/lib/platform/migrations';

const env = readEnv();
if (!existsSync(env.databaseFile)) {
  console.error(`There is no database in ${env.dataFolder}. Start the program once, or set LOSSBOOK_DATA.`);
  process.exit(1);
}
const done = backUp(env.databaseFile, env.backupFolder, readMigrations(env.migrationsFolder), 'manual');
if (done.ok) console.log(path.join(env.backupFolder, done.value.name));
else {
  console.error(`${done.problem.text}\n${done.problem.remedy}`);
  process.exitCode = 1;
}
