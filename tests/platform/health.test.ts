import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { checkHealth } from '@/lib/platform/health';
import { applyMigrations, readMigrations } from '@/lib/platform/migrations';
import { openSqlite } from '@/lib/platform/sqlite';
import { checkTables } from '@/lib/reference/load';
import { temporaryFolders } from './temp-folder';

const folder = temporaryFolders();

/** A sound installation in a folder of its own. */
function installation() {
  const root = folder();
  const inputs = {
    databaseFile: path.join(root, 'lossbook.db'),
    migrationsFolder: path.join(root, 'migrations'),
    tables: path.join(root, 'reference-data'),
  };
  cpSync('prisma/migrations', inputs.migrationsFolder, { recursive: true });
  cpSync('reference-data', inputs.tables, { recursive: true });
  applyMigrations(inputs.databaseFile, readMigrations(inputs.migrationsFolder));
  const health = () =>
    checkHealth({
      ...inputs,
      checkTables: () => {
        const checked = checkTables(inputs.tables);
        return checked.ok ? undefined : checked.problem;
      },
    });
  return { ...inputs, health };
}

test('green when database, migrations and tables are sound', () => {
  const { health, migrationsFolder } = installation();
  expect(health()).toEqual({ status: 'ok', migrations: readMigrations(migrationsFolder).length });
});

test('red without a database', () => {
  const { health, databaseFile } = installation();
  rmSync(databaseFile);
  expect(health()).toMatchObject({ status: 'failed', part: 'database' });
});

test('red when the database file is something else', () => {
  const { health, databaseFile } = installation();
  for (const end of ['-wal', '-shm']) rmSync(`${databaseFile}${end}`, { force: true });
  writeFileSync(databaseFile, 'x'.repeat(8192));
  expect(health()).toMatchObject({ status: 'failed', part: 'database' });
});

test('red when a table of the database is missing', () => {
  const { health, databaseFile } = installation();
  const db = openSqlite(databaseFile);
  db.exec('PRAGMA foreign_keys = OFF');
  db.exec('DROP TABLE "Study"');
  db.close();
  expect(health()).toMatchObject({ status: 'failed', part: 'database' });
});

test('red when a migration is not applied, edited, or missing', () => {
  const { health, migrationsFolder } = installation();
  cpSync(
    path.join(migrationsFolder, readMigrations(migrationsFolder)[0]?.name ?? ''),
    path.join(migrationsFolder, '29990101000000_later'),
    {
      recursive: true,
    },
  );
  expect(health()).toMatchObject({
    status: 'failed',
    part: 'migrations',
    problem: expect.stringContaining('29990101000000_later'),
  });
  rmSync(path.join(migrationsFolder, '29990101000000_later'), { recursive: true });
  expect(health()).toMatchObject({ status: 'ok' });
  const name = readMigrations(migrationsFolder)[0]?.name ?? '';
  const file = path.join(migrationsFolder, name, 'migration.sql');
  writeFileSync(file, `${readFileSync(file, 'utf8')} `);
  expect(health()).toMatchObject({ status: 'failed', part: 'migrations', problem: expect.stringContaining('edited') });
  rmSync(path.join(migrationsFolder, name), { recursive: true });
  expect(health()).toMatchObject({ status: 'failed', part: 'migrations' });
});

test('red when a reference table is damaged or gone', () => {
  const { health, tables } = installation();
  rmSync(path.join(tables, 'prices'), { recursive: true });
  expect(health()).toMatchObject({ status: 'failed', part: 'tables', problem: expect.stringContaining('prices') });
});
