import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { vi } from 'vitest';
import { closeDatabase, type Database, database, openDatabase } from '@/lib/platform/db';
import { type Env, readEnv } from '@/lib/platform/env';
import { prepareDatabase } from '@/lib/platform/prepare-database';

export interface TemporaryDatabase {
  readonly db: Database;
  readonly env: Env;
  remove(): Promise<void>;
}

/** A real database in a folder of its own, with all migrations applied. */
export function temporaryDatabase(): TemporaryDatabase {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-test-'));
  const env = readEnv({ LOSSBOOK_DATA: folder });
  const prepared = prepareDatabase(env);
  if (!prepared.ok) throw new Error(prepared.problem.text);
  const db = openDatabase(env.databaseFile);
  return {
    db,
    env,
    remove: async () => {
      await db.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

/** The database that the program finds by its environment, as loaders and threads do, in a folder of its own. */
export function programDatabase(): Pick<TemporaryDatabase, 'db' | 'remove'> {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-test-'));
  vi.stubEnv('LOSSBOOK_DATA', folder);
  const prepared = prepareDatabase(readEnv());
  if (!prepared.ok) throw new Error(prepared.problem.text);
  return {
    db: database(),
    remove: async () => {
      await closeDatabase();
      vi.unstubAllEnvs();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
