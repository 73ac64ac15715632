import type { PriceList } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readPriceLists, readPricesOf } from '../prices/data';
import { pricesCsv } from '../prices/write-prices';
import { studyInForce } from '../study/context';
import { isBought } from '../study/prices';
import { defaultSettings, settingsToJson } from '../study/settings';
import { SETTING_GROUPS, shownSetting } from './setting-fields';

/** What {@link loadSetup} gives. */
export type Setup = NonNullable<Awaited<ReturnType<typeof loadSetup>>>;

/** Everything that the setup of a study shows; `undefined` when there is no such study. */
export async function loadSetup(studyId: string) {
  const force = await studyInForce(database().read, studyId);
  if (!force) return undefined;
  const file = settingsToJson(force.study.settings, force.study.pricesFile);
  const usual = settingsToJson(defaultSettings());
  return {
    study: force.study,
    groups: SETTING_GROUPS.map((group) => ({
      title: group.title,
      fields: group.fields.map((field) => ({ ...field, value: shownSetting(file, field), usual: shownSetting(usual, field) })),
    })),
    instruments: force.instruments,
    prices: await loadPrices(studyId, force.context.prices),
  };
}

/** Prices that the setup lists at most. */
const SHOWN_PRICES = 1000;

/** Currency of the shipped list (its passport). */
const SHIPPED_CURRENCY = 'USD';

/** Every price that serves, those of the study's own list with their ids, and the lists of the study. */
async function pricesInUse(studyId: string, inUse: PriceList) {
  const db = database().read;
  const lists = await readPriceLists(db, studyId);
  const own = lists.find((list) => list.inUse);
  const stored = own ? await readPricesOf(db, own.id) : [];
  const lines = own ? stored : inUse.prices.map((price) => ({ id: undefined, currency: SHIPPED_CURRENCY, price }));
  return { lists, own, lines };
}

/** The prices in use, and the lists from which one can be chosen. */
async function loadPrices(studyId: string, inUse: PriceList) {
  const { lists, own, lines } = await pricesInUse(studyId, inUse);
  return {
    invented: inUse.invented,
    name: own?.name,
    count: lines.length,
    lines: lines.slice(0, SHOWN_PRICES).map((line) => ({ ...line, serves: isBought(line.price) })),
    currencies: [...new Set(lines.map((line) => line.currency))],
    lists,
  };
}

/** The prices that serve a study as a price list, in the currency each was given in. */
export async function loadPricesFile(studyId: string): Promise<{ readonly name: string; readonly text: string } | undefined> {
  const force = await studyInForce(database().read, studyId);
  if (!force) return undefined;
  const { lines } = await pricesInUse(studyId, force.context.prices);
  return { name: 'prices.csv', text: pricesCsv(lines) };
}

/** The settings of a study as a settings file; the same that the command line reads. */
export async function loadSettingsFile(studyId: string): Promise<{ readonly name: string; readonly text: string } | undefined> {
  const force = await studyInForce(database().read, studyId);
  if (!force) return undefined;
  return {
    name: 'settings.json',
    text: `${JSON.stringify(settingsToJson(force.study.settings, force.study.pricesFile), undefined, 2)}\n`,
  };
}
