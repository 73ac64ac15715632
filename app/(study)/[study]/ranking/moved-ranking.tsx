import Link from 'next/link';
import { memo, useMemo, useState } from 'react';
import lines from '@/app/_ui/phone-lines.module.css';
import { CELL, GROUP, ROW, ROW_HEAD, TABLE } from '@/app/_ui/row-roles';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import sheet from '@/app/_ui/sheet-page.module.css';
import { TrustMark } from '@/app/_ui/trust-mark';
import type { Reranked } from '@/lib/engine/client';
import { ratingWords } from '@/lib/features/motor/words';
import type { MovablePack } from '@/lib/features/ranking/schema';
import { type ReaderUnits, shaftUnit } from '@/lib/features/study/reader-units';
import { ABSENT, counted, formatCount, formatMoney, formatNumber } from '@/lib/platform/format';
import { decisionWords } from './decisions';
import { RankHeads } from './rank-heads';
import styles from './ranking.module.css';
import { Reasons } from './reasons';

interface Moved {
  readonly pack: MovablePack;
  /** As the study stands, and as it is moved; both in order of rank. */
  readonly was: readonly Reranked[];
  readonly now: readonly Reranked[];
  readonly currency: string;
  readonly horizonYears: number;
  /** What is moved, in words. */
  readonly conditions: readonly string[];
}

/** What the fleet's decisions come to at other prices, beside what they come to now. Drawn anew only when it changes: a move must answer at once. */
export const MovedAnswer = memo(function MovedAnswer({ pack, was, now, currency, horizonYears, conditions }: Moved) {
  const options = useByIndex(was);
  const before = useMemo(() => sumsOf(was, pack), [was, pack]);
  const turned = now.filter(({ index, decision }) => options[index]?.decision.option !== decision.option).length;
  const sums = sumsOf(now, pack);
  const money = (amount: number) => formatMoney(amount, currency);
  return (
    <>
      <p className={sheet.answer} role="status">
        With {conditions.join('; ')}: replacing <strong>{formatCount(sums.count)}</strong> {sums.count === 1 ? 'motor' : 'motors'}{' '}
        now costs <strong>{money(sums.cost)}</strong> and saves <strong>{money(sums.saved)}</strong> a year, worth{' '}
        {money(sums.value)} over {horizonYears} years.
      </p>
      <p>
        As the study stands it is {counted(before.count, 'motor')} for {money(before.cost)}, saving {money(before.saved)} a year,
        worth {money(before.value)}.{' '}
        {turned === 0 ? 'No decision turns.' : `${formatCount(turned)} ${turned === 1 ? 'decision turns' : 'decisions turn'}.`}
      </p>
    </>
  );
});

/** The motors by their place in the pack, in which a list in order of rank is not. */
function useByIndex(list: readonly Reranked[]): readonly Reranked[] {
  return useMemo(() => {
    const found = new Array<Reranked>(list.length);
    for (const each of list) found[each.index] = each;
    return found;
  }, [list]);
}

interface MotorsProps extends Moved {
  readonly study: string;
  readonly filter: {
    readonly action?: string | undefined;
    readonly timing?: string | undefined;
    readonly area?: string | undefined;
  };
  readonly manySites: boolean;
  readonly units: ReaderUnits;
}

/** Rows that are drawn at first: more would make each move slow. */
const AT_FIRST = 50;

/** The motors in their new order, with what each was. */
export const MovedMotors = memo(function MovedMotors({ was, now, filter, ...rest }: MotorsProps) {
  const [all, setAll] = useState(false);
  const before = useByIndex(was);
  const kept = now.filter(({ index, decision }) => {
    const asked = filter.action === undefined || (decision.action === filter.action && decision.timing === filter.timing);
    return asked && (filter.area === undefined || rest.pack.motors[index]?.area === filter.area);
  });
  const rows = all ? kept : kept.slice(0, AT_FIRST);
  return (
    <>
      <p className={sheet.soft}>
        {formatCount(kept.length)} of {formatCount(now.length)} motors
        {rows.length < kept.length && `; here are the first ${formatCount(rows.length)}`}. The counts beside the filters are those
        of the study as it stands, and so are the figures with their intervals on each motor’s page.
      </p>
      <Rows {...rest} rows={rows} before={before} />
      {rows.length < kept.length && (
        <p className="screen-only">
          <button type="button" onClick={() => setAll(true)}>
            Show all {formatCount(kept.length)}
          </button>
        </p>
      )}
    </>
  );
});

