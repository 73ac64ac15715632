import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { ChartLine } from '@/app/_ui/chart-line';
import { ChartTornado } from '@/app/_ui/chart-tornado';
import { FigureText } from '@/app/_ui/figure';
import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { OptionBreakEven } from '@/lib/engine';
import { marginSentences } from '@/lib/features/motor/margin-words';
import { loadMoney, type MoneyPage, type ValueCurve } from '@/lib/features/motor/money-loader';
import { loadSpareOf } from '@/lib/features/ranking/spare-loader';
import { ABSENT, formatFigure, formatNumber, formatPercent, uncapitalised } from '@/lib/platform/format';
import { Spare } from '../spare';
import { AlsoWorth } from './also-worth';
import { EveryMeasure } from './every-measure';
import { Turns } from './turns';
import { breakEvenWords, leverRow, paidBackWords } from './words';

export const metadata: Metadata = { title: 'What the money hangs on' };

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** The money of a motor's options side by side, and what that of one of them hangs on. */
export default async function MoneyScreen({ params, searchParams }: Props) {
  const { study, motor } = await params;
  const asked = (await searchParams).option;
  const page = await loadMoney(study, motor, typeof asked === 'string' ? asked : undefined);
  if (!page) notFound();
  const spare = await loadSpareOf(study, motor);
  const { chosen, study: stored } = page;
  const { currency, horizonYears, discountRate } = stored.settings;
  const value = chosen.net_present_value;
  const decided = page.options.find((each) => each.decided);
  const here = `/${study}/motor/${motor}`;
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <p>
        <Link href={here}>
          {page.site} {page.tag}
        </Link>
      </p>
      <h1>What the money of {page.tag} hangs on</h1>
      <p className={sheet.answer}>
        {page.title}: worth {value ? formatFigure(value).text : ABSENT} over {horizonYears} years, at{' '}
        {formatPercent(discountRate, 1)} a year. Discounted at that rate, {uncapitalised(paidBackWords(page.soFar, horizonYears))}
      </p>
      <p className={`${sheet.soft} screen-only`}>
        For finance: <a href={`/api/studies/${study}/workbook?motor=${motor}`}>all of it as a workbook with live formulas</a>.
        Change a price in it, and the rest follows. The figures of this page as{' '}
        <a href={`/api/studies/${study}/money?motor=${motor}`} download>
          CSV
        </a>
        . <Link href={`/${study}/ranking/repair`}>Repair or replace by rating and hours</Link>.
      </p>
      <SideBySide page={page} here={here} />
      <section className={sheet.section} aria-labelledby="so-far">
        <h2 id="so-far">When it is back</h2>
        <ChartLine
          sentence={`What it has brought in by each year’s end, discounted, with its 95 % band: ${paidBackWords(page.soFar, horizonYears)}`}
          points={page.soFar.map((point) => ({ at: point.year, value: point.value, u: point.u }))}
          across="years from now"
          up={currency}
        />
        <p className={sheet.soft}>
          Against{' '}
          {stored.settings.policy.atFailure === 'repair'
            ? 'keeping it and repairing it when it fails'
            : 'keeping it and replacing it when it fails'}
          . The band holds the doubt of load, efficiencies and prices, not that of how often motors fail. What the motor is still
          worth counts in the last year.
        </p>
      </section>
      <section className={sheet.section} aria-labelledby="hangs">
        <h2 id="hangs">What its value hangs on</h2>
        <Swings page={page} currency={currency} />
      </section>
      <EveryMeasure page={page} />
      <Turns turnings={page.turnings} decidedValue={decided?.option.net_present_value?.value ?? 0} currency={currency} />
      <section className={sheet.section} aria-labelledby="even">
        <h2 id="even">Where it stops being worth it</h2>
        <ul>
          {page.breakEvens.map((even) => (
            <li key={even.lever}>{breakEvenWords(even, currency)}</li>
          ))}
          <li>{paybackWords(page.paybackAt, page)}</li>
        </ul>
        {page.curves.map((curve) => (
          <Curve key={curve.lever} curve={curve} currency={currency} />
        ))}
      </section>
      <AlsoWorth found={page.measures} settings={page.study.settings} />
      <Spare study={study} sentences={spare} className={sheet.section} />
    </main>
  );
}

/** Columns of money, in their order. */
const COLUMNS = { cost: 'Cost', saved: 'Saved a year', worth: 'Worth', less: 'Behind the best' } as const;

