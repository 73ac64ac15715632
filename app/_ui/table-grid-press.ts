import type { KeyboardEvent, RefObject } from 'react';
import { BOXES } from './table-grid-column';
import { placeAfterKey } from './table-grid-keys';
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
