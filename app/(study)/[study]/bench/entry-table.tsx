import { Head } from '@/app/_ui/head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, HEAD, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { Finding } from '@/lib/engine';
import type { RowIssue } from '@/lib/features/fleet/issue-codes';
import { issueLine } from '@/lib/features/fleet/issue-line';
import { capitalised } from '@/lib/platform/format';
import styles from './bench.module.css';
import { type EntryColumn, type EntryRow, withCells, withRow } from './entry-rows';

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
  const change = (at: number, part: Partial<EntryRow>) =>
    onChange(rows.map((row, index) => (index === at ? { ...row, ...part } : row)));
  const issuesOf = (at: number) => issues.filter((issue) => issue.row === at + 1);
  const doubtOf = (at: number, column: string) =>
    doubts.find(({ evidence }) => evidence.row === at + 1 && evidence.column === column);
  return (
    <>
      <ScrollRegion label="Measured points">
        <table {...TABLE} className={`${styles.entryTable} ${lines.lines} ${lines.figures} ${lines.thirds}`}>
          <Heads columns={columns} />
          <tbody {...GROUP}>
            {rows.map((row, at) => {
              const own = issuesOf(at);
              return (
                <tr key={row.key} {...ROW}>
                  <th {...ROW_HEAD} scope="row" className={styles.rowNumber}>
                    {at + 1}
                  </th>
                  <td {...CELL} className={styles.rowSection}>
                    <SectionChoice
                      row={at + 1}
                      sections={sections}
                      value={row.section}
                      onChange={(section) => change(at, { section })}
                    />
                  </td>
                  {columns.map((column, index) => (
                    <td
                      key={column.name}
                      {...CELL}
                      data-unit={column.unit === '' ? column.label : `${column.label}, ${column.unit}`}
                    >
                      <input
                        inputMode="decimal"
                        autoComplete="off"
                        data-doubtful={doubtOf(at, column.name) !== undefined || undefined}
                        title={doubtOf(at, column.name)?.text}
                        aria-label={`${column.label}, row ${at + 1}`}
                        aria-invalid={own.some((issue) => issue.column === column.name)}
                        value={row.cells[index] ?? ''}
                        onChange={(event) =>
                          change(at, { cells: row.cells.map((cell, k) => (k === index ? event.target.value : cell)) })
                        }
                        onPaste={(event) => {
                          const text = event.clipboardData.getData('text/plain');
                          if (!/[\t\n]/.test(text)) return;
                          event.preventDefault();
                          onChange(withCells(rows, at, index, text));
                        }}
                      />
                    </td>
                  ))}
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
                      disabled={rows.length === 1}
                      onClick={() => onChange(rows.filter((_, index) => index !== at))}
                    >
                      −
                    </button>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollRegion>
      {issues.length > 0 && <Issues issues={issues} columns={columns} />}
    </>
  );
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
