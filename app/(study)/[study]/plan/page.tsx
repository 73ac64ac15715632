import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { BudgetYears } from '@/app/_ui/budget-years';
import { ProblemNote } from '@/app/_ui/problem-note';
import sheet from '@/app/_ui/sheet-page.module.css';
import { loadPlan, type PlanScreen as Screen } from '@/lib/features/plan/loaders';
import { currentStudy, loadWho } from '@/lib/features/study/loaders';
import { NoFigures } from '../no-figures';
import { Answer, worthWords } from './answer';
import { Hours, MeasureNext, OtherBudgets } from './beside';
import { BudgetForm } from './budget-form';
import { AtFailure, LeftOut } from './others';
import { PlanStatus } from './plan-status';
import { TermsForm } from './terms-form';
import { Wishes } from './wishes';
import { YearItems } from './year-items';

export const metadata: Metadata = { title: 'Plan' };

const SHOWS = 'Which motors to fund in which year, so that the budgets bring the most.';

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<{ all?: string | string[] }>;
}

/** What to fund in which year within the budgets: the answer in a sentence, the years, and who is left out and why. */
export default async function PlanScreen({ params, searchParams }: Props) {
  const { study: id } = await params;
  const all = (await searchParams).all !== undefined;
  const study = await currentStudy(id);
  if (!study) notFound();
  const plan = await loadPlan(id);
  if (plan.evaluation.empty) return <NoFigures study={id} title="Plan" shows={SHOWS} progress={plan.evaluation} />;
  const who = await loadWho();
  const { settings } = study;
  const { currency, asOf, budget, objective, moneyTerms } = settings;
  const programme = plan.outcome && 'years' in plan.outcome ? plan.outcome : undefined;
  const none = plan.outcome && 'problems' in plan.outcome ? plan.outcome.problems : undefined;
  const worth = (amount: number) => worthWords(amount, programme?.objective ?? objective, currency);
  const place = { study: id, currency, motorIds: plan.motorIds } as const;
  return (
    <main id="main" className={sheet.main} data-print="wide">
      <h1>Plan</h1>
      <PlanStatus study={id} initial={plan.progress} stale={staleWords(plan)} />
      {none && (
        <ProblemNote
          problem={{
            text: `There is no plan. ${none.map(({ text }) => text).join(' ')}`,
            remedy: 'Raise the budget, or take back what was wished.',
          }}
        />
      )}
      {programme && <Answer programme={programme} settings={settings} study={id} />}
      {!plan.outcome && plan.progress.active === undefined && (
        <p>
          The plan chooses one option and one year for each motor, so that the budgets of {asOf.slice(0, 4)} and the years after
          bring the most. <Link href={`/${id}/ranking`}>The ranking</Link> says what each motor is worth by itself.
        </p>
      )}
      {programme && <BudgetYears programme={programme} currency={currency} />}
      <BudgetForm
        key={JSON.stringify([budget, objective, moneyTerms])}
        study={id}
        who={who}
        firstYear={Number(asOf.slice(0, 4))}
        currency={currency}
        budget={budget}
        objective={objective}
        moneyTerms={moneyTerms}
      />
      <TermsForm key={JSON.stringify(plan.terms)} study={id} who={who} terms={plan.terms} areas={plan.areas} />
      <Wishes wishes={plan.wishes} programme={programme} worth={worth} study={id} who={who} />
      {programme?.years.map((year) => (
        <YearItems key={year.year} {...place} year={year} wishes={plan.wishes} all={all} />
      ))}
      {programme && <Hours programme={programme} worth={worth} />}
      {programme && <OtherBudgets programme={programme} currency={currency} worth={worth} />}
      {programme && <MeasureNext {...place} programme={programme} worth={worth} />}
      {programme && <AtFailure {...place} programme={programme} all={all} />}
      {programme && <LeftOut {...place} programme={programme} all={all} />}
    </main>
  );
}

function staleWords({ outcome, current, evaluation }: Screen): string | undefined {
  if (evaluation.shown === undefined && evaluation.active === undefined) return 'The fleet has not been evaluated yet.';
  if (outcome === undefined) return 'No plan has been worked out yet.';
  return current ? undefined : 'Results, settings or wishes have changed since the plan was worked out.';
}
