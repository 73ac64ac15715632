/** Helpers of the table tests: grouping, order and look-up. */

/** Rows by a key, in the order of the table. */
export function groupBy<Row>(rows: readonly Row[], keyOf: (row: Row) => string): Map<string, Row[]> {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

/** Neighbouring rows of one group. */
export function neighbours<Row>(rows: readonly Row[]): [Row, Row][] {
  return rows.slice(1).map((row, at) => [rows[at] as Row, row]);
}

/** Neighbours within each group. */
export function steps<Row>(rows: readonly Row[], keyOf: (row: Row) => string): [Row, Row][] {
  return [...groupBy(rows, keyOf).values()].flatMap(neighbours);
}

/** Values of a function at two rows, paired by key; keys that only one side has are left out. */
export function common<A, B>(
  left: readonly A[],
  leftKey: (a: A) => string,
  right: readonly B[],
  rightKey: (b: B) => string,
): [A, B][] {
  const byKey = new Map(right.map((row) => [rightKey(row), row]));
  return left.flatMap((row): [A, B][] => {
    const other = byKey.get(leftKey(row));
    return other === undefined ? [] : [[row, other]];
  });
}

/** Half a unit of the given decimal, widened by what binary floating point needs. */
export const halfUnit = (decimal: number): number => decimal / 2 + 1e-9;
