import { FigureText } from '@/app/_ui/figure';
import { NumberHead } from '@/app/_ui/number-head';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { itemWords, mustWords, namer } from '@/lib/features/plan/words';
import type { MeasureTotal, Programme, Report } from '@/lib/features/sign-off/loaders';
import { formatAmount, formatCount } from '@/lib/platform/format';

interface Props {
  readonly report: Report;
  readonly currency: string;
}

/** What is funded, by kind: what it costs and what it brings once all is done. */
export function Measures({ report, currency }: Props) {
  const rows = [...report.byAction];
  return (
    <section className={sheet.section} aria-labelledby="measures">
      <h2 id="measures">What is funded, and what it brings</h2>
      <p>
        Savings are those of a full year once all is done, against running each motor as it is; ± is the 95 % interval.{' '}
        {report.metersKnown
          ? 'The error of a meter counts once for all motors that were read with it; where a reading names no instrument, one set of meters is taken to have served the site. All other doubts'
          : 'All doubts, those of meters too,'}{' '}
        are taken as independent from motor to motor, and the price of energy as sure.
      </p>
      <ScrollRegion label="Measures by kind">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Measure</th>
              <NumberHead name="Motors" />
              <NumberHead name="Cost" unit={currency} />
              <NumberHead name="Energy" unit="kWh a year" />
              <NumberHead name="Demand" unit="kW" />
              <NumberHead name="Money" unit={`${currency} a year`} />
              <NumberHead name="Emissions" unit="kg of CO₂ a year" />
              <NumberHead name="Present value" unit={currency} />
            </tr>
          </thead>
          <tbody>
            {rows.map(([action, total]) => (
              <MeasureRow key={action} words={action} total={total} currency={currency} />
            ))}
          </tbody>
          {rows.length !== 1 && (
            <tfoot>
              <MeasureRow words="all" total={report.all} currency={currency} />
            </tfoot>
          )}
        </table>
      </ScrollRegion>
    </section>
  );
}

function MeasureRow({
  words,
  total,
  currency,
}: {
  readonly words: string;
  readonly total: MeasureTotal;
  readonly currency: string;
}) {
  const reason = 'No saving can be worked out: hours or load are missing.';
  const figure = (name: 'energy' | 'demand' | 'money' | 'emissions') => (
    <td className={sheet.number}>
      <FigureText
        figure={total[name].motors > 0 ? total[name] : undefined}
        name={`${name} saved by ${words}`}
        reason={reason}
        unitInHead
      />
    </td>
  );
  return (
    <tr>
      <th scope="row">{words}</th>
      <td className={sheet.number}>{formatCount(total.motors)}</td>
      <td className={sheet.number}>{formatAmount(total.cost, currency, undefined, true)}</td>
      {figure('energy')}
      {figure('demand')}
      {figure('money')}
      {figure('emissions')}
      <td className={sheet.number}>{formatAmount(total.worth, currency, undefined, true)}</td>
    </tr>
  );
}

/** Each funded motor with its year, as an annex. */
export function FundedList({ report, programme, currency }: Props & { readonly programme: Programme }) {
  const name = namer(programme);
  return (
    <section className={sheet.section} aria-labelledby="funded">
      <h2 id="funded">Annex: the funded motors</h2>
      <ScrollRegion label="Funded motors">
        <table className={sheet.table}>
          <thead>
            <tr>
              <th scope="col">Motor</th>
              <th scope="col">Year</th>
              <th scope="col">What is done</th>
              <NumberHead name="Cost" unit={currency} />
              <NumberHead name="Energy saved" unit="kWh a year" />
              <NumberHead name="Money saved" unit={`${currency} a year`} />
              <NumberHead name="Simple payback" unit="years" />
            </tr>
          </thead>
          <tbody>
            {report.items.map((item) => (
              <FundedRow
                key={`${item.site}\n${item.tag}`}
                item={item}
                name={name(item)}
                must={mustWords(item, programme)}
                currency={currency}
              />
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </section>
  );
}

function FundedRow({
  item,
  name,
  must,
  currency,
}: {
  readonly item: Report['items'][number];
  readonly name: string;
  /** Why something must be done with it. */
  readonly must: readonly string[];
  readonly currency: string;
}) {
  const missing = 'No saving can be worked out: hours or load are missing.';
  const figure = (name: 'energy_saved' | 'money_saved' | 'simple_payback', reason: string) => (
    <td className={sheet.number}>
      <FigureText figure={item[name]} name={`${name.replace('_', ' ')} of ${item.tag}`} reason={reason} unitInHead />
    </td>
  );
  return (
    <tr>
      <th scope="row" className={sheet.nowrap}>
        {name}
      </th>
      <td>{item.year}</td>
      <td className={sheet.named}>
        {itemWords(item)}
        {must.length > 0 && `: ${must.join(' ')}`}
        {item.override && `; let in by ${item.override.by}: ${item.override.reason}`}
      </td>
      <td className={sheet.number}>{formatAmount(item.cost, currency, undefined, true)}</td>
      {figure('energy_saved', missing)}
      {figure('money_saved', missing)}
      {figure('simple_payback', 'It never pays back by its savings alone.')}
    </tr>
  );
}
