import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { TariffView } from '@/lib/features/setup/tariff-view';
import { ABSENT, counted, formatCount, formatNumber, formatPercent, withUnit } from '@/lib/platform/format';

const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** What a tariff comes to: the last kilowatt-hour beside the average one, by hours, and the bill of a year item by item. */
export function TariffResult({ view }: { readonly view: TariffView }) {
  const { currency, marginal, average } = view;
  const [any] = marginal;
  return (
    <>
      {any && (
        <p className={sheet.answer}>
          The last kilowatt-hour costs <strong>{withUnit(formatNumber(any.energy, 4), currency)}</strong>
          {average === undefined ? '' : <>, the average one {formatNumber(average, 4)}</>}; the last kilowatt in the billed peak{' '}
          <strong>{withUnit(formatNumber(any.demand, 2), currency)}</strong> a month.
        </p>
      )}
      {average === undefined && (
        <p className={sheet.soft}>Say what the whole site takes, and the average price and the bill of a year stand here too.</p>
      )}
      <PriceTable view={view} />
      <HoursTable view={view} />
      <Together view={view} />
      <Bill view={view} />
    </>
  );
}

function PriceTable({ view: { periods, currency } }: { readonly view: TariffView }) {
  return (
    <>
      <h2>By the hours of the tariff</h2>
      <ScrollRegion label="Prices by the hours of the tariff">
        <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Name</Head>
              <Head>Hours</Head>
              <NumberHead name="As stated" unit={`${currency}/kWh`} />
              <NumberHead name="Last kWh" unit={`${currency}/kWh, with all that hangs on it`} />
            </tr>
          </thead>
          <tbody {...GROUP}>
            {periods.map((period) => (
              <tr key={period.name} {...ROW}>
                <th {...ROW_HEAD} scope="row">
                  {period.name}
                </th>
                <td {...CELL}>{period.hours}</td>
                <td {...CELL} className={sheet.number} data-unit={`As stated, ${currency}/kWh`}>
                  {formatNumber(period.stated, 4)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Last kWh, ${currency}/kWh`}>
                  {period.last === undefined ? 'no hours left' : formatNumber(period.last, 4)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
    </>
  );
}

function HoursTable({ view: { marginal, currency } }: { readonly view: TariffView }) {
  const kvar = marginal.some((row) => row.kvar !== 0);
  const kvarh = marginal.some((row) => row.kvarh !== 0);
  const late = marginal.some((row) => row.firstYearShare < 1);
  return (
    <>
      <h2>For motors by the hours that they keep</h2>
      <ScrollRegion label="Last prices by the hours of motors">
        <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
          <thead {...GROUP}>
            <tr {...ROW}>
              <Head>Motors that run</Head>
              <NumberHead name="Last kWh" unit={`${currency}/kWh`} />
              <NumberHead name="Last kW" unit={`${currency} a month`} />
              {kvar && <NumberHead name="Last kvar" unit={`${currency} a month`} />}
              {kvarh && <NumberHead name="Last kvarh" unit={`${currency}/kvarh`} />}
              {late && <NumberHead name="In the first year" unit="of the demand saving" />}
              <NumberHead name="Motors" />
            </tr>
          </thead>
          <tbody {...GROUP}>
            {marginal.map((row) => (
              <tr key={row.hours} {...ROW}>
                <th {...ROW_HEAD} scope="row">
                  {row.hours}
                  {row.unreadable !== undefined && <span className={sheet.unit}>{row.unreadable}</span>}
                </th>
                <td {...CELL} className={sheet.number} data-unit={`Last kWh, ${currency}/kWh`}>
                  {formatNumber(row.energy, 4)}
                </td>
                <td {...CELL} className={sheet.number} data-unit={`Last kW, ${currency} a month`}>
                  {formatNumber(row.demand, 2)}
                </td>
                {kvar && (
                  <td {...CELL} className={sheet.number} data-unit={`Last kvar, ${currency} a month`}>
                    {formatNumber(row.kvar, 2)}
                  </td>
                )}
                {kvarh && (
                  <td {...CELL} className={sheet.number} data-unit={`Last kvarh, ${currency}/kvarh`}>
                    {formatNumber(row.kvarh, 4)}
                  </td>
                )}
                {late && (
                  <td {...CELL} className={sheet.number} data-unit="In the first year, of the demand saving">
                    {formatPercent(row.firstYearShare)}
                  </td>
                )}
                <td {...CELL} className={sheet.number} data-unit="Motors">
                  {row.motors === 0 ? 'none' : formatCount(row.motors)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollRegion>
      {kvarh && (
        <p className={sheet.soft}>
          Kilowatt-hours saved without their kilovar-hours lower the power factor of the site, so that the last one is worth a
          little less.
        </p>
      )}
      {late && (
        <p className={sheet.soft}>
          The ratchet remembers the old peak: in the year after a change only this share of the demand saving is billed.
        </p>
      )}
    </>
  );
}

/** What the decisions of the site save, billed once as a whole beside the sum of the motors for themselves. */
function Together({ view: { together, currency } }: { readonly view: TariffView }) {
  if (!together) return null;
  const { motors, kwh, kw, saved, apart } = together;
  return (
    <>
      <h2>What the decisions save together</h2>
      <p>
        Replacing {counted(motors, 'motor')} now saves {withUnit(formatNumber(kwh, 0), 'kWh')} a year and{' '}
        {withUnit(formatNumber(kw, 1), 'kW')} in the billed peak. Billed once as a whole that is{' '}
        <strong>{withUnit(formatNumber(saved, 2), currency)}</strong> a year; each motor for itself, added up,{' '}
        {withUnit(formatNumber(apart, 2), currency)}.
      </p>
      <p className={sheet.soft}>
        The sum billed as a whole is the one to believe: the motors together meet the end of a block or a minimum once, each for
        itself would meet it anew. It is that of a year in which a ratchet remembers the old peak no longer
        {together.withoutPowerFactor ? ', without what the change does to the power factor' : ''}.
      </p>
      {together.beyondUse && (
        <p className={sheet.caution}>
          More is saved than the site is stated to take: compare the use below with the bills, and the loads and hours of the
          motors.
        </p>
      )}
    </>
  );
}

function Bill({ view: { bill, currency } }: { readonly view: TariffView }) {
  if (!bill) return null;
  return (
    <>
      <h2>Bill of a year</h2>
      <p>
        {withUnit(formatNumber(bill.total, 2), currency)} for {withUnit(formatNumber(bill.kwh, 0), 'kWh')}, as the site’s use
        stands. Each month opens item by item.
      </p>
      {bill.months.map((month) => (
        <details key={month.month}>
          <summary>
            {MONTH_NAMES[month.month - 1]}: {withUnit(formatNumber(month.total, 2), currency)}
          </summary>
          <ScrollRegion label={`Bill of ${MONTH_NAMES[month.month - 1]}`}>
            <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
              <thead {...GROUP}>
                <tr {...ROW}>
                  <Head>Item</Head>
                  <NumberHead name="Quantity" />
                  <NumberHead name="Price" unit={currency} />
                  <NumberHead name="Amount" unit={currency} />
                </tr>
              </thead>
              <tbody {...GROUP}>
                {month.lines.map((line) => (
                  <tr key={`${line.kind} ${line.name}`} {...ROW}>
                    <th {...ROW_HEAD} scope="row">
                      {KINDS[line.kind] === undefined ? line.name : `${KINDS[line.kind]}: ${line.name}`}
                    </th>
                    <td {...CELL} className={sheet.number} data-unit="Quantity">
                      {line.kind === 'tax'
                        ? formatPercent(line.quantity, 2)
                        : line.kind === 'fixed'
                          ? ABSENT
                          : withUnit(formatNumber(line.quantity, 1), line.unit)}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`Price, ${currency}`}>
                      {line.kind === 'tax' ? `of ${formatNumber(line.price, 2)}` : formatNumber(line.price, 4)}
                    </td>
                    <td {...CELL} className={sheet.number} data-unit={`Amount, ${currency}`}>
                      {formatNumber(line.amount, 2)}
                    </td>
                  </tr>
                ))}
                <tr {...ROW}>
                  <th {...ROW_HEAD} scope="row">
                    Total
                  </th>
                  <td {...CELL} />
                  <td {...CELL} />
                  <td {...CELL} className={sheet.number} data-unit={`Amount, ${currency}`}>
                    <strong>{formatNumber(month.total, 2)}</strong>
                  </td>
                </tr>
              </tbody>
            </table>
          </ScrollRegion>
        </details>
      ))}
    </>
  );
}

const KINDS: Readonly<Record<string, string>> = { energy: 'Energy', demand: 'Demand', block: 'Energy', tax: 'Tax' };
