import styles from './table-grid.module.css';
import type { GridColumn, GridSort } from './table-grid-column';

interface Props<Row> {
  readonly columns: readonly GridColumn<Row>[];
  readonly sort: readonly GridSort[];
  readonly onSort: (column: string, add: boolean) => void;
  /** Whether every row, and whether any row, is selected. */
  readonly all: boolean;
  readonly some: boolean;
  readonly onAll: (on: boolean) => void;
  /** The column whose head has the focus; 0 is the box that selects all. */
  readonly activeColumn: number | undefined;
  readonly onFocusColumn: (column: number) => void;
  /** The head holds the tab stop because there are no rows. */
  readonly entry: boolean;
  /** On paper the head is words: a browser does not repeat buttons at the top of the next page. */
  readonly printing: boolean;
}

/** The head: the box that selects all, and each column's name, unit under it, and the arrow where the column sorts. */
export function GridHead<Row>({
  columns,
  sort,
  onSort,
  all,
  some,
  onAll,
  activeColumn,
  onFocusColumn,
  entry,
  printing,
}: Props<Row>) {
  return (
    <thead>
      <tr aria-rowindex={1}>
        <BoxHead all={all} some={some} onAll={onAll} active={activeColumn === 0} onFocus={() => onFocusColumn(0)} />
        {columns.map((column, at) => (
          <ColumnHead
            key={column.id}
            column={column}
            at={at}
            sort={sort}
            onSort={onSort}
            active={activeColumn === at + 1 || (entry && at === 0)}
            onFocus={() => onFocusColumn(at + 1)}
            printing={printing}
          />
        ))}
      </tr>
    </thead>
  );
}

interface BoxProps extends Pick<Props<never>, 'all' | 'some' | 'onAll'> {
  readonly active: boolean;
  readonly onFocus: () => void;
}

function BoxHead({ all, some, onAll, active, onFocus }: BoxProps) {
  return (
    <th scope="col" aria-colindex={1} className={styles.box} data-column="box">
      <input
        type="checkbox"
        aria-label="Select all that are listed"
        checked={all}
        ref={(box) => {
          if (box) box.indeterminate = some && !all;
        }}
        tabIndex={active ? 0 : -1}
        data-active={active}
        onFocus={onFocus}
        onChange={() => onAll(!all)}
      />
    </th>
  );
}

interface ColumnProps<Row> extends Pick<Props<Row>, 'sort' | 'onSort' | 'printing'> {
  readonly column: GridColumn<Row>;
  readonly at: number;
  readonly active: boolean;
  readonly onFocus: () => void;
}

function ColumnHead<Row>({ column, at, sort, onSort, active, onFocus, printing }: ColumnProps<Row>) {
  const place = sort.findIndex((key) => key.column === column.id);
  const key = sort[place];
  const words = (
    <>
      <span className={styles.name}>
        {column.name}
        {key && (
          <span className={styles.arrow} aria-hidden="true">
            {key.descending ? '↓' : '↑'}
            {sort.length > 1 && <sub>{place + 1}</sub>}
          </span>
        )}
      </span>
      {column.unit !== '' && <span className={styles.unit}>{column.unit}</span>}
    </>
  );
  return (
    <th
      scope="col"
      aria-colindex={at + 2}
      data-column={column.id}
      data-align={column.align}
      {...(key && { 'aria-sort': key.descending ? ('descending' as const) : ('ascending' as const) })}
    >
      {printing ? (
        <span className={styles.head}>{words}</span>
      ) : (
        <button
          type="button"
          className={styles.head}
          title={`${column.meaning} Press to sort; with Shift to sort by it as well.`}
          tabIndex={active ? 0 : -1}
          data-active={active}
          onFocus={onFocus}
          onClick={(event) => onSort(column.id, event.shiftKey)}
          onKeyDown={(event) => {
            // Enter and Space press the button; the table must not take them for a row's.
            if (event.key === 'Enter' || event.key === ' ') event.stopPropagation();
          }}
        >
          {words}
        </button>
      )}
    </th>
  );
}
