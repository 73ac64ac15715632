import { BENCH_SECTIONS, type BenchPoint, type BenchSections, type BenchTest } from '@/lib/engine';
import { fromHead, lookAtColumns, notePassedOver } from '../fleet/head-row';
import { FileFault, type FileProblem, issue, type RowIssue } from '../fleet/issue-codes';
import { nearestWord } from '../fleet/nearest';
import { asFault, openTable, sourceName } from '../fleet/open-table';
import type { ParseOptions } from '../fleet/parse';
import { type CellContext, plainText, readCell } from '../fleet/parse-cell';
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
  let places: readonly (BenchColumn | undefined)[] | undefined;
  let rows = 0;
  const blocks = fromHead(table.blocks, lookAtColumns(BENCH_COLUMNS), (above, head) =>
    warnings.push(...notePassedOver(above, head)),
  );
  for await (const block of blocks) {
    for (const line of block) {
      if (places === undefined) {
        places = readHeader(line, context, warnings);
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

function readHeader(
  line: TableRow,
  context: Omit<CellContext, 'row'>,
  warnings: RowIssue[],
): readonly (BenchColumn | undefined)[] {
  const titles = line.cells.map((cell) => plainText(cell, context).toLowerCase());
  const twice = titles.filter((title, at) => title !== '' && titles.indexOf(title) !== at);
  if (twice.length > 0) throw new FileFault('duplicate-column', { words: [...new Set(twice)].join(', ') });
  const names = BENCH_COLUMNS.map(({ name }) => name);
  const missing = BENCH_COLUMNS.filter(({ name, required }) => required === 'always' && !titles.includes(name));
  if (missing.length > 0) {
    throw new FileFault('missing-bench-column', { words: missing.map(({ name }) => name).join(', '), other: names.join(', ') });
  }
  return titles.map((title) => {
    const column = BENCH_COLUMNS.find(({ name }) => name === title);
    if (column === undefined && title !== '') {
      warnings.push(issue('unknown-bench-column', line.row, title, { value: title, words: nearestWord(title, names) ?? '' }));
    }
    return column;
  });
}

interface ReadPoint {
  readonly tag: string;
  readonly test: string;
  readonly section?: keyof BenchSections;
  readonly point: BenchPoint;
  readonly errors: RowIssue[];
  readonly warnings: RowIssue[];
}

function readPoint(line: TableRow, places: readonly (BenchColumn | undefined)[], context: CellContext): ReadPoint {
  const { row } = line;
  const errors: RowIssue[] = [];
  const warnings: RowIssue[] = [];
  const fields: Partial<Record<Exclude<keyof BenchPoint, 'row'>, number>> = {};
  const words = new Map<string, string>();
  if (line.malformed) errors.push(issue('malformed-quote', row, ''));
  if (line.cells.slice(places.length).some((cell) => !isBlank(cell))) {
    errors.push(issue('too-many-cells', row, '', { count: line.cells.length, limit: places.length }));
  }
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
