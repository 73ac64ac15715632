/** Whether the program is sound: its database, its migrations, its reference tables. */
import { existsSync } from 'node:fs';
import { messageOf } from './errors';
import { readMigrations, stateOf } from './migrations';
import { openSqlite } from './sqlite';

type Health =
  | { readonly status: 'ok'; readonly migrations: number }
  | { readonly status: 'failed'; readonly part: 'database' | 'migrations' | 'tables'; readonly problem: string };

interface HealthInputs {
  readonly databaseFile: string;
  readonly migrationsFolder: string;
  /** Loads the reference tables; the sentence of what is wrong, or `undefined`. */
  readonly checkTables: () => string | undefined;
}

/** Opens the database, compares migrations and checksums, loads the tables; names the first part that is not sound. */
export function checkHealth({ databaseFile, migrationsFolder, checkTables }: HealthInputs): Health {
  let applied = 0;
  if (!existsSync(databaseFile)) return { status: 'failed', part: 'database', problem: 'There is no database file.' };
  try {
    const db = openSqlite(databaseFile, { readonly: true });
    try {
      // Reads the first page: a file that is no database fails here.
      db.all('SELECT count(*) FROM sqlite_master');
      let state: ReturnType<typeof stateOf>;
      try {
        state = stateOf(db, readMigrations(migrationsFolder));
      } catch (error) {
        return { status: 'failed', part: 'migrations', problem: messageOf(error) };
      }
      if (state.problems.length > 0) return { status: 'failed', part: 'migrations', problem: state.problems.join(' ') };
      if (state.pending.length > 0)
        return { status: 'failed', part: 'migrations', problem: `Not applied yet: ${state.pending.join(', ')}.` };
      if (state.applied.length === 0) return { status: 'failed', part: 'migrations', problem: 'There are no migrations.' };
      applied = state.applied.length;
      db.all('SELECT count(*) FROM "Study"');
    } finally {
      db.close();
    }
  } catch (error) {
    return { status: 'failed', part: 'database', problem: messageOf(error) };
  }
  try {
    const problem = checkTables();
    if (problem !== undefined) return { status: 'failed', part: 'tables', problem };
  } catch (error) {
    return { status: 'failed', part: 'tables', problem: messageOf(error) };
  }
  return { status: 'ok', migrations: applied };
}
