/**
 * Prisma on SQLite with one connection for each client. libsql's own client gives its connection away with each transaction, opens another and leaves
 * the first to the garbage collector: hundreds of open files under load, and pages read anew after each write.
 *
 * Its way of waiting for another writer is not ours either. It waits inside the call, and everything else of the thread waits with it, be it the very
 * change that is waited for. And a statement that found the database busy stays under way until the garbage collector comes: no later transaction
 * on that connection can be kept, and one that is left by closing the connection goes on keeping all others out. So a transaction asks for the
 * lock without waiting and without leaving a statement, and again after a pause.
 */
import { setTimeout as pause } from 'node:timers/promises';
import { Sqlite3Client } from '@libsql/client/sqlite3';
import { PrismaLibSql } from '@prisma/adapter-libsql';
import Connection from 'libsql';
import { isBusy } from './errors';
import { BUSY_TIMEOUT_MS } from './sqlite';

type Client = ReturnType<PrismaLibSql['createClient']>;
type Transaction = Awaited<ReturnType<Client['transaction']>>;

/** Milliseconds that a change waits for those of other threads and processes: the longest, a large import on a slow machine, takes a minute. */
const WRITE_WAIT_MS = 90_000;
/** Milliseconds between two tries for the lock. */
const TRY_AGAIN_MS = 20;
/** Milliseconds after which the log says who was long at it, since all others waited. */
const LONG_MS = 5_000;

/** Makes clients whose transactions run on the connection that they have. The adapter lets nothing else run on it meanwhile. */
export class OneConnection extends PrismaLibSql {
  readonly #file: string;
  readonly #waitMs: number;

  /** @param waitMs milliseconds that a transaction waits for the writer's lock before it fails. */
  constructor(file: string, waitMs = WRITE_WAIT_MS) {
    super({ url: `file:${file}` });
    this.#file = file;
    this.#waitMs = waitMs;
  }

  override createClient(): Client {
    const options = { timeout: BUSY_TIMEOUT_MS };
    const connection = new Connection(this.#file, options);
    const client = new Sqlite3Client(this.#file, options, connection, 'number');
    client.transaction = async () => {
      await begin(connection, this.#waitMs);
      return transactionOn(client, connection);
    };
    return client;
  }
}

/** Takes the writer's lock before the first read, so that what is read stays true, and nobody finds later that somebody else was quicker. */
async function begin(connection: Connection.Database, waitMs: number): Promise<void> {
  const asked = performance.now();
  while (!tryToBegin(connection, performance.now() - asked > waitMs)) await pause(TRY_AGAIN_MS);
  const waited = performance.now() - asked;
  if (waited > LONG_MS) console.warn(`A change waited ${seconds(waited)} for the database.`);
}

/** @returns whether the lock was free. @throws when it was not, for the last time; and for any other reason. */
function tryToBegin(connection: Connection.Database, last: boolean): boolean {
  try {
    // As a script, which leaves no statement behind, whatever comes of it.
    connection.exec('PRAGMA busy_timeout = 0; BEGIN IMMEDIATE');
    return true;
  } catch (error) {
    if (last || !isBusy(error)) throw error;
    return false;
  } finally {
    connection.exec(`PRAGMA busy_timeout = ${BUSY_TIMEOUT_MS}`);
  }
}

function transactionOn(client: Client, connection: Connection.Database): Transaction {
  let closed = false;
  const since = performance.now();
  const end = async (sql: 'COMMIT' | 'ROLLBACK'): Promise<void> => {
    closed = true;
    const worked = performance.now() - since;
    try {
      connection.exec(sql);
    } finally {
      // What could not be kept is taken back: a connection left inside a transaction would keep everybody out.
      if (connection.inTransaction) connection.exec('ROLLBACK');
      const held = performance.now() - since;
      // The end is where the disk is waited for.
      if (held > LONG_MS)
        console.warn(`A change held the database for ${seconds(held)}, its ${sql} for ${seconds(held - worked)}.`);
    }
  };
  /** What comes late would run outside of any transaction, or inside another's. */
  const within = async <T>(work: () => Promise<T>): Promise<T> => {
    if (closed) throw new Error('This transaction has ended.');
    return work();
  };
  return {
    execute: (statement) => within(() => client.execute(statement)),
    batch: async (statements) => {
      const results = [];
      for (const statement of statements) results.push(await within(() => client.execute(statement)));
      return results;
    },
    executeMultiple: (sql) => within(() => client.executeMultiple(sql)),
    commit: () => end('COMMIT'),
    rollback: () => end('ROLLBACK'),
    close: () => {
      // Nobody waits to be told.
      if (!closed) end('ROLLBACK').catch(() => undefined);
    },
    get closed() {
      return closed;
    },
  };
}

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(1)} s`;
}
