import { setImmediate as turnOfTheLoop } from 'node:timers/promises';
import { type Motor, motorKey, type StudyContext } from '@/lib/engine';
import { Calculation } from './calculation';
import type { Cell } from './cells';
import { LATER_HEAD, OPTION_HEADS, OPTIONS } from './options-sheet';
import { beginSheets, type RowSheet } from './sheets';

/** What the formulas of a workbook come to for one option. */
export interface WorkedOption {
  readonly cost: number | undefined;
  /** Net present value by year of the budget in which it is carried out; the first is that at once. */
  readonly values: readonly (number | undefined)[];
}

/**
 * The workbook of some motors, worked out here from the text of its formulas, as a spreadsheet does it: no value of the evaluation enters but those that
 * the workbook states as such. By motor and option; other requests are served between the motors.
 */
export async function workedOut(motors: readonly Motor[], study: StudyContext): Promise<ReadonlyMap<string, WorkedOption>> {
  const sheets = new Map<RowSheet, (readonly Cell[])[]>();
  const { add, assumptions } = beginSheets(study, (name) => {
    const rows: (readonly Cell[])[] = [];
    sheets.set(name, rows);
    return (cells) => void rows.push(cells);
  });
  for (const motor of motors) {
    add(motor);
    await turnOfTheLoop();
  }
  const book = new Calculation(sheets, new Map(assumptions.list.map(({ name, value }) => [name, value])));
  const [heads = [], ...rows] = sheets.get(OPTIONS) ?? [];
  const column = (head: (typeof OPTION_HEADS)[number]) => OPTION_HEADS.indexOf(head) + 1;
  const later = heads.flatMap((head, at) => (typeof head === 'string' && head.startsWith(LATER_HEAD) ? [at + 1] : []));
  const found = new Map<string, WorkedOption>();
  for (const [at, [site, tag, option]] of rows.entries()) {
    const number = (place: number): number | undefined => {
      const value = book.valueAt(OPTIONS, at + 2, place);
      return typeof value === 'number' ? value : undefined;
    };
    found.set(`${motorKey({ site: String(site), tag: String(tag) })}\n${String(option)}`, {
      cost: number(column('Cost')),
      values: [column('Net present value'), ...later].map(number),
    });
  }
  return found;
}
