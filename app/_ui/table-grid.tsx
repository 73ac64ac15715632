'use client';

import { type CSSProperties, type MouseEvent, useId, useRef } from 'react';
import styles from './table-grid.module.css';
import { GridBody } from './table-grid-body';
import { BOXES, type GridColumn } from './table-grid-column';
import { GridHead } from './table-grid-head';
import type { GridPlace } from './table-grid-keys';
import { pressKey } from './table-grid-press';
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

/** The row and column of the cell around an element; `undefined` outside the body. */
function placeOf(target: EventTarget): GridPlace | undefined {
  const cell = target instanceof Element ? target.closest('td[aria-colindex]') : null;
  const row = Number(cell?.parentElement?.getAttribute('aria-rowindex'));
  return cell === null || !(row >= 2) ? undefined : { row: row - 2, column: Number(cell.getAttribute('aria-colindex')) - 1 };
}

/** A real table of any number of rows, of which only those near the window are in the page; one tab stop, moved by arrows. */
export function TableGrid<Row>(props: GridProps<Row>) {
  const { rows, columns, rowId, rowHeight, stacked, selected } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const hint = useId();
  const printing = usePrinting();
  const cell = useActiveCell(props, scroller);
  const inPage = useRowsInPage(props, { scroller, activeRow: cell.row, printing });
  const selection = useRowSelection(props);
  const onClick = (event: MouseEvent): void => {
    const at = placeOf(event.target);
    if (!at) return;
    if (event.target instanceof HTMLInputElement) selection.toggle(at.row, event.shiftKey);
    else if (event.target instanceof Element && event.target.closest('a') !== null) return;
    else if (stacked) {
      const row = rows[at.row];
      if (row !== undefined) props.onOpen(row);
    } else cell.move(at.row, at.column);
  };
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
        onKeyDown={(event) => pressKey(event, { props, cell, selection, scroller })}
        onClick={onClick}
        onDoubleClick={(event) => {
          const row = rows[placeOf(event.target)?.row ?? -1];
          if (row !== undefined) props.onOpen(row);
        }}
        onFocus={(event) => {
          const at = placeOf(event.target);
          // By a press: were the page to move under the finger now, the click would miss.
          if (at && (at.row !== cell.row || at.column !== cell.column)) cell.move(at.row, at.column, 'in-place');
        }}
        style={stacked || printing ? undefined : { width: widthOfAll(columns) }}
      >
        {!stacked && !printing && (
          <colgroup>
            <col style={{ width: BOX_PX }} />
            {columns.map((column) => (
              <col key={column.id} style={{ width: widthOf(column.digits) }} />
            ))}
          </colgroup>
        )}
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
