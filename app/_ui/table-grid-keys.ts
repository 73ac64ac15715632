/** A place in a table: row -1 is the head. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

interface GridSize {
  readonly rows: number;
  readonly columns: number;
  /** Rows that are seen at once. */
  readonly page: number;
}

/** Where a key leads from a place; `undefined` when it moves nothing. The keys are those of the ARIA practice for grids. */
export function placeAfterKey(key: string, control: boolean, at: GridPlace, size: GridSize): GridPlace | undefined {
  const lastRow = size.rows - 1;
  const lastColumn = size.columns - 1;
  const to = (row: number, column: number): GridPlace => ({
    row: Math.max(-1, Math.min(lastRow, row)),
    column: Math.max(0, Math.min(lastColumn, column)),
  });
  switch (key) {
    case 'ArrowUp':
      return to(control ? 0 : at.row - 1, at.column);
    case 'ArrowDown':
      return to(control ? lastRow : at.row + 1, at.column);
    case 'ArrowLeft':
      return to(at.row, control ? 0 : at.column - 1);
    case 'ArrowRight':
      return to(at.row, control ? lastColumn : at.column + 1);
    case 'Home':
      return control ? to(Math.min(0, lastRow), 0) : to(at.row, 0);
    case 'End':
      return control ? to(lastRow, lastColumn) : to(at.row, lastColumn);
    case 'PageUp':
      return to(Math.max(Math.min(0, lastRow), at.row - size.page), at.column);
    case 'PageDown':
      return to(at.row + size.page, at.column);
    default:
      return undefined;
  }
}
