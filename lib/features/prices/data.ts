import type { Price, PriceList } from '@/lib/engine';
import type { PrismaClient, Tx } from '@/lib/platform/db';
import { fromMinor } from '@/lib/platform/money';

/** The price list that a study's evaluations use; `undefined` when it has none of its own and the shipped one serves. */
export async function readPriceList(db: PrismaClient | Tx, studyId: string): Promise<PriceList | undefined> {
  const list = await db.priceList.findFirst({
    where: { studyId, inUse: true },
    include: { prices: { orderBy: { position: 'asc' } } },
  });
  if (list === null) return undefined;
  const prices = list.prices.map(
    (row): Price => ({
      item: itemOf(row.item),
      ratedPowerKw: row.ratedPowerKw ?? undefined,
      poles: row.poles ?? undefined,
      efficiencyClass: row.efficiencyClass ?? undefined,
      nominalEfficiencyPct: row.nominalEfficiencyPct ?? undefined,
      ratedSpeedRpm: row.ratedSpeedRpm ?? undefined,
      frame: row.frame ?? undefined,
      enclosure: row.enclosure === 'open' || row.enclosure === 'enclosed' ? row.enclosure : undefined,
      price: fromMinor(row.priceMinor, row.currency),
      source: row.source ?? undefined,
    }),
  );
  return { invented: list.invented, prices };
}

const ITEMS: readonly Price['item'][] = ['motor', 'rewind', 'bearing-job', 'removal-install', 'frame-adapter'];

function itemOf(word: string): Price['item'] {
  const item = ITEMS.find((known) => known === word);
  if (!item) throw new Error(`a stored price has the unknown item ${word}`);
  return item;
}
