import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { ratingWords } from '@/lib/features/motor/words';
import { loadSpares } from '@/lib/features/ranking/list-loader';
import type { SparesPage } from '@/lib/features/ranking/spares-page';
import { loadUnits } from '@/lib/features/study/loaders';
import { shaftUnit } from '@/lib/features/study/reader-units';
import { counted, formatAmount, formatCount, formatMoney, formatNumber, formatPercent } from '@/lib/platform/format';
import { BusyPage } from '../busy-page';
import styles from './spares.module.css';

export const metadata: Metadata = { title: 'Spares on the shelf' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** Tags that are named in a cell; the file has all. */
const NAMED = 6;

const FIELDS = [
  { name: 'weeks', label: 'Weeks to restock, where the list states none' },
  { name: 'keeping', label: 'Keeping, % of the price a year' },
] as const;

/** Which new motors are worth keeping on the shelf, whom they would serve, what they cost and why. */
export default async function SparesScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const page = await loadSpares(study, await searchParams);
  if (!page) notFound();
  if (page === 'busy') return <BusyPage study={study} title="Spares on the shelf" />;
  const { given, shelves, settings } = page;
  const units = await loadUnits();
  const { currency } = settings;
  const money = (amount: number) => formatMoney(amount, currency);
  const kept = shelves.filter(({ best }) => best.spares > 0);
  const others = shelves.filter(({ best }) => best.spares === 0);
  const table = { page, study, units } as const;
  const assumed = shelves.filter(({ restockListed }) => !restockListed).length;
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <p className="screen-only">
        <Link href={`/${study}/ranking`}>Ranking</Link>
      </p>
      <h1>Spares on the shelf</h1>
      <p className={sheet.answer}>{answerWords(page, money)}</p>
      {page.invented && <p className={sheet.soft}>Prices are invented: put in your own before anything is bought by this.</p>}
      <form method="get" className={sheet.bar}>
        {FIELDS.map(({ name, label }) => (
          <span key={name} className={sheet.pair}>
            <label htmlFor={`spares-${name}`}>{label}</label>
            <input
              id={`spares-${name}`}
              name={name}
              inputMode="decimal"
              defaultValue={page.typed[name] === '' ? String(given[name]) : page.typed[name]}
              size={5}
              aria-invalid={page.refused[name] !== undefined}
              {...(page.refused[name] !== undefined && { 'aria-describedby': `spares-${name}-note` })}
            />
          </span>
        ))}
        <button type="submit">Show</button>
      </form>
      {FIELDS.map(
        ({ name, label }) =>
          page.refused[name] !== undefined && (
            <p key={name} id={`spares-${name}-note`} role="alert" className={sheet.caution}>
              <strong>{label}.</strong> {page.refused[name]}
            </p>
          ),
      )}
      {kept.length > 0 && <Spares {...table} label="Spares worth keeping" shelves={kept} />}
      {others.length > 0 && (
        <details className={styles.others} open={kept.length === 0}>
          <summary>{counted(others.length, 'kind')} of which none pays by what it makes possible</summary>
          <Spares {...table} label="Spares that do not pay by themselves" shelves={others} />
        </details>
      )}
      <p className={sheet.soft}>
        {assumed > 0 &&
          `The price list states no lead time for ${assumed === shelves.length ? 'any of these' : `${formatCount(assumed)} of these ${formatCount(shelves.length)} kinds`}: ${formatNumber(given.weeks, 1)} weeks are assumed. `}
        {page.notServed > 0 &&
          `${formatCount(page.notServed)} motors in service are not in it: their load is assumed, a price is missing, or nothing new would come at a failure. `}
        Failures at {formatPercent(settings.failureRatePerYear, 1)} a year, at random; while one that was used is on order, the
        next failure is repaired. The stock costs the interest on its price and its keeping; it holds its value, turned and dry. A
        shorter stop is not in the value, because no sheet says how much of it a spare saves: the column has all of the stops that
        would find one spare on the shelf, and the reasons the share that would pay for it.{' '}
        <span className="screen-only">
          Take it along as <a href={`/api/studies/${study}/spares?weeks=${given.weeks}&keeping=${given.keeping}`}>CSV</a>.
        </span>
      </p>
    </main>
  );
}

