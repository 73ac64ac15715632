import { type Motor, motorWorksheet, type StudyContext } from '@/lib/engine';
import { Assumptions } from './assumptions';
import type { Cell } from './cells';
import { CASH_FLOW, OPTIONS, OptionsSheet } from './options-sheet';
import { WORKING, WorkingSheet } from './working-sheet';
import { YEARS, YearsSheet } from './years-sheet';

/** Sheets that are written row by row. */
export type RowSheet = typeof OPTIONS | typeof CASH_FLOW | typeof YEARS | typeof WORKING;

/** The sheets of a workbook, whoever takes their rows. */
interface Sheets {
  readonly assumptions: Assumptions;
  /** Evaluates a motor and writes its rows. */
  add(motor: Motor): void;
}

/** Begins the sheets of a study. @param rowsOf where the rows of each sheet go, from its first on. */
export function beginSheets(study: StudyContext, rowsOf: (sheet: RowSheet) => (cells: readonly Cell[]) => void): Sheets {
  const { settings } = study;
  const assumptions = new Assumptions(settings);
  const yearly = new YearsSheet(settings, assumptions, rowsOf(YEARS));
  const work = new WorkingSheet(settings.currency, assumptions, rowsOf(WORKING));
  const list = new OptionsSheet(yearly, settings, { option: rowsOf(OPTIONS), flow: rowsOf(CASH_FLOW) });
  return {
    assumptions,
    add(motor) {
      const worked = motorWorksheet(motor, study);
      list.add(worked, work.add(worked));
    },
  };
}
