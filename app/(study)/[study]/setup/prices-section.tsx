import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import phone from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { ITEM_CELLS } from '@/lib/features/prices/schema';
import { takePrices } from '@/lib/features/setup/actions';
import type { Setup } from '@/lib/features/setup/loaders';
import { counted, formatCount, formatInstant, formatNumber } from '@/lib/platform/format';
import { FileForm } from './file-form';
import { AddPrice, ChooseList, RemovePrice } from './price-forms';

interface Props {
  readonly study: string;
  readonly who: string;
  readonly currency: string;
  readonly prices: Setup['prices'];
}

/** What motors, jobs and the parts of other measures cost: which list serves, another one, one more price, and the prices themselves. */
export function PricesSection({ study, who, currency, prices }: Props) {
  const { name, invented, count, lines, currencies, lists } = prices;
  const foreign = currencies.filter((other) => other !== currency);
  const choices = [
    ...lists.map((list) => ({
      id: list.id,
      label: `${list.name}: ${formatCount(list.count)} prices${list.invented ? ', partly invented' : ''}, taken ${formatInstant(list.createdAt)}`,
    })),
    { id: 'shipped', label: 'The shipped list, invented for demonstration' },
  ];
  const table = <PriceTable lines={lines} currency={currency} removable={name !== undefined} />;
  return (
    <section className={sheet.section} aria-labelledby="prices">
      <h2 id="prices">Prices</h2>
      <p>
        {servingWords(name, invented, count)} <a href={`/api/studies/${study}/prices`}>These prices as a file</a>, to be put
        beside the settings file for the command line.
      </p>
      {foreign.length > 0 && (
        <p className={sheet.caution}>
          {`The study counts in ${currency}, but these prices are in ${foreign.join(', ')}: their numbers are taken as they stand. Name prices in ${currency}.`}
        </p>
      )}
      {lists.length > 0 && (
        <ChooseList study={study} who={who} lists={choices} chosen={lists.find((list) => list.inUse)?.id ?? 'shipped'} />
      )}
      <h3>A list of yours</h3>
      <FileForm
        id="prices"
        study={study}
        who={who}
        label="Price list (CSV or XLSX: item, rated_power_kw, poles, efficiency_class, enclosure, price, …)"
        accept=".csv,.xlsx"
        submit="Take the prices"
        action={takePrices}
      />
      <details>
        <summary>Add one price</summary>
        <AddPrice study={study} who={who} currency={currency} items={ITEM_CELLS} />
      </details>
      <details>
        <summary>
          The prices in use
          {lines.length < count && `: the first ${formatCount(lines.length)} of ${formatCount(count)}`}
        </summary>
        {name === undefined ? (
          table
        ) : (
          <RemovePrice study={study} who={who}>
            {table}
          </RemovePrice>
        )}
      </details>
    </section>
  );
}

function servingWords(name: string | undefined, invented: boolean, count: number): string {
  if (name === undefined)
    return `The shipped list of ${formatCount(count)} prices serves. It is invented for demonstration: name your own before you decide anything.`;
  if (invented)
    return `“${name}” serves: ${formatCount(count)} prices, most of them invented for demonstration. Name your own before you decide anything.`;
  return `${counted(count, 'price')} of your own are in use: “${name}”.`;
}

interface TableProps {
  readonly lines: Setup['prices']['lines'];
  readonly currency: string;
  /** Whether a price can be chosen for removal. */
  readonly removable: boolean;
}

function PriceTable({ lines, currency, removable }: TableProps) {
  const decimals = lines.every(({ price }) => Number.isInteger(price.price)) ? 0 : 2;
  return (
    <ScrollRegion label="Prices in use">
      <table {...TABLE} className={`${sheet.table} ${phone.lines} ${phone.figures}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <Head>Item</Head>
            <NumberHead name="Rating" unit="kW" />
            <NumberHead name="Poles" />
            <Head>Class</Head>
            <Head>Enclosure</Head>
            <NumberHead name="Price" unit={currency} />
            <Head>Quoted on</Head>
            <NumberHead name="Lead time" unit="weeks" />
            <Head>Source</Head>
          </tr>
        </thead>
        <tbody {...GROUP}>
          {lines.map(({ id, price, serves }, index) => {
            const item = price.item === 'capacitor' ? 'capacitor, a kvar' : price.item.replace('-', ' ');
            return (
              <tr {...ROW} key={id ?? index}>
                <th {...ROW_HEAD} scope="row">
                  {removable && id !== undefined ? (
                    <label>
                      <input type="radio" name="price" value={id} /> {item}
                    </label>
                  ) : (
                    item
                  )}
                </th>
                <td {...CELL} className={sheet.number} data-unit="Rating, kW">
                  {price.ratedPowerKw === undefined ? 'any' : formatNumber(price.ratedPowerKw, 2)}
                </td>
                <td {...CELL} className={sheet.number} data-unit="Poles">
                  {price.poles ?? 'any'}
                </td>
                <td {...CELL} data-unit="Class">
                  {serves ? (price.efficiencyClass ?? '') : `${price.efficiencyClass ?? 'none'}: serves nothing`}
                </td>
                <td {...CELL} data-unit="Enclosure">
                  {price.enclosure ?? 'any'}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Price, ${currency}`}>
                  {formatNumber(price.price, decimals)}
                </td>
                <td {...CELL} className={sheet.nowrap} data-unit="Quoted on">
                  {price.date ?? ''}
                </td>
                <td {...CELL} className={sheet.number} data-unit="Lead time, weeks">
                  {price.leadTimeWeeks === undefined ? '' : formatNumber(price.leadTimeWeeks, 0)}
                </td>
                <td {...CELL}>{price.source ?? ''}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
