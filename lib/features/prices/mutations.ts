import type { Price, PriceList } from '@/lib/engine';
import { recordChange } from '@/lib/platform/audit';
import { insertRows } from '@/lib/platform/bulk';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { toMinor } from '@/lib/platform/money';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readStudy, type StoredStudy } from '../study/data';
import { priceOf } from './data';

/** A price list to be put in use. */
interface NewPriceList {
  readonly studyId: string;
  readonly name: string;
  readonly list: PriceList;
  readonly currency: string;
  readonly who: string;
}

/** The name of the list that comes with the program, as the history says it. */
const SHIPPED = 'the shipped, invented list';
const NO_STUDY = refuse('no-study', 'There is no such study any more.', 'Go back to the first page.');

/** Puts a price list in use in place of the former one, which is kept; the fleet is evaluated again. */
export async function replacePrices(
  db: Database,
  wish: NewPriceList,
  at = new Date(),
): Promise<Result<{ readonly prices: number }>> {
  if (wish.list.prices.length === 0)
    return refuse(
      'no-prices',
      'The list holds no price that can be read.',
      'Fill in item and price on each row; see the guide to the columns.',
    );
  return db.write(async (tx) => {
    const study = await readStudy(tx, wish.studyId);
    if (!study) return NO_STUDY;
    const former = await nameInUse(tx, wish.studyId);
    const { name } = await putInUse(tx, wish, at);
    await tell(tx, study, { who: wish.who, from: former, to: `${name}, ${wish.list.prices.length} prices` }, at);
    return ok({ prices: wish.list.prices.length });
  });
}

/** Lets another list of the study serve, or, without `listId`, the shipped one; the fleet is evaluated again. */
export async function choosePriceList(
  db: Database,
  wish: { readonly studyId: string; readonly listId: string | undefined; readonly who: string },
  at = new Date(),
): Promise<Result<{ readonly name: string }>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, wish.studyId);
    if (!study) return NO_STUDY;
    const wanted =
      wish.listId === undefined
        ? undefined
        : await tx.priceList.findFirst({ where: { id: wish.listId, studyId: wish.studyId }, select: { id: true, name: true } });
    if (wanted === null) return refuse('no-list', 'There is no such price list any more.', 'Load the page again.');
    const former = await nameInUse(tx, wish.studyId);
    const name = wanted?.name ?? SHIPPED;
    if (former === name) return ok({ name });
    await tx.priceList.updateMany({ where: { studyId: wish.studyId }, data: { inUse: false } });
    if (wanted) await tx.priceList.update({ where: { id: wanted.id }, data: { inUse: true } });
    await tell(tx, study, { who: wish.who, from: former, to: name }, at);
    return ok({ name });
  });
}

/**
 * Puts one price at the head of the list in use, so that it stands for its rating before an older one. When the shipped list serves, the
 * study first gets a copy of it, which stays marked as invented.
 */
export async function addPrice(
  db: Database,
  wish: { readonly studyId: string; readonly price: Price; readonly shipped: PriceList; readonly who: string },
  at = new Date(),
): Promise<Result<{ readonly list: string }>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, wish.studyId);
    if (!study) return NO_STUDY;
    const { currency } = study.settings;
    const own = await tx.priceList.findFirst({ where: { studyId: wish.studyId, inUse: true }, select: { id: true, name: true } });
    const list =
      own ??
      (await putInUse(
        tx,
        { studyId: wish.studyId, name: 'Shipped prices with your own', list: wish.shipped, currency, who: wish.who },
        at,
      ));
    const first = await tx.price.aggregate({ where: { priceListId: list.id }, _min: { position: true } });
    await insertRows(tx, 'Price', [
      priceRow(wish.price, {
        studyId: wish.studyId,
        priceListId: list.id,
        position: (first._min.position ?? 0) - 1,
        currency,
        at,
      }),
    ]);
    await tell(tx, study, { who: wish.who, what: 'added', field: 'price', to: words(wish.price, currency) }, at);
    return ok({ list: list.name });
  });
}

