import type { PriceList } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readPriceLists, readPricesOf } from '../prices/data';
import { studyInForce } from '../study/context';
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

/** The prices in use, and the lists from which one can be chosen. */
async function loadPrices(studyId: string, inUse: PriceList) {
  const db = database().read;
  const lists = await readPriceLists(db, studyId);
  const own = lists.find((list) => list.inUse);
  const stored = own ? await readPricesOf(db, own.id) : [];
  const lines = own ? stored : inUse.prices.map((price) => ({ id: undefined, currency: SHIPPED_CURRENCY, price }));
  return {
    invented: inUse.invented,
    name: own?.name,
    count: lines.length,
    lines: lines.slice(0, SHOWN_PRICES),
    currencies: [...new Set(lines.map((line) => line.currency))],
    lists,
  };
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
