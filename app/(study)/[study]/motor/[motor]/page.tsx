import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Fact } from '@/app/_ui/fact';
import { FigureText } from '@/app/_ui/figure';
import { FindingList } from '@/app/_ui/finding-list';
import { TrustMark } from '@/app/_ui/trust-mark';
import { findingsInLabels } from '@/lib/features/fleet/screen-words';
import { loadMotorPage, type MotorPage } from '@/lib/features/motor/loaders';
import { ratingWords } from '@/lib/features/motor/words';
import { loadWho } from '@/lib/features/study/loaders';
import { atShaft } from '@/lib/features/study/reader-units';
import { formatAsStated, formatStated, unparted, withUnit } from '@/lib/platform/format';
import { BenchTests } from './bench-tests';
import { Cautions } from './cautions';
import { MotorHistory } from './history';
import { HowHard } from './how-hard';
import { ImportedHistory } from './indicator-history';
import { Indicators } from './indicators';
import styles from './motor.module.css';
import { MotorOptions } from './options';
import { Readings } from './readings';
import { Suspicions } from './suspicions';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
}

/** One motor: the answer first, then the evidence. */
export default async function MotorScreen({ params }: Props) {
  const { study, motor } = await params;
  const page = await loadMotorPage(study, motor);
  if (!page) notFound();
  const { result } = page;
  const here = `/${study}/motor/${motor}`;
  const who = await loadWho();
  const why = (path: string) => (page.explained.has(path) ? `${here}/why?figure=${encodeURIComponent(path)}` : undefined);
  return (
    <main id="main" className={styles.main}>
      <h1>
        {result.tag} <span className={styles.unitNote}>{result.description ?? ''}</span>
      </h1>
      <p className={styles.soft}>{[result.site, result.area, plateWords(page)].filter(Boolean).join(' · ')}</p>
      <p className={styles.answer}>
        <strong>{page.answer}</strong>
      </p>
      <ol className={styles.because}>
        {result.decision.because.map((reason) => (
          <li key={reason.code + reason.text}>{unparted(reason.text)}</li>
        ))}
      </ol>
      <Facts page={page} why={why} />
      <p className={styles.soft}>{readWords(page)}</p>
      <WaysOn study={study} motor={motor} />

      <section className={styles.section} aria-labelledby="load">
        <h2 id="load">How hard it works</h2>
        {result.shaft_power ? (
          <HowHard page={page} here={here} />
        ) : (
          <p>No reading gives a usable load yet. What to measure stands under “What can be trusted”.</p>
        )}
      </section>

      <section className={styles.section} aria-labelledby="trust">
        <h2 id="trust">What can be trusted</h2>
        <p>{TRUST_WORDS[result.trust.level]}</p>
        <FindingList findings={findingsInLabels(page.findings.trust)} empty="" />
      </section>

      <section className={styles.section} aria-labelledby="condition">
        <h2 id="condition">Condition</h2>
        <Suspicions page={page} />
        <Indicators page={page} why={why} />
        <ImportedHistory history={page.indicatorHistory} study={study} motor={motor} version={page.stored.version} who={who} />
        <p>
          <Link href={`${here}/lines`} prefetch={false}>
            Spectral lines to expect
          </Link>
        </p>
      </section>

      <section className={styles.section} aria-labelledby="options">
        <h2 id="options">Options</h2>
        <MotorOptions page={page} why={why} />
      </section>

      <section className={styles.section} aria-labelledby="readings">
        <h2 id="readings">Readings</h2>
        <Readings page={page} study={study} motor={motor} who={who} />
      </section>

      <section className={styles.section} aria-labelledby="bench-tests">
        <h2 id="bench-tests">Bench tests</h2>
        <BenchTests study={study} motor={motor} tag={page.stored.motor.tag} site={page.stored.motor.site} />
      </section>

      <section className={styles.section} aria-labelledby="history">
        <h2 id="history">History</h2>
        <MotorHistory history={page.history} undo={{ study, motor, version: page.stored.version, who }} />
      </section>
      <aside className="print-only" aria-label="Cautions">
        <Cautions />
      </aside>
    </main>
  );
}

interface FactsProps {
  readonly page: MotorPage;
  /** The way to how a figure is known. */
  readonly why: (path: string) => string | undefined;
}

/** What is known of the motor, in a few figures. */
function Facts({ page, why }: FactsProps) {
  const { result } = page;
  return (
    <dl className={styles.facts}>
      <Fact label="Load">
        <FigureText name="the load" figure={result.load_fraction} percent why={why('load_fraction')} reason="no usable reading" />
      </Fact>
      <Fact label="Shaft power">
        <FigureText
          name="shaft power"
          figure={result.shaft_power && atShaft(result.shaft_power, page.units)}
          why={why('shaft_power')}
          reason="no usable reading"
        />
      </Fact>
      <Fact label="Efficiency there">
        <FigureText name="efficiency" figure={result.efficiency} percent why={why('efficiency')} reason="no usable reading" />
      </Fact>
      <Fact label="Total loss">
        <FigureText name="total loss" figure={result.losses?.total} why={why('losses.total')} reason="no usable reading" />
      </Fact>
      <Fact label="Trust">
        <TrustMark level={result.trust.level} />
      </Fact>
      {page.rank && (
        <Fact label="Rank">
          {page.rank.rank} <span className={styles.soft}>of {page.rank.of}</span>
        </Fact>
      )}
    </dl>
  );
}

/** What one may do next with the motor. */
function WaysOn({ study, motor }: { readonly study: string; readonly motor: string }) {
  const here = `/${study}/motor/${motor}`;
  return (
    <ul className={styles.actions}>
      <li>
        <Link href={`${here}/reading`}>Add a reading</Link>
      </li>
      <li>
        <Link href={`${here}/edit`}>Change the plate</Link>
      </li>
      <li>
        <Link href={`/${study}/trust/round?m=${motor}`} prefetch={false}>
          Print a round sheet
        </Link>
      </li>
    </ul>
  );
}

function plateWords({ stored, ratingUnit }: MotorPage): string {
  const { plate } = stored.motor;
  return [
    ratingWords(plate.ratedPowerKw, ratingUnit),
    plate.poles === undefined ? '' : `${plate.poles} poles`,
    withUnit(formatAsStated(plate.ratedVoltageV), 'V'),
    plate.frame,
    plate.yearBuilt === undefined ? '' : `made ${plate.yearBuilt}`,
  ]
    .filter(Boolean)
    .join(', ');
}

/** When it was read, and how to read the figures. */
function readWords({ stored, rowInUse }: MotorPage): string {
  const taken = stored.motor.readings.find((reading) => reading.row === rowInUse)?.takenAt;
  const when =
    rowInUse === undefined ? '' : `As read ${taken === undefined ? 'at no stated date' : `on ${formatStated(taken)}`}. `;
  return `${when}± is the 95 % interval. A dotted figure opens its derivation.`;
}

const TRUST_WORDS = {
  sound: 'Sound: two independent ways to the load agree, the efficiency or its class is known, and nothing warns.',
  provisional: 'Provisional: the figures may be used, but something is missing, old or doubtful, as said here.',
  'not-usable': 'Not usable: the energy figures of this motor may not be used until it is measured.',
} as const;
