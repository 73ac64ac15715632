import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { FindingList } from '@/app/_ui/finding-list';
import type { BenchMethodId } from '@/lib/engine';
import { BENCH_COLUMNS } from '@/lib/features/bench/columns';
import { loadTest, type TestPage } from '@/lib/features/bench/loaders';
import { benchMethodWord } from '@/lib/features/bench/schema';
import { findingsInLabels } from '@/lib/features/fleet/screen-words';
import { ratingWords } from '@/lib/features/motor/words';
import { loadWho } from '@/lib/features/study/loaders';
import { formatAsStated, formatFigure, formatInstant, formatStated, withUnit } from '@/lib/platform/format';
import styles from '../bench.module.css';
import { Cautions } from '../cautions';
import { RegressionChart } from '../regression-chart';
import { METHOD_WORDS, methodWords } from '../words';
import { LoadColumns, NoLoadColumns } from './columns';
import { Comparison } from './comparison';
import { CircuitElements, DirectTest } from './direct';
import { Facts, ratedPoint } from './facts';
import { StandardLoads } from './standard-loads';
import { WithdrawForm } from './withdraw-form';

interface Props {
  readonly params: Promise<{ study: string; test: string }>;
  readonly searchParams: Promise<{ method?: string | string[]; against?: string | string[] }>;
}

async function pageOf({ params, searchParams }: Props): Promise<TestPage | undefined> {
  const { study, test } = await params;
  const { method, against } = await searchParams;
  const asked = benchMethodWord.safeParse(method);
  return loadTest(study, test, {
    method: asked.success ? asked.data : undefined,
    against: typeof against === 'string' ? against : undefined,
  });
}

export async function generateMetadata(props: Props): Promise<Metadata> {
  const page = await pageOf(props);
  return { title: page ? `${nameOf(page)} · bench test` : 'No such test' };
}

function nameOf({ stored }: Pick<TestPage, 'stored'>): string {
  return [stored.test.tag, stored.test.test].filter(Boolean).join(', ');
}

/** The report of one test: the answer, the two regressions, and every column of the computation. */
export default async function TestScreen(props: Props) {
  const { study } = await props.params;
  const page = await pageOf(props);
  if (!page) notFound();
  const { stored, result, motor, others, comparison } = page;
  const here = `/${study}/bench/${stored.id}`;
  return (
    <main id="main" className={styles.main}>
      <h1>{nameOf(page)}</h1>
      <p className={styles.soft}>
        {[
          motor.site,
          `${ratingWords(motor.plate.ratedPowerKw, motor.plate.ratedPowerUnit)}, ${withUnit(formatAsStated(motor.plate.ratedVoltageV), 'V')}`,
          stored.takenAt === undefined ? 'date not stated' : `tested ${formatStated(stored.takenAt)}`,
          `entered by ${stored.addedBy}, ${formatInstant(stored.createdAt)} UTC`,
        ]
          .filter(Boolean)
          .join(' · ')}
      </p>
      <p className={styles.answer}>
        <strong>{answerOf(page)}</strong>
      </p>
      {stored.withdrawn && (
        <p className={styles.problem}>
          Withdrawn by {stored.withdrawn.by}, {formatInstant(stored.withdrawn.at)} UTC: {stored.withdrawn.reason}
        </p>
      )}
      <p className={styles.soft}>{result.method_title}. ± is the 95 % interval.</p>
      <Facts result={result} />
      <Cautions />
      <Procedures method={result.method} here={here} />

      <section className={styles.section} aria-labelledby="findings">
        <h2 id="findings">What is to be said of the test</h2>
        <FindingList
          findings={findingsInLabels(result.findings, BENCH_COLUMNS)}
          empty="Nothing: every limit of the procedure is met."
        />
      </section>

      <Regressions result={result} />

      {result.circuit && (
        <section className={styles.section} aria-labelledby="circuit">
          <h2 id="circuit">The circuit</h2>
          <CircuitElements circuit={result.circuit} />
        </section>
      )}
      {result.reverse_rotation && (
        <section className={styles.section} aria-labelledby="direct">
          <h2 id="direct">Stray-load loss by reverse rotation</h2>
          <DirectTest found={result.reverse_rotation} />
        </section>
      )}

      <Columns result={result} />

      <section className={`${styles.section} ${styles.wide} ${comparison ? '' : styles.noPrint}`} aria-labelledby="against">
        <h2 id="against">Before and after</h2>
        <Comparison comparison={comparison} others={others} here={here} />
      </section>
      <p className={styles.links}>
        <Link href={`/${study}/motor/${stored.motorId}`}>The motor</Link>
        <Link href={`/${study}/bench`}>All bench tests</Link>
      </p>
      {!stored.withdrawn && (
        <details className={`${styles.section} ${styles.noPrint}`}>
          <summary>Withdraw this test</summary>
          <WithdrawForm study={study} test={stored.id} who={await loadWho()} />
        </details>
      )}
    </main>
  );
}

