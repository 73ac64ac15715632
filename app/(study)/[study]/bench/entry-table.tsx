import { useId, useState } from 'react';
import { Head } from '@/app/_ui/head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, HEAD, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { Finding } from '@/lib/engine';
import type { RowIssue } from '@/lib/features/fleet/issue-codes';
import { issueLine } from '@/lib/features/fleet/issue-line';
import { capitalised, counted } from '@/lib/platform/format';
import styles from './bench.module.css';
import { type EntryColumn, type EntryRow, isWaiting, withCells, withRow } from './entry-rows';

interface Props {
  readonly rows: readonly EntryRow[];
  readonly columns: readonly EntryColumn[];
  readonly sections: readonly { readonly id: string; readonly words: string }[];
  readonly issues: readonly RowIssue[];
  /** Readings that make one wonder; evidence names row and column. */
  readonly doubts: readonly Finding[];
  readonly onChange: (rows: readonly EntryRow[]) => void;
}

/** The measured points as a table to type into; a block from a spreadsheet can be pasted into any cell. */
export function EntryTable({ rows, columns, sections, issues, doubts, onChange }: Props) {
  const [all, setAll] = useState(false);
  const id = useId();
  const waiting = rows.filter((_, at) => isWaiting(rows, at)).length;
  return (
    <>
      <ScrollRegion label="Measured points">
        <table {...TABLE} id={id} className={`${styles.entryTable} ${lines.lines} ${lines.figures} ${lines.thirds}`}>
          <Heads columns={columns} />
          <tbody {...GROUP}>
            {rows.map((row, at) => (
              <Row
                key={row.key}
                at={at}
                rows={rows}
                columns={columns}
                sections={sections}
                wrong={issues.filter((issue) => issue.row === at + 1).map(({ column }) => column)}
                doubts={doubts.filter(({ evidence }) => evidence.row === at + 1)}
                waits={!all && isWaiting(rows, at)}
                onChange={onChange}
              />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <p role="status" className="unseen">
        {counted(rows.length, 'row')}
      </p>
      {waiting > 0 && (
        <p className={lines.rest}>
          <button type="button" aria-expanded={all} aria-controls={id} onClick={() => setAll(!all)}>
            {counted(waiting, 'more empty row')}
          </button>
        </p>
      )}
      {issues.length > 0 && <Issues issues={issues} columns={columns} />}
    </>
  );
}

interface RowProps extends Pick<Props, 'rows' | 'columns' | 'sections' | 'doubts' | 'onChange'> {
  /** Its place from 0. */
  readonly at: number;
  /** Its columns that cannot be read. */
  readonly wrong: readonly string[];
  /** A phone leaves it out until the row above has a figure, or all rows are asked for. */
  readonly waits: boolean;
}

function Row({ at, rows, columns, sections, wrong, doubts, waits, onChange }: RowProps) {
  const row = rows[at];
  if (!row) return null;
  const change = (part: Partial<EntryRow>) => onChange(rows.map((each) => (each === row ? { ...each, ...part } : each)));
  return (
    <tr {...ROW} className={waits ? lines.beyond : undefined}>
      <th {...ROW_HEAD} scope="row" className={styles.rowNumber}>
        {at + 1}
      </th>
      <td {...CELL} className={styles.rowSection}>
        <SectionChoice row={at + 1} sections={sections} value={row.section} onChange={(section) => change({ section })} />
      </td>
      {columns.map((column, index) => {
        const value = row.cells[index] ?? '';
        const doubt = doubts.find(({ evidence }) => evidence.column === column.name)?.text;
        return (
          <td
            key={column.name}
            {...CELL}
            className={value === '' && !column.sections.includes(row.section) ? styles.useless : undefined}
            data-unit={column.unit === '' ? column.label : `${column.label}, ${column.unit}`}
          >
            <input
              inputMode="decimal"
              autoComplete="off"
              data-doubtful={doubt !== undefined || undefined}
              title={doubt}
              aria-label={`${column.label}, row ${at + 1}`}
              aria-invalid={wrong.includes(column.name)}
              value={value}
              onChange={(event) => change({ cells: row.cells.map((cell, k) => (k === index ? event.target.value : cell)) })}
              onPaste={(event) => {
                const text = event.clipboardData.getData('text/plain');
                if (!/[\t\n]/.test(text)) return;
                event.preventDefault();
                onChange(withCells(rows, at, index, text));
              }}
            />
          </td>
        );
      })}
      <td {...CELL} className={styles.rowActions}>
        <button
          type="button"
          aria-label={`Add a row below row ${at + 1}`}
          onClick={() => onChange(withRow(rows, at, columns.length))}
        >
          +
        </button>
        <button
          type="button"
          aria-label={`Remove row ${at + 1}`}
          aria-disabled={rows.length === 1}
          onClick={(event) => {
            if (rows.length === 1) return;
            focusBeside(event.currentTarget);
            onChange(rows.filter((each) => each !== row));
          }}
        >
          −
        </button>
      </td>
    </tr>
  );
}

/** A row that is removed hands the focus to the same key of the row that takes its place, or of the one above. */
function focusBeside(key: HTMLElement): void {
  const row = key.closest('tr');
  for (const beside of [row?.nextElementSibling, row?.previousElementSibling]) {
    const heir = beside?.querySelector<HTMLElement>('button:last-of-type');
    heir?.focus();
    if (heir && heir === document.activeElement) return;
  }
}

function Heads({ columns }: Pick<Props, 'columns'>) {
  return (
    <thead {...GROUP}>
      <tr {...ROW} className={styles.entryHead}>
        <Head>Row</Head>
        <Head>Section</Head>
        {columns.map((column) => (
          <th key={column.name} {...HEAD} scope="col" title={column.meaning}>
            {column.label}
            <span className={styles.unit}>{column.unit}</span>
          </th>
        ))}
        <Head>
          <span className="unseen">Rows</span>
        </Head>
      </tr>
    </thead>
  );
}

interface SectionProps extends Pick<Props, 'sections'> {
  readonly row: number;
  readonly value: string;
  readonly onChange: (section: string) => void;
}

function SectionChoice({ row, sections, value, onChange }: SectionProps) {
  return (
    <select aria-label={`Section of row ${row}`} value={value} onChange={(event) => onChange(event.target.value)}>
      {sections.map((section) => (
        <option key={section.id} value={section.id}>
          {section.words}
        </option>
      ))}
    </select>
  );
}

function Issues({ issues, columns }: Pick<Props, 'issues' | 'columns'>) {
  const labelled = (name: string) => columns.find((column) => column.name === name)?.label ?? name;
  return (
    <ul className={styles.issues}>
      {issues.map((issue) => (
        <li key={`${issue.row} ${issue.column} ${issue.code}`}>
          {capitalised(issueLine({ ...issue, column: labelled(issue.column) }))}
        </li>
      ))}
    </ul>
  );
}
