import { minorDigits } from '@/lib/platform/money';
import { type Reader, readShownRunId, unpackResult } from '../evaluation/data';
import { readStudy } from '../study/data';
import type { RankedMotor, RankingSum } from './schema';

/** Which motors of the ranking are asked for. */
export interface RankingQuery {
  readonly action?: string | undefined;
  readonly timing?: string | undefined;
  readonly area?: string | undefined;
  readonly skip: number;
  readonly take: number;
}

/** The ranking of a study's latest finished evaluation; `undefined` before the first. */
export async function readRanking(
  db: Reader,
  studyId: string,
  query: RankingQuery,
): Promise<
  { readonly sum: RankingSum; readonly motors: RankedMotor[]; readonly found: number; readonly areas: string[] } | undefined
> {
  const study = await readStudy(db, studyId);
  const runId = await readShownRunId(db, studyId);
  if (!study || runId === undefined) return undefined;
  const scale = 10 ** minorDigits(study.settings.currency);
  const where = {
    runId,
    ...(query.action !== undefined && { action: query.action }),
    ...(query.timing !== undefined && { timing: query.timing }),
    ...(query.area !== undefined && { areaName: query.area }),
  };
  const rows = await db.motorEvaluation.findMany({ where, orderBy: { rank: 'asc' }, skip: query.skip, take: query.take });
  const money = (minor: bigint | null) => (minor === null ? undefined : Number(minor) / scale);
  const motors = rows.map((row): RankedMotor => {
    const { decision } = unpackResult(row.details);
    return {
      motorId: row.motorId ?? undefined,
      rank: row.rank,
      site: row.siteName,
      tag: row.tag,
      area: row.areaName ?? undefined,
      trust: row.trust === 'sound' || row.trust === 'not-usable' ? row.trust : 'provisional',
      action: row.action,
      timing: row.timing,
      cost: money(row.costMinor),
      moneySaved: money(row.moneySavedMinorPerYear),
      moneySavedU: money(row.moneySavedMinorPerYearU),
      payback: row.simplePaybackYears ?? undefined,
      paybackU: row.simplePaybackYearsU ?? undefined,
      value: money(row.netPresentValueMinor),
      valueU: money(row.netPresentValueMinorU),
      odds: row.probabilityWithinPolicy ?? undefined,
      because: decision.because.map((reason) => reason.text),
    };
  });
  const areas = await db.motorEvaluation.findMany({
    where: { runId, areaName: { not: null } },
    distinct: ['areaName'],
    select: { areaName: true },
    orderBy: { areaName: 'asc' },
  });
  return {
    sum: await readSum(db, runId, scale),
    motors,
    found: await db.motorEvaluation.count({ where }),
    areas: areas.flatMap(({ areaName }) => (areaName === null ? [] : [areaName])),
  };
}

/** What the fleet's decisions come to: those to be carried out now, and what is left out. */
async function readSum(db: Reader, runId: string, scale: number): Promise<RankingSum> {
  const groups = await db.motorEvaluation.groupBy({
    by: ['action', 'timing'],
    where: { runId },
    _count: { _all: true },
    _sum: { costMinor: true, moneySavedMinorPerYear: true, netPresentValueMinor: true },
  });
  const amount = (minor: bigint | null) => Number(minor ?? 0n) / scale;
  return {
    total: groups.reduce((sum, group) => sum + group._count._all, 0),
    notUsable: await db.motorEvaluation.count({ where: { runId, trust: 'not-usable' } }),
    groups: groups.map((group) => ({
      action: group.action,
      timing: group.timing,
      count: group._count._all,
      cost: amount(group._sum.costMinor),
      saved: amount(group._sum.moneySavedMinorPerYear),
      value: amount(group._sum.netPresentValueMinor),
    })),
  };
}
