import { type MotorBook, MotorBuilder, type SheetMotor } from './build-motors';
import { fromHead, lookAtFleetHead, notePassedOver } from './head-row';
import { FileFault, type FileProblem, issue, type RowIssue } from './issue-codes';
import type { DecimalSign } from './number';
import { asFault, openTable, sourceName } from './open-table';
import { type ColumnMapping, type HeaderPlan, namesBy, type ParsedRow, parseRow, planHeader } from './parse-row';
import { cellText, type Delimiter, type Dialect, isBlank, type SheetSource, type TableRow } from './table';

export type { MotorBook, SheetMotor } from './build-motors';
export type { FileProblem, RowIssue } from './issue-codes';
export type { Delimiter, Dialect, SheetSource } from './table';

export interface ParseOptions {
  /** Decimal sign of CSV text; a point when not said. */
  readonly decimal?: DecimalSign | undefined;
  /** Comma or semicolon is found out from the header; a tab must be said, as for a paste. */
  readonly delimiter?: Delimiter | undefined;
  /** UTF-8 when not said. */
  readonly encoding?: string | undefined;
  /** Words that mean an empty cell, such as `-` or `n/a`. */
  readonly emptyWords?: readonly string[] | undefined;
  /** The study's date; readings after it are noted. */
  readonly asOf?: string | undefined;
  /** Names of this sheet that stand for ours. */
  readonly mapping?: ColumnMapping | undefined;
  /** What is kept already: rows of its motors need no plate, and may not contradict its readings. */
  readonly book?: MotorBook | undefined;
  /** Told now and then how many motors have come so far. */
  readonly inSight?: ((motors: number) => void) | undefined;
}

/** A row that was not taken in, with its cells as they were. */
interface RejectedRow {
  readonly row: number;
  readonly issues: readonly RowIssue[];
  readonly cells: readonly string[];
}

/**
 * A sheet once read. Every row with content is in exactly one place:
 * `rows` = rows of all motors + rejected + ignored repeats.
 */
export interface ParsedFleet extends ReadRows {
  /** In order of first appearance. */
  readonly motors: readonly SheetMotor[];
}

/** The same with the motors put together one by one as they are asked for, once: a large fleet need not be held as a whole. */
export interface StreamedFleet extends ReadRows {
  readonly motors: Iterable<SheetMotor>;
  readonly motorCount: number;
}

interface ReadRows {
  readonly warnings: readonly RowIssue[];
  readonly rejected: readonly RejectedRow[];
  /** Column names as the sheet has them. */
  readonly header: readonly string[];
  /** Rows above the column names, which were passed over; blank ones among them. */
  readonly rowsAbove: number;
  /** Rows with content below the header. */
  readonly rows: number;
  readonly blankRows: number;
  readonly ignoredRepeats: number;
  readonly dialect: Dialect;
}

type Outcome<Fleet> = ({ readonly ok: true } & Fleet) | { readonly ok: false; readonly problem: FileProblem };
export type FleetOutcome = Outcome<ParsedFleet>;

/**
 * Reads a fleet sheet: CSV text or the first sheet of a workbook, from a file, from bytes or from pasted text.
 * A file that cannot be read as a whole gives a problem in words; a bad row is rejected alone and given back.
 */
export async function parseFleet(source: SheetSource, options: ParseOptions = {}): Promise<FleetOutcome> {
  const read = await streamFleet(source, options);
  if (!read.ok) return read;
  const { motorCount: _, ...fleet } = read;
  return { ...fleet, motors: [...read.motors] };
}

/** Reads as {@link parseFleet} does, and leaves the motors to be put together when they are asked for. */
export async function streamFleet(source: SheetSource, options: ParseOptions = {}): Promise<Outcome<StreamedFleet>> {
  try {
    return { ok: true, ...(await readFleet(source, options)) };
  } catch (error) {
    const fault = asFault(error, sourceName(source));
    if (fault instanceof FileFault) return { ok: false, problem: fault.problem };
    throw error;
  }
}

async function readFleet(source: SheetSource, options: ParseOptions): Promise<StreamedFleet> {
  const decimal = options.decimal ?? '.';
  const table = await openTable(source, {
    ...(options.delimiter === undefined ? {} : { delimiter: options.delimiter }),
    ...(options.encoding === undefined ? {} : { encoding: options.encoding }),
  });
  const sheet = new SheetReader(table.name, options, table.kind === 'csv');
  const rows = fromHead(table.blocks, lookAtFleetHead(namesBy(options.mapping)), (above, head) => sheet.passOver(above, head));
  for await (const block of rows) {
    for (const line of block) sheet.take(line);
    options.inSight?.(sheet.motorCount);
  }
  return sheet.finish({ delimiter: table.delimiter(), decimal });
}

/** A row without a plate whose motor no row above it describes. */
interface PutOff {
  readonly parsed: ParsedRow;
  readonly line: TableRow;
}

