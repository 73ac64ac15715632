import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadTariff } from '@/lib/features/setup/loaders';
import { TARIFF_FIELDS, TARIFF_ROWS } from '@/lib/features/setup/tariff-cells';
import { loadWho } from '@/lib/features/study/loaders';
import { TariffForm } from './tariff-form';

export const metadata: Metadata = { title: 'Tariff' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<{ site?: string | string[] }>;
}

/** The tariff of one site: what its last kilowatt-hour costs, the bill of a year, and the tariff itself to be changed. */
export default async function TariffScreen({ params, searchParams }: Props) {
  const { study } = await params;
  const { site: asked } = await searchParams;
  const site = typeof asked === 'string' ? asked : '';
  const tariff = await loadTariff(study, site);
  if (!tariff) notFound();
  const name = site === '' ? 'the site without a name' : site;
  return (
    <main id="main" className={sheet.main}>
      <p className={sheet.bar}>
        <Link href={`/${study}/setup#tariffs`} prefetch={false}>
          All prices and assumptions
        </Link>
      </p>
      <h1>Tariff of {name}</h1>
      <p className={sheet.soft}>
        {tariff.stored
          ? 'Its prices serve for all motors of the site.'
          : 'The site has no tariff yet: these are the study’s flat prices, written as one to begin with.'}{' '}
        Prices in {tariff.currency}; decimals with a point.
      </p>
      <TariffForm
        study={study}
        site={site}
        who={await loadWho()}
        stored={tariff.stored}
        cells={tariff.cells}
        view={tariff.view}
        rows={TARIFF_ROWS}
        fields={TARIFF_FIELDS}
      />
    </main>
  );
}
