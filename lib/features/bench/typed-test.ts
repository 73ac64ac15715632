import { BENCH_SECTIONS, type BenchPoint, type BenchSections, type BenchTest } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';
import { ENTRY_COLUMNS } from './columns';
import { type BenchOutcome, parseBench } from './parse-sheet';
import type { TypedRow, TypedTest } from './schema';

/** Rows of the table of entry are counted from 1; in the sheet that is written of them the header is row 1. */
const HEADER_ROWS = 1;

/** Reads a typed test by the same rules as a sheet: the rows are written as one and parsed. Its rows are those of the table. */
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
  const ofTable = <R extends { readonly row: number }>(each: R): R => ({ ...each, row: each.row - HEADER_ROWS });
  return {
    ...outcome,
    warnings: outcome.warnings.map(ofTable),
    rejected: outcome.rejected.map(ofTable),
    tests: outcome.tests.map(
      ({ sections }): BenchTest => ({ tag: typed.tag, test: typed.name, sections: eachSection(sections, ofTable) }),
    ),
  };
}

function eachSection(sections: BenchSections, change: (point: BenchPoint) => BenchPoint): BenchSections {
  return {
    cold: sections.cold.map(change),
    'rated-load': sections['rated-load'].map(change),
    load: sections.load.map(change),
    dynamometer: sections.dynamometer.map(change),
    'no-load': sections['no-load'].map(change),
    'locked-rotor': sections['locked-rotor'].map(change),
    'rotor-removed': sections['rotor-removed'].map(change),
    'reverse-rotation': sections['reverse-rotation'].map(change),
  };
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
