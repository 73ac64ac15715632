import type { ReactNode } from 'react';

/** The column of boxes that select rows stands before all others. */
export const BOXES = 1;

/** One column of the table of `table-grid.tsx`. */
export interface GridColumn<Row> {
  readonly id: string;
  readonly name: string;
  /** Stands under the name. */
  readonly unit: string;
  /** Said when somebody asks what the column is. */
  readonly meaning: string;
  readonly align: 'left' | 'right';
  /** Width in digits, beside the padding. */
  readonly digits: number;
  readonly cell: (row: Row) => ReactNode;
}

export interface GridSort {
  readonly column: string;
  readonly descending: boolean;
}

/** The cell that has the focus, by names that survive sorting and filtering. */
export interface GridFocus {
  readonly rowId: string;
  readonly columnId: string;
}
