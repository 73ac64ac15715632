import type { MotorSaving } from '@/lib/engine';
import { readShownRunId, unpackResult } from '../evaluation/data';
import type { Reader } from '../study/data';

/** Motors of a site by the hours that they are stated to keep; empty hours are not stated. */
interface SiteSchedule {
  readonly site: string;
  readonly schedule: string;
  readonly motors: number;
}

/** How many motors of each site keep which hours, the most frequent first. */
export async function readSiteSchedules(db: Reader, studyId: string): Promise<SiteSchedule[]> {
  const [sites, scheduled] = await Promise.all([
    db.motor.groupBy({ by: ['siteName'], where: { studyId }, _count: { _all: true } }),
    db.drivenLoad.findMany({
      where: { studyId, schedule: { not: null } },
      select: { schedule: true, motor: { select: { siteName: true } } },
    }),
  ]);
  const groups = new Map<string, { site: string; schedule: string; motors: number }>();
  const groupOf = (site: string, schedule: string) => {
    const key = JSON.stringify([site, schedule]);
    const group = groups.get(key) ?? { site, schedule, motors: 0 };
    groups.set(key, group);
    return group;
  };
  for (const { siteName, _count } of sites) groupOf(siteName, '').motors += _count._all;
  for (const { schedule, motor } of scheduled) {
    if (schedule === null || schedule === '') continue;
    groupOf(motor.siteName, schedule).motors += 1;
    groupOf(motor.siteName, '').motors -= 1;
  }
  return [...groups.values()].filter(({ motors }) => motors > 0).sort((a, b) => b.motors - a.motors);
}

/** What each motor of a site saves by its decision, where that is to change it now and its figures may be used; of the evaluation shown. */
export async function readDecidedSavings(db: Reader, studyId: string, site: string): Promise<MotorSaving[]> {
  const runId = await readShownRunId(db, studyId);
  if (runId === undefined) return [];
  const rows = await db.motorEvaluation.findMany({
    where: { runId, siteName: site, timing: 'now', action: { in: ['replace', 'resize'] }, trust: { not: 'not-usable' } },
    select: { option: true, details: true, motorId: true },
  });
  const scheduled = await db.drivenLoad.findMany({
    where: { studyId, schedule: { not: null }, motor: { siteName: site } },
    select: { motorId: true, schedule: true },
  });
  const schedules = new Map(scheduled.map(({ motorId, schedule }) => [motorId, schedule ?? '']));
  return rows.flatMap(({ option, details, motorId }): MotorSaving[] => {
    const decided = unpackResult(details).options.find(({ id }) => id === option);
    const kwh = decided?.energy_saved?.value;
    if (kwh === undefined) return [];
    return [{ kwh, kw: decided?.demand_saved?.value ?? 0, schedule: motorId === null ? undefined : schedules.get(motorId) }];
  });
}
