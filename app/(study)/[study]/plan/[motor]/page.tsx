import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadTag } from '@/lib/features/motor/loaders';
import { ratingWords } from '@/lib/features/motor/words';
import { loadWish } from '@/lib/features/plan/loaders';
import { nameOf, optionWords, wishWords } from '@/lib/features/plan/words';
import { loadUnits, loadWho } from '@/lib/features/study/loaders';
import { shaftUnit } from '@/lib/features/study/reader-units';
import { formatMoney } from '@/lib/platform/format';
import type { OptionRow } from './options-by-year';
import { WishForm } from './wish-form';

interface Props {
  readonly params: Promise<{ study: string; motor: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { study, motor } = await params;
  return { title: `Wish of the plan for ${(await loadTag(study, motor)) ?? 'no such motor'}` };
}

/** What can be wished for one motor: an option, a year, both, to be left alone, or the solver's choice; with what each would be worth. */
export default async function WishPage({ params }: Props) {
  const { study, motor } = await params;
  const wish = await loadWish(study, motor);
  if (!wish) notFound();
  const { currency, moneyTerms, inflation } = wish.settings;
  const units = await loadUnits();
  const of = (kind: string) => wish.wishes.find((each) => each.kind === kind);
  const pinned = of('pinned');
  const rows = wish.options.map((option): OptionRow => {
    const grade = option.efficiency_class === undefined ? '' : `, ${option.efficiency_class}`;
    return {
      id: option.id,
      words: `${option.action}: ${ratingWords(option.rated_power_kw, shaftUnit(units))}${grade}`,
      cells: wish.years.map((year, at) => {
        const value = option.net_present_value_by_year[at];
        const cost = option.cost * (moneyTerms === 'nominal' ? (1 + inflation) ** at : 1);
        return {
          year,
          value: value === undefined ? 'value not known' : formatMoney(value, currency),
          cost: formatMoney(cost, currency),
        };
      }),
    };
  });
  const name = nameOf(wish);
  return (
    <main id="main" className={sheet.main}>
      <p className={sheet.soft}>
        <Link href={`/${study}/plan`}>Plan</Link>
      </p>
      <h1>{name}: what is wished of the plan</h1>
      <p className={sheet.answer}>
        {wish.planned
          ? `The plan has it in ${wish.planned.year}: ${optionWords(wish.planned.option)}.`
          : `The plan has it in no year. ${wish.leftOut ?? ''}`}{' '}
        {wish.failed && 'It has failed, so that something must be done in the first year.'}
      </p>
      {wish.wishes.length > 0 && <p>Wished now: {wish.wishes.map(wishWords).join('; ')}.</p>}
      <p>
        Choose what must hold; the solver fills the rest anew and says what the wish costs.{' '}
        <Link href={`/${study}/motor/${motor}`} prefetch={false}>
          See the motor
        </Link>
      </p>
      <WishForm
        study={study}
        motor={motor}
        who={await loadWho()}
        rows={rows}
        years={wish.years}
        chosen={
          of('forbidden')
            ? 'forbidden'
            : of('must')
              ? 'must'
              : pinned
                ? `${pinned.option ?? 'any'} ${pinned.year ?? 'any'}`
                : 'free'
        }
        by={of('must')?.year}
        bundle={of('together')?.bundle ?? ''}
        bundles={wish.bundles}
        reason={of('override')?.reason ?? ''}
        overridden={of('override') !== undefined}
        needsOverride={!wish.usable && !wish.failed}
      />
    </main>
  );
}
