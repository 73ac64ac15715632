import type { Column } from './column';
import { columnByName } from './columns';
import { issue, type RowIssue } from './issue-codes';
import { shown } from './number';
import { type Cell, cellText, isBlank, type TableBlocks, type TableRow } from './table';

/** Rows from the top among which the column names are looked for. */
export const HEAD_ROWS = 20;
/** Known names that tell column names from cells and titles. */
export const KNOWN_NAMES = 3;

/** What a reader of sheets makes of a row that may hold its column names. */
export interface HeadLook {
  /** How many names it knows. */
  readonly known: number;
  /** All that the reader needs is named. */
  readonly complete: boolean;
  /** Would the row be one of the table, were these its column names? */
  readonly isData: (row: TableRow) => boolean;
}

type PassedOver = (above: readonly TableRow[], head: TableRow) => void;
export type LookAtHead = (titles: readonly string[]) => HeadLook;

/**
 * The rows from that of the column names on. Where they stand below a title, the rows above are told to `passedOver` and left out; rows keep the
 * numbers that they have in the file. Wherever there is a doubt (names are missing, two rows hold some, a row above could be one of the table), all
 * rows come as they are, and the reader refuses the first.
 */
export async function* fromHead(blocks: TableBlocks, look: LookAtHead, passedOver: PassedOver): TableBlocks {
  const waiting: TableRow[] = [];
  let decided = false;
  for await (const block of blocks) {
    if (decided) {
      yield block;
      continue;
    }
    waiting.push(...block);
    const head = headAmong(waiting, look);
    if (head === undefined && waiting.length < HEAD_ROWS) continue;
    decided = true;
    yield below(waiting, head ?? 0, passedOver);
  }
  if (!decided && waiting.length > 0) yield waiting;
}

function below(rows: readonly TableRow[], at: number, passedOver: PassedOver): readonly TableRow[] {
  const head = rows[at];
  if (at === 0 || head === undefined) return rows;
  passedOver(rows.slice(0, at), head);
  return rows.slice(at);
}

/** Says what stood above the column names, so that nothing is left out in silence; empty rows need no word. */
export function notePassedOver(above: readonly TableRow[], head: TableRow): RowIssue[] {
  const filled = above.filter(({ cells }) => !cells.every(isBlank));
  const [first] = filled;
  if (first === undefined) return [];
  const words = filled.map(({ row, cells }) => {
    const texts = cells.filter((cell) => !isBlank(cell)).map((cell) => cellText(cell).trim());
    return `row ${row} with ${shown(texts.join(' '))}`;
  });
  return [issue('rows-above-names', first.row, '', { otherRow: head.row, words: words.join(', ') })];
}

/** Place of the column names; 0 where nothing is passed over, `undefined` as long as they may still come. */
function headAmong(rows: readonly TableRow[], look: LookAtHead): number | undefined {
  for (const [at, { cells }] of rows.slice(0, HEAD_ROWS).entries()) {
    if (cells.every(isBlank)) continue;
    const { known, complete, isData } = look(cells.map((cell) => cellText(cell).trim()));
    if (complete && known >= KNOWN_NAMES) return rows.slice(0, at).some(isData) ? 0 : at;
    if (known >= KNOWN_NAMES) return 0;
  }
  return undefined;
}

/** A look at the head of a fleet sheet, by what is known of its titles: a motor’s own row or a reading of one has to be named. */
export function lookAtFleetHead(namesOf: (titles: readonly string[]) => readonly (string | undefined)[]): LookAtHead {
  return (titles) => {
    const names = namesOf(titles);
    const has = (...some: readonly string[]): boolean => some.some((name) => names.includes(name));
    return {
      known: new Set(names.filter((name) => name !== undefined)).size,
      complete: has('tag') && ((has('rated_voltage_v') && has('rated_power_kw', 'rated_power_hp')) || has('taken_at')),
      isData: ({ cells }) =>
        names.some((name, at) => name === 'tag' && !isBlank(cells[at])) &&
        names.some((name, at) => name !== undefined && columnByName(name)?.kind.type === 'number' && isNumber(cells[at])),
    };
  };
}

/** A look at the head of a sheet that has just these columns: all that are always required have to be named. */
export function lookAtColumns(columns: readonly Column[]): LookAtHead {
  const required = columns.filter((column) => column.required === 'always');
  return (titles) => {
    const places = titles.map((title) => columns.find(({ name }) => name === title.toLowerCase()));
    return {
      known: new Set(places.filter((column) => column !== undefined)).size,
      complete: required.every((column) => places.includes(column)),
      isData: ({ cells }) =>
        required.every((column) => !isBlank(cells[places.indexOf(column)])) &&
        places.some((column, at) => column?.kind.type === 'number' && isNumber(cells[at])),
    };
  };
}

function isNumber(cell: Cell | undefined): boolean {
  return /^[+-]?\d+(?:[.,]\d+)*$/.test(cellText(cell).trim());
}
