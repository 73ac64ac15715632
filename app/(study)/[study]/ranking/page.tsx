import type { Metadata } from 'next';
import Link from 'next/link';
import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { TrustMark } from '@/app/_ui/trust-mark';
import { loadRanking, PAGE } from '@/lib/features/ranking/loaders';
import type { DecisionSum, RankedMotor, RankingSum } from '@/lib/features/ranking/schema';
import { currentStudy } from '@/lib/features/study/loaders';
import { ABSENT, formatCount, formatMoney, formatNumber } from '@/lib/platform/format';
import { DECISIONS, decisionWords } from './decisions';

export const metadata: Metadata = { title: 'Ranking' };

interface Props {
  readonly params: Promise<{ study: string }>;
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** What to do first: the answer in a sentence, then the motors in rank order with the reasons. */
export default async function RankingScreen({ params, searchParams }: Props) {
  const { study: id } = await params;
  const asked = await searchParams;
  const one = (name: string) => (typeof asked[name] === 'string' && asked[name] !== '' ? asked[name] : undefined);
  const page = Math.max(1, Math.trunc(Number(one('page') ?? '1')) || 1);
  const decision = DECISIONS.find((entry) => entry.id === one('decision'));
  const area = one('area');
  const study = await currentStudy(id);
  const ranking = await loadRanking(id, { action: decision?.action, timing: decision?.timing, area }, page);
  const currency = study?.settings.currency ?? '';
  if (!ranking) {
    return (
      <main id="main" className={sheet.main}>
        <h1>Ranking</h1>
        <p>
          The fleet has not been evaluated yet. <Link href={`/${id}/fleet`}>See the fleet</Link>, or{' '}
          <Link href={`/${id}/import`}>import a sheet</Link>.
        </p>
      </main>
    );
  }
  const { sum, motors, found, areas } = ranking;
  const last = Math.max(1, Math.ceil(found / PAGE));
  const link = (changes: Record<string, string | undefined>) => {
    const query = new URLSearchParams();
    const all = { decision: decision?.id, area, ...changes };
    for (const [name, value] of Object.entries(all)) if (value !== undefined) query.set(name, value);
    const text = query.toString();
    return text === '' ? `/${id}/ranking` : `/${id}/ranking?${text}`;
  };
  const words = [decision && decisionWords(decision.action, decision.timing), area && `in ${area}`].filter(Boolean).join(' ');
  return (
    <main id="main" className={sheet.main}>
      <h1>Ranking</h1>
      <Answer sum={sum} currency={currency} />
      <nav aria-label="Filter">
        <ul className={sheet.links}>
          <li>
            <Link
              href={link({ decision: undefined, page: undefined })}
              aria-current={decision === undefined ? 'true' : undefined}
            >
              all decisions
            </Link>
          </li>
          {DECISIONS.map((entry) => {
            const group = sum.groups.find((candidate) => candidate.action === entry.action && candidate.timing === entry.timing);
            return (
              group && (
                <li key={entry.id}>
                  <Link
                    href={link({ decision: entry.id, page: undefined })}
                    aria-current={decision?.id === entry.id ? 'true' : undefined}
                  >
                    {decisionWords(entry.action, entry.timing)} ({formatCount(group.count)})
                  </Link>
                </li>
              )
            );
          })}
        </ul>
      </nav>
      <form method="get" className={sheet.links}>
        {decision && <input type="hidden" name="decision" value={decision.id} />}
        <label htmlFor="area">Area</label>
        <select id="area" name="area" defaultValue={area ?? ''}>
          <option value="">all areas</option>
          {areas.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
        <button type="submit">Show</button>
      </form>
      <p className={sheet.soft}>
        <span role="status">
          {formatCount(found)} of {formatCount(sum.total)} motors{words === '' ? '' : `: ${words}`}.
        </span>{' '}
        ± is the 95 % interval. Take the whole ranking along: <a href={`/api/studies/${id}/results/csv?sort=rank`}>CSV</a>,{' '}
        <a href={`/api/studies/${id}/results/xlsx?sort=rank`}>XLSX</a>.
      </p>
      {motors.length === 0 ? (
        <p>
          No motor is so decided here. <Link href={`/${id}/ranking`}>Show all</Link>
        </p>
      ) : (
        <Motors motors={motors} study={id} currency={currency} />
      )}
      {last > 1 && (
        <nav aria-label="Pages of the ranking">
          <ul className={sheet.links}>
            {page > 1 && (
              <li>
                <Link href={link({ page: String(page - 1) })}>Higher ranks</Link>
              </li>
            )}
            <li>
              Page {page} of {last}
            </li>
            {page < last && (
              <li>
                <Link href={link({ page: String(page + 1) })}>Lower ranks</Link>
              </li>
            )}
          </ul>
        </nav>
      )}
    </main>
  );
}

/** What the fleet's decisions come to, in one sentence each for now and for later, and who is left out. */
function Answer({ sum, currency }: { readonly sum: RankingSum; readonly currency: string }) {
  const now = sum.groups.filter((group) => group.timing === 'now' && (group.action === 'replace' || group.action === 'resize'));
  const later = sum.groups.filter((group) => group.timing === 'at-failure');
  const repair = sum.groups.find((group) => group.action === 'repair');
  const add = (groups: readonly DecisionSum[], pick: (group: DecisionSum) => number) =>
    groups.reduce((total, group) => total + pick(group), 0);
  const count = add(now, (group) => group.count);
  const waiting = add(later, (group) => group.count);
  return (
    <>
      <p className={sheet.answer}>
        {count === 0 ? (
          'No motor is worth replacing before it fails under this policy.'
        ) : (
          <>
            Replacing <strong>{formatCount(count)}</strong> {count === 1 ? 'motor' : 'motors'} now costs{' '}
            <strong>
              {formatMoney(
                add(now, (group) => group.cost),
                currency,
              )}
            </strong>{' '}
            and saves{' '}
            <strong>
              {formatMoney(
                add(now, (group) => group.saved),
                currency,
              )}
            </strong>{' '}
            a year, worth{' '}
            {formatMoney(
              add(now, (group) => group.value),
              currency,
            )}{' '}
            over the horizon.
          </>
        )}
      </p>
      <p>
        {waiting > 0 &&
          `${formatCount(waiting)} more are worth another motor when they fail, ${formatMoney(
            add(later, (group) => group.value),
            currency,
          )} in expectation. `}
        {repair && `${formatCount(repair.count)} need repair whatever the energy says. `}
        {sum.notUsable > 0 &&
          `${formatCount(sum.notUsable)} ${sum.notUsable === 1 ? 'motor is' : 'motors are'} not usable: their energy figures are left out of the sums above unless they have failed.`}
      </p>
    </>
  );
}

function Motors({
  motors,
  study,
  currency,
}: {
  readonly motors: readonly RankedMotor[];
  readonly study: string;
  readonly currency: string;
}) {
  return (
    <ScrollRegion label="Motors in rank order">
      <table className={sheet.table}>
        <thead>
          <tr>
            <th scope="col" className={sheet.number}>
              Rank
            </th>
            <th scope="col">Motor</th>
            <th scope="col">Decision</th>
            <Head name="Cost" unit={currency} />
            <Head name="Saving" unit={`${currency}/a`} />
            <Head name="Payback" unit="a" />
            <Head name="Odds" unit="%" />
            <Head name="Present value" unit={currency} />
            <th scope="col">Trust</th>
            <th scope="col" className={sheet.because}>
              Because
            </th>
          </tr>
        </thead>
        <tbody>
          {motors.map((motor) => (
            <tr key={motor.rank}>
              <td className={sheet.number}>{motor.rank}</td>
              <th scope="row">
                {motor.motorId === undefined ? (
                  motor.tag
                ) : (
                  <Link href={`/${study}/motor/${motor.motorId}`} prefetch={false}>
                    {motor.tag}
                  </Link>
                )}
                {motor.area !== undefined && <span className={sheet.unit}>{motor.area}</span>}
              </th>
              <td>{decisionWords(motor.action, motor.timing)}</td>
              <td className={sheet.number}>
                {motor.cost === undefined || motor.action === 'keep' ? ABSENT : formatNumber(motor.cost, 0)}
              </td>
              <Amount name="saving" value={motor.action === 'keep' ? undefined : motor.moneySaved} u={motor.moneySavedU} />
              <Amount name="payback" value={motor.payback} u={motor.paybackU} />
              <td className={sheet.number}>{motor.odds === undefined ? ABSENT : formatNumber(100 * motor.odds, 0)}</td>
              <Amount name="present value" value={motor.action === 'keep' ? undefined : motor.value} u={motor.valueU} />
              <td>
                <TrustMark level={motor.trust} />
              </td>
              <td className={sheet.because}>{motor.because.join(' ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function Head({ name, unit }: { readonly name: string; readonly unit: string }) {
  return (
    <th scope="col" className={sheet.number}>
      {name}
      <span className={sheet.unit}>{unit}</span>
    </th>
  );
}

function Amount({
  name,
  value,
  u,
}: {
  readonly name: string;
  readonly value: number | undefined;
  readonly u: number | undefined;
}) {
  return (
    <td className={sheet.number}>
      <FigureText
        name={name}
        unitInHead
        figure={value === undefined ? undefined : { value, u: u ?? 0, unit: '1' }}
        reason="none for this decision"
      />
    </td>
  );
}
