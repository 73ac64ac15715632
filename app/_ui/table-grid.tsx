'use client';

import { useVirtualizer } from '@tanstack/react-virtual';
import {
  type CSSProperties,
  type KeyboardEvent,
  type MouseEvent,
  type ReactNode,
  useCallback,
  useEffect,
  useId,
  useLayoutEffect,
  useRef,
  useState,
} from 'react';
import styles from './table-grid.module.css';
import type { GridColumn, GridFocus, GridSort } from './table-grid-column';
import { GridHead } from './table-grid-head';
import { placeAfterKey } from './table-grid-keys';
import { usePrinting } from './use-printing';

interface Props<Row> {
  /** What the table holds, for those who cannot see it. */
  readonly label: string;
  readonly rows: readonly Row[];
  readonly columns: readonly GridColumn<Row>[];
  readonly rowId: (row: Row) => string;
  readonly rowName: (row: Row) => string;
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

/** The column of boxes that select rows stands before all others. */
const BOXES = 1;
const OVERSCAN = 12;
const BOX_PX = 36;
/** Padding of a cell, both sides. */
const PADDING_PX = 16;
/** A table whose cells are moved through by keys is a grid (ARIA in HTML allows the role on a table). */
const GRID = { role: 'grid', 'aria-multiselectable': true } as const;
/** Rows that only keep the place of others; nothing in them takes the focus. */
const UNSPOKEN = { 'aria-hidden': true } as const;

/** The row and column of the cell around an element; `undefined` outside the body. */
function placeOf(target: EventTarget): { readonly row: number; readonly column: number } | undefined {
  const cell = target instanceof Element ? target.closest('td[aria-colindex]') : null;
  const row = Number(cell?.parentElement?.getAttribute('aria-rowindex'));
  return cell === null || !(row >= 2) ? undefined : { row: row - 2, column: Number(cell.getAttribute('aria-colindex')) - 1 };
}

/** A real table of any number of rows, of which only those near the window are in the page; one tab stop, moved by arrows. */
export function TableGrid<Row>(props: Props<Row>) {
  const { rows, columns, rowId, rowHeight, stacked, selected } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const hint = useId();
  const [active, setActive] = useState({ row: 0, column: BOXES });
  const [anchor, setAnchor] = useState<number>();
  const moved = useRef<'no' | 'in-place' | 'into-view'>('no');
  const printing = usePrinting();
  const activeRow = Math.min(active.row, rows.length - 1);
  const activeColumn = Math.min(active.column, columns.length - 1 + BOXES);

  const keyOf = useCallback(
    (index: number) => {
      const row = rows[index];
      return row === undefined ? index : rowId(row);
    },
    [rows, rowId],
  );
  const virtual = useVirtualizer({
    count: rows.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => rowHeight,
    overscan: OVERSCAN,
    initialRect: { width: 1000, height: 800 },
    getItemKey: keyOf,
    rangeExtractor: ({ startIndex, endIndex, overscan, count }) => {
      const from = Math.max(0, startIndex - overscan);
      const to = Math.min(count - 1, endIndex + overscan);
      const indices = Array.from({ length: Math.max(0, to - from + 1) }, (_, at) => from + at);
      // The row with the focus stays in the page wherever it is, or the focus would be lost.
      if (activeRow >= 0 && activeRow < count && activeRow < from) indices.unshift(activeRow);
      if (activeRow > to && activeRow < count) indices.push(activeRow);
      return indices;
    },
  });
  useLayoutEffect(() => {
    if (rowHeight > 0) virtual.measure();
  }, [rowHeight, virtual]);

  const focusActive = (): void => {
    const cell = scroller.current?.querySelector<HTMLElement>('[data-active="true"]');
    cell?.focus({ preventScroll: true });
    if (moved.current === 'into-view') cell?.closest('td, th')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  };
  useEffect(() => {
    if (moved.current === 'no') return;
    focusActive();
    moved.current = 'no';
  });
  const move = (row: number, column: number, how: 'in-place' | 'into-view' = 'into-view'): void => {
    moved.current = how;
    setActive({ row, column });
    const [at, head] = [rows[row], columns[column - BOXES]];
    props.onFocusCell(at === undefined || head === undefined ? undefined : { rowId: rowId(at), columnId: head.id });
  };
  useReturn(props, move);

  const select = (from: number, to: number, on: boolean): void => {
    const next = new Set(selected);
    for (let at = Math.min(from, to); at <= Math.max(from, to); at++) {
      const row = rows[at];
      if (row === undefined) continue;
      if (on) next.add(rowId(row));
      else next.delete(rowId(row));
    }
    props.onSelect(next);
  };
  const toggle = (index: number, extend: boolean): void => {
    const row = rows[index];
    if (row === undefined) return;
    if (extend && anchor !== undefined) select(anchor, index, true);
    else select(index, index, !selected.has(rowId(row)));
    setAnchor(index);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.altKey || event.defaultPrevented) return;
    const control = event.ctrlKey || event.metaKey;
    const row = rows[activeRow];
    const column = columns[activeColumn - BOXES];
    const page = Math.max(1, Math.floor((scroller.current?.clientHeight ?? rowHeight) / rowHeight) - 3);
    const size = { rows: rows.length, columns: columns.length + BOXES, page };
    const next = placeAfterKey(event.key, control, { row: activeRow, column: activeColumn }, size);
    if (next) {
      event.preventDefault();
      if (event.shiftKey && (event.key === 'ArrowUp' || event.key === 'ArrowDown') && activeRow >= 0) {
        const start = anchor ?? activeRow;
        if (anchor === undefined) setAnchor(activeRow);
        select(start, Math.max(0, next.row), true);
      }
      move(next.row, next.column);
      return;
    }
    if (control && event.key.toLowerCase() === 'c' && (document.getSelection()?.isCollapsed ?? true)) {
      const chosen = rows.filter((each) => selected.has(rowId(each)));
      props.onCopy(chosen.length > 0 ? chosen : row === undefined ? [] : [row]);
      event.preventDefault();
    } else if (control && event.key.toLowerCase() === 'a') {
      props.onSelect(new Set(rows.map(rowId)));
      event.preventDefault();
    } else if (activeRow < 0 || row === undefined) {
      return;
    } else if (event.key === 'Enter') {
      event.preventDefault();
      if (event.shiftKey && column !== undefined) props.onWhy(row, column.id);
      else props.onOpen(row);
    } else if (event.key === ' ') {
      event.preventDefault();
      toggle(activeRow, event.shiftKey);
    }
  };

