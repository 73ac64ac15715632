import type { ReactNode } from 'react';
import styles from './table-grid.module.css';
import { BOXES } from './table-grid-column';
import type { GridPlace } from './table-grid-keys';
import type { GridProps } from './table-grid-props';
import type { RowsInPage } from './use-rows-in-page';

/** Rows that only keep the place of others; nothing in them takes the focus. */
const UNSPOKEN = { 'aria-hidden': true } as const;

interface Props<Row> extends Pick<GridProps<Row>, 'rows' | 'columns' | 'rowId' | 'rowName' | 'selected'> {
  readonly inPage: RowsInPage;
  readonly active: GridPlace;
  readonly printing: boolean;
}

/** The rows that are in the page, and between them gaps as high as those that are not. */
export function GridBody<Row>({ rows, columns, rowId, rowName, selected, inPage, active, printing }: Props<Row>) {
  const body: ReactNode[] = [];
  let reached = 0;
  const gap = (to: number, key: string): void => {
    if (to <= reached || printing) return;
    body.push(
      <tr key={key} {...UNSPOKEN} className={styles.gap} style={{ height: to - reached }}>
        <td colSpan={columns.length + BOXES} />
      </tr>,
    );
  };
  for (const { index, start, end } of inPage.placed) {
    const row = rows[index];
    if (row === undefined) continue;
    gap(start, `gap-${index}`);
    reached = end;
    const id = rowId(row);
    body.push(
      <GridRow
        key={id}
        row={row}
        index={index}
        name={rowName(row)}
        columns={columns}
        selected={selected.has(id)}
        activeColumn={index === active.row ? active.column : undefined}
      />,
    );
  }
  gap(inPage.height, 'gap-end');
  return <tbody>{body}</tbody>;
}

interface RowProps<Row> extends Pick<GridProps<Row>, 'columns'> {
  readonly row: Row;
  /** Place in the table, of the first row 0. */
  readonly index: number;
  readonly name: string;
  readonly selected: boolean;
  /** The column with the focus, where the row has it; 0 is the box. */
  readonly activeColumn: number | undefined;
}

function GridRow<Row>({ row, index, name, columns, selected, activeColumn }: RowProps<Row>) {
  return (
    <tr aria-rowindex={index + 2} aria-selected={selected} className={styles.row}>
      <td aria-colindex={1} className={styles.box} data-column="box">
        <input
          type="checkbox"
          aria-label={`Select ${name}`}
          checked={selected}
          tabIndex={activeColumn === 0 ? 0 : -1}
          data-active={activeColumn === 0}
          onChange={() => undefined}
        />
      </td>
      {columns.map((column, at) => {
        const here = activeColumn === at + BOXES;
        return (
          <td
            key={column.id}
            aria-colindex={at + 1 + BOXES}
            data-column={column.id}
            data-align={column.align}
            data-active={here}
            tabIndex={here ? 0 : -1}
          >
            {column.cell(row)}
          </td>
        );
      })}
    </tr>
  );
}
