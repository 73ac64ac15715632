import Link from 'next/link';
import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { TestPage, WorkedTest } from '@/lib/features/bench/loaders';
import { formatInstant, formatNumber, formatStated, withUnit } from '@/lib/platform/format';
import styles from '../bench.module.css';

const VERDICT = {
  kept: 'within the limit',
  open: 'open: the limit lies within the doubt',
  beyond: 'beyond the limit',
  'no-limit': 'no limit published',
} as const;

/** A test as people call it. */
function testName({ stored }: WorkedTest): string {
  const when = stored.takenAt === undefined ? `added ${formatInstant(stored.createdAt)}` : formatStated(stored.takenAt);
  return [stored.test.test, when].filter(Boolean).join(', ');
}

interface Props {
  readonly comparison: TestPage['comparison'];
  readonly others: TestPage['others'];
  readonly here: string;
}

/** The motor's test before against the one after, as after a rewind. */
export function Comparison({ comparison, others, here }: Props) {
  if (others.length === 0)
    return (
      <p className={styles.soft}>
        There is no other test of this motor. A test before and one after a repair show whether it kept its efficiency.
      </p>
    );
  return (
    <>
      <p className={styles.noPrint}>Compare with:</p>
      <ul className={styles.links}>
        {others.map((other) => (
          <li key={other.stored.id}>
            <Link href={`${here}?against=${other.stored.id}#against`} prefetch={false}>
              {testName(other)}
            </Link>
          </li>
        ))}
      </ul>
      {comparison && <Changes comparison={comparison} />}
    </>
  );
}

function Changes({ comparison }: { readonly comparison: NonNullable<TestPage['comparison']> }) {
  const { before, after, outcome } = comparison;
  return (
    <>
      <p className={styles.answer}>
        <strong>{outcome.sentence}</strong>
      </p>
      <ScrollRegion label="Changes from test to test">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">± is the 95 % interval</th>
              <th scope="col">
                Before<span className={styles.unit}>{testName(before)}</span>
              </th>
              <th scope="col">
                After<span className={styles.unit}>{testName(after)}</span>
              </th>
              <th scope="col">Change</th>
              <th scope="col">Larger than both doubts?</th>
              <th scope="col" className={styles.words}>
                Limit
              </th>
            </tr>
          </thead>
          <tbody>
            {outcome.changes.map((change) => {
              const percent = change.id === 'efficiency';
              return (
                <tr key={change.id}>
                  <th scope="row">{change.title}</th>
                  <td>
                    <FigureText name={`${change.title} before`} figure={change.before} percent={percent} />
                  </td>
                  <td>
                    <FigureText name={`${change.title} after`} figure={change.after} percent={percent} />
                  </td>
                  <td>
                    <FigureText name={`change of ${change.title}`} figure={change.percent} />
                  </td>
                  <td>{change.significant ? 'yes' : 'no'}</td>
                  <td className={styles.words}>
                    {VERDICT[change.verdict]}
                    {change.limit !== undefined && (
                      <span className={styles.unit}>
                        {percent
                          ? `fall of ${formatNumber(change.limit, 1)} points`
                          : `rise of ${withUnit(formatNumber(change.limit, 0), '%')}`}
                        : {change.limitSource} ({change.limitStatus})
                      </span>
                    )}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </ScrollRegion>
    </>
  );
}
