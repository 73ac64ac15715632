import type { FleetColumn } from '@/lib/features/results/fleet-column';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { shownUnit } from '@/lib/features/results/shown-columns';

/** Rows as text that a spreadsheet takes as a table: a head with units, full precision, the standard uncertainty beside each figure. */
export function rowsAsText(rows: readonly FleetRow[], columns: readonly FleetColumn[], currency: string): string {
  const head = columns.flatMap((column) => {
    const unit = shownUnit(column, currency);
    const name = unit === '' ? column.name : `${column.name} (${unit})`;
    return column.doubt ? [name, `${column.name} standard uncertainty (${unit})`] : [name];
  });
  const lines = rows.map((row) =>
    columns.flatMap((column) => {
      const value = column.value(row);
      return column.doubt ? [cell(value), cell(column.doubt(row))] : [cell(value)];
    }),
  );
  return [head, ...lines].map((line) => line.join('\t')).join('\n');
}

/** Text that a spreadsheet would take for a formula gets an apostrophe; numbers stay numbers. */
function cell(value: string | number | undefined): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return String(Number(value.toPrecision(10)));
  const plain = value.replace(/[\t\r\n]+/g, ' ');
  return /^[=+\-@]/.test(plain) ? `'${plain}` : plain;
}