/** The procedures that a test can be computed by, with the one that it is. */
function Procedures({ method, here }: { readonly method: BenchMethodId; readonly here: string }) {
  return (
    <ul className={styles.links} aria-label="Procedure">
      {METHOD_WORDS.map(({ id, words }) => (
        <li key={id}>
          {id === method ? (
            <strong aria-current="true">{words}</strong>
          ) : (
            <Link href={`${here}?method=${id}`} prefetch={false}>
              {words}
            </Link>
          )}
        </li>
      ))}
    </ul>
  );
}

/** The straight lines by which the losses of the runs were parted, with what shows how well they fit. */
function Regressions({ result }: Pick<TestPage, 'result'>) {
  const { lines, stray_load_loss: found } = result;
  if (!lines.no_load && !lines.stray) return null;
  return (
    <section className={styles.section} aria-labelledby="lines">
      <h2 id="lines">The regressions</h2>
      {found && (
        <p className={styles.soft}>
          Intercept {formatFigure(found.intercept).text}, dropped as the error of the test; correlation at least {found.limit}.
        </p>
      )}
      <div className={styles.charts}>
        {lines.no_load && <RegressionChart line={lines.no_load} kind="no-load" />}
        {lines.stray && <RegressionChart line={lines.stray} kind="stray" correlation={found?.correlation} />}
      </div>
    </section>
  );
}

/** Every column of the computation. */
function Columns({ result }: Pick<TestPage, 'result'>) {
  const { points, columns } = result;
  return (
    <>
      {points.length > 0 && (
        <section className={`${styles.section} ${styles.wide}`} aria-labelledby="loads">
          <h2 id="loads">At the standard loads</h2>
          <StandardLoads points={points} />
        </section>
      )}
      {columns.load.length > 0 && (
        <section className={`${styles.section} ${styles.wide}`} aria-labelledby="load-columns">
          <h2 id="load-columns">The load test, column by column</h2>
          <LoadColumns columns={columns.load} />
        </section>
      )}
      {columns.no_load.length > 0 && (
        <section className={`${styles.section} ${styles.wide}`} aria-labelledby="no-load-columns">
          <h2 id="no-load-columns">The no-load run, column by column</h2>
          <NoLoadColumns columns={columns.no_load} />
        </section>
      )}
    </>
  );
}

/** The test in a sentence. */
function answerOf({ result }: TestPage): string {
  const rated = ratedPoint(result);
  const by = `by ${methodWords(result.method).split(':')[0]}`;
  if (!result.accepted) return `The test is not accepted ${by}: the reasons stand below.`;
  if (rated) return `Accepted ${by}: ${formatFigure(rated.efficiency, { percent: true }).text} efficient at rated load.`;
  if (result.method === 'no-load-run' && result.constant_loss) {
    return `Uncoupled at rated voltage the motor loses ${formatFigure(result.constant_loss).text} in core, bearings and fan.`;
  }
  return `Accepted ${by}, without an efficiency at rated load: the load points do not come near it.`;
}
