import { PassThrough } from 'node:stream';
import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import ExcelJS from 'exceljs';
import type { Motor, StudyContext } from '@/lib/engine';
import { ASSUMPTIONS, HEAD_ROWS } from './assumptions';
import type { Cell } from './cells';
import { CASH_FLOW, OPTIONS } from './options-sheet';
import { beginSheets } from './sheets';
import { WORKING } from './working-sheet';
import { YEARS } from './years-sheet';

/** What the workbook says of itself: name and content, line by line. */
type Facts = readonly (readonly [string, string])[];

/** Said on the first sheet, so that nobody takes the workbook for more than it is. */
const LIMITS =
  'Change the values in column B: savings, paybacks, values and cash flows follow. Not followed: what another price would change at the operating point, the decision, rebates, a ratchet’s share, depreciation of a purchase by another inflation, and expected failures, which are written as numbers. Those take a new evaluation. The rate of return is what the spreadsheet’s own search finds: one of several where a flow changes sign more than once, and often none far below zero; judge by the net present value.';

/**
 * Writes a workbook in which the money of every option of every motor is worked out by formulas from one sheet of assumptions. Motors are
 * evaluated one by one, and other work has its turn between them; the bytes come as they are made.
 */
export function writeWorkbook(motors: Iterable<Motor>, study: StudyContext, facts: Facts): PassThrough {
  const sink = new PassThrough();
  fill(sink, motors, study, facts).catch((error: unknown) =>
    sink.destroy(error instanceof Error ? error : new Error(String(error))),
  );
  return sink;
}

async function fill(sink: PassThrough, motors: Iterable<Motor>, study: StudyContext, facts: Facts): Promise<void> {
  const writer = new ExcelJS.stream.xlsx.WorkbookWriter({ stream: sink, useStyles: true });
  const sheet = (name: string, widths: readonly number[], head = 1) => {
    const made = writer.addWorksheet(name, { views: [{ state: 'frozen', ySplit: head }] });
    made.columns = widths.map((width) => ({ width }));
    return made;
  };
  const first = sheet(ASSUMPTIONS, [34, 16, 18, 60, 60], HEAD_ROWS);
  const options = sheet(OPTIONS, [12, 14, 28, 10, 12, 12, 9, 12, 14, 14, 14, 14, 12, 14, 12]);
  const flows = sheet(CASH_FLOW, [12, 14, 28, 30]);
  const years = sheet(YEARS, [6, 48, 30, 28, 14]);
  const working = sheet(WORKING, [12, 14, 52, 18, 16, 34, 60]);
  const rowsOf = (to: ExcelJS.Worksheet) => {
    let rows = 0;
    return (cells: readonly Cell[]): void => {
      rows += 1;
      const row = to.addRow([...cells]);
      if (rows === 1) row.font = { bold: true };
      row.commit();
    };
  };
  const writers = { [OPTIONS]: options, [CASH_FLOW]: flows, [YEARS]: years, [WORKING]: working };
  const { assumptions, add } = beginSheets(study, (name) => rowsOf(writers[name]));
  for (const motor of motors) {
    add(motor);
    await turnOfTheLoop();
  }
  first.addRow(['Assumptions']).font = { bold: true };
  first.addRow([LIMITS]);
  first.addRow(['Name', 'Value', 'Unit', 'Meaning', 'Source']).font = { bold: true };
  assumptions.list.forEach(({ name, value, unit, meaning, source }, index) => {
    first.addRow([name, value, unit, meaning, source]);
    writer.definedNames.add(`${ASSUMPTIONS}!$B$${HEAD_ROWS + 1 + index}`, name);
  });
  first.addRow([]);
  for (const [name, content] of facts) first.addRow([name, '', '', content]);
  for (const done of [first, options, flows, years, working]) done.commit();
  await writer.commit();
}
