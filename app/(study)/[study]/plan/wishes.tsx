import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';
import type { StoredWish } from '@/lib/features/plan/loaders';
import { nameOf, optionWords } from '@/lib/features/plan/words';
import { DropForm } from './drop-form';

/** A wish in words. */
export function wishWords({ kind, option, year, bundle, by, reason }: Omit<StoredWish, 'motorId' | 'site' | 'tag'>): string {
  switch (kind) {
    case 'pinned':
      return `pinned by ${by}: ${optionWords(option ?? '')} in ${year}`;
    case 'forbidden':
      return `left alone, as ${by} wants it`;
    case 'together':
      return `together with all of “${bundle}”, as ${by} wants it`;
    case 'override':
      return `let in by ${by} though its figures may not be used: ${reason}`;
  }
}

/** All that somebody has wished of the plan. */
export function Wishes({
  wishes,
  study,
  who,
}: {
  readonly wishes: readonly StoredWish[];
  readonly study: string;
  readonly who: string;
}) {
  if (wishes.length === 0) return null;
  return (
    <section className={sheet.section} aria-labelledby="wishes">
      <h2 id="wishes">What was wished</h2>
      <ul>
        {wishes.map((wish) => (
          <li key={`${wish.motorId} ${wish.kind}`}>
            <Link href={`/${study}/plan/${wish.motorId}`} prefetch={false}>
              {nameOf(wish)}
            </Link>
            : {wishWords(wish)}
          </li>
        ))}
      </ul>
      <DropForm study={study} who={who} />
    </section>
  );
}
