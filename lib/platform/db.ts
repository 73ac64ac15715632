/**
 * The database: Prisma on SQLite through libsql, in WAL mode with full synchronisation and foreign keys on.
 *
 * Two clients share the file. The adapter lets one transaction at a time use a client and makes everything else on it wait, so
 * reads have a client of their own and pages stay quick while an import is being written.
 */
import { readEnv } from './env';
import { type Prisma, PrismaClient } from './generated/prisma/client';
import { OneConnection } from './one-connection';
import { openSqlite, type Sqlite } from './sqlite';

export type { Prisma, PrismaClient } from './generated/prisma/client';

/** The client inside a transaction. */
export type Tx = Prisma.TransactionClient;

export interface Database {
  /** For reading. A write of its own would make everything else of its thread wait for another writer. */
  readonly read: PrismaClient;
  /**
   * Runs `work` in one transaction; all of it is kept or nothing. Writers queue up: the lock is taken before the first read, so
   * what `work` reads stays true until it is done.
   */
  write<T>(work: (tx: Tx) => Promise<T>): Promise<T>;
  /**
   * A number that differs from the last one whenever anybody has changed the database since, this process or another; so what was read
   * at a number stays true while the number does.
   */
  version(): number;
  close(): Promise<void>;
}

/** Milliseconds a transaction may take: an import of 10,000 rows needs some seconds. */
const TRANSACTION_TIMEOUT_MS = 120_000;

function client(file: string, waitMs: number | undefined): PrismaClient {
  const adapter = new OneConnection(file, waitMs);
  return new PrismaClient({ adapter, transactionOptions: { timeout: TRANSACTION_TIMEOUT_MS, maxWait: TRANSACTION_TIMEOUT_MS } });
}

/**
 * Opens a database file whose migrations have been applied.
 * @param options.waitMs milliseconds that a change waits for those of other threads and processes, if not as usual.
 */
export function openDatabase(file: string, { waitMs }: { readonly waitMs?: number } = {}): Database {
  const read = client(file, waitMs);
  const writer = client(file, waitMs);
  let watch: Sqlite | undefined;
  return {
    read,
    // SQLite counts the commits of all other connections for each connection; this one makes none, so it hears of every one.
    version: () => {
      watch ??= openSqlite(file, { readonly: true });
      return Number(watch.all('PRAGMA data_version')[0]?.data_version);
    },
    write: (work) => writer.$transaction(work),
    close: async () => {
      watch?.close();
      watch = undefined;
      await read.$disconnect();
      await writer.$disconnect();
    },
  };
}

// One per process, also when the development server loads this module anew.
const holder: typeof globalThis & { lossbookDatabase?: Database | undefined } = globalThis;

/** The database of the data folder, opened at the first call. */
export function database(): Database {
  holder.lossbookDatabase ??= openDatabase(readEnv().databaseFile);
  return holder.lossbookDatabase;
}

/** Closes the database of the data folder, if it is open; the next call of {@link database} opens it again. */
export async function closeDatabase(): Promise<void> {
  const open = holder.lossbookDatabase;
  holder.lossbookDatabase = undefined;
  await open?.close();
}
