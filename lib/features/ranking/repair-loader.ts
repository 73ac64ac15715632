import { z } from 'zod';
import { type BreakEven, repairOrReplaceCurve, type Settings } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { studyInForce } from '../study/context';

/** What kind of motor the curve is for; what is not asked for, or cannot be, is as usual. */
const asked = z.object({
  poles: z.coerce.number().int().min(2).max(12).catch(4),
  class: z.string().optional().catch(undefined),
  enclosure: z.enum(['open', 'enclosed']).catch('enclosed'),
  load: z.coerce.number().min(10).max(120).catch(75),
  site: z.string().optional().catch(undefined),
});

/** From 0.75 to 375 kW: beyond, tables of classes end or repairs are asked for singly. */
const FROM_KW = 0.7;
const TO_KW = 376;

/** Rating and hours at which a rewind and a new premium motor are worth the same. */
export interface RepairPage {
  readonly settings: Settings;
  readonly sites: readonly string[];
  readonly given: {
    readonly poles: number;
    readonly efficiencyClass: string;
    readonly enclosure: string;
    readonly loadPct: number;
    readonly site: string;
  };
  readonly classes: readonly string[];
  readonly points: readonly { readonly ratedPowerKw: number; readonly hours: BreakEven }[];
}

/** The repair-or-replace curve of a study for a kind of motor; `undefined` when there is no such study. */
export async function loadRepairOrReplace(studyId: string, wanted: unknown): Promise<RepairPage | undefined> {
  const db = database().read;
  const force = await studyInForce(db, studyId);
  if (!force) return undefined;
  const { context } = force;
  const { settings } = context;
  const sites = (await db.site.findMany({ where: { studyId }, select: { name: true }, orderBy: { name: 'asc' } })).map(
    ({ name }) => name,
  );
  const nema = settings.standards === 'nema';
  const classes = nema ? (['standard', 'energy-efficient'] as const) : (['IE1', 'IE2'] as const);
  const { poles, class: kind, enclosure, load, site: named } = asked.parse(wanted);
  const efficiencyClass = classes.find((each) => each === kind) ?? classes[0];
  const site = sites.find((each) => each === named) ?? sites[0] ?? '';
  const points = repairOrReplaceCurve(context, {
    site,
    ratedVoltageV: nema ? 460 : 400,
    poles,
    enclosure,
    efficiencyClass,
    load: load / 100,
    fromKw: FROM_KW,
    toKw: TO_KW,
  });
  return { settings, sites, given: { poles, efficiencyClass, enclosure, loadPct: load, site }, classes, points };
}
