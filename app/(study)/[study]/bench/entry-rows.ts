/** A column of the table of entry, as plain data for the browser. */
export interface EntryColumn {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly meaning: string;
  /** Sections that have a use for it. */
  readonly sections: readonly string[];
}

/** A row of the table of entry; the key stays with the row while others come and go. */
export interface EntryRow {
  readonly key: number;
  readonly section: string;
  readonly cells: readonly string[];
  /** Somebody asked for the row, so that it is shown while it is empty. */
  readonly asked?: boolean;
}

/** Sections of a complete dynamometer test, row by row. */
const COMPLETE = [
  'cold',
  'rated-load',
  ...Array.from({ length: 6 }, () => 'load'),
  ...Array.from({ length: 8 }, () => 'no-load'),
] as const;

/** A complete test with nothing written in it. */
export function emptyTest(columns: number): EntryRow[] {
  return COMPLETE.map((section, key) => ({ key, section, cells: Array.from({ length: columns }, () => '') }));
}

/** Rows of a sheet that was read. */
export function entryRows(rows: readonly { readonly section: string; readonly cells: readonly string[] }[]): EntryRow[] {
  return rows.map((row, key) => ({ ...row, key }));
}

/** One more row below another, of its section. */
export function withRow(rows: readonly EntryRow[], after: number, columns: number): EntryRow[] {
  const key = 1 + Math.max(-1, ...rows.map((row) => row.key));
  const added = { key, asked: true, section: rows[after]?.section ?? 'load', cells: Array.from({ length: columns }, () => '') };
  return [...rows.slice(0, after + 1), added, ...rows.slice(after + 1)];
}

/** The rows with one cell changed; a block pasted from a spreadsheet fills cells to the right and below. */
export function withCells(rows: readonly EntryRow[], at: number, from: number, text: string): EntryRow[] {
  const block = text
    .replace(/\r?\n$/, '')
    .split(/\r?\n/)
    .map((line) => line.split('\t'));
  return rows.map((row, index) => {
    const line = block[index - at];
    if (line === undefined) return row;
    return { ...row, cells: row.cells.map((cell, column) => line[column - from] ?? cell) };
  });
}

/** Whether an empty row only waits its turn: the one above it is of the same section and empty as well. */
export function isWaiting(rows: readonly EntryRow[], at: number): boolean {
  const [row, above] = [rows[at], rows[at - 1]];
  return (
    row?.asked !== true && row?.section === above?.section && [row, above].every((each) => each !== undefined && isEmpty(each))
  );
}

function isEmpty(row: EntryRow): boolean {
  return row.cells.every((cell) => cell.trim() === '');
}
