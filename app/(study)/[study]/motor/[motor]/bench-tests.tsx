import Link from 'next/link';
import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { TestChange } from '@/lib/engine';
import { loadMotorTests, type MotorTest } from '@/lib/features/bench/loaders';
import { formatFigure, formatInstant, formatStated } from '@/lib/platform/format';
import styles from './motor.module.css';

/** The changes that are larger than both tests' doubts. */
function movedWords(changes: readonly TestChange[]): string {
  const sure = changes.filter((change) => change.significant);
  if (sure.length === 0) return 'nothing beyond the doubt of both tests';
  return sure
    .map((change) => `${change.title.toLowerCase()} ${change.percent.value > 0 ? '+' : ''}${formatFigure(change.percent).text}`)
    .join('; ');
}

/** The bench tests of a motor: how its losses moved from test to test. */
export async function BenchTests({
  study,
  motor,
  tag,
  site,
}: {
  readonly study: string;
  readonly motor: string;
  readonly tag: string;
  readonly site: string;
}) {
  const tests = await loadMotorTests(study, motor);
  const add = `/${study}/bench?${new URLSearchParams({ tag, site }).toString()}`;
  if (tests.length === 0) {
    return (
      <p>
        No test of this motor is in the book. <Link href={add}>Enter a bench test or a no-load run</Link>
      </p>
    );
  }
  return (
    <>
      <ScrollRegion label="Table of bench tests">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Test</th>
              <th scope="col">Procedure</th>
              <th scope="col">Accepted</th>
              <th scope="col">Efficiency at rated load, %</th>
              <th scope="col">Core loss, kW</th>
              <th scope="col">Friction and windage, kW</th>
              <th scope="col">Stray-load loss at rated load, kW</th>
              <th scope="col">Moved since the test before</th>
            </tr>
          </thead>
          <tbody>
            {tests.map((test) => (
              <TestRow key={test.stored.id} study={study} test={test} />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <p>
        <Link href={add}>Enter another test</Link>
      </p>
    </>
  );
}

interface RowProps {
  readonly study: string;
  readonly test: MotorTest;
}

/** One test in a line. */
function TestRow({ study, test: { stored, result, moved } }: RowProps) {
  const rated = result.points.find((point) => point.load_fraction === 1);
  return (
    <tr>
      <th scope="row">
        <Link href={`/${study}/bench/${stored.id}`}>
          {[stored.test.test, stored.takenAt ? formatStated(stored.takenAt) : formatInstant(stored.createdAt)]
            .filter(Boolean)
            .join(', ')}
        </Link>
        {stored.withdrawn && <span className={styles.soft}> (withdrawn)</span>}
      </th>
      <td>{result.method_title.split(':')[0]}</td>
      <td>{result.accepted ? 'yes' : 'no'}</td>
      <td>
        <FigureText
          name="efficiency at rated load"
          figure={rated?.efficiency}
          percent
          unitInHead
          reason="rated load not reached"
        />
      </td>
      <td>
        <FigureText name="core loss" figure={result.core_loss} unitInHead reason="not separated" />
      </td>
      <td>
        <FigureText name="friction and windage" figure={result.friction_windage} unitInHead reason="not separated" />
      </td>
      <td>
        <FigureText name="stray-load loss" figure={rated?.losses.stray} unitInHead reason="rated load not reached" />
      </td>
      <td className={styles.words}>{moved === undefined ? '' : movedWords(moved)}</td>
    </tr>
  );
}
