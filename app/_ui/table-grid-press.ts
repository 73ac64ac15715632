import type { FocusEvent, KeyboardEvent, MouseEvent, RefObject } from 'react';
import { BOXES } from './table-grid-column';
import { type GridPlace, placeAfterKey } from './table-grid-keys';
import type { GridProps } from './table-grid-props';
import type { ActiveCell } from './use-active-cell';
import type { RowSelection } from './use-row-selection';

interface Pressed<Row> {
  readonly props: GridProps<Row>;
  readonly cell: ActiveCell;
  readonly selection: RowSelection;
  readonly scroller: RefObject<HTMLElement | null>;
}

/** What a key does in the table: it moves the focus and may select on the way, or else it does something with rows. */
export function pressKey<Row>(event: KeyboardEvent, pressed: Pressed<Row>): void {
  if (event.altKey || event.defaultPrevented) return;
  const { props, cell, selection, scroller } = pressed;
  const { rowHeight } = props;
  const page = Math.max(1, Math.floor((scroller.current?.clientHeight ?? rowHeight) / rowHeight) - 3);
  const size = { rows: props.rows.length, columns: props.columns.length + BOXES, page };
  const next = placeAfterKey(event.key, event.ctrlKey || event.metaKey, cell, size);
  if (!next) {
    doWithRows(event, pressed);
    return;
  }
  event.preventDefault();
  if (event.shiftKey && (event.key === 'ArrowUp' || event.key === 'ArrowDown') && cell.row >= 0)
    selection.extend(cell.row, Math.max(0, next.row));
  cell.move(next.row, next.column);
}

/** Copies the selected rows, selects all, opens the row with the focus or selects it, where the key is one of those. */
function doWithRows<Row>(event: KeyboardEvent, { props, cell, selection }: Omit<Pressed<Row>, 'scroller'>): void {
  const { rows, rowId } = props;
  const control = event.ctrlKey || event.metaKey;
  const row = rows[cell.row];
  const column = props.columns[cell.column - BOXES];
  if (control && event.key.toLowerCase() === 'c' && (document.getSelection()?.isCollapsed ?? true)) {
    const chosen = rows.filter((each) => props.selected.has(rowId(each)));
    props.onCopy(chosen.length > 0 ? chosen : row === undefined ? [] : [row]);
    event.preventDefault();
  } else if (control && event.key.toLowerCase() === 'a') {
    selection.all();
    event.preventDefault();
  } else if (cell.row < 0 || row === undefined) {
    return;
  } else if (event.key === 'Enter') {
    event.preventDefault();
    if (event.shiftKey && column !== undefined) props.onWhy(row, column.id);
    else props.onOpen(row);
  } else if (event.key === ' ') {
    event.preventDefault();
    selection.toggle(cell.row, event.shiftKey);
  }
}

/** What a press of the mouse or a finger does: it selects or opens a row, or moves the focus; links go their own way. */
export function pressMouse<Row>(event: MouseEvent, { props, cell, selection }: Omit<Pressed<Row>, 'scroller'>): void {
  const at = placeOf(event.target);
  if (!at) return;
  if (event.target instanceof HTMLInputElement) selection.toggle(at.row, event.shiftKey);
  else if (event.target instanceof Element && event.target.closest('a') !== null) return;
  else if (props.stacked) openRow(props, at);
  else cell.move(at.row, at.column);
}

/** Opens the row that is pressed twice. */
export function pressTwice<Row>(event: MouseEvent, props: GridProps<Row>): void {
  openRow(props, placeOf(event.target));
}

/** The cell that the focus came to by itself is the active one. */
export function takeFocus(event: FocusEvent, cell: ActiveCell): void {
  const at = placeOf(event.target);
  // By a press: were the page to move under the finger now, the click would miss.
  if (at && (at.row !== cell.row || at.column !== cell.column)) cell.move(at.row, at.column, 'in-place');
}

function openRow<Row>({ rows, onOpen }: GridProps<Row>, at: GridPlace | undefined): void {
  const row = rows[at?.row ?? -1];
  if (row !== undefined) onOpen(row);
}

/** The row and column of the cell around an element; `undefined` outside the body. */
function placeOf(target: EventTarget): GridPlace | undefined {
  const cell = target instanceof Element ? target.closest('td[aria-colindex]') : null;
  const row = Number(cell?.parentElement?.getAttribute('aria-rowindex'));
  return cell === null || !(row >= 2) ? undefined : { row: row - 2, column: Number(cell.getAttribute('aria-colindex')) - 1 };
}
