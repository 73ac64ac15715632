import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { BandMark } from '@/app/_ui/band-mark';
import { ChartLossStack } from '@/app/_ui/chart-loss-stack';
import { ChartPartLoad } from '@/app/_ui/chart-part-load';
import { ChartWhiskers } from '@/app/_ui/chart-whiskers';
import { FigureText } from '@/app/_ui/figure';
import { FindingList } from '@/app/_ui/finding-list';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import { TrustMark } from '@/app/_ui/trust-mark';
import { loadMotorPage, type MotorPage } from '@/lib/features/motor/loaders';
import { loadWho } from '@/lib/features/study/loaders';
import { formatFigure, formatMoney, formatNumber, formatStated } from '@/lib/platform/format';
import { MotorHistory } from './history';
import styles from './motor.module.css';
import { MotorOptions } from './options';
import { ReadingActions } from './reading-actions';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { study, motor } = await params;
  const page = await loadMotorPage(study, motor);
  return { title: page ? `${page.stored.motor.tag} · ${page.study.name}` : 'No such motor' };
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
        <Answer page={page} />
      </p>
      <ol className={styles.because}>
        {result.decision.because.map((reason) => (
          <li key={reason.code + reason.text}>{reason.text}</li>
        ))}
      </ol>
      <dl className={styles.facts}>
        <Fact label="Load">
          <FigureText
            name="the load"
            figure={result.load_fraction}
            percent
            why={why('load_fraction')}
            reason="no usable reading"
          />
        </Fact>
        <Fact label="Shaft power">
          <FigureText name="shaft power" figure={result.shaft_power} why={why('shaft_power')} reason="no usable reading" />
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
      <p className={styles.soft}>± is the 95 % interval. A dotted figure opens its derivation.</p>
      <ul className={styles.actions}>
        <li>
          <Link href={`${here}/reading`}>Add a reading</Link>
        </li>
        <li>
          <Link href={`${here}/edit`}>Change the plate</Link>
        </li>
      </ul>

      <section className={styles.section} aria-labelledby="load">
        <h2 id="load">How hard it works</h2>
        <div className={styles.columns}>
          {result.estimates.length > 0 && result.shaft_power && (
            <ChartWhiskers
              sentence={`Shaft power by each way to it; together ${formatFigure(result.shaft_power).text}.`}
              unit="shaft power, kW"
              rows={result.estimates.map((estimate) => ({
                label: estimate.method.replace('-', ' '),
                figure: estimate.shaft_power,
                used: estimate.used,
                bold: estimate.method === 'combined',
                why: estimate.why.join('; '),
              }))}
            />
          )}
          {page.curve.length > 0 && result.load_fraction && result.efficiency && (
            <ChartPartLoad
              sentence={`Efficiency over load; it works at ${formatFigure(result.load_fraction, { percent: true }).text}.`}
              curve={page.curve}
              load={result.load_fraction}
              efficiency={result.efficiency}
            />
          )}
        </div>
        {!result.shaft_power && <p>No reading gives a usable load yet. What to measure stands under trust.</p>}
        {result.losses && (
          <ChartLossStack
            sentence={`Of ${formatFigure(result.input_power ?? result.losses.total).text} taken from the line, ${formatFigure(result.losses.total).text} are lost.`}
            losses={result.losses}
          />
        )}
      </section>

      <section className={styles.section} aria-labelledby="trust">
        <h2 id="trust">What can be trusted</h2>
        <FindingList findings={result.trust.findings} empty="Nothing speaks against these figures." />
      </section>

      <section className={styles.section} aria-labelledby="condition">
        <h2 id="condition">Condition</h2>
        <Indicators page={page} why={why} />
      </section>

      <section className={styles.section} aria-labelledby="options">
        <h2 id="options">Options</h2>
        <MotorOptions result={result} currency={page.study.settings.currency} why={why} />
      </section>

      <section className={styles.section} aria-labelledby="readings">
        <h2 id="readings">Readings</h2>
        <Readings page={page} study={study} motor={motor} who={who} />
      </section>

      <section className={styles.section} aria-labelledby="history">
        <h2 id="history">History</h2>
        <MotorHistory history={page.history} undo={{ study, motor, version: page.stored.version, who }} />
      </section>
    </main>
  );
}

