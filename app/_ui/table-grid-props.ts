import type { GridColumn, GridFocus, GridSort } from './table-grid-column';

/** What the table of `table-grid.tsx` is given. */
export interface GridProps<Row> {
  /** What the table holds, for those who cannot see it. */
  readonly label: string;
  readonly rows: readonly Row[];
  readonly columns: readonly GridColumn<Row>[];
  readonly rowId: (row: Row) => string;
  readonly rowName: (row: Row) => string;
  /** In px. */
  readonly rowHeight: number;
  /** Two lines a row, for narrow screens: the columns are placed by their `data-column`. */
  readonly stacked: boolean;
  readonly sort: readonly GridSort[];
  /** @param add keeps the sorting there is and adds this column to it. */
  readonly onSort: (column: string, add: boolean) => void;
  readonly selected: ReadonlySet<string>;
  readonly onSelect: (ids: ReadonlySet<string>) => void;
  readonly onOpen: (row: Row) => void;
  readonly onWhy: (row: Row, columnId: string) => void;
  readonly onCopy: (rows: readonly Row[]) => void;
  readonly onFocusCell: (focus: GridFocus | undefined) => void;
  /** Where to put the focus when the table first appears: the place that was left. */
  readonly returnTo?: GridFocus | undefined;
}
