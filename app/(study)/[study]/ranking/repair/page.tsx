import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ChartLine } from '@/app/_ui/chart-line';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { type RatingUnit, ratingNumber, ratingWords } from '@/lib/features/motor/words';
import { loadRepairOrReplace, type RepairPage } from '@/lib/features/ranking/repair-loader';
import { loadUnits } from '@/lib/features/study/loaders';
import { shaftScale, shaftUnit } from '@/lib/features/study/reader-units';
import { formatNumber } from '@/lib/platform/format';

export const metadata: Metadata = { title: 'Repair or replace' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const POLES = ['2', '4', '6', '8'];

/** From how many hours a year on a failed motor of a rating had better be replaced than rewound. */
export default async function RepairScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const page = await loadRepairOrReplace(study, await searchParams);
  if (!page) notFound();
  const { given, points } = page;
  const units = await loadUnits();
  const rating = (kw: number) => kw * shaftScale(units);
  const unit = shaftUnit(units);
  const line = points.flatMap(({ ratedPowerKw, hours }) =>
    hours.kind === 'at' || hours.kind === 'always'
      ? [{ at: rating(ratedPowerKw), value: hours.kind === 'at' ? hours.value : 0 }]
      : [],
  );
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <p className="screen-only">
        <Link href={`/${study}/ranking`}>Ranking</Link>
      </p>
      <h1>Repair or replace</h1>
      <p className={sheet.answer}>{answerWords(points, unit)}</p>
      <form method="get" className={sheet.bar}>
        <Choice name="poles" label="Poles" value={String(given.poles)} options={POLES} />
        <Choice name="class" label="Class of the old motor" value={given.efficiencyClass} options={page.classes} />
        <Choice name="enclosure" label="Enclosure" value={given.enclosure} options={['enclosed', 'open']} />
        <Choice name="load" label="Load, %" value={String(given.loadPct)} options={['25', '50', '75', '100']} />
        {page.sites.length > 1 && <Choice name="site" label="Site" value={given.site} options={page.sites} />}
        <button type="submit">Show</button>
      </form>
      {line.length > 1 && (
        <ChartLine
          sentence="Hours a year at which a rewind and a new premium motor are worth the same: above the line, replace."
          points={line}
          across={`rating, ${unit}`}
          up="hours a year"
          byRatio
        />
      )}
      <ScrollRegion label="Hours by rating">
        <table className={`${sheet.table} ${sheet.short}`}>
          <thead>
            <tr>
              <NumberHead name="Rating" unit={unit} />
              <th scope="col">Replace a failed one</th>
            </tr>
          </thead>
          <tbody>
            {points.map(({ ratedPowerKw, hours }) => (
              <tr key={ratedPowerKw}>
                <th scope="row" className={sheet.number}>
                  {ratingNumber(ratedPowerKw, unit)}
                </th>
                <td>{hoursWords(hours)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <p className={sheet.soft}>
        Each is a motor of that rating evaluated in full, failed, at constant torque and the load above, by the prices, tariff,
        rebates and rules of this study over {page.settings.horizonYears} years. A motor with readings of its own has its own
        answer on its page.
      </p>
    </main>
  );
}

function Choice({
  name,
  label,
  value,
  options,
}: {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly string[];
}) {
  return (
    <span className={sheet.pair}>
      <label htmlFor={`repair-${name}`}>{label}</label>
      <select id={`repair-${name}`} name={name} defaultValue={value} key={value}>
        {(options.includes(value) ? options : [...options, value]).map((option) => (
          <option key={option} value={option}>
            {option}
          </option>
        ))}
      </select>
    </span>
  );
}

function hoursWords(hours: RepairPage['points'][number]['hours']): string {
  switch (hours.kind) {
    case 'always':
      return 'however little it runs';
    case 'never':
      return 'never, even if it runs all year';
    case 'unknown':
      return 'cannot be told: a price or the class is missing for this rating';
    default:
      return `${hours.rising ? 'from' : 'up to'} ${formatNumber(hours.value, 0)} hours a year${hours.rising ? ' on' : ''}`;
  }
}

/** Between which hours the line runs, in a sentence. */
function answerWords(points: RepairPage['points'], unit: RatingUnit): string {
  const known = points.filter(({ hours }) => hours.kind !== 'unknown');
  const at = points
    .flatMap(({ ratedPowerKw, hours }) => (hours.kind === 'at' ? [{ ratedPowerKw, hours: hours.value }] : []))
    .sort((a, b) => a.hours - b.hours);
  const [least, most] = [at[0], at.at(-1)];
  if (known.length === 0) return 'It cannot be told: prices of new motors or of rewinds are missing.';
  if (!least || !most)
    return known.every(({ hours }) => hours.kind === 'always')
      ? 'A failed motor of any of these ratings had better be replaced, however little it runs.'
      : 'No rating has hours at which a rewind and a new motor are worth the same.';
  const of = ({ ratedPowerKw, hours }: typeof least) =>
    `${formatNumber(hours, 0)} hours a year at ${ratingWords(ratedPowerKw, unit)}`;
  return least === most
    ? `A failed motor had better be replaced from ${of(least)} on; the table has the other ratings.`
    : `From ${of(least)} to ${of(most)}: there a rewind and a new premium motor are worth the same, and whatever runs longer had better be replaced.`;
}
