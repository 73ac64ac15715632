import type { BulkPreview as Seen } from '@/lib/features/bulk-edit/schema';
import { formatCount } from '@/lib/platform/format';
import styles from './fleet.module.css';

/** What a change would do: how the value was understood, how many motors it would change, and the first of them. */
export function BulkPreview({ preview, label }: { readonly preview: Seen; readonly label: string }) {
  const { changing, same, overtaken, examples, understood, warning } = preview;
  return (
    <div>
      <p role="status">
        Understood as <strong>{understood}</strong>. {formatCount(changing)} would change
        {same > 0 && `, ${formatCount(same)} have it already`}
        {overtaken > 0 &&
          `, ${formatCount(overtaken)} were changed by somebody else since this list was loaded and stay as they are`}
        .
      </p>
      {warning !== undefined && <p className={styles.problem}>{warning}</p>}
      {examples.length > 0 && (
        <section className={styles.previewBox} aria-label="What would change">
          <table className={styles.preview}>
            <thead>
              <tr>
                <th scope="col">Motor</th>
                <th scope="col">{label} now</th>
                <th scope="col">then</th>
              </tr>
            </thead>
            <tbody>
              {examples.map((example) => (
                <tr key={example.id}>
                  <th scope="row">{example.name}</th>
                  <td>{example.from}</td>
                  <td>{example.to}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {changing > examples.length && <p className={styles.note}>The first {formatCount(examples.length)} are shown.</p>}
    </div>
  );
}
