/**
 * A thin, typed face of libsql's synchronous interface, for work that Prisma cannot do: migrations, checks, copies, restores.
 * Features use `database()` of `db.ts` instead.
 */
import Database from 'libsql';

type SqlValue = string | number | bigint | Uint8Array | null;
type SqlRow = Readonly<Record<string, unknown>>;

/** Milliseconds to wait for another writer. */
export const BUSY_TIMEOUT_MS = 10_000;

export interface Sqlite {
  /** Runs one or several statements without parameters. */
  exec(sql: string): void;
  all(sql: string, ...values: SqlValue[]): SqlRow[];
  /** @returns the number of rows changed. */
  run(sql: string, ...values: SqlValue[]): number;
  inTransaction(): boolean;
  close(): void;
}

/**
 * Opens a database file.
 * @throws when the file cannot be opened; a file that is no database fails at the first statement.
 */
export function openSqlite(file: string, options: { readonly?: boolean } = {}): Sqlite {
  const db = new Database(file, { timeout: BUSY_TIMEOUT_MS, readonly: options.readonly === true });
  return {
    exec: (sql) => {
      db.exec(sql);
    },
    all: (sql, ...values) =>
      db
        .prepare(sql)
        .all(...values)
        .map((row) => Object.fromEntries(Object.entries(row ?? {}))),
    run: (sql, ...values) => db.prepare(sql).run(...values).changes,
    inTransaction: () => db.inTransaction,
    close: () => {
      db.close();
    },
  };
}