function SideBySide({ page, here }: { readonly page: MoneyPage; readonly here: string }) {
  const { currency } = page.study.settings;
  const { keep } = page;
  const valued = page.options.map((each) => ({ ...each, value: each.option.net_present_value?.value ?? 0 }));
  const rows = [...valued, ...(keep ? [{ ...keep, option: undefined, value: 0 }] : [])].sort((a, b) => b.value - a.value);
  const most = rows[0]?.value ?? 0;
  return (
    <section className={sheet.section} aria-labelledby="side">
      <h2 id="side">The options, best first</h2>
      <ScrollRegion label="Options, best first">
        <table {...TABLE} className={`${sheet.table} ${sheet.short} ${lines.lines} ${lines.figures}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Option</Head>
              {Object.values(COLUMNS).map((name) => (
                <NumberHead key={name} name={name} unit={currency} />
              ))}
            </tr>
          </thead>
          <tbody {...GROUP}>
            {rows.map(({ option, title, decided, value }) => (
              <tr key={option?.id ?? 'keep'} {...ROW}>
                <th {...ROW_HEAD} scope="row">
                  {option === undefined ? (
                    title
                  ) : option.id === page.chosen.id ? (
                    <strong aria-current="true">{title}</strong>
                  ) : (
                    <Link href={`${here}/money?option=${encodeURIComponent(option.id)}`} prefetch={false}>
                      {title}
                    </Link>
                  )}
                  {decided && ' (decided)'}
                </th>
                <td {...CELL} className={sheet.number} data-unit={`${COLUMNS.cost}, ${currency}`}>
                  {option ? formatNumber(option.cost, 0) : ABSENT}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`${COLUMNS.saved}, ${currency}`}>
                  {option ? <FigureText name={`saving of ${title}`} figure={option.money_saved} unitInHead /> : ABSENT}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`${COLUMNS.worth}, ${currency}`}>
                  {option ? <FigureText name={`value of ${title}`} figure={option.net_present_value} unitInHead /> : 0}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`${COLUMNS.less}, ${currency}`}>
                  {formatNumber(most - value, 0)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      <p className={sheet.soft}>
        {keep
          ? 'Keeping it is worth 0: all others are counted against that.'
          : 'It has failed: all are counted against the repair.'}{' '}
        At failure, the cost is what is paid beyond the repair. ± is the 95 % interval.
      </p>
      <p className={sheet.soft}>{marginSentences(page.margin, currency).join(' ')}</p>
    </section>
  );
}

function Swings({ page, currency }: { readonly page: MoneyPage; readonly currency: string }) {
  const { base, bars } = page.tornado;
  if (base === undefined) return <p>Its value cannot be told.</p>;
  const rows = bars.filter((bar) => bar.width > 0).map(leverRow);
  const [widest] = rows;
  if (!widest) return <p>Nothing that was moved changes its value.</p>;
  return (
    <ChartTornado
      sentence={`Each thing moved alone, to its lower end (hatched) and its higher one (full). The widest: ${widest.label.toLowerCase()}, ${widest.low} to ${widest.high}.`}
      base={base}
      rows={rows}
      unit={`worth, ${currency}`}
    />
  );
}

function Curve({ curve, currency }: { readonly curve: ValueCurve; readonly currency: string }) {
  const { stated, lever, points } = curve;
  if (points.length < 2) return null;
  const scale = stated ?? 1;
  const price = lever === 'energy-price';
  const across = price
    ? stated === undefined
      ? 'times the prices of energy in the tariff'
      : `price of energy, ${currency} a kWh`
    : stated === undefined
      ? 'times the present hours'
      : 'hours a year';
  return (
    <ChartLine
      sentence={`What it is worth at other ${price ? 'prices of energy' : 'hours a year'}.`}
      points={points.map((point) => ({ at: point.at * scale, value: point.value }))}
      across={across}
      up={`worth, ${currency}`}
      digits={stated === undefined ? 2 : price ? 3 : 0}
      mark={{ at: scale, words: 'now' }}
    />
  );
}

function paybackWords(even: OptionBreakEven, { study }: MoneyPage): string {
  const { maxSimplePaybackYears } = study.settings.policy;
  const limit = `${formatNumber(maxSimplePaybackYears, 1)} years that the policy allows`;
  const { found, stated } = even;
  if (found.kind === 'always') return `It is back within the ${limit} at any price of energy.`;
  if (found.kind === 'never') return `No price of energy up to ten times the present one brings it back within the ${limit}.`;
  if (found.kind === 'unknown') return `At which price of energy it is back within the ${limit} cannot be told.`;
  const at =
    stated === undefined
      ? `${formatNumber(found.value, 2)} times the present prices`
      : `${formatNumber(stated, 3)} ${study.settings.currency} a kWh`;
  return `It is back within the ${limit} from ${at} on.`;
}