function Fact({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function plateWords({ stored }: MotorPage): string {
  const { plate } = stored.motor;
  const rated =
    plate.ratedPowerUnit === 'hp'
      ? `${formatNumber(plate.ratedPowerKw / 0.7457, plate.ratedPowerKw < 8 ? 1 : 0)} hp`
      : `${formatNumber(plate.ratedPowerKw, plate.ratedPowerKw < 10 ? 1 : 0)} kW`;
  return [
    rated,
    plate.poles === undefined ? '' : `${plate.poles} poles`,
    `${plate.ratedVoltageV} V`,
    plate.frame,
    plate.yearBuilt === undefined ? '' : `made ${plate.yearBuilt}`,
  ]
    .filter(Boolean)
    .join(', ');
}

const VERBS = { keep: 'Keep it', repair: 'Repair it', replace: 'Replace it', resize: 'Replace it by another rating' } as const;

/** The decision in one sentence, with its money. */
function Answer({ page }: { readonly page: MotorPage }) {
  const { decision, options } = page.result;
  const currency = page.study.settings.currency;
  const option = options.find((candidate) => candidate.id === decision.option);
  const when = decision.action === 'keep' ? '' : decision.timing === 'now' ? ' now' : ' when it fails';
  const money =
    option?.money_saved && decision.action !== 'keep'
      ? `: ${formatMoney(option.cost, currency)} buys ${formatMoney(option.money_saved.value, currency)} a year${option.simple_payback ? `, back in ${formatFigure(option.simple_payback).value} years` : ''}`
      : '';
  return (
    <strong>
      {VERBS[decision.action]}
      {when}
      {money}.
    </strong>
  );
}

function Indicators({ page, why }: { readonly page: MotorPage; readonly why: (path: string) => string | undefined }) {
  const { indicators } = page.result.condition;
  if (indicators.length === 0) return <p className={styles.soft}>No condition reading yet.</p>;
  return (
    <>
      <ScrollRegion label="Condition indicators">
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Indicator</th>
              <th scope="col" className={styles.number}>
                Value
              </th>
              <th scope="col">Verdict</th>
              <th scope="col">Limit</th>
              <th scope="col">Source</th>
              <th scope="col">Read</th>
            </tr>
          </thead>
          <tbody>
            {indicators.map((indicator) => (
              <tr key={indicator.id}>
                <th scope="row">{indicator.id.replaceAll('-', ' ')}</th>
                <td className={styles.number}>
                  <FigureText
                    name={indicator.id.replaceAll('-', ' ')}
                    figure={indicator.value}
                    why={why(`condition.indicators.${indicator.id}`)}
                  />
                </td>
                <td>
                  <BandMark band={indicator.band} />
                </td>
                <td>{indicator.limit}</td>
                <td>
                  {indicator.source} <span className={styles.soft}>({STATUS_WORDS[indicator.status] ?? indicator.status})</span>
                </td>
                <td>{indicator.taken_at === undefined ? '' : formatStated(indicator.taken_at)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <FindingList findings={indicators.flatMap((indicator) => indicator.findings)} empty="" />
    </>
  );
}

const STATUS_WORDS: Readonly<Record<string, string>> = {
  read: 'read in the source',
  'read-secondary': 'read in a second text',
  memory: 'from memory: shown, not a claim of compliance',
  practice: 'common practice',
  derived: 'derived',
};

function Readings({
  page,
  study,
  motor,
  who,
}: {
  readonly page: MotorPage;
  readonly study: string;
  readonly motor: string;
  readonly who: string;
}) {
  const { stored } = page;
  if (stored.readings.length === 0) return <p className={styles.soft}>Not measured yet. Add a reading to know its load.</p>;
  const results = new Map(page.result.readings.map((reading) => [reading.row, reading]));
  return (
    <ScrollRegion label="Table of readings">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Taken</th>
            <th scope="col" className={styles.number}>
              Power, kW
            </th>
            <th scope="col" className={styles.number}>
              Volts
            </th>
            <th scope="col" className={styles.number}>
              Amperes
            </th>
            <th scope="col" className={styles.number}>
              r/min
            </th>
            <th scope="col" className={styles.number}>
              Load
            </th>
            <th scope="col">Trust</th>
            <th scope="col">
              <span className="unseen">Leave out or take back in</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {[...stored.readings].reverse().map(({ id, reading, excluded }) => {
            const result = results.get(reading.row);
            const label = reading.takenAt === undefined ? 'no date' : formatStated(reading.takenAt);
            return (
              <tr key={id}>
                <th scope="row">{label}</th>
                <td className={styles.number}>{plain(reading.inputPowerKw)}</td>
                <td className={styles.number}>{plain(reading.voltageV)}</td>
                <td className={styles.number}>{plain(reading.currentA)}</td>
                <td className={styles.number}>{plain(reading.shaftSpeedRpm)}</td>
                <td className={styles.number}>
                  <FigureText
                    name="load"
                    figure={result?.load_fraction}
                    percent
                    reason={excluded ? 'left out' : 'no usable load'}
                  />
                </td>
                <td>{result ? <TrustMark level={result.trust} /> : <span className={styles.soft}>left out</span>}</td>
                <td>
                  <ReadingActions
                    study={study}
                    motor={motor}
                    version={stored.version}
                    who={who}
                    reading={id}
                    label={label}
                    {...(excluded && { excluded: { by: excluded.by, reason: excluded.reason } })}
                  />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function plain(value: number | undefined): string {
  return value === undefined ? '—' : formatFigure({ value, u: 0, unit: '1' }).text;
}
