import type { Reader } from '../study/data';

/** Motors of a site by the hours that they are stated to keep; empty hours are not stated. */
export interface SiteSchedule {
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
