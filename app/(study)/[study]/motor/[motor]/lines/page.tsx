import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { FindingList } from '@/app/_ui/finding-list';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { LineTable } from '@/lib/engine';
import { lineSeen, stepHertz, symbolWords } from '@/lib/features/condition/line-words';
import { causeWords } from '@/lib/features/condition/words';
import { findingsInLabels, inLabels } from '@/lib/features/fleet/screen-words';
import { loadLines } from '@/lib/features/motor/lines-loader';
import { formatFigure, formatNumber, formatStated } from '@/lib/platform/format';
import { Signs } from './signs';

export const metadata: Metadata = { title: 'Spectral lines' };

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
}

const SPECTRA = ['current', 'vibration'] as const;

/** The lines to expect in the spectra of one motor, and which of them cannot be told apart. */
export default async function LinesScreen({ params }: Props) {
  const { study, motor } = await params;
  const page = await loadLines(study, motor);
  if (!page) notFound();
  const { table } = page;
  return (
    <main id="main" className={sheet.main}>
      <p>
        <Link href={`/${study}/motor/${motor}`}>
          {table.site} {table.tag}
        </Link>
      </p>
      <h1>Spectral lines of {table.tag}</h1>
      <p className={sheet.answer}>{answer(table)}</p>
      <Basis table={table} />
      <FindingList findings={findingsInLabels(table.findings)} empty="" />
      <Coinciding table={table} />
      <Seen table={table} />
      <BarCounts table={table} />
      {SPECTRA.map((spectrum) => (
        <Lines key={spectrum} table={table} spectrum={spectrum} />
      ))}
      {table.missing.length > 0 && (
        <section className={sheet.section} aria-labelledby="missing">
          <h2 id="missing">What would add lines</h2>
          <p>Fields of the plate or of a reading:</p>
          <ul>
            {table.missing.map(({ column, adds }) => (
              <li key={column}>
                {inLabels(column)}: {adds}
              </li>
            ))}
          </ul>
          <p>
            <Link href={`/${study}/motor/${motor}/edit`}>Change the plate</Link> ·{' '}
            <Link href={`/${study}/motor/${motor}/reading`}>Add a reading</Link>
          </p>
        </section>
      )}
      <p className={sheet.caution}>
        Taking a spectrum is work on energized or turning equipment: qualified persons only, shock and arc-flash boundaries
        respected, guards on, never an open current-transformer secondary. Do not change the load without the process owner. Local
        codes and licensed practice decide.
      </p>
      <p className={sheet.soft}>
        A line that fits is not a fault. ± is the 95 % interval. {table.lines.length > 0 && <Signs text={symbolWords(table)} />}
      </p>
    </main>
  );
}

function answer({ lines, coincide }: LineTable): string {
  if (lines.length === 0) return 'No line can be placed yet: the shaft speed is not known.';
  const pairs = coincide.length === 1 ? 'One pair' : `${coincide.length} pairs`;
  return coincide.length === 0
    ? `${lines.length} lines are expected, and every two of different causes can be told apart.`
    : `${lines.length} lines are expected. ${pairs} of different causes cannot be told apart.`;
}

