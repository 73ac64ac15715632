/**
 * Prisma on SQLite with one connection for each client. libsql's own client gives its connection away with each transaction, opens another and leaves
 * the first to the garbage collector: hundreds of open files under load, and pages read anew after each write.
 */
import { PrismaLibSql } from '@prisma/adapter-libsql';

type Client = ReturnType<PrismaLibSql['createClient']>;
type Transaction = Awaited<ReturnType<Client['transaction']>>;

/** Makes clients whose transactions run on the connection that they have. The adapter lets nothing else run on it meanwhile. */
export class OneConnection extends PrismaLibSql {
  override createClient(config: Parameters<PrismaLibSql['createClient']>[0]): Client {
    const client = super.createClient(config);
    client.transaction = async () => {
      // The writer's lock is taken before the first read, so that what is read stays true, and nobody finds later that somebody else was quicker.
      await client.execute('BEGIN IMMEDIATE');
      return transactionOn(client);
    };
    return client;
  }
}

function transactionOn(client: Client): Transaction {
  let closed = false;
  const end = async (sql: 'COMMIT' | 'ROLLBACK'): Promise<void> => {
    closed = true;
    try {
      await client.execute(sql);
    } catch (error) {
      // A connection left inside a transaction would take no other one: closing it takes back whatever was under way.
      await client.reconnect();
      throw error;
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
      // Nobody waits to be told: what cannot be taken back is, by closing the connection.
      if (!closed) end('ROLLBACK').catch(() => undefined);
    },
    get closed() {
      return closed;
    },
  };
}
