import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Database, openDatabase } from '@/lib/platform/db';
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
