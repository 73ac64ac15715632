'use client';

import { type CSSProperties, useId, useRef } from 'react';
import styles from './table-grid.module.css';
import { GridBody } from './table-grid-body';
import { BOXES, type GridColumn } from './table-grid-column';
import { GridHead } from './table-grid-head';
import { pressKey, pressMouse, pressTwice, takeFocus } from './table-grid-press';
import type { GridProps } from './table-grid-props';
import { useActiveCell } from './use-active-cell';
import { usePrinting } from './use-printing';
import { useRowSelection } from './use-row-selection';
import { useRowsInPage } from './use-rows-in-page';

const BOX_PX = 36;
/** Padding of a cell, both sides. */
const PADDING_PX = 16;
/** A table whose cells are moved through by keys is a grid (ARIA in HTML allows the role on a table). */
const GRID = { role: 'grid', 'aria-multiselectable': true } as const;

/** A real table of any number of rows, of which only those near the window are in the page; one tab stop, moved by arrows. */
export function TableGrid<Row>(props: GridProps<Row>) {
  const { rows, columns, rowId, rowHeight, stacked, selected } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const hint = useId();
  const printing = usePrinting();
  const cell = useActiveCell(props, scroller);
  const inPage = useRowsInPage(props, { scroller, activeRow: cell.row, printing });
  const selection = useRowSelection(props);
  const pressed = { props, cell, selection, scroller };
  return (
    <section
      ref={scroller}
      className={styles.scroller}
      aria-label={props.label}
      data-stacked={stacked}
      style={variables(rowHeight, columns[0]?.digits)}
    >
      <table
        {...GRID}
        className={styles.table}
        aria-label={props.label}
        aria-describedby={hint}
        aria-rowcount={rows.length + 1}
        aria-colcount={columns.length + BOXES}
        onKeyDown={(event) => pressKey(event, pressed)}
        onClick={(event) => pressMouse(event, pressed)}
        onDoubleClick={(event) => pressTwice(event, props)}
        onFocus={(event) => takeFocus(event, cell)}
        style={stacked || printing ? undefined : { width: widthOfAll(columns) }}
      >
        {!stacked && !printing && <Widths columns={columns} />}
        <GridHead
          columns={columns}
          sort={props.sort}
          onSort={props.onSort}
          all={rows.length > 0 && rows.every((row) => selected.has(rowId(row)))}
          some={selected.size > 0}
          onAll={(on) => (on ? selection.all() : selection.none())}
          activeColumn={cell.row < 0 ? cell.column : undefined}
          onFocusColumn={cell.toHead}
          entry={rows.length === 0}
          printing={printing}
        />
        <GridBody
          rows={rows}
          columns={columns}
          rowId={rowId}
          rowName={props.rowName}
          selected={selected}
          inPage={inPage}
          active={cell}
          printing={printing}
        />
      </table>
      <p id={hint} className="unseen">
        Arrows move, Enter opens the motor, Shift+Enter tells how a figure is known, Space selects, Ctrl+C copies.
      </p>
    </section>
  );
}

function Widths<Row>({ columns }: { readonly columns: readonly GridColumn<Row>[] }) {
  return (
    <colgroup>
      <col style={{ width: BOX_PX }} />
      {columns.map((column) => (
        <col key={column.id} style={{ width: widthOf(column.digits) }} />
      ))}
    </colgroup>
  );
}

function widthOf(digits: number): string {
  return `calc(${digits.toFixed(2)}ch + ${PADDING_PX}px)`;
}

function widthOfAll<Row>(columns: readonly GridColumn<Row>[]): string {
  const digits = columns.reduce((sum, column) => sum + column.digits, 0);
  return `calc(${digits.toFixed(2)}ch + ${columns.length * PADDING_PX + BOX_PX}px)`;
}

function variables(rowHeight: number, first = 12): CSSProperties {
  const style: Record<string, string> = { '--grid-row': `${rowHeight}px`, '--grid-first': widthOf(first) };
  return style;
}
