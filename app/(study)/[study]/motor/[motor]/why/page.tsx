import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { DerivationView } from '@/app/_ui/derivation-view';
import { loadWhy } from '@/lib/features/motor/loaders';
import { loadSpareOf } from '@/lib/features/ranking/spare-loader';
import styles from '../motor.module.css';
import { Spare } from '../spare';
import { MachineBehind } from './machine-behind';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
  readonly searchParams: Promise<{ figure?: string | string[] }>;
}

function pathOf(figure: string | string[] | undefined): string {
  return (Array.isArray(figure) ? figure[0] : figure) ?? 'load_fraction';
}

export async function generateMetadata({ params, searchParams }: Props): Promise<Metadata> {
  const { study, motor } = await params;
  const path = pathOf((await searchParams).figure);
  const page = await loadWhy(study, motor, path);
  return { title: page ? `How do we know ${page.nameOf(path)}?` : 'No such figure' };
}

/** Figures of an option, and the figure that stands where none is asked for: with them goes what is decided. */
function goesWithDecision(figure: string | string[] | undefined): boolean {
  return figure === undefined || pathOf(figure).startsWith('options.');
}

/** One figure, from its formula down to the stamps and meters behind it. */
export default async function WhyPage({ params, searchParams }: Props) {
  const { study, motor } = await params;
  const { figure } = await searchParams;
  const path = pathOf(figure);
  const page = await loadWhy(study, motor, path);
  if (!page) notFound();
  const spare = goesWithDecision(figure) ? await loadSpareOf(study, motor) : [];
  const back = `/${study}/motor/${motor}`;
  return (
    <main id="main" className={styles.main}>
      <p className={styles.crumb}>
        <Link href={back}>
          {page.stored.motor.site} {page.stored.motor.tag}
        </Link>
      </p>
      <h1>How do we know {page.nameOf(path)}?</h1>
      <p className={styles.soft}>
        Each line opens to what it is made of. ± is the 95 % interval. The same program computed the figure and wrote these steps.
      </p>
      <DerivationView derivation={page.derivation} methodHref={`/${study}/method`} />
      {page.machine && <MachineBehind model={page.machine.model} rows={page.machine.contributions} dates={page.dates} />}
      <Spare study={study} sentences={spare} className={styles.section} />
      <details className={styles.figures}>
        <summary>Other figures of this motor</summary>
        <nav aria-label="Other figures of this motor">
          <ul>
            {page.figures.map((name) => (
              <li key={name}>
                <Link
                  href={`${back}/why?figure=${encodeURIComponent(name)}`}
                  prefetch={false}
                  {...(name === path ? { 'aria-current': 'page' as const } : {})}
                >
                  {page.nameOf(name)}
                </Link>
              </li>
            ))}
          </ul>
        </nav>
      </details>
    </main>
  );
}