function Basis({ table }: { readonly table: LineTable }) {
  if (table.lines.length === 0) return null;
  const { speed, supply_frequency, slip, pole_pass, load_fraction, resolution, sidebands_need: need } = table;
  const rows: [string, string][] = [
    ['Read', table.taken_at === undefined ? 'at no stated date' : formatStated(table.taken_at)],
    ['Shaft speed', speed ? formatFigure(speed).text : '—'],
    ['Supply frequency', supply_frequency ? formatFigure(supply_frequency).text : '—'],
    ['Slip', slip ? formatFigure(slip, { percent: true }).text : '—'],
    ['Pole-pass frequency', pole_pass ? formatFigure(pole_pass).text : '—'],
    ['Load', load_fraction ? formatFigure(load_fraction, { percent: true }).text : 'not known'],
    ['Resolution', resolution ? `${stepHertz(resolution.value_hz)} (${resolution.known})` : '—'],
    [
      'The pole-pass sidebands need',
      need ? `${stepHertz(need.resolution_hz)}: a record of ${formatNumber(need.record_s, 1)}\u202fs` : 'no slip to see',
    ],
  ];
  return (
    <dl className={sheet.passport}>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

function parting(found: {
  readonly always: boolean;
  readonly parted_at?: { readonly speed_rpm: number; readonly load_fraction: number };
}): string {
  if (found.always) return 'no speed: they are one frequency';
  return found.parted_at
    ? `${formatNumber(found.parted_at.speed_rpm, 0)}\u202fr/min, about ${formatNumber(100 * found.parted_at.load_fraction, 0)}\u202f% load`
    : 'no speed of this motor at this resolution';
}

function Coinciding({ table }: { readonly table: LineTable }) {
  if (table.coincide.length === 0) return null;
  const meaning = (id: string) => {
    const line = table.lines.find((each) => each.id === id);
    return <Signs text={line ? `${line.meaning} (${line.relation})` : id} />;
  };
  return (
    <section className={sheet.section} aria-labelledby="coincide">
      <h2 id="coincide">Not to be told apart</h2>
      <ScrollRegion label="Lines that cannot be told apart">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Spectrum</th>
              <th scope="col">Lines</th>
              <NumberHead name="Apart" />
              <NumberHead name="Needed" />
              <th scope="col">Parted at</th>
              <NumberHead name="Or by a resolution of" />
            </tr>
          </thead>
          <tbody>
            {table.coincide.map((found) => (
              <tr key={found.lines.join(' ')}>
                <td>{found.spectrum}</td>
                <th scope="row">
                  {meaning(found.lines[0])} <span className={sheet.unit}>and {meaning(found.lines[1])}</span>
                </th>
                <td className={sheet.number}>{stepHertz(found.apart_hz)}</td>
                <td className={sheet.number}>{stepHertz(found.needed_hz)}</td>
                <td>{parting(found)}</td>
                <td className={sheet.number}>{found.resolution_hz === undefined ? '—' : stepHertz(found.resolution_hz)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}

function Seen({ table }: { readonly table: LineTable }) {
  if (table.observed.length === 0) return null;
  const line = (id: string) => table.lines.find((entry) => entry.id === id);
  return (
    <section className={sheet.section} aria-labelledby="seen">
      <h2 id="seen">Lines seen</h2>
      <ul>
        {table.observed.map(({ frequency_hz, may_be }) => (
          <li key={frequency_hz}>
            {lineSeen(frequency_hz, table.resolution)}:{' '}
            {may_be.length === 0
              ? 'none of the expected lines'
              : may_be.map((id) => `${line(id)?.meaning ?? id} (${line(id)?.spectrum ?? ''})`).join(', or ')}
          </li>
        ))}
      </ul>
    </section>
  );
}

function BarCounts({ table }: { readonly table: LineTable }) {
  if (table.bar_counts.length === 0) return null;
  return (
    <section className={sheet.section} aria-labelledby="bars">
      <h2 id="bars">Counts of rotor bars that fit</h2>
      <p>The count was not taken from the maker or by counting. Each of these would put a rotor-slot line where one was seen.</p>
      <ScrollRegion label="Counts of rotor bars that fit">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Seen at</th>
              <NumberHead name="Bars" />
              <th scope="col">Line</th>
              <NumberHead name="Off by" />
              <th scope="col">Told from the first at</th>
            </tr>
          </thead>
          <tbody>
            {table.bar_counts.flatMap(({ frequency_hz, fits }) =>
              fits.map((fit, index) => (
                <tr key={`${frequency_hz} ${fit.bars} ${fit.line}`}>
                  <td>{lineSeen(frequency_hz, table.resolution)}</td>
                  <th scope="row" className={sheet.number}>
                    {fit.bars}
                    {fit.stated && <span className={sheet.unit}>as stated</span>}
                  </th>
                  <td>
                    <Signs text={fit.relation} />
                  </td>
                  <td className={sheet.number}>{stepHertz(fit.off_hz)}</td>
                  <td>{index === 0 ? '' : parting(fit)}</td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}

function Lines({ table, spectrum }: { readonly table: LineTable; readonly spectrum: 'current' | 'vibration' }) {
  const lines = table.lines.filter((line) => line.spectrum === spectrum);
  if (lines.length === 0) return null;
  return (
    <section className={sheet.section} aria-labelledby={spectrum}>
      <h2 id={spectrum}>Expected in the {spectrum}</h2>
      <ScrollRegion label={`Lines expected in the ${spectrum}`}>
        <table className={sheet.table}>
          <thead>
            <tr>
              <NumberHead name="Frequency, ± 95 %" />
              <th scope="col">Line</th>
              <th scope="col">Relation</th>
              <th scope="col">Speaks for</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <tr key={line.id}>
                <td className={sheet.number}>{formatFigure(line.frequency).text}</td>
                <th scope="row" className={sheet.named}>
                  {line.meaning}
                </th>
                <td className={sheet.nowrap}>
                  <Signs text={line.relation} />
                </td>
                <td>{causeWords(line.cause)}</td>
                <td className={sheet.because}>{line.source}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}
