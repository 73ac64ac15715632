import Link from 'next/link';
import type { GridFocus } from '@/app/_ui/table-grid-column';
import type { Showing } from '@/lib/features/results/fleet-column';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { shownColumn } from '@/lib/features/results/shown-columns';
import styles from './fleet.module.css';
import { cellInWords } from './fleet-cell';

interface Props {
  readonly study: string;
  readonly rows: readonly FleetRow[];
  readonly focus: GridFocus | undefined;
  /** Something that has just been done, in words. */
  readonly said: string | undefined;
  readonly showing: Showing;
}

/** The line under the table: the cell with the focus in words, with its limits or the reason why there is none, and the ways on. */
export function FootLine({ study, rows, focus, said, showing }: Props) {
  const row = focus && rows.find(({ id }) => id === focus.rowId);
  const column = focus && shownColumn(focus.columnId, showing.units);
  const path = row && column?.value(row) !== undefined ? column?.why?.(row) : undefined;
  return (
    <div className={styles.foot}>
      {row && column && (
        <>
          <span>
            <strong>{row.tag}</strong>
            {column.id !== 'tag' && (
              <>
                , {column.name.toLowerCase()}: {cellInWords(row, column, showing)}
              </>
            )}
          </span>
          {path !== undefined && (
            <Link href={`/${study}/motor/${row.id}/why?figure=${encodeURIComponent(path)}`} prefetch={false}>
              How do we know?
            </Link>
          )}
          <Link href={`/${study}/motor/${row.id}`} prefetch={false}>
            Open {row.tag}
          </Link>
        </>
      )}
      <span role="status">{said}</span>
    </div>
  );
}
