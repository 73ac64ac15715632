import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { addressOf } from '@/app/_ui/address';
import { AreaForm } from '@/app/_ui/area-form';
import { askedPage, PART, Pages, partOf } from '@/app/_ui/pages';
import { PartSection } from '@/app/_ui/part-section';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadProgress } from '@/lib/features/evaluation/loaders';
import { namedBy } from '@/lib/features/plan/words';
import { currentStudy } from '@/lib/features/study/loaders';
import { loadWorklist, placesOf } from '@/lib/features/worklist/loaders';
import type { WorkItem } from '@/lib/features/worklist/schema';
import { formatCount } from '@/lib/platform/format';
import { NewerFigures } from '../newer-figures';
import { NoFigures } from '../no-figures';
import { Apart } from './apart';
import { WorkItems } from './work-items';

export const metadata: Metadata = { title: 'Worklist' };

const SHOWS = 'Motors that have failed, or whose condition needs somebody whatever the energy says, most urgent first.';

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const GROUPS = [
  { id: 'risk', label: 'by risk' },
  { id: 'area', label: 'by area' },
  { id: 'outage', label: 'by outage' },
] as const;

/** What needs a person, in order of risk. */
export default async function WorklistScreen({ params, searchParams }: Props) {
  const { study: id } = await params;
  const asked = await searchParams;
  const group = GROUPS.find((entry) => entry.id === asked.group)?.id ?? 'risk';
  const study = await currentStudy(id);
  if (!study) notFound();
  const progress = await loadProgress(id);
  const list = await loadWorklist(id);
  if (!list) return <NoFigures study={id} title="Worklist" shows={SHOWS} progress={progress} />;
  const { items } = list;
  const { places, placeOf } = placesOf(list);
  const area = places.find((each) => each === asked.area);
  const inArea = (item: Parameters<typeof placeOf>[0]) => area === undefined || placeOf(item) === area;
  const groups = grouped(items.filter(inArea), group, placeOf);
  const apart = list.apart.filter(inArea);
  const nameOf = namedBy([...list.items, ...list.apart]);
  const inView = groups.flatMap(({ of }) => of);
  const { shown, page, last } = partOf(inView, askedPage(asked.page));
  const onPage = new Set(shown);
  const link = (to: Readonly<Record<'group' | 'area' | 'page', string | undefined>>) => addressOf(`/${id}/worklist`, to);
  const stated = group === 'risk' ? undefined : group;
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <h1>Worklist</h1>
      <NewerFigures study={id} progress={progress} />
      <p className={sheet.answer}>{answer(items, list.total)}</p>
      {items.length > 0 && (
        <>
          <Orders group={group} link={(to) => link({ group: to, area, page: undefined })} />
          <AreaForm action={`/${id}/worklist`} areas={places} area={area} others={{ group: stated }} />
          <p className={sheet.soft}>
            Must-do first: it has failed, or a safety limit is breached. Then by risk: the chance of the likeliest suspicion × the
            cost of a repair and, without a standby, of an unplanned stop × urgency. Urgency goes by the worst reading that speaks
            for the suspicion: 1 beyond its limit, 0.5 near it and getting worse, 0.3 near it, 0.2 near it and getting better, 0.1
            within (common practice).
          </p>
          {shown.length < inView.length && (
            <p role="status">
              Here are {formatCount(shown.length)} of {formatCount(inView.length)} motors.
            </p>
          )}
          {groups.map(({ title, of }) => {
            const here = of.filter((item) => onPage.has(item));
            return here.length === 0 ? null : (
              <PartSection key={title} title={title} here={here.length} all={of.length} headed={group !== 'risk'}>
                <WorkItems items={here} study={id} currency={study.settings.currency} label={title} nameOf={nameOf} />
              </PartSection>
            );
          })}
          <Pages page={page} last={last} link={(wanted) => link({ group: stated, area, page: wanted })} />
          {(page === 'all' || page === last) && (
            <Apart items={apart} most={page === 'all' ? apart.length : PART} study={id} nameOf={nameOf} />
          )}
          <p className={sheet.caution}>
            Work on a motor is for qualified persons: isolate, lock out and prove dead before contact; a live reading is energized
            work; guards stay on; stored charge is discharged. Local codes and licensed practice decide.
          </p>
        </>
      )}
    </main>
  );
}

interface OrdersProps {
  readonly group: (typeof GROUPS)[number]['id'];
  /** Where a grouping is to be had; `undefined` stands for the order of risk. */
  readonly link: (group: string | undefined) => string;
}

/** The way to the list in another order. */
function Orders({ group, link }: OrdersProps) {
  return (
    <nav aria-label="Order" className="screen-only">
      <ul className={sheet.links}>
        {GROUPS.map((entry) => (
          <li key={entry.id}>
            <Link
              href={link(entry.id === 'risk' ? undefined : entry.id)}
              aria-current={entry.id === group ? 'true' : undefined}
              prefetch={false}
            >
              {entry.label}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}

function answer(items: readonly WorkItem[], total: number): string {
  if (items.length === 0)
    return `Of ${formatCount(total)} motors none has failed, and none has an indicator near or beyond its limit.`;
  const must = items.filter((item) => item.mustDo).length;
  const strong = items.filter((item) => item.leading?.strength === 'strong').length;
  const first = must === 0 ? '' : ` ${must === 1 ? 'One must' : `${formatCount(must)} must`} be seen to before anything else.`;
  const sure = strong === 0 ? '' : ` ${strong === 1 ? 'One suspicion is' : `${formatCount(strong)} suspicions are`} strong.`;
  return `${formatCount(items.length)} of ${formatCount(total)} motors need a person.${first}${sure}`;
}

/** The items in the groups asked for, each in order of risk. */
function grouped(
  items: readonly WorkItem[],
  group: (typeof GROUPS)[number]['id'],
  placeOf: (item: WorkItem) => string,
): { title: string; of: readonly WorkItem[] }[] {
  if (group === 'risk') return [{ title: 'Motors in order of risk', of: items }];
  const name = (item: WorkItem) =>
    group === 'area' ? placeOf(item) : item.outage ? 'While the motor is stopped' : 'While it runs';
  const titles = [...new Set(items.map(name))];
  return titles.map((title) => ({ title, of: items.filter((item) => name(item) === title) }));
}
