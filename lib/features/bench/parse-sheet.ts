import { BENCH_SECTIONS, type BenchPoint, type BenchSections, type BenchTest } from '@/lib/engine';
import { columnPlaces, type Places, shapeErrors } from '../fleet/column-places';
import { fromHead, lookAtColumns, notePassedOver } from '../fleet/head-row';
import { FileFault, type FileProblem, issue, type RowIssue } from '../fleet/issue-codes';
import { asFault, openTable, sourceName } from '../fleet/open-table';
import type { ParseOptions } from '../fleet/parse';
import { type CellContext, readCell } from '../fleet/parse-cell';
import { isBlank, type SheetSource, type TableRow } from '../fleet/table';
import { BENCH_COLUMNS, type BenchColumn } from './columns';

/** A bench test sheet once read: its tests in order of appearance, and what is to be said of rows and columns. */
interface ParsedBench {
  readonly tests: readonly BenchTest[];
  readonly rows: number;
  readonly warnings: readonly RowIssue[];
  readonly rejected: readonly RowIssue[];
}

export type BenchOutcome = ({ readonly ok: true } & ParsedBench) | { readonly ok: false; readonly problem: FileProblem };

/** Reads a bench test sheet from CSV or a workbook by the rules of the fleet sheet. */
export async function parseBench(source: SheetSource, options: ParseOptions = {}): Promise<BenchOutcome> {
  try {
    return { ok: true, ...(await readBench(source, options)) };
  } catch (error) {
    const fault = asFault(error, sourceName(source));
    if (fault instanceof FileFault) return { ok: false, problem: fault.problem };
    throw error;
  }
}

/** What is said of the head of a bench test sheet. */
const CODES = { missing: 'missing-bench-column', unknown: 'unknown-bench-column' } as const;

type Sections = { [K in keyof BenchSections]: BenchPoint[] };

async function readBench(source: SheetSource, options: ParseOptions): Promise<ParsedBench> {
  const table = await openTable(source, {
    ...(options.delimiter === undefined ? {} : { delimiter: options.delimiter }),
    ...(options.encoding === undefined ? {} : { encoding: options.encoding }),
  });
  const context = {
    decimal: options.decimal ?? '.',
    emptyWords: new Set((options.emptyWords ?? []).map((each) => each.trim().toLowerCase())),
    guarded: table.kind === 'csv',
  };
  const warnings: RowIssue[] = [];
  const rejected: RowIssue[] = [];
  const tests = new Map<string, { readonly tag: string; readonly test: string; readonly sections: Sections }>();
  let places: Places<BenchColumn> | undefined;
  let rows = 0;
  const blocks = fromHead(table.blocks, lookAtColumns(BENCH_COLUMNS), (above, head) =>
    warnings.push(...notePassedOver(above, head)),
  );
  for await (const block of blocks) {
    for (const line of block) {
      if (places === undefined) {
        places = columnPlaces(line, BENCH_COLUMNS, context, CODES, warnings);
        continue;
      }
      if (line.cells.every(isBlank)) continue;
      rows++;
      const read = readPoint(line, places, { ...context, row: line.row });
      warnings.push(...read.warnings);
      rejected.push(...read.errors);
      if (read.errors.length > 0 || !read.section) continue;
      const key = JSON.stringify([read.tag, read.test]);
      const test = tests.get(key) ?? { tag: read.tag, test: read.test, sections: emptySections() };
      tests.set(key, test);
      test.sections[read.section].push(read.point);
    }
  }
  if (places === undefined) throw new FileFault('empty-file', { name: table.name });
  return { tests: [...tests.values()], rows, warnings, rejected };
}

function emptySections(): Sections {
  return Object.fromEntries(BENCH_SECTIONS.map((section): [string, BenchPoint[]] => [section, []])) as Sections;
}

interface ReadPoint {
  readonly tag: string;
  readonly test: string;
  readonly section?: keyof BenchSections;
  readonly point: BenchPoint;
  readonly errors: RowIssue[];
  readonly warnings: RowIssue[];
}

function readPoint(line: TableRow, places: Places<BenchColumn>, context: CellContext): ReadPoint {
  const { row } = line;
  const errors = shapeErrors(line, places.length);
  const warnings: RowIssue[] = [];
  const fields: Partial<Record<Exclude<keyof BenchPoint, 'row'>, number>> = {};
  const words = new Map<string, string>();
  for (const [at, column] of places.entries()) {
    const cell = line.cells[at];
    if (column === undefined) continue;
    const { value, error, warning } = cell === undefined ? {} : readCell(column, cell, context);
    if (error) errors.push(error);
    if (warning) warnings.push(warning);
    if (value === undefined && error === undefined && column.required === 'always') {
      errors.push(issue('missing-required', row, column.name));
    }
    if (typeof value === 'number' && column.field) fields[column.field] = value;
    else if (typeof value === 'string') words.set(column.name, value);
  }
  const section = BENCH_SECTIONS.find((each) => each === words.get('section'));
  return {
    tag: words.get('tag') ?? '',
    test: words.get('test') ?? '',
    ...(section && { section }),
    point: { row, ...fields },
    errors,
    warnings,
  };
}
