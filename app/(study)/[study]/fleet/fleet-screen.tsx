'use client';

import Link from 'next/link';
import { useRouter } from 'next/navigation';
import { useCallback, useMemo, useRef, useState, useTransition } from 'react';
import { TableGrid } from '@/app/_ui/table-grid';
import type { GridColumn, GridFocus } from '@/app/_ui/table-grid-column';
import { undoChange } from '@/lib/features/bulk-edit/actions';
import type { BulkChoice, BulkDone } from '@/lib/features/bulk-edit/schema';
import type { EvaluationProgress } from '@/lib/features/evaluation/schema';
import type { Showing } from '@/lib/features/results/fleet-column';
import { FLEET_COLUMNS, fleetColumn } from '@/lib/features/results/fleet-columns';
import { applyQuery, EVERYTHING, type FleetQuery, filterParts, isFiltered, sortWords } from '@/lib/features/results/fleet-filter';
import type { FleetRow } from '@/lib/features/results/fleet-row';
import { shownColumn, shownUnit } from '@/lib/features/results/shown-columns';
import type { ViewEntry } from '@/lib/features/saved-views/schema';
import type { ReaderUnits } from '@/lib/features/study/reader-units';
import { formatCount } from '@/lib/platform/format';
import { EvaluationStatus } from '../evaluation-status';
import { BulkPanel } from './bulk-panel';
import { rowsAsText } from './copy-rows';
import { FilterPanel } from './filter-panel';
import styles from './fleet.module.css';
import { FleetAnswer } from './fleet-answer';
import { FleetCell, settingOf } from './fleet-cell';
import { FootLine } from './foot-line';
import { ColumnsPanel, KeysPanel, SortPanel } from './list-panels';
import { forgetPlace, leavePlace, placeLeft } from './place';
import { TakePanel } from './take-panel';
import { useFleet } from './use-fleet';
import { useLetters } from './use-letters';
import { useCoarse, useNarrow } from './use-narrow';
import { readFlag, readNames, usePreference } from './use-preference';
import { readAddress, useQuery, writeAddress } from './use-query';
import { ViewsPanel } from './views-panel';

interface Props {
  readonly study: string;
  readonly currency: string;
  readonly horizonYears: number;
  readonly locale: string;
  readonly units: ReaderUnits;
  readonly progress: EvaluationProgress;
  readonly views: readonly ViewEntry[];
  readonly who: string;
  readonly choices: readonly BulkChoice[];
  /** The address's query, without `?`. */
  readonly search: string;
}

type Panel = 'filter' | 'order' | 'columns' | 'views' | 'take' | 'keys' | 'change';

const USUAL = FLEET_COLUMNS.filter((column) => column.initial).map((column) => column.id);
/** The two lines of a row on a phone. */
const STACKED = ['tag', 'decision', 'load_fraction', 'trust'];
const NONE: ReadonlySet<string> = new Set();
const idOf = (row: FleetRow): string => row.id;
const nameOf = (row: FleetRow): string => row.tag;

