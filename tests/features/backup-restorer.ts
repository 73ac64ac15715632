/** Restores a backup again and again, with a second study written in between, saying `restored` after each, until it is killed. */
import path from 'node:path';
import { readMigrations } from '@/lib/platform/migrations';
import { restoreBackup } from '@/lib/platform/restore-file';
import { openSqlite } from '@/lib/platform/sqlite';

const [, , data = '', name = ''] = process.argv;
const databaseFile = path.join(data, 'lossbook.db');
const backupFolder = path.join(data, 'backups');
const migrations = readMigrations('prisma/migrations');
for (;;) {
  const done = restoreBackup(path.join(backupFolder, name), { databaseFile, backupFolder, migrations, inUse: true });
  if (!done.ok) throw new Error(done.problem.text);
  process.stdout.write('restored\n');
  const db = openSqlite(databaseFile);
  db.exec(
    `INSERT OR IGNORE INTO "Study" (id, name, settings, updatedAt) VALUES ('second', 'second', '{}', '2026-01-01T00:00:00.000+00:00')`,
  );
  db.close();
}
