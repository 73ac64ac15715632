import type { PrismaClient, Tx } from '@/lib/platform/db';
import { fromMinor } from '@/lib/platform/money';
import type { BulkField } from './schema';

/** A motor whose fact may change. */
export interface BulkTarget {
  readonly id: string;
  readonly version: number;
  readonly site: string;
  readonly tag: string;
  readonly loadId: string | undefined;
  /** The fact as it is; money in units of the currency. */
  readonly value: string | number | undefined;
  /** Whether a duty profile goes before the hours. */
  readonly hasDuty: boolean;
}

/** Ids per question, below SQLite's limit of variables. */
const CHUNK = 5_000;

/** The motors with this fact as it is now, in natural order; those that are gone are left out. */
export async function readTargets(
  db: PrismaClient | Tx,
  studyId: string,
  ids: readonly string[],
  field: BulkField,
  currency: string,
): Promise<BulkTarget[]> {
  const targets: (BulkTarget & { readonly naturalKey: string })[] = [];
  for (let at = 0; at < ids.length; at += CHUNK) {
    const rows = await db.motor.findMany({
      where: { studyId, id: { in: ids.slice(at, at + CHUNK) } },
      select: {
        id: true,
        version: true,
        siteName: true,
        tag: true,
        naturalKey: true,
        status: true,
        quotedPriceMinor: true,
        quotedRepairMinor: true,
        unplannedStopCostMinor: true,
        area: { select: { name: true } },
        drivenLoad: { select: { id: true, hoursPerYear: true, demandCoincidence: true, dutyProfile: true } },
      },
    });
    for (const row of rows) {
      const money = (minor: bigint | null): number | undefined => (minor === null ? undefined : fromMinor(minor, currency));
      const values: Readonly<Record<BulkField, string | number | undefined>> = {
        area: row.area?.name,
        status: row.status,
        hours_per_year: row.drivenLoad?.hoursPerYear ?? undefined,
        demand_coincidence: row.drivenLoad?.demandCoincidence ?? undefined,
        quoted_price: money(row.quotedPriceMinor),
        quoted_repair: money(row.quotedRepairMinor),
        unplanned_stop_cost: money(row.unplannedStopCostMinor),
      };
      targets.push({
        id: row.id,
        version: row.version,
        site: row.siteName,
        tag: row.tag,
        naturalKey: row.naturalKey,
        loadId: row.drivenLoad?.id,
        value: values[field],
        hasDuty: (row.drivenLoad?.dutyProfile ?? null) !== null,
      });
    }
  }
  return targets.sort((a, b) => (a.naturalKey < b.naturalKey ? -1 : a.naturalKey > b.naturalKey ? 1 : 0));
}
