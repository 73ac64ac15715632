'use client';

import { useRouter } from 'next/navigation';
import { useMemo, useState } from 'react';
import type { BulkChoice } from '@/lib/features/bulk-edit/schema';
import type { EvaluationProgress } from '@/lib/features/evaluation/schema';
import type { ViewEntry } from '@/lib/features/saved-views/schema';
import { EvaluationStatus } from '../evaluation-status';
import { BulkPanel } from './bulk-panel';
import { type Change, ChangeMade } from './change-made';
import styles from './fleet.module.css';
import { FleetAnswer } from './fleet-answer';
import { FleetBar } from './fleet-bar';
import { FleetPanels } from './fleet-panels';
import { FleetTable } from './fleet-table';
import { QueryLine } from './query-line';
import { type ListingStart, useListing } from './use-listing';
import { usePanels } from './use-panels';
import { useTableLayout } from './use-table-layout';
import { WhyNoRows } from './why-no-rows';

interface Props extends ListingStart {
  readonly progress: EvaluationProgress;
  readonly views: readonly ViewEntry[];
  readonly who: string;
  readonly choices: readonly BulkChoice[];
}

const NONE: ReadonlySet<string> = new Set();

/** The motors of a study in one table, with what finds, orders and changes them. */
export function FleetScreen(props: Props) {
  const { study } = props;
  const router = useRouter();
  const listing = useListing(props);
  const { list, reload, query, ask } = listing;
  const layout = useTableLayout(listing);
  const panels = usePanels();
  const [selected, setSelected] = useState<ReadonlySet<string>>(NONE);
  const [change, setChange] = useState<Change>();
  const [said, setSaid] = useState<string>();
  const chosenRows = useMemo(() => list.rows.filter((row) => selected.has(row.id)), [list.rows, selected]);
  const selectNone = (): void => setSelected(NONE);
  return (
    <main
      id="main"
      className={styles.page}
      data-print="wide"
      onKeyDown={(event) => {
        if (event.key === 'Escape' && !event.defaultPrevented && panels.panel === undefined) selectNone();
      }}
    >
      <div className={styles.top}>
        <h1>Fleet</h1>
        {list.rows.length > 0 && (
          <FleetAnswer rows={list.rows} locale={props.locale} onQuery={(next) => ask({ ...next, sort: query.sort })} />
        )}
      </div>
      <EvaluationStatus study={study} initial={props.progress} onNewFigures={reload} />
      {list.rows.length > 0 && (
        <>
          <FleetBar
            listing={listing}
            layout={layout}
            search={panels.search}
            selected={selected.size}
            onSelectNone={selectNone}
            onPanel={panels.open}
          />
          {change && (
            <ChangeMade
              listing={listing}
              change={change}
              onSettled={(how) => {
                setChange(undefined);
                if (how !== undefined) setSaid(how);
              }}
            />
          )}
          <QueryLine listing={listing} />
        </>
      )}
      <WhyNoRows listing={listing} />
      <FleetTable listing={listing} layout={layout} selected={selected} onSelect={setSelected} said={said} onSaid={setSaid} />
      <FleetPanels panels={panels} listing={listing} layout={layout} views={props.views} />
      <BulkPanel
        open={panels.panel === 'change'}
        onClose={panels.close}
        study={study}
        rows={chosenRows}
        choices={props.choices}
        who={props.who}
        onDone={(result, who) => {
          setChange({ ...result, who });
          panels.close();
          reload();
          router.refresh();
        }}
      />
    </main>
  );
}
