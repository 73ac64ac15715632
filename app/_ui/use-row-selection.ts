import { useState } from 'react';
import type { GridProps } from './table-grid-props';

/** The ways to select rows of a table, by their place in it. */
export interface RowSelection {
  /** @param extend selects all from the row that was toggled last. */
  readonly toggle: (index: number, extend: boolean) => void;
  /** Selects from the row that was toggled last to another one; where there is none, from the row given. */
  readonly extend: (from: number, to: number) => void;
  readonly all: () => void;
  readonly none: () => void;
}

/** Keeps from where a selection extends; which rows are selected is its owner's to keep. */
export function useRowSelection<Row>({
  rows,
  rowId,
  selected,
  onSelect,
}: Pick<GridProps<Row>, 'rows' | 'rowId' | 'selected' | 'onSelect'>): RowSelection {
  const [anchor, setAnchor] = useState<number>();
  const select = (from: number, to: number, on: boolean): void => {
    const next = new Set(selected);
    for (let at = Math.min(from, to); at <= Math.max(from, to); at++) {
      const row = rows[at];
      if (row === undefined) continue;
      if (on) next.add(rowId(row));
      else next.delete(rowId(row));
    }
    onSelect(next);
  };
  return {
    toggle: (index, extend) => {
      const row = rows[index];
      if (row === undefined) return;
      if (extend && anchor !== undefined) select(anchor, index, true);
      else select(index, index, !selected.has(rowId(row)));
      setAnchor(index);
    },
    extend: (from, to) => {
      if (anchor === undefined) setAnchor(from);
      select(anchor ?? from, to, true);
    },
    all: () => onSelect(new Set(rows.map(rowId))),
    none: () => onSelect(new Set()),
  };
}
