import { useMemo } from 'react';
import type { GridColumn } from '@/app/_ui/table-grid-column';
import type { Showing } from '@/lib/features/results/fleet-column';
import { FLEET_COLUMNS } from '@/lib/features/results/fleet-columns';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { shownColumn, shownUnit } from '@/lib/features/results/shown-columns';
import { FleetCell, settingOf } from './fleet-cell';
import type { Listing } from './use-listing';
import { useCoarse, useNarrow } from './use-narrow';
import { readFlag, readNames, usePreference } from './use-preference';

const USUAL = FLEET_COLUMNS.filter((column) => column.initial).map((column) => column.id);
/** The two lines of a row on a phone. */
const STACKED = ['tag', 'decision', 'load_fraction', 'trust'];

/** How the table is laid out on this screen: its columns, and how close its rows stand. */
export interface TableLayout {
  /** The screen is as narrow as a phone's. */
  readonly narrow: boolean;
  /** It is worked with fingers. */
  readonly coarse: boolean;
  /** Names of the columns of a wide screen, as chosen. */
  readonly shown: readonly string[];
  /** Nothing chosen shows the usual columns. */
  readonly choose: (names: readonly string[] | undefined) => void;
  /** Names of the columns that this screen has. */
  readonly ids: readonly string[];
  readonly columns: readonly GridColumn<FleetRow>[];
  readonly dense: boolean;
  readonly setDense: (dense: boolean) => void;
  /** In px. */
  readonly rowHeight: number;
}

/** The layout that the address states, or else that this browser remembers of its reader. */
export function useTableLayout({ study, list, address, setAddress, query, showing }: Listing): TableLayout {
  const [chosen, setChosen] = usePreference<readonly string[]>('lossbook.fleet.columns', [], readNames);
  const [dense, setDense] = usePreference('lossbook.fleet.dense', false, readFlag);
  const narrow = useNarrow();
  const coarse = useCoarse();
  const several = useMemo(() => new Set(list.rows.map((row) => row.site)).size > 1, [list.rows]);
  const usual = several ? FLEET_COLUMNS.filter(({ id, initial }) => initial || id === 'site').map(({ id }) => id) : USUAL;
  const shown = address.columns ?? (chosen.length === 0 ? usual : chosen);
  const ids = narrow ? STACKED : ['tag', ...shown.filter((id) => id !== 'tag')];
  const key = ids.join();
  const columns = useMemo(
    () => key.split(',').flatMap((id) => gridColumn(id, { study, rows: list.rows, showing, stacked: narrow }) ?? []),
    [key, list.rows, showing, study, narrow],
  );
  const choose = (names: readonly string[] | undefined): void => {
    setChosen(names ?? []);
    if (address.columns !== undefined) setAddress({ query, columns: undefined }, true);
  };
  const rowHeight = narrow ? 72 : coarse ? (dense ? 44 : 48) : dense ? 26 : 32;
  return { narrow, coarse, shown, choose, ids, columns, dense, setDense, rowHeight };
}

interface Setting {
  readonly study: string;
  readonly rows: readonly FleetRow[];
  readonly showing: Showing;
  readonly stacked: boolean;
}

/** A column as the table draws it; `undefined` where no column has the name. */
function gridColumn(id: string, { study, rows, showing, stacked }: Setting): GridColumn<FleetRow> | undefined {
  const column = shownColumn(id, showing.units);
  if (column === undefined) return undefined;
  const setting = settingOf(rows, column, showing);
  return {
    id,
    name: column.name,
    unit: shownUnit(column, showing.currency),
    meaning: column.meaning,
    digits: setting.digits,
    align: column.kind === 'number' ? 'right' : 'left',
    cell: (row) => <FleetCell row={row} column={column} setting={setting} href={`/${study}/motor/${row.id}`} stacked={stacked} />,
  };
}
