import { PRICE_ITEMS, type Price, type PriceList } from '@/lib/engine';
import type { PrismaClient, Tx } from '@/lib/platform/db';
import { fromMinor } from '@/lib/platform/money';
import type { PriceListSummary, StoredPrice } from './schema';

type Reader = PrismaClient | Tx;
type PriceRow = NonNullable<Awaited<ReturnType<Reader['price']['findFirst']>>>;

/** The price list that a study's evaluations use; `undefined` when it has none of its own and the shipped one serves. */
export async function readPriceList(db: Reader, studyId: string): Promise<PriceList | undefined> {
  const list = await db.priceList.findFirst({ where: { studyId, inUse: true }, select: { id: true, invented: true } });
  if (list === null) return undefined;
  const prices = await readPricesOf(db, list.id);
  return { invented: list.invented, prices: prices.map(({ price }) => price) };
}

/** The prices of a list, in its order. */
export async function readPricesOf(db: Reader, listId: string): Promise<StoredPrice[]> {
  const rows = await db.price.findMany({ where: { priceListId: listId }, orderBy: { position: 'asc' } });
  return rows.map((row) => ({ id: row.id, currency: row.currency, price: priceOf(row) }));
}

/** A price as it is stored. */
export function priceOf(row: PriceRow): Price {
  return {
    item: itemOf(row.item),
    ratedPowerKw: row.ratedPowerKw ?? undefined,
    poles: row.poles ?? undefined,
    efficiencyClass: row.efficiencyClass ?? undefined,
    nominalEfficiencyPct: row.nominalEfficiencyPct ?? undefined,
    ratedSpeedRpm: row.ratedSpeedRpm ?? undefined,
    frame: row.frame ?? undefined,
    enclosure: row.enclosure === 'open' || row.enclosure === 'enclosed' ? row.enclosure : undefined,
    price: fromMinor(row.priceMinor, row.currency),
    date: row.date ?? undefined,
    leadTimeWeeks: row.leadTimeWeeks ?? undefined,
    source: row.source ?? undefined,
  };
}

/** A study's own price lists, the newest first. */
export async function readPriceLists(db: Reader, studyId: string): Promise<PriceListSummary[]> {
  const lists = await db.priceList.findMany({
    where: { studyId },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    select: { id: true, name: true, inUse: true, invented: true, createdAt: true, _count: { select: { prices: true } } },
  });
  return lists.map(({ _count, ...list }) => ({ ...list, count: _count.prices }));
}

function itemOf(word: string): Price['item'] {
  const item = PRICE_ITEMS.find((known) => known === word);
  if (!item) throw new Error(`a stored price has the unknown item ${word}`);
  return item;
}
