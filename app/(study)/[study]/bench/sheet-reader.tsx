import { ProblemNote } from '@/app/_ui/problem-note';
import type { ReadState } from '@/lib/features/bench/actions';
import { issueLine } from '@/lib/features/fleet/issue-line';
import styles from './bench.module.css';
import { DecimalOptions } from './decimal-options';

interface ReaderProps {
  readonly read: ReadState;
  readonly readSheet: (form: FormData) => void;
  readonly reading: boolean;
}

/** Reads a file or pasted rows into the table of entry, and says which cells it could not take. */
export function SheetReader({ read, readSheet, reading }: ReaderProps) {
  return (
    <>
      <details className={styles.more}>
        <summary>Read a sheet</summary>
        <form action={readSheet}>
          <ProblemNote problem={read.problem} />
          <div className={styles.fields}>
            <div className={styles.field}>
              <label htmlFor="file">A file (CSV or XLSX)</label>
              <input id="file" name="file" type="file" accept=".csv,.txt,.tsv,.xlsx,text/csv,text/plain" />
            </div>
            <div className={styles.field}>
              <label htmlFor="sheet-decimal">Decimal sign of the sheet</label>
              <select id="sheet-decimal" name="decimal" defaultValue=".">
                <DecimalOptions />
              </select>
            </div>
          </div>
          <div className={styles.field}>
            <label htmlFor="pasted">Or rows pasted from a spreadsheet, with their column names</label>
            <textarea id="pasted" name="pasted" rows={4} spellCheck={false} autoComplete="off" />
          </div>
          <button type="submit" aria-disabled={reading}>
            {reading ? 'Reading…' : 'Read into the table'}
          </button>
        </form>
      </details>
      {read.issues && read.issues.length > 0 && (
        <ul className={styles.issues}>
          {read.issues.map((issue) => (
            <li key={`${issue.row} ${issue.column} ${issue.code}`}>In the sheet, {issueLine(issue)}</li>
          ))}
        </ul>
      )}
    </>
  );
}

interface ChoiceProps {
  readonly tests: NonNullable<ReadState['tests']>;
  readonly chosen: number;
  readonly onChosen: (at: number) => void;
}

/** Which test of a sheet stands in the table. */
export function TestChoice({ tests, chosen, onChosen }: ChoiceProps) {
  return (
    <div className={styles.field}>
      <label htmlFor="which">Test of the sheet</label>
      <select id="which" value={chosen} onChange={(event) => onChosen(Number(event.target.value))}>
        {tests.map((test, at) => (
          <option key={`${test.tag} ${test.name}`} value={at}>
            {[test.tag, test.name].filter(Boolean).join(', ') || `test ${at + 1}`}
          </option>
        ))}
      </select>
    </div>
  );
}
