import type { PriceList } from '@/lib/engine';
import { recordChange } from '@/lib/platform/audit';
import { insertRows } from '@/lib/platform/bulk';
import type { Database } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { toMinor } from '@/lib/platform/money';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readStudy } from '../study/data';

/** A price list to be put in use. */
export interface NewPriceList {
  readonly studyId: string;
  readonly name: string;
  readonly list: PriceList;
  readonly currency: string;
  readonly who: string;
}

/** Puts a price list in use in place of the former one, which goes; the fleet is evaluated again. */
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
    if (!study) return refuse('no-study', 'There is no such study any more.', 'Go back to the first page.');
    const former = await tx.priceList.findFirst({ where: { studyId: wish.studyId, inUse: true }, select: { name: true } });
    await tx.priceList.deleteMany({ where: { studyId: wish.studyId } });
    const id = newId(at.getTime());
    await insertRows(tx, 'PriceList', [
      { id, studyId: wish.studyId, name: wish.name, invented: wish.list.invented, inUse: true, createdAt: at, updatedAt: at },
    ]);
    await insertRows(
      tx,
      'Price',
      wish.list.prices.map((price, position) => ({
        id: newId(at.getTime()),
        studyId: wish.studyId,
        priceListId: id,
        position,
        item: price.item,
        ratedPowerKw: price.ratedPowerKw ?? null,
        poles: price.poles ?? null,
        efficiencyClass: price.efficiencyClass ?? null,
        nominalEfficiencyPct: price.nominalEfficiencyPct ?? null,
        ratedSpeedRpm: price.ratedSpeedRpm ?? null,
        frame: price.frame ?? null,
        enclosure: price.enclosure ?? null,
        priceMinor: toMinor(price.price, wish.currency),
        currency: wish.currency,
        date: null,
        leadTimeWeeks: null,
        source: price.source ?? null,
      })),
    );
    await tx.study.update({ where: { id: wish.studyId }, data: { version: { increment: 1 } } });
    await recordChange(
      tx,
      {
        studyId: wish.studyId,
        who: wish.who,
        subject: 'prices',
        subjectId: wish.studyId,
        subjectLabel: study.name,
        what: 'changed',
        field: 'price_list',
        from: former?.name ?? 'the shipped, invented list',
        to: `${wish.name}, ${wish.list.prices.length} prices`,
      },
      at,
    );
    await enqueueEvaluation(tx, wish.studyId);
    return ok({ prices: wish.list.prices.length });
  });
}
