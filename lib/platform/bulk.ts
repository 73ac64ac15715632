import type { Tx } from './db';

/**
 * Rows by the thousand in one statement: the values travel as one JSON text and the database takes them apart. Prisma's own
 * `createMany` is some ten times slower, since it binds each value by itself.
 */

/** What a cell may hold. A `Date` is written as Prisma writes it, so that Prisma reads it back. */
type BulkValue = string | number | bigint | boolean | Date | null;
export type BulkRow = Readonly<Record<string, BulkValue>>;

/** Rows per statement; keeps the JSON text of wide tables at a few megabytes. */
const CHUNK = 2_000;

function plainName(name: string): string {
  if (!/^[A-Za-z][A-Za-z0-9]*$/.test(name)) throw new RangeError(`${name} is not the name of a table or column.`);
  return `"${name}"`;
}

function jsonValue(value: BulkValue | undefined): string | number | boolean | null {
  if (value === undefined) return null;
  if (value instanceof Date) return value.toISOString().replace('Z', '+00:00');
  if (typeof value !== 'bigint') return value;
  const number = Number(value);
  if (!Number.isSafeInteger(number)) throw new RangeError('A whole number is too large to be written in bulk.');
  return number;
}

function* chunks(rows: readonly BulkRow[], columns: readonly string[]): Generator<string> {
  for (let start = 0; start < rows.length; start += CHUNK) {
    const part = rows.slice(start, start + CHUNK);
    yield JSON.stringify(part.map((row) => columns.map((name) => jsonValue(row[name]))));
  }
}

/**
 * Adds rows, all with the columns of the first, `id` among them.
 * @throws RangeError when a bigint is beyond 2^53; whatever the database says when a row breaks a rule of the table.
 */
export async function insertRows(tx: Tx, table: string, rows: readonly BulkRow[]): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  if (columns.length === 0) return;
  const names = columns.map(plainName).join(', ');
  const values = columns.map((_, at) => `json_extract(j.value, '$[${at}]')`).join(', ');
  const sql = `INSERT INTO ${plainName(table)} (${names}) SELECT ${values} FROM json_each(?) AS j`;
  for (const json of chunks(rows, columns)) await tx.$executeRawUnsafe(sql, json);
  await mendNumbers(tx, table, rows, columns);
}

/** Changes rows found by `id`; every row names the same columns. */
export async function updateRows(tx: Tx, table: string, rows: readonly BulkRow[]): Promise<void> {
  const columns = Object.keys(rows[0] ?? {});
  const changed = columns.filter((name) => name !== 'id');
  if (changed.length === 0) return;
  const at = (name: string): string => `json_extract(j.value, '$[${columns.indexOf(name)}]')`;
  const sets = changed.map((name) => `${plainName(name)} = ${at(name)}`).join(', ');
  const name = plainName(table);
  const sql = `UPDATE ${name} SET ${sets} FROM json_each(?) AS j WHERE ${name}."id" = ${at('id')}`;
  for (const json of chunks(rows, columns)) await tx.$executeRawUnsafe(sql, json);
  await mendNumbers(tx, table, rows, columns);
}

/**
 * SQLite reads about one decimal number of seventeen digits in ten thousand with an error in the last bit (its text reader is not
 * correctly rounded). So the numbers are read back once, and the few that came out otherwise are bound as they are.
 */
async function mendNumbers(tx: Tx, table: string, rows: readonly BulkRow[], columns: readonly string[]): Promise<void> {
  const numbers = new Set<number>();
  for (const row of rows) {
    for (const name of columns) {
      const value = row[name];
      if (typeof value === 'number' && !Number.isSafeInteger(value)) numbers.add(value);
    }
  }
  const wrong = await misread(tx, [...numbers]);
  if (wrong.size === 0) return;
  for (const row of rows) {
    for (const name of columns) {
      const value = row[name];
      if (typeof value !== 'number' || !wrong.has(value)) continue;
      await tx.$executeRawUnsafe(`UPDATE ${plainName(table)} SET ${plainName(name)} = ? WHERE "id" = ?`, value, row.id);
    }
  }
}

async function misread(tx: Tx, numbers: readonly number[]): Promise<Set<number>> {
  const wrong = new Set<number>();
  for (let start = 0; start < numbers.length; start += CHUNK) {
    const part = numbers.slice(start, start + CHUNK);
    // Inside a list each: a bare number would be written and read once more.
    const read = await tx.$queryRawUnsafe<readonly { readonly number: unknown }[]>(
      `SELECT CAST(json_extract(j.value, '$[0]') AS REAL) AS "number" FROM json_each(?) AS j ORDER BY j.key`,
      JSON.stringify(part.map((number) => [number])),
    );
    for (const [at, number] of part.entries()) if (read[at]?.number !== number) wrong.add(number);
  }
  return wrong;
}

/** A client that can ask; the shared one, or the one of a transaction. */
type Asking = Pick<Tx, '$queryRawUnsafe'>;

/**
 * Reads whole rows of a table by the thousand, as Prisma's `findMany` would give them, some six times faster: each row travels as one
 * JSON text instead of cell by cell. Numbers come with all seventeen digits.
 * @param where columns with the value, or the values of which it has one; all must hold.
 * @typeParam Row the table's row as Prisma has it.
 */
export async function selectRows<Row>(
  db: Asking,
  table: string,
  where: Readonly<Record<string, string | readonly string[]>>,
  orderBy?: string,
): Promise<Row[]> {
  const columns = await db.$queryRawUnsafe<readonly { readonly name: string; readonly type: string }[]>(
    'SELECT name, type FROM pragma_table_info(?)',
    table,
  );
  const cells = columns.map(({ name, type }) => (type === 'REAL' ? exactNumber(plainName(name)) : plainName(name)));
  const conditions = Object.entries(where).map(([name, wanted]) =>
    typeof wanted === 'string' ? `${plainName(name)} = ?` : `${plainName(name)} IN (SELECT value FROM json_each(?))`,
  );
  const order = orderBy === undefined ? '' : ` ORDER BY ${plainName(orderBy)}`;
  const found = await db.$queryRawUnsafe<readonly { readonly cells: string }[]>(
    `SELECT json_array(${cells.join(', ')}) AS "cells" FROM ${plainName(table)} WHERE ${conditions.join(' AND ')}${order}`,
    ...Object.values(where).map((wanted) => (typeof wanted === 'string' ? wanted : JSON.stringify(wanted))),
  );
  return found.map((row) => {
    const values: unknown = JSON.parse(row.cells);
    const made: Record<string, unknown> = {};
    if (Array.isArray(values)) for (const [at, { name, type }] of columns.entries()) made[name] = storedValue(values[at], type);
    return made as Row;
  });
}

/** SQLite's JSON has fifteen digits of a number by itself; seventeen tell every number from its neighbours. */
function exactNumber(name: string): string {
  return `CASE WHEN ${name} IS NULL OR ${name} = CAST(${name} AS INTEGER) THEN CAST(${name} AS INTEGER) ELSE json(printf('%!.17g', ${name})) END`;
}

/** A value as Prisma gives it, by the declared type of its column. */
function storedValue(value: unknown, type: string): unknown {
  if (value === null) return null;
  if (type === 'BOOLEAN') return value === 1;
  if (type === 'BIGINT') return typeof value === 'number' ? BigInt(value) : null;
  return type === 'DATETIME' && typeof value === 'string' ? new Date(value) : value;
}
