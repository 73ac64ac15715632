import { fleetColumn } from '@/lib/features/results/fleet-columns';
import type { SortKey } from '@/lib/features/results/fleet-filter';

/** The order after a press on the head of a column; `add` keeps the order there is and adds the column to it. */
export function sortAfterPress(sort: readonly SortKey[], column: string, add: boolean): readonly SortKey[] {
  const before = sort.find((each) => each.column === column);
  // First press: from the highest for numbers that are looked for at the top; then the other way; then off.
  const first = fleetColumn(column)?.doubt !== undefined;
  const next =
    before === undefined
      ? { column, descending: first }
      : before.descending === first
        ? { column, descending: !first }
        : undefined;
  const others = add ? sort.filter((each) => each.column !== column) : [];
  const at = add && before !== undefined ? sort.indexOf(before) : others.length;
  return next === undefined ? others : [...others.slice(0, at), next, ...others.slice(at)];
}
