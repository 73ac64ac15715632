import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { BOXES } from './table-grid-column';
import type { GridPlace } from './table-grid-keys';
import type { GridProps } from './table-grid-props';

/** Whether the page moves so that the cell is seen. */
type How = 'in-place' | 'into-view';

/** The one cell of a table that has, or would take, the focus; column 0 is the box that selects the row. */
export interface ActiveCell extends GridPlace {
  readonly move: (row: number, column: number, how?: How) => void;
  /** The head's own buttons take the focus by themselves. */
  readonly toHead: (column: number) => void;
}

/** The active cell, and how the focus is to come to it; without `how` it stays where it is. */
interface Active extends GridPlace {
  readonly how?: How;
}

/** Which cell is the active one; moving it moves the focus there as soon as the cell is in the page. */
export function useActiveCell<Row>(props: GridProps<Row>, scroller: RefObject<HTMLElement | null>): ActiveCell {
  const { rows, columns, rowId } = props;
  const [active, setActive] = useState<Active>({ row: 0, column: BOXES });
  // The wish stands in the state, so that only the page that has the new cell fulfils it. Were it kept beside, what is still to be done of an
  // earlier drawing (newer figures, the end of a scroll) could take it for its own, and the focus would stay behind.
  useLayoutEffect(() => {
    if (active.how === undefined) return;
    const cell = scroller.current?.querySelector<HTMLElement>('[data-active="true"]');
    cell?.focus({ preventScroll: true });
    if (active.how === 'into-view') cell?.closest('td, th')?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [active, scroller]);
  const move = (row: number, column: number, how: How = 'into-view'): void => {
    setActive({ row, column, how });
    const [at, head] = [rows[row], columns[column - BOXES]];
    props.onFocusCell(at === undefined || head === undefined ? undefined : { rowId: rowId(at), columnId: head.id });
  };
  useReturn(props, move);
  return {
    row: Math.min(active.row, rows.length - 1),
    column: Math.min(active.column, columns.length - 1 + BOXES),
    move,
    toHead: (column) => setActive({ row: -1, column }),
  };
}

/** Puts the focus back, once, where it was when the page was left. */
function useReturn<Row>(
  { returnTo, rows, columns, rowId }: Pick<GridProps<Row>, 'returnTo' | 'rows' | 'columns' | 'rowId'>,
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
