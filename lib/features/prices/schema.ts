import { z } from 'zod';
import { PRICE_ITEMS, type Price } from '@/lib/engine';
import { whoSchema } from '../study/schema';

/** A price list of a study, as the setup names it. */
export interface PriceListSummary {
  readonly id: string;
  readonly name: string;
  readonly count: number;
  readonly inUse: boolean;
  /** True as long as it holds prices of the shipped, invented list. */
  readonly invented: boolean;
  readonly createdAt: Date;
}

/** A price with its id, so that it can be removed. */
export interface StoredPrice {
  readonly id: string;
  readonly price: Price;
  /** In which it was given. */
  readonly currency: string;
}

const id = z.string().min(1).max(64);

/** Which list serves from now on; `shipped` is the invented one that comes with the program. */
export const chooseListForm = z.object({ study: id, who: whoSchema, list: z.string().min(1, 'Choose a list.').max(64) });

export const removePriceForm = z.object({
  study: id,
  who: whoSchema,
  price: z.string({ error: 'Choose the price to be removed.' }).min(1).max(64),
});

const cell = z.string().trim().max(200).default('');

/** What a typed price may be of. */
export const ITEM_CELLS: readonly string[] = PRICE_ITEMS;

/** Names of the cells of a typed price: those of a price list, in the currency of the study. */
export const PRICE_CELLS = [
  'item',
  'rated_power_kw',
  'poles',
  'efficiency_class',
  'nominal_efficiency_pct',
  'rated_speed_rpm',
  'frame',
  'enclosure',
  'price',
  'date',
  'lead_time_weeks',
  'source',
] as const;

/** A price as cells; an absent one is not known. */
export type PriceCells = { readonly [Name in (typeof PRICE_CELLS)[number]]?: string };

/** A typed price: cells as in a price list, read by the same reader. */
export const addPriceForm = z.object({
  study: id,
  who: whoSchema,
  item: cell,
  rated_power_kw: cell,
  poles: cell,
  efficiency_class: cell,
  nominal_efficiency_pct: cell,
  rated_speed_rpm: cell,
  frame: cell,
  enclosure: cell,
  price: cell,
  date: cell,
  lead_time_weeks: cell,
  source: cell,
});

/** What the form to remove a price shows once it was sent. */
export interface RemovalState {
  readonly problem?: { readonly text: string; readonly remedy: string };
  readonly done?: string;
  readonly typed?: Readonly<Record<string, string>>;
  readonly refused?: Readonly<Record<string, string>>;
  /** The price that is gone, so that it can be put back. */
  readonly removed?: PriceCells;
}
