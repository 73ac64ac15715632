import { PassThrough, Readable } from 'node:stream';
import ExcelJS from 'exceljs';
import type { MotorResult } from '@/lib/engine';
import { csvRow, type Writable } from '../fleet/csv-cell';
import { RESULT_COLUMNS } from './columns';

/** One motor to be written: its result, or what is known of it as long as it has none. */
export interface ResultLine {
  readonly result: MotorResult | undefined;
  /** Values by column name where there is no result. */
  readonly plain: Readonly<Record<string, Writable>>;
}

/** What stands beside the rows: in the last line of CSV, on a sheet of its own in a workbook. */
export interface ResultNotes {
  /** The last line: how many motors of how many, by which filter. */
  readonly closing: string;
  /** Name and content, line by line. */
  readonly facts: readonly (readonly [string, string])[];
  /** The currency, which stands for the unit of money columns. */
  readonly currency: string;
}

function cells({ result, plain }: ResultLine): Writable[] {
  return RESULT_COLUMNS.map((column) => (result === undefined ? plain[column.name] : column.value(result)));
}

/** Results as CSV, the same columns as the command line writes, and a last line that says how many there are. */
export async function* resultsCsv(lines: AsyncIterable<ResultLine>, notes: ResultNotes): AsyncGenerator<string> {
  yield csvRow(RESULT_COLUMNS.map((column) => column.name));
  for await (const line of lines) yield csvRow(cells(line));
  yield csvRow([notes.closing]);
}

const WIDE = new Set(['because', 'trust_findings', 'description', 'condition_beyond', 'condition_near', 'option']);

/** Results as a workbook: the rows of {@link resultsCsv} on one sheet, what they are on another. Written row by row. */
export function resultsWorkbook(lines: AsyncIterable<ResultLine>, notes: ResultNotes): ReadableStream {
  const sink = new PassThrough();
  const writer = new ExcelJS.stream.xlsx.WorkbookWriter({ stream: sink, useStyles: true });
  const write = async (): Promise<void> => {
    const sheet = writer.addWorksheet('Motors', { views: [{ state: 'frozen', xSplit: 3, ySplit: 1 }] });
    sheet.columns = RESULT_COLUMNS.map(({ name }) => ({
      header: name,
      key: name,
      width: WIDE.has(name) ? 40 : Math.max(10, name.length + 2),
    }));
    sheet.getRow(1).font = { bold: true };
    let count = 0;
    for await (const line of lines) {
      sheet.addRow(cells(line).map((value) => value ?? null)).commit();
      count += 1;
    }
    sheet.autoFilter = { from: { row: 1, column: 1 }, to: { row: count + 1, column: RESULT_COLUMNS.length } };
    sheet.commit();
    const about = writer.addWorksheet('About');
    about.columns = [{ width: 32 }, { width: 20 }, { width: 90 }];
    for (const [name, content] of notes.facts) about.addRow([name, '', content]).commit();
    about.addRow(['Count', '', notes.closing]).commit();
    about.addRow([]).commit();
    about.addRow(['Column', 'Unit', 'Meaning']).commit();
    for (const { name, unit, meaning } of RESULT_COLUMNS) {
      about.addRow([name, unit === 'currency' ? notes.currency : unit, meaning]).commit();
    }
    about.commit();
    await writer.commit();
  };
  write().catch((error: unknown) => sink.destroy(error instanceof Error ? error : new Error(String(error))));
  // The web's stream type of Node and that of the browser's library are declared apart.
  return Readable.toWeb(sink) as ReadableStream;
}
