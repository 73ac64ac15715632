import { useVirtualizer } from '@tanstack/react-virtual';
import { type RefObject, useCallback, useLayoutEffect } from 'react';
import type { GridProps } from './table-grid-props';

const OVERSCAN = 12;

/** A row that is in the page: its place in the table, and where it lies, in px from the first row's upper edge. */
interface PlacedRow {
  readonly index: number;
  readonly start: number;
  readonly end: number;
}

/** The rows that are in the page, and the height of all rows, in px. */
export interface RowsInPage {
  readonly placed: readonly PlacedRow[];
  readonly height: number;
}

interface Around {
  readonly scroller: RefObject<HTMLElement | null>;
  /** Place of the row with the focus; −1 is the head. */
  readonly activeRow: number;
  /** On paper every row is there, and none keeps the place of others. */
  readonly printing: boolean;
}

/** Of any number of rows only those near the window are in the page, and the one with the focus. */
export function useRowsInPage<Row>(
  { rows, rowId, rowHeight }: Pick<GridProps<Row>, 'rows' | 'rowId' | 'rowHeight'>,
  { scroller, activeRow, printing }: Around,
): RowsInPage {
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
  if (printing) {
    const placed = rows.map((_, index) => ({ index, start: index * rowHeight, end: (index + 1) * rowHeight }));
    return { placed, height: rows.length * rowHeight };
  }
  return { placed: virtual.getVirtualItems(), height: virtual.getTotalSize() };
}
