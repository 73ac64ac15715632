import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { addressOf } from '@/app/_ui/address';
import { AreaForm } from '@/app/_ui/area-form';
import { askedPage, Pages, partOf } from '@/app/_ui/pages';
import { PartSection } from '@/app/_ui/part-section';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadProgress } from '@/lib/features/evaluation/loaders';
import { namedBy } from '@/lib/features/plan/words';
import { currentStudy } from '@/lib/features/study/loaders';
import { loadTrustList } from '@/lib/features/trust/loaders';
import type { TrustItem, TrustList } from '@/lib/features/trust/schema';
import { formatCount } from '@/lib/platform/format';
import { NewerFigures } from '../newer-figures';
import { NoFigures } from '../no-figures';
import { LEVELS, Levels } from './levels';
import { RoundForm } from './round-form';
import { TrustItems } from './trust-items';

export const metadata: Metadata = { title: 'Trust' };

const SHOWS =
  'Which figures may not be used or are in doubt and why, and what to read again; from here come the sheets for a round.';

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const NO_AREA = 'No area';

/** What may not be used and what to measure again, at which load, by area. */
export default async function TrustScreen({ params, searchParams }: Props) {
  const { study: id } = await params;
  const { area: asked, level: askedLevel, page: askedFor } = await searchParams;
  const study = await currentStudy(id);
  if (!study) notFound();
  const progress = await loadProgress(id);
  const list = await loadTrustList(id);
  if (!list) return <NoFigures study={id} title="Trust" shows={SHOWS} progress={progress} />;
  const nameOf = namedBy(list.items);
  const areas = list.items.some(({ area }) => area === undefined) ? [...list.areas, NO_AREA] : list.areas;
  const area = areas.find((each) => each === asked);
  const level = LEVELS.find((each) => each === askedLevel);
  const inArea = list.items.filter((item) => area === undefined || areaOf(item) === area);
  const inView = inArea.filter((item) => level === undefined || item.level === level).sort(byLevel);
  const { shown, page, last } = partOf(inView, askedPage(askedFor));
  const link = (to: Readonly<Record<'area' | 'level' | 'page', string | undefined>>) => addressOf(`/${id}/trust`, to);
  return (
    <main id="main" className={sheet.main}>
      <h1>Trust</h1>
      <NewerFigures study={id} progress={progress} />
      <p className={sheet.answer}>{answer(list)}</p>
      {list.items.length > 0 && (
        <>
          <AreaForm action={`/${id}/trust`} areas={areas} area={area} others={{ level }} />
          <Levels level={level} of={inArea.map((item) => item.level)} link={(to) => link({ area, level: to, page: undefined })} />
          {inView.length === 0 && (
            <p>
              No motor here is of this level.{' '}
              <Link href={link({ area, level: undefined, page: undefined })}>Show all of these</Link>
            </p>
          )}
          {inView.length > shown.length && (
            <p role="status">
              Here are {formatCount(shown.length)} of {formatCount(inView.length)} motors
              {level === undefined && ': the first pages have those that are not usable, the last ones those that are sound'}.
              Each page stands by area{level === undefined && ', what weighs most first in each'}.
            </p>
          )}
          <RoundForm study={id} count={shown.length} isPart={last > 1 && page !== 'all'}>
            {areas
              .filter((each) => area === undefined || each === area)
              .map((each) => {
                const items = shown.filter((item) => areaOf(item) === each);
                const all = inView.filter((item) => areaOf(item) === each).length;
                return items.length === 0 ? null : (
                  <PartSection key={each} title={each} here={items.length} all={all}>
                    <TrustItems items={items} study={id} label={each} nameOf={nameOf} />
                  </PartSection>
                );
              })}
          </RoundForm>
          <Pages page={page} last={last} link={(wanted) => link({ area, level, page: wanted })} />
          <p className={sheet.caution}>
            A live reading is energized work for qualified persons; guards stay on; never raise the process load for a reading
            without the process owner. The round sheet carries the cautions. Local codes and licensed practice decide.
          </p>
        </>
      )}
    </main>
  );
}

/** What weighs most first, in the order of the list otherwise. */
function byLevel(a: TrustItem, b: TrustItem): number {
  return LEVELS.indexOf(a.level) - LEVELS.indexOf(b.level);
}

function areaOf(item: TrustItem): string {
  return item.area ?? NO_AREA;
}

function answer({ items, byLevel, total }: TrustList): string {
  if (items.length === 0) return `Everything that was read of the ${formatCount(total)} motors may be used.`;
  const not = byLevel['not-usable'];
  const first =
    not === 0
      ? `The figures of all ${formatCount(total)} motors may be used`
      : `The figures of ${formatCount(not)} of ${formatCount(total)} motors may not be used`;
  const condition = items.filter(({ level }) => level === 'sound').length;
  const rest = condition === 0 ? '' : `, and of ${formatCount(condition)} sound ones a condition reading may not be used`;
  return `${first}; ${formatCount(byLevel.provisional)} are provisional${rest}.`;
}
