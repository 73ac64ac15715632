import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { HistoryEntry } from '@/lib/features/motor/schema';
import { ABSENT, formatInstant } from '@/lib/platform/format';
import styles from './motor.module.css';
import { UndoChange } from './undo-change';

/** Who changed what, when and why; names are typed and not yet proved. */
export function MotorHistory({
  history,
  undo,
}: {
  readonly history: readonly HistoryEntry[];
  readonly undo: { study: string; motor: string; version: number; who: string };
}) {
  // Only the latest change of the plate can be taken back by itself: earlier ones would undo what came after.
  const latest = history.find((entry) => entry.what === 'changed' || entry.what === 'undone');
  if (history.length === 0) return <p className={styles.soft}>Nothing has been changed since it was imported.</p>;
  return (
    <ScrollRegion label="History of changes">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">When (UTC)</th>
            <th scope="col">Who</th>
            <th scope="col">What</th>
            <th scope="col">From</th>
            <th scope="col">To</th>
            <th scope="col">Why</th>
            <th scope="col">
              <span className="unseen">Take back</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {history.map((entry) => (
            <tr key={entry.id}>
              <th scope="row" className={styles.nowrap}>
                {formatInstant(entry.at)}
              </th>
              <td>
                {entry.who}
                {!entry.verified && <span className={styles.soft}> (not verified)</span>}
              </td>
              <td>{[entry.what, entry.field].filter(Boolean).join(': ')}</td>
              <td>{entry.from === '' ? ABSENT : entry.from}</td>
              <td>{entry.to === '' ? ABSENT : entry.to}</td>
              <td>{entry.why ?? ''}</td>
              <td>{entry === latest && entry.batch !== undefined && <UndoChange {...undo} batch={entry.batch} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
