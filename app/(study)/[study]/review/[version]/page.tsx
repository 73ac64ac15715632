import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { AtFailureTable } from '@/app/_ui/at-failure-table';
import { BudgetYears } from '@/app/_ui/budget-years';
import { LowCase } from '@/app/_ui/low-case';
import { MoreThanOnPaper } from '@/app/_ui/more';
import { ProblemNote } from '@/app/_ui/problem-note';
import sheet from '@/app/_ui/sheet-page.module.css';
import { SumDoubt } from '@/app/_ui/sum-doubt';
import { eventWords, loadDifference, loadMotorIds, loadVersion, workbookOf } from '@/lib/features/sign-off/loaders';
import { loadWho } from '@/lib/features/study/loaders';
import { formatCount, formatFigure, formatInstant, formatMoney } from '@/lib/platform/format';
import { SayForm } from '../say-form';
import { STANDING_WORDS } from '../standing-words';
import { Assumptions } from './assumptions';
import { CashFlow } from './cash-flow';
import { Difference } from './difference';
import { Items } from './items';
import { NotChosen } from './not-chosen';
import { Overrides } from './overrides';
import { PrintedHash } from './printed-hash';
import { Reconciliation } from './reconciliation';

interface Props {
  readonly params: Promise<{ study: string; version: string }>;
  readonly searchParams: Promise<{ workbook?: string | string[]; all?: string | string[] }>;
}

/** Up to so many funded motors the workbook is worked out for every look at the page; beyond, when somebody asks for it. */
const WORTH_WORKING_OUT = 40;
/** Motors that each list beside the funded ones shows on a screen, unless all are asked for. */
const FIRST = 50;

export async function generateMetadata({ params }: Pick<Props, 'params'>): Promise<Metadata> {
  return { title: `Version ${(await params).version}` };
}

/** One frozen version: what is to be funded, on which assumptions, within which budgets; sign it or return it. */
export default async function VersionScreen({ params, searchParams }: Props) {
  const { study, version: asked } = await params;
  const version = await loadVersion(study, Number(asked));
  if (!version) notFound();
  const who = await loadWho();
  const heading = (
    <>
      <p className={sheet.soft}>
        <Link href={`/${study}/review`}>Review</Link>
      </p>
      <h1>Version {version.number}</h1>
    </>
  );
  if (!version.sound) {
    return (
      <main id="main" className={sheet.main}>
        {heading}
        <ProblemNote
          problem={{ text: version.damage, remedy: 'Do not rely on it: restore a backup, or freeze a new version.' }}
        />
      </main>
    );
  }
  const { content } = version;
  const { programme, settings } = content;
  const items = programme.years.flatMap((year) => year.items);
  const money = (amount: number) => formatMoney(amount, settings.currency, undefined, true);
  const worth = items.reduce((sum, item) => sum + (item.net_present_value ?? 0), 0);
  const doubt = programme.method === 'plan' ? programme.net_present_value_u : undefined;
  const range = doubt === undefined ? undefined : formatFigure({ value: worth, u: doubt, unit: settings.currency }).plusMinus;
  const spent = programme.years.reduce((sum, year) => sum + year.spent, 0);
  const motorIds = await loadMotorIds(study);
  const waiting = programme.method === 'plan' ? programme.at_failure.length : 0;
  const earlier = await loadDifference(study, version.number, content);
  const { workbook: workbookAsked, all } = await searchParams;
  const wanted = items.length <= WORTH_WORKING_OUT || workbookAsked !== undefined;
  const most = all === undefined ? FIRST : Number.POSITIVE_INFINITY;
  const whole = `/${study}/review/${version.number}?all=1`;
  const workbook = wanted ? await workbookOf(content) : undefined;
  const closed = version.standing === 'returned' || version.standing === 'rejected';
  return (
    <main id="main" className={sheet.main} data-print="wide">
      {heading}
      <p className={sheet.answer}>
        {formatCount(items.length)} {items.length === 1 ? 'motor is' : 'motors are'} funded for <strong>{money(spent)}</strong>,
        worth <strong>{money(worth)}</strong>
        {range !== undefined && ` ± ${range}`} over {settings.horizon_years} years;{' '}
        {waiting > 0 && `${formatCount(waiting)} are worth another motor once they fail; `}
        {formatCount(programme.left_out.length)} of {formatCount(content.results.length)} are left out. It is{' '}
        {STANDING_WORDS[version.standing]}.
      </p>
      <SumDoubt known={doubt !== undefined} />
      {programme.method === 'plan' && programme.low_case && (
        <p>
          <LowCase programme={programme} currency={settings.currency} />
        </p>
      )}
      <p>
        Frozen on {formatInstant(version.createdAt)} UTC by {version.drawnBy} (name not verified), engine {content.engine}
        {content.study.demo && ', invented figures'}
        {content.prices.invented && ', invented prices'}. The stored bytes were checked against their hash for this page.{' '}
        <a href={`/api/studies/${study}/versions/${version.number}`} download className="screen-only">
          Export the file
        </a>{' '}
        <Link href={`/${study}/review/${version.number}/report`} prefetch={false} className="screen-only">
          Open the report to print
        </Link>
      </p>
      <PrintedHash hash={version.hash} />
      <Overrides programme={programme} />
      <section className={sheet.section} aria-labelledby="said">
        <h2 id="said">What was said of it</h2>
        {version.events.length === 0 ? (
          <p>Nothing yet.</p>
        ) : (
          <ol>
            {version.events.map((event) => (
              <li key={event.hash}>{eventWords(event)}</li>
            ))}
          </ol>
        )}
        {closed ? (
          <p>Nothing more can be said of it: freeze a new version once the study is mended.</p>
        ) : (
          <SayForm study={study} number={version.number} hash={version.hash} signed={version.standing === 'signed'} who={who} />
        )}
      </section>
      {earlier && <Difference study={study} {...earlier} currency={settings.currency} />}
      <BudgetYears programme={programme} currency={settings.currency} />
      <Items
        programme={programme}
        currency={settings.currency}
        payback={settings.policy?.max_simple_payback_years}
        study={study}
        motorIds={motorIds}
        most={most}
        all={all !== undefined}
        whole={whole}
      />
      {programme.method === 'plan' && (
        <>
          <AtFailureTable
            programme={programme}
            currency={settings.currency}
            study={study}
            motorIds={motorIds}
            most={most}
            paper
          />
          <MoreThanOnPaper href={`${whole}#at-failure`} shown={most} total={waiting} />
        </>
      )}
      <CashFlow programme={programme} currency={settings.currency} most={most} whole={`${whole}#cash-flow`} />
      <NotChosen content={content} most={most} whole={`${whole}#not-chosen`} />
      <Reconciliation content={content} study={study} number={version.number} workbook={workbook} />
      <Assumptions content={content} />
    </main>
  );
}