function sumsOf(list: readonly Reranked[], pack: MovablePack): { count: number; cost: number; saved: number; value: number } {
  const sums = { count: 0, cost: 0, saved: 0, value: 0 };
  for (const { index, decision, cost, moneySaved, value } of list) {
    const change = decision.action === 'replace' || decision.action === 'resize';
    if (!change || decision.timing !== 'now' || pack.motors[index]?.motor.trust === 'not-usable') continue;
    sums.count += 1;
    sums.cost += cost;
    sums.saved += moneySaved ?? 0;
    sums.value += value ?? 0;
  }
  return sums;
}

interface RowsProps extends Pick<MotorsProps, 'pack' | 'study' | 'currency' | 'horizonYears' | 'manySites' | 'units'> {
  readonly rows: readonly Reranked[];
  readonly before: readonly Reranked[];
}

function Rows({ rows, before, pack, study, currency, horizonYears, manySites, units }: RowsProps) {
  return (
    <ScrollRegion label="Motors in rank order as moved" className={styles.list}>
      <table {...TABLE} className={`${sheet.table} ${lines.lines} ${styles.table}`}>
        <thead {...GROUP}>
          <tr {...ROW}>
            <RankHeads currency={currency} />
          </tr>
        </thead>
        <tbody {...GROUP}>
          {rows.map((row) => {
            const entry = pack.motors[row.index];
            if (!entry) return null;
            const { motor, id, area } = entry;
            const { action, timing, option } = row.decision;
            const old = before[row.index];
            const kept = action === 'keep';
            const bought = (action === 'replace' || action === 'resize') && row.option;
            return (
              <tr key={row.index} {...ROW}>
                <td {...CELL} className={`${sheet.number} ${styles.rank}`}>
                  {row.rank}
                  {old && old.rank !== row.rank && <span className={sheet.unit}>was {old.rank}</span>}
                </td>
                <th {...ROW_HEAD} scope="row" className={styles.motor}>
                  {id === null ? (
                    motor.tag
                  ) : (
                    <Link href={`/${study}/motor/${id}`} prefetch={false}>
                      {motor.tag}
                    </Link>
                  )}
                  <span className={sheet.unit}>{[manySites && motor.site, area].filter(Boolean).join(', ')}</span>
                </th>
                <td {...CELL} className={`${sheet.nowrap} ${styles.decision}`}>
                  {decisionWords(action, timing)}
                  {bought && (
                    <span className={sheet.unit}>
                      {ratingWords(bought.ratedPowerKw, shaftUnit(units))} {bought.efficiencyClass ?? ''}
                    </span>
                  )}
                  {old && old.decision.option !== option && <em className={styles.turned}> was {wordsOfOld(old, units)}</em>}
                </td>
                <Amount place={styles.more} value={kept ? undefined : row.cost} />
                <Amount place={styles.more} value={kept ? undefined : row.moneySaved} />
                <td {...CELL} className={`${sheet.number} ${styles.more}`}>
                  {kept || row.payback === undefined
                    ? ABSENT
                    : row.payback > horizonYears
                      ? `over ${horizonYears}`
                      : formatNumber(row.payback, 1)}
                </td>
                <Amount place={styles.more} value={kept || row.odds === undefined ? undefined : 100 * row.odds} />
                <Amount place={styles.value} value={kept ? undefined : row.value} unit={currency} />
                <td {...CELL} className={styles.trust}>
                  <TrustMark level={motor.trust} />
                </td>
                <td {...CELL} className={`${sheet.because} ${styles.because}`}>
                  <Reasons texts={row.decision.because.map(({ text }) => text)} tag={motor.tag} />
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

function wordsOfOld({ decision, option }: Reranked, units: ReaderUnits): string {
  const rating = decision.action === 'resize' && option ? ` to ${ratingWords(option.ratedPowerKw, shaftUnit(units))}` : '';
  return `${decisionWords(decision.action, decision.timing)}${rating}`;
}

interface AmountProps {
  readonly value: number | undefined;
  readonly place: string | undefined;
  /** Stands beside the figure on a phone, which has no head. */
  readonly unit?: string;
}

function Amount({ value, place, unit }: AmountProps) {
  return (
    <td {...CELL} className={`${sheet.number} ${place}`}>
      {unit !== undefined && <span className={`${sheet.soft} ${styles.narrow}`}>worth </span>}
      {value === undefined ? ABSENT : formatNumber(value, 0)}
      {unit !== undefined && <span className={`${sheet.soft} ${styles.narrow}`}>{`\u202f${unit}`}</span>}
    </td>
  );
}
