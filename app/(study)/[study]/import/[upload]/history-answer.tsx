import type { HistoryPreview } from '@/lib/features/import/loaders';
import { counted, formatCount } from '@/lib/platform/format';
import { Counts } from '../counts';
import styles from '../import.module.css';
import { CommitForm } from './commit-form';
import { RejectedRows, ToBeChecked } from './findings';
import { remainder } from './words';

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
      <Counts counts={counts} />
      {valuesAdded > 0 && (
        <>
          <p className={styles.soft}>
            New values by indicator:{' '}
            {byIndicator.map(({ name, count }) => `${name.replaceAll('_', ' ')} ${formatCount(count)}`).join(' · ')}
          </p>
          <CommitForm study={study} upload={upload} who={who} conflicts={0} label={`Import ${counted(valuesAdded, 'value')}`} />
        </>
      )}
      <RejectedRows issues={history.rejections} rows={rowsRejected} file={`/api/studies/${study}/uploads/${upload}/rejected`}>
        {remainder(valuesAdded === 0)}
      </RejectedRows>
      <ToBeChecked warnings={history.warnings} />
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
