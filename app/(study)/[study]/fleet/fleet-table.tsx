'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { TableGrid } from '@/app/_ui/table-grid';
import type { GridFocus } from '@/app/_ui/table-grid-column';
import { fleetColumn } from '@/lib/features/results/fleet-columns';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { formatCount } from '@/lib/platform/format';
import { rowsAsText } from './copy-rows';
import styles from './fleet.module.css';
import { FootLine } from './foot-line';
import { forgetPlace, leavePlace, placeLeft } from './place';
import { sortAfterPress } from './sort-after-press';
import type { Listing } from './use-listing';
import type { TableLayout } from './use-table-layout';

interface Props {
  readonly listing: Listing;
  readonly layout: TableLayout;
  readonly selected: ReadonlySet<string>;
  readonly onSelect: (ids: ReadonlySet<string>) => void;
  /** Something that has just been done, in words. */
  readonly said: string | undefined;
  readonly onSaid: (said: string) => void;
}

const idOf = (row: FleetRow): string => row.id;
const nameOf = (row: FleetRow): string => row.tag;

/** The listed motors, and under them the cell with the focus in words. */
export function FleetTable({ listing, layout, selected, onSelect, said, onSaid }: Props) {
  const { study, list, rows, query, ask, showing } = listing;
  const router = useRouter();
  const [focus, setFocus] = useState<GridFocus>();
  const [returnTo] = useState(() => placeLeft(study));
  const open = (row: FleetRow, path?: string): void => {
    leavePlace(study, focus ?? { rowId: row.id, columnId: 'tag' });
    const motor = `/${study}/motor/${row.id}`;
    router.push(path === undefined ? motor : `${motor}/why?figure=${encodeURIComponent(path)}`);
  };
  const copy = (copied: readonly FleetRow[]): void => {
    const columns = layout.ids.flatMap((id) => fleetColumn(id) ?? []);
    const motors = copied.length === 1 ? 'One motor' : `${formatCount(copied.length, showing.locale)} motors`;
    void navigator.clipboard?.writeText(rowsAsText(copied, columns, list.currency)).then(
      () => onSaid(`${motors} copied.`),
      () => onSaid('The browser did not allow copying.'),
    );
  };
  return (
    <>
      {rows.length > 0 && (
        <div className={styles.grid} data-refetching={list.state === 'loading'}>
          <TableGrid
            label="Motors"
            rows={rows}
            columns={layout.columns}
            rowId={idOf}
            rowName={nameOf}
            rowHeight={layout.rowHeight}
            stacked={layout.narrow}
            sort={query.sort}
            onSort={(column, add) => ask({ ...query, sort: sortAfterPress(query.sort, column, add) })}
            selected={selected}
            onSelect={onSelect}
            onOpen={(row) => open(row)}
            onWhy={(row, id) => open(row, fleetColumn(id)?.why?.(row))}
            onCopy={copy}
            onFocusCell={(next) => {
              setFocus(next);
              forgetPlace();
            }}
            returnTo={returnTo}
          />
        </div>
      )}
      <FootLine study={study} rows={list.rows} focus={focus} said={said} showing={showing} />
    </>
  );
}
