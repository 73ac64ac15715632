import { BENCH_SECTIONS, type BenchTest } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';
import { ENTRY_COLUMNS } from './columns';
import { type BenchOutcome, parseBench } from './parse-sheet';
import type { TypedRow, TypedTest } from './schema';

/** Reads a typed test by the same rules as a sheet: the rows are written as one and parsed. */
export async function parseTyped(typed: Pick<TypedTest, 'tag' | 'name' | 'decimal' | 'rows'>): Promise<BenchOutcome> {
  const header = ['section', ...ENTRY_COLUMNS.map(({ name }) => name)].join(';');
  // Rows without any cell are not yet measured and keep their number, so that messages point at the row on the screen.
  const lines = typed.rows.map(({ section, cells }) => {
    const filled = cells.some((cell) => cell.trim() !== '');
    const row = [filled ? section : '', ...ENTRY_COLUMNS.map((_, at) => (filled ? (cells[at] ?? '') : ''))];
    return csvRow(row, { delimiter: ';', decimal: typed.decimal });
  });
  const text = `${header}\r\n${lines.join('')}`;
  const outcome = await parseBench({ name: 'the table', text }, { decimal: typed.decimal, delimiter: ';' });
  if (!outcome.ok) return outcome;
  return { ...outcome, tests: outcome.tests.map((test): BenchTest => ({ ...test, tag: typed.tag, test: typed.name })) };
}

/** A test as rows of the table of entry. */
export function typedRows(test: BenchTest): TypedRow[] {
  return BENCH_SECTIONS.flatMap((section) =>
    test.sections[section].map((point) => ({
      section,
      cells: ENTRY_COLUMNS.map(({ field }) => {
        const value = field && point[field];
        return value === undefined ? '' : String(value);
      }),
    })),
  );
}
