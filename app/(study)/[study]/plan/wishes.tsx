import Link from 'next/link';
import sheet from '@/app/_ui/sheet-page.module.css';
import { motorKey, type PlannedProgramme, type StoredWish } from '@/lib/features/plan/loaders';
import { nameOf, wishWords } from '@/lib/features/plan/words';
import { DropForm } from './drop-form';

/** What a wish costs by itself, where the plan that stands knows it. */
function costWords(wish: PlannedProgramme['wishes'][number] | undefined, worth: (amount: number) => string): string {
  if (wish?.cost === undefined) return '';
  const { cost, cost_within: within = 0 } = wish;
  if (cost <= Math.max(within, 0.5))
    return within < 0.5 ? '. It costs nothing.' : `. It costs less than ${worth(Math.max(within, cost))}, if anything.`;
  return `. By itself it costs ${worth(cost)}${within < 0.5 ? '' : `, to within ${worth(within)}`}.`;
}

/** All that somebody has wished of the plan. */
export function Wishes({
  wishes,
  programme,
  worth,
  study,
  who,
}: {
  readonly wishes: readonly StoredWish[];
  /** The plan as it was worked out last. */
  readonly programme: PlannedProgramme | undefined;
  /** An amount of the plan's objective in words. */
  readonly worth: (amount: number) => string;
  readonly study: string;
  readonly who: string;
}) {
  if (wishes.length === 0) return null;
  const planned = new Map(programme?.wishes.map((wish) => [`${motorKey(wish)} ${wish.kind}`, wish]));
  const costs = new Map(
    wishes.map((wish) => [`${wish.motorId} ${wish.kind}`, planned.get(`${motorKey(wish)} ${wish.kind}`)] as const),
  );
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
            {costWords(costs.get(`${wish.motorId} ${wish.kind}`), worth)}
          </li>
        ))}
      </ul>
      <DropForm study={study} who={who} />
    </section>
  );
}
