import type { HistoryPreview } from '@/lib/features/import/loaders';
import { counted, formatCount } from '@/lib/platform/format';
import styles from '../import.module.css';
import { CommitForm } from './commit-form';
import { RejectionTable, WarningList } from './findings';

interface Props {
  readonly study: string;
  readonly upload: string;
  readonly history: HistoryPreview;
  readonly who: string;
}

/** What an indicator history would bring, its bad rows, and the way to take the good ones in. */
export function HistoryAnswer({ study, upload, history, who }: Props) {
  const { rows, valuesAdded, valuesRepeated, motors, byIndicator, rowsRejected } = history;
  const counts = [
    ['Rows', rows],
    ['New values', valuesAdded],
    ['Values there already', valuesRepeated],
    ['Motors', motors],
    ['Rejected rows', rowsRejected],
  ] as const;
  return (
    <>
      <p role="status" className={styles.lead}>
        {summary(history)}
      </p>
      <dl className={styles.counts}>
        {counts.map(([name, count]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{formatCount(count)}</dd>
          </div>
        ))}
      </dl>
      {valuesAdded > 0 && (
        <>
          <p className={styles.soft}>
            New values by indicator:{' '}
            {byIndicator.map(({ name, count }) => `${name.replaceAll('_', ' ')} ${formatCount(count)}`).join(' · ')}
          </p>
          <CommitForm study={study} upload={upload} who={who} conflicts={0} label={`Import ${counted(valuesAdded, 'value')}`} />
        </>
      )}
      {rowsRejected > 0 && (
        <section className={styles.section} aria-labelledby="rejected">
          <h2 id="rejected">{counted(rowsRejected, 'row')} rejected</h2>
          <p>
            {valuesAdded > 0 ? 'The others can be imported without them. ' : 'None of these can be taken in as they are. '}
            <a href={`/api/studies/${study}/uploads/${upload}/rejected`}>Download the rejected rows</a> with reason and remedy;
            mended, that file imports as it is.
          </p>
          <RejectionTable issues={history.rejections} rows={rowsRejected} />
        </section>
      )}
      {history.warnings.length > 0 && (
        <section className={styles.section} aria-labelledby="warnings">
          <h2 id="warnings">To be checked</h2>
          <WarningList warnings={history.warnings} />
        </section>
      )}
    </>
  );
}

function summary({ rows, valuesAdded, motors, rowsRejected }: HistoryPreview): string {
  const head = 'An indicator history';
  if (rows === 0) return `${head} with a header but no rows.`;
  if (rowsRejected === rows) return `${head}: none of its ${formatCount(rows)} rows can be taken in.`;
  const rest = rowsRejected === 0 ? '' : ` ${counted(rowsRejected, 'row')} cannot be taken in.`;
  if (valuesAdded === 0) return `${head}: its values are in the study already.${rest}`;
  return `${head}: ${counted(valuesAdded, 'new value')} of ${counted(motors, 'motor')}.${rest}`;
}
