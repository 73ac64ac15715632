import { readSheet } from 'read-excel-file/universal';
import { FileFault } from './issue-codes';
import { type Cell, LIMITS, type TableBlocks, type TableRow } from './table';
import { DAMAGED, guardWorkbook, type SheetScan } from './xlsx-guard';

const BLOCK_ROWS = 500;
const CELLS_MAX = 50_000_000;

/**
 * Reads the first sheet of a workbook. Formula cells give the result saved with them; a formula that gives an error
 * or was saved without a result comes out as a faulty cell, never as an empty one. Dates come out as ISO 8601 text.
 */
export async function* readXlsx(bytes: Buffer, name: string): TableBlocks {
  const scan = await guardWorkbook(bytes, name);
  if (scan.columns > LIMITS.columns) throw new FileFault('too-many-columns', { count: scan.columns, limit: LIMITS.columns });
  if (scan.rows * scan.columns > CELLS_MAX) {
    throw new FileFault('sheet-too-wide-and-long', { name, count: scan.rows, limit: scan.columns });
  }
  if (scan.rows === 0) throw new FileFault('empty-file', { name });
  const values = await readValues(bytes, name);
  for (let from = 0; from < scan.rows; from += BLOCK_ROWS) {
    const block: TableRow[] = [];
    for (let at = from; at < Math.min(from + BLOCK_ROWS, scan.rows); at++) {
      block.push({ row: at + 1, cells: cellsOf(values[at] ?? [], at + 1, scan) });
      // The row is not needed again: let it go before the next ones are built.
      values[at] = [];
    }
    yield block;
  }
}

async function readValues(bytes: Buffer, name: string): Promise<(readonly unknown[])[]> {
  const copy = new ArrayBuffer(bytes.byteLength);
  new Uint8Array(copy).set(bytes);
  try {
    return await readSheet(copy, { trim: false });
  } catch {
    throw new FileFault('not-a-workbook', { name, words: DAMAGED });
  }
}

function cellsOf(values: readonly unknown[], row: number, scan: SheetScan): Cell[] {
  const cells: Cell[] = [];
  const width = scan.faults.size === 0 ? values.length : scan.columns;
  for (let at = 0; at < width; at++) {
    const fault = scan.faults.size === 0 ? undefined : scan.faults.get(`${row}:${at + 1}`);
    cells.push(fault === undefined ? cellOf(values[at]) : { fault });
  }
  return cells;
}

function cellOf(value: unknown): Cell {
  if (value === null || value === undefined) return '';
  if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') return value;
  if (value instanceof Date) return { date: isoOf(value) };
  return String(value);
}

/** Workbook dates have no zone: they come as UTC and are written as site time, rounded to the second. */
function isoOf(value: Date): string {
  const text = new Date(Math.round(value.getTime() / 1000) * 1000).toISOString();
  return text.endsWith('T00:00:00.000Z') ? text.slice(0, 10) : text.slice(0, 19);
}