/** One kind of motor a line. */
function Spares({
  page,
  study,
  units,
  label,
  shelves,
}: {
  readonly page: SparesPage;
  readonly study: string;
  readonly units: Parameters<typeof shaftUnit>[0];
  readonly label: string;
  readonly shelves: SparesPage['shelves'];
}) {
  const { settings } = page;
  const { currency } = settings;
  const amount = (value: number) => formatAmount(value, currency);
  return (
    <ScrollRegion label={label}>
      <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures} ${styles.table}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>Kind of motor</Head>
            <NumberHead name="Worth keeping" />
            <NumberHead name="In stock" />
            <Head>Would serve</Head>
            <NumberHead name="Price of one" unit={currency} className={styles.amount} />
            <NumberHead name="Value" unit={`${currency} over ${settings.horizonYears} years`} className={styles.amount} />
            <NumberHead name="Stops to shorten" unit={`cost at most, ${currency}`} className={styles.stops} />
            <Head className={styles.wide}>Why</Head>
          </tr>
        </thead>
        <tbody {...GROUP}>
          {shelves.map((shelf) => {
            const { site, ratedPowerKw, poles, frame, enclosure, mounting, best, one, stopsMet } = shelf;
            return (
              <tr key={[site, ratedPowerKw, poles, frame, enclosure, mounting].join(' ')} {...ROW}>
                <th {...ROW_HEAD} scope="row" className={styles.kind}>
                  {ratingWords(ratedPowerKw, shaftUnit(units))}, {poles} poles,{' '}
                  {frame === undefined ? 'frame not known' : `frame ${frame}`}, {enclosure}
                  {mounting !== 'foot' && `, ${mounting}`}
                  {page.sites > 1 && site !== '' && ` (${site})`}
                </th>
                <td {...CELL} className={sheet.number} data-unit="Worth keeping">
                  {best.spares === 0 ? 'none' : formatCount(best.spares)}
                </td>
                <td {...CELL} className={sheet.number} data-unit="In stock">
                  {formatCount(shelf.inStock)}
                </td>
                <Serves page={page} study={study} shelf={shelf} />
                <td {...CELL} className={sheet.number} data-unit={`Price of one, ${currency}`}>
                  {amount(shelf.purchase)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Value, ${currency} over ${settings.horizonYears} years`}>
                  {best.spares === 0 ? `${amount(one.value)} if one` : amount(best.value)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Stops to shorten cost at most, ${currency}`}>
                  {stopsMet > 0 ? amount(stopsMet) : shelf.stopsUnknown > 0 ? 'not known' : 'none'}
                </td>
                <td {...CELL} className={`${sheet.because} ${styles.wide}`}>
                  {shelf.reasons.join(' ')}
                </td>
                <td {...CELL} className={styles.narrow}>
                  <details>
                    <summary>Why</summary>
                    {shelf.reasons.join(' ')}
                  </details>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

interface ServesProps {
  readonly page: SparesPage;
  readonly study: string;
  readonly shelf: SparesPage['shelves'][number];
}

/** The motors that a spare would serve, the first of them by name. */
function Serves({ page, study, shelf: { site, tags } }: ServesProps) {
  return (
    <td {...CELL} className={styles.serves}>
      <span className={`${sheet.soft} ${styles.narrow}`}>Would serve </span>
      {formatCount(tags.length)}:{' '}
      {tags.slice(0, NAMED).map((tag, at) => (
        <span key={tag}>
          {at > 0 && ', '}
          <Link href={`/${study}/motor/${page.motorIds.get(`${site}\n${tag}`)}`} prefetch={false}>
            {tag}
          </Link>
        </span>
      ))}
      {tags.length > NAMED && ` and ${tags.length - NAMED} more`}
    </td>
  );
}

function answerWords({ shelves, settings }: SparesPage, money: (amount: number) => string): string {
  if (shelves.length === 0)
    return 'Nothing can be said of spares: no motor has a priced replacement at failure with a load that may be used.';
  const kept = shelves.filter(({ best }) => best.spares > 0);
  if (kept.length === 0)
    return settings.policy.atFailure === 'replace'
      ? 'No spare pays by what it makes possible: by the policy of this study a failed motor is replaced anyway.'
      : `No spare pays by what it makes possible over ${settings.horizonYears} years; the table says what is lacking, and what stops would have to cost.`;
  const spares = kept.reduce((sum, { best }) => sum + best.spares, 0);
  const value = kept.reduce((sum, { best }) => sum + best.value, 0);
  const price = kept.reduce((sum, { best, purchase }) => sum + best.spares * purchase, 0);
  return `${formatCount(spares)} new premium ${spares === 1 ? 'motor' : 'motors'} of ${counted(kept.length, 'kind')} would pay on the shelf: ${money(price)} to buy, worth ${money(value)} over ${settings.horizonYears} years beyond what keeping costs.`;
}