  const onClick = (event: MouseEvent): void => {
    const at = placeOf(event.target);
    if (!at) return;
    if (event.target instanceof HTMLInputElement) toggle(at.row, event.shiftKey);
    else if (event.target instanceof Element && event.target.closest('a') !== null) return;
    else if (stacked) {
      const row = rows[at.row];
      if (row !== undefined) props.onOpen(row);
    } else move(at.row, at.column);
  };

  const shown = printing
    ? rows.map((_, index) => ({ index, start: index * rowHeight, end: (index + 1) * rowHeight }))
    : virtual.getVirtualItems();
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
  for (const { index, start, end } of shown) {
    const row = rows[index];
    if (row === undefined) continue;
    gap(start, `gap-${index}`);
    reached = end;
    const id = rowId(row);
    const name = props.rowName(row);
    const isActive = index === activeRow;
    body.push(
      <tr key={id} aria-rowindex={index + 2} aria-selected={selected.has(id)} className={styles.row}>
        <td aria-colindex={1} className={styles.box} data-column="box">
          <input
            type="checkbox"
            aria-label={`Select ${name}`}
            checked={selected.has(id)}
            tabIndex={isActive && activeColumn === 0 ? 0 : -1}
            data-active={isActive && activeColumn === 0}
            onChange={() => undefined}
          />
        </td>
        {columns.map((column, at) => {
          const here = isActive && activeColumn === at + BOXES;
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
      </tr>,
    );
  }
  gap(printing ? 0 : virtual.getTotalSize(), 'gap-end');

  const total = columns.reduce((sum, column) => sum + column.digits, 0);
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
        onKeyDown={onKeyDown}
        onClick={onClick}
        onDoubleClick={(event) => {
          const row = rows[placeOf(event.target)?.row ?? -1];
          if (row !== undefined) props.onOpen(row);
        }}
        onFocus={(event) => {
          const at = placeOf(event.target);
          // By a press: were the page to move under the finger now, the click would miss.
          if (at && (at.row !== activeRow || at.column !== activeColumn)) move(at.row, at.column, 'in-place');
        }}
        style={
          stacked || printing ? undefined : { width: `calc(${total.toFixed(2)}ch + ${columns.length * PADDING_PX + BOX_PX}px)` }
        }
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
          onAll={(on) => props.onSelect(on ? new Set(rows.map(rowId)) : new Set())}
          activeColumn={activeRow < 0 ? activeColumn : undefined}
          onFocusColumn={(column) => setActive({ row: -1, column })}
          entry={rows.length === 0}
          printing={printing}
        />
        <tbody>{body}</tbody>
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

function variables(rowHeight: number, first = 12): CSSProperties {
  const style: Record<string, string> = { '--grid-row': `${rowHeight}px`, '--grid-first': widthOf(first) };
  return style;
}

/** Puts the focus back, once, where it was when the page was left. */
function useReturn<Row>(
  { returnTo, rows, columns, rowId }: Pick<Props<Row>, 'returnTo' | 'rows' | 'columns' | 'rowId'>,
  move: (row: number, column: number) => void,
): void {
  const done = useRef(false);
  useEffect(() => {
    if (done.current || rows.length === 0) return;
    done.current = true;
    if (returnTo === undefined) return;
    const row = rows.findIndex((each) => rowId(each) === returnTo.rowId);
    const column = columns.findIndex((each) => each.id === returnTo.columnId);
    if (row >= 0) move(row, Math.max(0, column) + BOXES);
  });
}