export function FleetScreen(props: Props) {
  const { study, locale, units } = props;
  const router = useRouter();
  const [list, reload] = useFleet(study, props);
  const [address, setAddress] = useQuery(props.search);
  const { query } = address;
  const [panel, setPanel] = useState<Panel>();
  const [selected, setSelected] = useState<ReadonlySet<string>>(NONE);
  const [focus, setFocus] = useState<GridFocus>();
  const [views, setViews] = useState(props.views);
  const [done, setDone] = useState<BulkDone & { readonly who: string }>();
  const [said, setSaid] = useState<string>();
  const [waiting, startTransition] = useTransition();
  const [chosen, setChosen] = usePreference<readonly string[]>('lossbook.fleet.columns', [], readNames);
  const [dense, setDense] = usePreference('lossbook.fleet.dense', false, readFlag);
  const [letters, setLetters] = usePreference('lossbook.letters', true, readFlag);
  const [returnTo] = useState(() => placeLeft(study));
  const search = useRef<HTMLInputElement>(null);
  const narrow = useNarrow();
  const coarse = useCoarse();

  const { currency, horizonYears } = list;
  const showing = useMemo((): Showing => ({ locale, currency, horizonYears, units }), [locale, currency, horizonYears, units]);
  const rows = useMemo(() => applyQuery(list.rows, query), [list.rows, query]);
  const several = useMemo(() => new Set(list.rows.map((row) => row.site)).size > 1, [list.rows]);
  const usual = several ? FLEET_COLUMNS.filter(({ id, initial }) => initial || id === 'site').map(({ id }) => id) : USUAL;
  const shown = address.columns ?? (chosen.length === 0 ? usual : chosen);
  const ids = narrow ? STACKED : ['tag', ...shown.filter((id) => id !== 'tag')];
  const key = ids.join();
  const columns = useMemo(
    () =>
      key.split(',').flatMap((id): GridColumn<FleetRow>[] => {
        const column = shownColumn(id, showing.units);
        if (column === undefined) return [];
        const setting = settingOf(list.rows, column, showing);
        return [
          {
            id,
            name: column.name,
            unit: shownUnit(column, showing.currency),
            meaning: column.meaning,
            digits: setting.digits,
            align: column.kind === 'number' ? 'right' : 'left',
            cell: (row) => (
              <FleetCell row={row} column={column} setting={setting} href={`/${study}/motor/${row.id}`} stacked={narrow} />
            ),
          },
        ];
      }),
    [key, list.rows, showing, study, narrow],
  );

  const ask = useCallback(
    (next: FleetQuery, typing = false) => setAddress({ ...address, query: next }, typing),
    [address, setAddress],
  );
  const open = (row: FleetRow, path?: string): void => {
    leavePlace(study, focus ?? { rowId: row.id, columnId: 'tag' });
    const motor = `/${study}/motor/${row.id}`;
    router.push(path === undefined ? motor : `${motor}/why?figure=${encodeURIComponent(path)}`);
  };
  const sortBy = (column: string, add: boolean): void => {
    const before = query.sort.find((each) => each.column === column);
    // First press: from the highest for numbers that are looked for at the top; then the other way; then off.
    const first = fleetColumn(column)?.doubt !== undefined;
    const next =
      before === undefined
        ? { column, descending: first }
        : before.descending === first
          ? { column, descending: !first }
          : undefined;
    const others = add ? query.sort.filter((each) => each.column !== column) : [];
    const at = add && before !== undefined ? query.sort.indexOf(before) : others.length;
    const sort = next === undefined ? others : [...others.slice(0, at), next, ...others.slice(at)];
    ask({ ...query, sort });
  };
  const copy = (copied: readonly FleetRow[]): void => {
    const text = rowsAsText(
      copied,
      ids.flatMap((id) => fleetColumn(id) ?? []),
      list.currency,
    );
    void navigator.clipboard?.writeText(text).then(
      () => setSaid(`${copied.length === 1 ? 'One motor' : `${formatCount(copied.length, locale)} motors`} copied.`),
      () => setSaid('The browser did not allow copying.'),
    );
  };
  useLetters(letters && panel === undefined, (letter) => {
    if (letter === '/') search.current?.focus();
    else setPanel(({ '?': 'keys', f: 'filter', o: 'order', c: 'columns' } as const)[letter]);
  });

  const chosenRows = useMemo(() => list.rows.filter((row) => selected.has(row.id)), [list.rows, selected]);
  const parts = filterParts(query, list.currency, units);
  const count = isFiltered(query)
    ? `${formatCount(rows.length, locale)} of ${formatCount(list.rows.length, locale)} motors`
    : `${formatCount(list.rows.length, locale)} motors`;
  const rowHeight = narrow ? 72 : coarse ? (dense ? 44 : 48) : dense ? 26 : 32;
  const close = (): void => setPanel(undefined);

  return (
    <main
      id="main"
      className={styles.page}
      data-print="wide"
      onKeyDown={(event) => {
        if (event.key === 'Escape' && !event.defaultPrevented && panel === undefined) setSelected(NONE);
      }}
    >
      <div className={styles.top}>
        <h1>Fleet</h1>
        {list.rows.length > 0 && (
          <FleetAnswer rows={list.rows} locale={locale} onQuery={(next) => ask({ ...next, sort: query.sort })} />
        )}
      </div>
      <EvaluationStatus study={study} initial={props.progress} onNewFigures={reload} />
      {list.rows.length > 0 && (
        <>
          <div className={styles.bar}>
            <div className={styles.search}>
              <label htmlFor="fleet-search">Search</label>
              <input
                id="fleet-search"
                ref={search}
                type="search"
                value={query.text}
                onChange={(event) => ask({ ...query, text: event.target.value }, true)}
                onKeyDown={(event) => {
                  if (event.key !== 'Escape' && event.key !== 'Enter') return;
                  event.preventDefault();
                  document.querySelector<HTMLElement>('[role="grid"] [tabindex="0"]')?.focus();
                }}
              />
            </div>
            <button type="button" onClick={() => setPanel('filter')}>
              Filter
            </button>
            <button type="button" onClick={() => setPanel('order')}>
              Order
            </button>
            {!narrow && (
              <button type="button" onClick={() => setPanel('columns')}>
                Columns
              </button>
            )}
            <button type="button" onClick={() => setPanel('views')}>
              Views
            </button>
            <button type="button" onClick={() => setPanel('take')}>
              Download or print
            </button>
            {!narrow && !coarse && (
              <button type="button" onClick={() => setPanel('keys')}>
                Keys
              </button>
            )}
            {selected.size > 0 && (
              <>
                <button type="button" data-primary onClick={() => setPanel('change')}>
                  Change {formatCount(selected.size, locale)} selected
                </button>
                <button type="button" onClick={() => setSelected(NONE)}>
                  Select none
                </button>
              </>
            )}
          </div>
          {done && (
            <div className={styles.done} role="status">
              {done.sentence}
              <button
                type="button"
                disabled={waiting}
                onClick={() =>
                  startTransition(async () => {
                    const back = await undoChange({ studyId: study, batch: done.batch, who: done.who });
                    setDone(undefined);
                    setSaid(back.ok ? back.value.sentence : `${back.problem.text} ${back.problem.remedy}`);
                    reload();
                    router.refresh();
                  })
                }
              >
                Undo
              </button>
              <button type="button" onClick={() => setDone(undefined)}>
                Keep
              </button>
            </div>
          )}
          <div className={styles.force}>
            <p className={styles.count} role="status">
              {count}
            </p>
            {parts.map((part) => (
              <span key={part.key} className={styles.part}>
                {part.text}
                <button type="button" aria-label={`Take off: ${part.text}`} onClick={() => ask(part.without)}>
                  ×
                </button>
              </span>
            ))}
            <p className={styles.note}>
              ±, or from and to in brackets, is the 95 % interval.{query.sort.length > 0 && ` By ${sortWords(query)}.`}
            </p>
          </div>
        </>
      )}
      {list.state === 'failed' && (
        <div className={list.rows.length === 0 ? styles.state : styles.done} role="alert">
          <p>The list could not be fetched; the program may have been stopped.</p>
          <button type="button" onClick={reload}>
            Try again
          </button>
        </div>
      )}
      {list.state === 'loading' && list.rows.length === 0 && (
        <div className={styles.state}>
          <p>Fetching the motors.</p>
        </div>
      )}
      {list.state === 'ready' && list.rows.length === 0 && (
        <div className={styles.state}>
          <p>This study has no motors yet.</p>
          <Link href={`/${study}/import`} prefetch={false} data-primary>
            Import a sheet
          </Link>
        </div>
      )}
      {list.rows.length > 0 && rows.length === 0 && (
        <div className={styles.state}>
          <p>No motor passes this filter.</p>
          <button type="button" onClick={() => ask({ ...EVERYTHING, sort: query.sort })}>
            Clear the filter
          </button>
        </div>
      )}
      {rows.length > 0 && (
        <div className={styles.grid} data-refetching={list.state === 'loading'}>
          <TableGrid
            label="Motors"
            rows={rows}
            columns={columns}
            rowId={idOf}
            rowName={nameOf}
            rowHeight={rowHeight}
            stacked={narrow}
            sort={query.sort}
            onSort={sortBy}
            selected={selected}
            onSelect={setSelected}
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
      <FilterPanel
        open={panel === 'filter'}
        onClose={close}
        rows={list.rows}
        count={count}
        query={query}
        onQuery={ask}
        showing={showing}
      />
      <SortPanel open={panel === 'order'} onClose={close} query={query} onQuery={ask} />
      <ColumnsPanel
        open={panel === 'columns'}
        onClose={close}
        shown={shown}
        onShown={(next) => {
          setChosen(next ?? []);
          if (address.columns !== undefined) setAddress({ query, columns: undefined }, true);
        }}
        dense={dense}
        onDense={setDense}
        currency={list.currency}
      />
      <ViewsPanel
        open={panel === 'views'}
        onClose={close}
        study={study}
        views={views}
        onViews={setViews}
        query={writeAddress({ query, columns: shown })}
        onOpen={(text) => setAddress(readAddress(text))}
      />
      <TakePanel
        open={panel === 'take'}
        onClose={close}
        study={study}
        query={writeAddress({ query, columns: undefined })}
        count={count}
      />
      <KeysPanel open={panel === 'keys'} onClose={close} letters={letters} onLetters={setLetters} />
      <BulkPanel
        open={panel === 'change'}
        onClose={close}
        study={study}
        rows={chosenRows}
        choices={props.choices}
        who={props.who}
        onDone={(result, who) => {
          setDone({ ...result, who });
          setPanel(undefined);
          reload();
          router.refresh();
        }}
      />
    </main>
  );
}
