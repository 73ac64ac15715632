/**
 * Writes the next migration: what is missing between the migrations so far and `prisma/schema.prisma`.
 * Usage: `npx tsx scripts/new-migration.ts NAME`. Read the SQL before committing it; an applied file is never edited.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { applyMigrations, readMigrations } from '@/lib/platform/migrations';
import { diffToSchema } from './schema-engine';

const name = process.argv[2];
if (name === undefined || !/^[a-z0-9-]+$/.test(name)) {
  console.error('Give the migration a name in small letters, digits and hyphens.');
  process.exit(2);
}
const folder = path.resolve('prisma/migrations');
const scratch = mkdtempSync(path.join(tmpdir(), 'lossbook-migration-'));
const file = path.join(scratch, 'scratch.db');
mkdirSync(folder, { recursive: true });
applyMigrations(file, readMigrations(folder));
const sql = await diffToSchema(file, path.resolve('prisma/schema.prisma'));
rmSync(scratch, { recursive: true, force: true });
if (sql.trim() === '') {
  console.log('Nothing to do: the migrations add up to the schema.');
} else {
  const stamp = new Date().toISOString().replace(/[-:T]/g, '').slice(0, 14);
  const target = path.join(folder, `${stamp}_${name}`);
  mkdirSync(target);
  writeFileSync(path.join(target, 'migration.sql'), sql);
  console.log(`Written: ${path.relative('.', target)}/migration.sql`);
}
