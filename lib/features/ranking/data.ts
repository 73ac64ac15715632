import { gunzipSync } from 'node:zlib';
import { type Settings, type Sum, type Summand, sharedInOption, sumOverMotors } from '@/lib/engine';
import { minorDigits } from '@/lib/platform/money';
import { type Reader, readShownRunId, unpackResult } from '../evaluation/data';
import { inLabels } from '../fleet/screen-words';
import { readStudy } from '../study/data';
import type { DecisionSum, RankedMotor, RankingSum } from './schema';

/** Which motors of the ranking are asked for. */
export interface RankingQuery {
  readonly action?: string | undefined;
  readonly timing?: string | undefined;
  readonly area?: string | undefined;
  readonly skip: number;
  /** How many at most; absent: all. */
  readonly take?: number | undefined;
}

/** A part of a study's ranking. */
export interface Ranking {
  readonly sum: RankingSum;
  readonly motors: readonly RankedMotor[];
  /** How many the query finds, on all pages. */
  readonly found: number;
  readonly areas: readonly string[];
  /** How many sites the fleet stands at. */
  readonly sites: number;
}

/** The ranking of a study's latest finished evaluation; `undefined` before the first. */
export async function readRanking(db: Reader, studyId: string, query: RankingQuery): Promise<Ranking | undefined> {
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
  const rows = await db.motorEvaluation.findMany({
    where,
    orderBy: { rank: 'asc' },
    skip: query.skip,
    ...(query.take !== undefined && { take: query.take }),
  });
  const money = (minor: bigint | null) => (minor === null ? undefined : Number(minor) / scale);
  const motors = rows.map((row): RankedMotor => {
    const { decision, options } = unpackResult(row.details);
    const option = options.find((candidate) => candidate.id === decision.option);
    return {
      motorId: row.motorId ?? undefined,
      rank: row.rank,
      site: row.siteName,
      tag: row.tag,
      area: row.areaName ?? undefined,
      trust: row.trust === 'sound' || row.trust === 'not-usable' ? row.trust : 'provisional',
      action: row.action,
      timing: row.timing,
      option: row.option,
      bought:
        option && (option.action === 'replace' || option.action === 'resize')
          ? { ratedPowerKw: option.rated_power_kw, efficiencyClass: option.efficiency_class }
          : undefined,
      cost: money(row.costMinor),
      moneySaved: money(row.moneySavedMinorPerYear),
      moneySavedU: money(row.moneySavedMinorPerYearU),
      payback: row.simplePaybackYears ?? undefined,
      paybackU: row.simplePaybackYearsU ?? undefined,
      value: money(row.netPresentValueMinor),
      valueU: money(row.netPresentValueMinorU),
      odds: row.probabilityWithinPolicy ?? undefined,
      because: decision.because.map((reason) => inLabels(reason.text)),
    };
  });
  const areas = await db.motorEvaluation.findMany({
    where: { runId, areaName: { not: null } },
    distinct: ['areaName'],
    select: { areaName: true },
    orderBy: { areaName: 'asc' },
  });
  const sites = await db.motorEvaluation.groupBy({ by: ['siteName'], where: { runId } });
  return {
    sum: await readSum(db, runId, study.settings, scale),
    motors,
    found: await db.motorEvaluation.count({ where }),
    areas: areas.flatMap(({ areaName }) => (areaName === null ? [] : [areaName])),
    sites: sites.length,
  };
}

/** A motor in service whose hours neither the plate's row nor the profile of a reading gives. */
const WITHOUT_HOURS = {
  status: 'running',
  OR: [{ drivenLoad: null }, { drivenLoad: { hoursPerYear: null, dutyProfile: null } }],
  readings: { none: { dutyProfile: { not: null } } },
};

/** What the fleet's decisions come to, over the motors whose figures may be used, and how many may not. */
async function readSum(db: Reader, runId: string, { policy }: Settings, scale: number): Promise<RankingSum> {
  const parts = await db.motorEvaluation.groupBy({
    by: ['action', 'timing', 'trust'],
    where: { runId },
    _count: { _all: true },
    _sum: { costMinor: true, moneySavedMinorPerYear: true, netPresentValueMinor: true },
  });
  const amount = (minor: bigint | null) => Number(minor ?? 0n) / scale;
  const groups = new Map<string, DecisionSum>();
  for (const { action, timing, trust, _count, _sum } of parts) {
    const usable = trust !== 'not-usable';
    const key = `${action} ${timing}`;
    const before = groups.get(key) ?? { action, timing, count: 0, usable: 0, cost: 0, saved: 0, value: 0 };
    groups.set(key, {
      ...before,
      count: before.count + _count._all,
      usable: before.usable + (usable ? _count._all : 0),
      cost: before.cost + (usable ? amount(_sum.costMinor) : 0),
      saved: before.saved + (usable ? amount(_sum.moneySavedMinorPerYear) : 0),
      value: before.value + (usable ? amount(_sum.netPresentValueMinor) : 0),
    });
  }
  const changedNow = { runId, action: { in: ['replace', 'resize'] }, timing: 'now', trust: { not: 'not-usable' } };
  return {
    total: parts.reduce((sum, part) => sum + part._count._all, 0),
    notUsable: await db.motorEvaluation.count({ where: { runId, trust: 'not-usable' } }),
    hoursUnknown: await db.motorEvaluation.count({
      where: { runId, trust: { not: 'not-usable' }, motor: WITHOUT_HOURS },
    }),
    savedNow: moneySaved(await db.motorEvaluation.findMany({ where: changedNow, select: { details: true } })),
    withinPolicy: await db.motorEvaluation.count({
      where: {
        ...changedNow,
        simplePaybackYears: { lte: policy.maxSimplePaybackYears },
        probabilityWithinPolicy: { gte: policy.minProbability },
        netPresentValueMinor: { gt: 0 },
      },
    }),
    groups: [...groups.values()],
  };
}

/** What decided options save together in a year. */
function moneySaved(rows: readonly { readonly details: Uint8Array }[]): Sum {
  return sumOverMotors(
    rows.flatMap(({ details }): Summand[] => {
      const result = unpackResult(details);
      const { option } = result.decision;
      const figure = result.options.find(({ id }) => id === option)?.money_saved;
      return figure ? [{ ...figure, shared: sharedInOption(result, option, 'money_saved') }] : [];
    }),
  );
}

/**
 * What the ranking at other prices needs of a study's latest finished evaluation, as JSON text ({@link MovablePack}): each motor's part is
 * kept as text, so that ten thousand of them cost no objects here.
 * @returns `undefined` before the first evaluation, and `stale` where results were kept from before they could be ranked again.
 */
export async function readMovablePack(db: Reader, studyId: string): Promise<string | 'stale' | undefined> {
  const study = await readStudy(db, studyId);
  const runId = await readShownRunId(db, studyId);
  if (!study || runId === undefined) return undefined;
  const rows = await db.motorEvaluation.findMany({
    where: { runId },
    select: { motorId: true, areaName: true, movable: true },
    orderBy: { rank: 'asc' },
  });
  const parts: string[] = [];
  for (const { motorId, areaName, movable } of rows) {
    if (movable === null) return 'stale';
    parts.push(
      `{"id":${JSON.stringify(motorId)},"area":${JSON.stringify(areaName)},"motor":${gunzipSync(movable).toString('utf8')}}`,
    );
  }
  const settings: Settings = { ...study.settings, tariffs: {} };
  return `{"settings":${JSON.stringify(settings)},"motors":[${parts.join(',')}]}`;
}
