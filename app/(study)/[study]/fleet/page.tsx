import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { preload } from 'react-dom';
import { bulkChoices } from '@/lib/features/bulk-edit/schema';
import { loadProgress } from '@/lib/features/evaluation/loaders';
import { loadViews } from '@/lib/features/saved-views/loaders';
import { currentStudy, loadUnits, loadWho } from '@/lib/features/study/loaders';
import { readerLocale } from '@/lib/platform/format';
import { FleetScreen } from './fleet-screen';
import { listAddress } from './list-address';

export const metadata: Metadata = { title: 'Fleet' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** Every motor of the study in one table. */
export default async function FleetPage({ params, searchParams }: Props) {
  const { study: id } = await params;
  const study = await currentStudy(id);
  if (study === undefined) notFound();
  // The list comes while the program of the page is still being read.
  preload(listAddress(id, 0), { as: 'fetch', crossOrigin: 'anonymous' });
  const [progress, views, who, units, asked] = await Promise.all([
    loadProgress(id),
    loadViews(id, 'fleet'),
    loadWho(),
    loadUnits(),
    headers(),
  ]);
  const search = new URLSearchParams(
    Object.entries(await searchParams).flatMap(([name, value]) =>
      (Array.isArray(value) ? value : value === undefined ? [] : [value]).map((each): [string, string] => [name, each]),
    ),
  );
  return (
    <FleetScreen
      study={id}
      currency={study.settings.currency}
      horizonYears={study.settings.horizonYears}
      units={units}
      locale={readerLocale(asked.get('accept-language'))}
      progress={progress}
      views={views}
      who={who}
      choices={bulkChoices(study.settings.currency)}
      search={search.toString()}
    />
  );
}