/** Removes one price of the list in use, and gives it back to whoever may want it after all; the fleet is evaluated again. */
export async function removePrice(
  db: Database,
  wish: { readonly studyId: string; readonly priceId: string; readonly who: string },
  at = new Date(),
): Promise<Result<Price>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, wish.studyId);
    if (!study) return NO_STUDY;
    const row = await tx.price.findFirst({ where: { id: wish.priceId, studyId: wish.studyId, priceList: { inUse: true } } });
    if (row === null) return refuse('no-price', 'There is no such price any more.', 'Load the page again.');
    const left = await tx.price.count({ where: { priceListId: row.priceListId } });
    if (left === 1) return refuse('last-price', 'This is the last price of the list.', 'Let another list serve instead.');
    await tx.price.delete({ where: { id: row.id } });
    const price = priceOf(row);
    await tell(tx, study, { who: wish.who, what: 'deleted', field: 'price', from: words(price, row.currency) }, at);
    return ok(price);
  });
}

async function nameInUse(tx: Tx, studyId: string): Promise<string> {
  const list = await tx.priceList.findFirst({ where: { studyId, inUse: true }, select: { name: true } });
  return list?.name ?? SHIPPED;
}

/** Writes a list and lets it serve. A name that is taken gets a number, so that the former list of that name stays. */
async function putInUse(tx: Tx, wish: NewPriceList, at: Date): Promise<{ readonly id: string; readonly name: string }> {
  const taken = await tx.priceList.findMany({ where: { studyId: wish.studyId }, select: { name: true } });
  const names = new Set(taken.map(({ name }) => name));
  let name = wish.name;
  for (let number = 2; names.has(name); number++) name = `${wish.name} (${number})`;
  await tx.priceList.updateMany({ where: { studyId: wish.studyId }, data: { inUse: false } });
  const id = newId(at.getTime());
  await insertRows(tx, 'PriceList', [
    { id, studyId: wish.studyId, name, invented: wish.list.invented, inUse: true, createdAt: at, updatedAt: at },
  ]);
  const place = { studyId: wish.studyId, priceListId: id, currency: wish.currency, at };
  await insertRows(
    tx,
    'Price',
    wish.list.prices.map((price, position) => priceRow(price, { ...place, position })),
  );
  return { id, name };
}

interface PricePlace {
  readonly studyId: string;
  readonly priceListId: string;
  readonly position: number;
  readonly currency: string;
  readonly at: Date;
}

function priceRow(price: Price, { at, ...place }: PricePlace) {
  return {
    id: newId(at.getTime()),
    ...place,
    item: price.item,
    ratedPowerKw: price.ratedPowerKw ?? null,
    poles: price.poles ?? null,
    efficiencyClass: price.efficiencyClass ?? null,
    nominalEfficiencyPct: price.nominalEfficiencyPct ?? null,
    ratedSpeedRpm: price.ratedSpeedRpm ?? null,
    frame: price.frame ?? null,
    enclosure: price.enclosure ?? null,
    priceMinor: toMinor(price.price, place.currency),
    date: price.date ?? null,
    leadTimeWeeks: price.leadTimeWeeks ?? null,
    source: price.source ?? null,
  };
}

/** A price in words for the history. */
function words(
  price: {
    readonly item: string;
    readonly ratedPowerKw?: number | undefined;
    readonly poles?: number | undefined;
    readonly price: number;
  },
  currency: string,
): string {
  const parts = [
    price.item.replace('-', ' '),
    price.ratedPowerKw === undefined ? '' : `${price.ratedPowerKw} kW`,
    price.poles === undefined ? '' : `${price.poles} poles`,
    `${price.price} ${currency}`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

interface PriceChange {
  readonly who: string;
  readonly what?: 'changed' | 'added' | 'deleted';
  readonly field?: string;
  readonly from?: string;
  readonly to?: string;
}

/** Writes the change into the history and has the fleet evaluated again. */
async function tell(tx: Tx, study: StoredStudy, { what = 'changed', field = 'price_list', ...change }: PriceChange, at: Date) {
  await tx.study.update({ where: { id: study.id }, data: { version: { increment: 1 } } });
  await recordChange(
    tx,
    { studyId: study.id, subject: 'prices', subjectId: study.id, subjectLabel: study.name, what, field, ...change },
    at,
  );
  await enqueueEvaluation(tx, study.id);
}