/** Takes in the rows of one sheet, the header first. */
class SheetReader {
  readonly #name: string;
  readonly #options: ParseOptions;
  readonly #context: { readonly decimal: DecimalSign; readonly emptyWords: ReadonlySet<string>; readonly guarded: boolean };
  readonly #unnamed = new Map<string, number>();
  readonly #warnings: RowIssue[] = [];
  readonly #rejected: RejectedRow[] = [];
  readonly #putOff: PutOff[] = [];
  #rowsAbove = 0;
  #headRow = 1;
  #headWarnings = 0;
  #plan: HeaderPlan | undefined;
  #motors: MotorBuilder | undefined;
  #rows = 0;
  #blankRows = 0;
  #repeats = 0;

  constructor(name: string, options: ParseOptions, guarded: boolean) {
    this.#name = name;
    this.#options = options;
    const emptyWords = new Set((options.emptyWords ?? []).map((word) => word.trim().toLowerCase()));
    this.#context = { decimal: options.decimal ?? '.', emptyWords, guarded };
  }

  passOver(above: readonly TableRow[], head: TableRow): void {
    this.#rowsAbove = above.length;
    this.#push(notePassedOver(above, head));
  }

  take(line: TableRow): void {
    if (this.#plan === undefined || this.#motors === undefined) {
      this.#start(line);
      return;
    }
    const parsed = parseRow(this.#plan, line, this.#context);
    if (parsed === undefined) {
      this.#blankRows++;
      return;
    }
    this.#rows++;
    this.#add(this.#motors, { parsed, line, last: false });
  }

  #add(motors: MotorBuilder, { parsed, line, last }: PutOff & { readonly last: boolean }): void {
    const outcome = motors.add(parsed, last);
    if (outcome.state === 'put-off') {
      this.#putOff.push({ parsed, line });
      return;
    }
    this.#push(outcome.warnings);
    if (outcome.state === 'repeat') this.#repeats++;
    if (outcome.state === 'rejected') {
      const cells = line.cells.map((cell) => cellText(cell, this.#context.decimal));
      this.#rejected.push({ row: line.row, issues: outcome.errors, cells });
      return;
    }
    for (const [name] of parsed.notes) {
      const at = this.#unnamed.get(name);
      if (at === undefined) continue;
      this.#unnamed.delete(name);
      this.#push([issue('unnamed-column', line.row, '', { count: at })]);
    }
  }

  get motorCount(): number {
    return this.#motors?.count ?? 0;
  }

  finish(dialect: Dialect): StreamedFleet {
    if (this.#plan === undefined || this.#motors === undefined) throw new FileFault('empty-file', { name: this.#name });
    this.#takePutOff(this.#motors);
    if (this.#motors.undatedReadings > 0 && !this.#hasDates(this.#plan)) {
      this.#warnings.splice(
        this.#headWarnings,
        0,
        issue('reading-undated', this.#headRow, 'taken_at', { words: 'All readings' }),
      );
    }
    return {
      motorCount: this.#motors.count,
      motors: this.#motors.finish(),
      warnings: this.#warnings,
      rejected: this.#rejected,
      header: this.#plan.header,
      rowsAbove: this.#rowsAbove,
      rows: this.#rows,
      blankRows: this.#blankRows,
      ignoredRepeats: this.#repeats,
      dialect,
    };
  }

  /** Takes in the rows whose motors may have found their plate in a later row; what is said of rows stays in the order of the sheet. */
  #takePutOff(motors: MotorBuilder): void {
    if (this.#putOff.length === 0) return;
    for (const row of this.#putOff.splice(0)) this.#add(motors, { ...row, last: true });
    this.#rejected.sort((a, b) => a.row - b.row);
    const ofRows = this.#warnings.splice(this.#headWarnings);
    this.#push(ofRows.sort((a, b) => a.row - b.row));
  }

  #start(line: TableRow): void {
    if (line.cells.every(isBlank)) {
      this.#blankRows++;
      return;
    }
    if (this.#blankRows > 0) throw new FileFault('empty-header', { name: this.#name });
    const plan = planHeader(line.cells, {
      mapping: this.#options.mapping,
      guarded: this.#context.guarded,
      platesKept: this.#options.book !== undefined,
      row: line.row,
    });
    this.#headRow = line.row;
    for (const [at, place] of plan.places.entries()) if (place.as === 'unnamed') this.#unnamed.set(place.name, at + 1);
    this.#push(plan.warnings);
    this.#headWarnings = this.#warnings.length;
    this.#plan = plan;
    this.#motors = new MotorBuilder({ asOf: this.#options.asOf, hasDates: this.#hasDates(plan), book: this.#options.book });
  }

  #hasDates(plan: HeaderPlan): boolean {
    return plan.places.some((place) => place.as === 'value' && place.column.name === 'taken_at');
  }

  #push(warnings: readonly RowIssue[]): void {
    for (const warning of warnings) this.#warnings.push(warning);
  }
}
