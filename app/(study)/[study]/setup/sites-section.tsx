import Link from 'next/link';
import { Head } from '@/app/_ui/head';
import { NumberHead } from '@/app/_ui/number-head';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { SiteTariff } from '@/lib/features/setup/loaders';
import { ABSENT, formatCount, formatNumber } from '@/lib/platform/format';
import styles from './sites-section.module.css';

interface Props {
  readonly study: string;
  readonly currency: string;
  readonly sites: readonly SiteTariff[];
}

/** What the last kilowatt-hour and kilowatt cost at each site, beside the average, and the way to its tariff. */
export function SitesSection({ study, currency, sites }: Props) {
  return (
    <section className={sheet.section} aria-labelledby="tariffs">
      <h2 id="tariffs">What energy costs at each site</h2>
      <p>
        A saving is worth what the last kilowatt-hour costs, not the average one. A site without a tariff of its own has the flat
        prices above.
      </p>
      {sites.length === 0 ? (
        <p>No motor stands at any site yet. Import a fleet sheet; its sites then stand here.</p>
      ) : (
        <ScrollRegion label="Sites and their prices">
          <table {...TABLE} className={`${sheet.table} ${lines.lines} ${lines.figures}`}>
            <thead {...GROUP}>
              <tr {...ROW}>
                <Head>Site</Head>
                <Head>Tariff</Head>
                <NumberHead name="Last kWh" unit={`${currency}/kWh`} />
                <NumberHead name="Average kWh" unit={`${currency}/kWh`} />
                <NumberHead name="Last kW" unit={`${currency} a month`} />
                <NumberHead name="Motors" />
              </tr>
            </thead>
            <tbody {...GROUP}>
              {sites.map((row) => (
                <tr key={row.site} {...ROW}>
                  <th {...ROW_HEAD} scope="row">
                    <Link href={`/${study}/setup/tariff?site=${encodeURIComponent(row.site)}`} prefetch={false}>
                      {row.site === '' ? 'Site without a name' : row.site}
                    </Link>
                  </th>
                  <td {...CELL}>{row.tariff ?? 'flat prices'}</td>
                  <td {...CELL} className={sheet.number} data-unit={`Last kWh, ${currency}/kWh`}>
                    {formatNumber(row.energy, 4)}
                  </td>
                  <td {...CELL} className={sheet.number} data-unit={`Average kWh, ${currency}/kWh`}>
                    {row.average === undefined ? ABSENT : formatNumber(row.average, 4)}
                  </td>
                  <td {...CELL} className={sheet.number} data-unit={`Last kW, ${currency} a month`}>
                    {formatNumber(row.demand, 2)}
                  </td>
                  <td {...CELL} className={sheet.number} data-unit="Motors">
                    {row.motors === 0 ? 'none' : formatCount(row.motors)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollRegion>
      )}
      {sites.some((row) => row.average === undefined) && sites.length > 0 && (
        <p className={`${sheet.soft} ${styles.below}`}>
          The average needs what the whole site takes, from its bills; it stands with the tariff.
        </p>
      )}
      {sites.some((row) => row.motors === 0) && (
        <p className={`${sheet.caution} ${styles.below}`}>
          A tariff without motors serves nothing: compare the name of its site with those of the fleet sheet.
        </p>
      )}
    </section>
  );
}
