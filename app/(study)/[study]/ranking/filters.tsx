import Link from 'next/link';
import { addressOf } from '@/app/_ui/address';
import { AreaForm } from '@/app/_ui/area-form';
import sheet from '@/app/_ui/sheet-page.module.css';
import { formatCount } from '@/lib/platform/format';

export interface Choices {
  readonly study: string;
  /** The decisions that occur, with their counts as the study stands. */
  readonly decisions: readonly { readonly id: string; readonly words: string; readonly count: number }[];
  readonly decision: string | undefined;
  readonly areas: readonly string[];
  readonly area: string | undefined;
}

/** What can be chosen of the ranking: a decision, an area. `stated` is what is moved by now, which a choice leaves as it is. */
export function Filters({
  study,
  decisions,
  decision,
  areas,
  area,
  stated,
}: Choices & { readonly stated: Record<string, string> }) {
  const base = `/${study}/ranking`;
  const link = (chosen: string | undefined): string => addressOf(base, { decision: chosen, area, ...stated });
  return (
    <>
      <nav aria-label="Filter">
        <ul className={sheet.links}>
          <li>
            <Link href={link(undefined)} prefetch={false} aria-current={decision === undefined ? 'true' : undefined}>
              all decisions
            </Link>
          </li>
          {decisions.map(({ id, words, count }) => (
            <li key={id}>
              <Link href={link(id)} prefetch={false} aria-current={decision === id ? 'true' : undefined}>
                {words} ({formatCount(count)})
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <AreaForm action={base} areas={areas} area={area} others={{ ...stated, decision }} />
    </>
  );
}
