import { inLabels } from '@/lib/features/fleet/screen-words';
import type { ShownConflict, WarningGroup } from '@/lib/features/import/loaders';
import { counted, formatCount } from '@/lib/platform/format';
import styles from '../import.module.css';

/** One reason for a rejected row. */
interface ShownIssue {
  readonly row: number;
  readonly column: string;
  readonly value?: string | undefined;
  readonly text: string;
  readonly remedy: string;
}

interface RejectedProps {
  readonly issues: readonly ShownIssue[];
  /** How many rows in all, of which the issues may name the first only. */
  readonly rows: number;
  /** Where the rejected rows are to be had as a file. */
  readonly file: string;
  /** What becomes of the others, before the way to the file. */
  readonly children?: string;
}

/** The rejected rows of a sheet, if there are any, and the way to have them as a file. */
export function RejectedRows({ issues, rows, file, children }: RejectedProps) {
  if (rows === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="rejected">
      <h2 id="rejected">{counted(rows, 'row')} rejected</h2>
      <p>
        {children}
        <a href={file}>Download the rejected rows</a> with reason and remedy; mended, that file imports as it is.
      </p>
      <RejectionTable issues={issues} rows={rows} />
    </section>
  );
}

/** Rejected rows: where, what stood there, why, and what to do. */
function RejectionTable({ issues, rows }: Pick<RejectedProps, 'issues' | 'rows'>) {
  const shown = new Set(issues.map(({ row }) => row)).size;
  return (
    <div className={styles.scroll}>
      <table className={`${styles.table} ${styles.stack}`}>
        <caption>
          {shown < rows
            ? `The first ${formatCount(shown)} of ${formatCount(rows)} rows; the file has all. Rows are numbered as a spreadsheet shows them.`
            : 'Rows are numbered as a spreadsheet shows them.'}
        </caption>
        <thead>
          <tr>
            <th scope="col" className={styles.number}>
              Row
            </th>
            <th scope="col">Column</th>
            <th scope="col">Value</th>
            <th scope="col">Reason</th>
            <th scope="col">Remedy</th>
          </tr>
        </thead>
        <tbody>
          {issues.map(({ row, column, value, text, remedy }) => (
            <tr key={`${row} ${column} ${text}`}>
              <td data-name="Row" className={styles.number}>
                {row}
              </td>
              <td data-name="Column" className={styles.title}>
                {column === '' ? 'the whole row' : column}
              </td>
              <td data-name="Value" className={styles.cell}>
                {value ?? <span className={styles.soft}>empty</span>}
              </td>
              <td data-name="Reason">{inLabels(text)}</td>
              <td data-name="Remedy">{inLabels(remedy)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

interface ConflictProps {
  readonly conflicts: readonly ShownConflict[];
  readonly total: number;
  /** Form to which the choices belong. */
  readonly form: string;
}

/** Facts that the sheet states otherwise than the study has them, each with the choice between the two. */
export function ConflictTable({ conflicts, total, form }: ConflictProps) {
  return (
    <div className={styles.scroll}>
      <table className={`${styles.table} ${styles.stack}`}>
        {conflicts.length < total && (
          <caption>
            The first {formatCount(conflicts.length)} of {formatCount(total)}; the others follow what is chosen for all.
          </caption>
        )}
        <thead>
          <tr>
            <th scope="col">Motor</th>
            <th scope="col">Fact</th>
            <th scope="col">In the study</th>
            <th scope="col">In the sheet</th>
            <th scope="col">What to do</th>
          </tr>
        </thead>
        <tbody>
          {conflicts.map(({ key, motor, fact, kept, sheet }) => (
            <tr key={key}>
              <th scope="row">{motor}</th>
              <td data-name="Fact">{fact}</td>
              <td data-name="In the study">{kept}</td>
              <td data-name="In the sheet">{sheet}</td>
              <td data-name="What to do">
                <select form={form} name="apart" defaultValue="" aria-label={`${fact} of ${motor}: what to do`}>
                  <option value="">as chosen for all</option>
                  <option value={`${key}=kept`}>keep {kept}</option>
                  <option value={`${key}=sheet`}>take over {sheet}</option>
                </select>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** Doubtful things that do not keep a row out, if there are any. */
export function ToBeChecked({ warnings }: { readonly warnings: readonly WarningGroup[] }) {
  if (warnings.length === 0) return null;
  return (
    <section className={styles.section} aria-labelledby="warnings">
      <h2 id="warnings">To be checked</h2>
      <WarningList warnings={warnings} />
    </section>
  );
}

/** Each kind once. */
function WarningList({ warnings }: { readonly warnings: readonly WarningGroup[] }) {
  return (
    <ul className={styles.list}>
      {warnings.map(({ column, text, remedy, rows, count }) => (
        <li key={`${column} ${text}`}>
          {inLabels(text)} <span className={styles.soft}>{inLabels(remedy)}</span>
          {count > 1 && (
            <span className={styles.state}>
              {formatCount(count)} rows, among them {rows.join(', ')}
            </span>
          )}
          {count === 1 && rows[0] !== 1 && <span className={styles.state}>row {rows[0]}</span>}
        </li>
      ))}
    </ul>
  );
}
