import type { PriceList, Settings, Tariff } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readTakenAfterDue } from '../instruments/data';
import { readTerms, readWishes } from '../plan/data';
import { planToFile } from '../plan/wish-file';
import { readPriceLists, readPricesOf } from '../prices/data';
import { pricesCsv } from '../prices/write-prices';
import { studyInForce } from '../study/context';
import { readStudy } from '../study/data';
import { isBought } from '../study/prices';
import { defaultSettings, settingsToJson } from '../study/settings';
import { tariffToFile } from '../study/tariff-schema';
import { readDecidedSavings, readSiteSchedules } from './data';
import { SETTING_GROUPS, shownSetting } from './setting-fields';
import { tariffCells } from './tariff-cells';
import { viewTariff } from './tariff-view';

/** What {@link loadSetup} gives. */
export type Setup = NonNullable<Awaited<ReturnType<typeof loadSetup>>>;

/** Everything that the setup of a study shows; `undefined` when there is no such study. */
export async function loadSetup(studyId: string) {
  const force = await studyInForce(database().read, studyId);
  if (!force) return undefined;
  const file = settingsToJson(force.study.settings, force.study.pricesFile);
  const late = await readTakenAfterDue(database().read, studyId, force.instruments);
  const usual = settingsToJson(defaultSettings());
  return {
    study: force.study,
    groups: SETTING_GROUPS.map((group) => ({
      title: group.title,
      fields: group.fields.map((field) => ({ ...field, value: shownSetting(file, field), usual: shownSetting(usual, field) })),
    })),
    tariffs: await loadSites(studyId, force.study.settings),
    instruments: force.instruments.map((instrument) => ({
      ...instrument,
      overdue: instrument.calibrationDueOn !== undefined && instrument.calibrationDueOn < force.study.settings.asOf,
      takenAfterDue: late.get(instrument.name) ?? 0,
    })),
    prices: await loadPrices(studyId, force.context.prices),
  };
}

/** A site with what energy costs there: its tariff's prices at the margin, or the study's flat ones. */
export interface SiteTariff {
  readonly site: string;
  /** Motors that stand there; none where the settings name a site that the fleet does not have. */
  readonly motors: number;
  readonly tariff: string | undefined;
  readonly energy: number;
  readonly average: number | undefined;
  readonly demand: number;
}

async function loadSites(studyId: string, settings: Settings): Promise<SiteTariff[]> {
  const schedules = await readSiteSchedules(database().read, studyId);
  const sites = [...new Set([...schedules.map(({ site }) => site), ...Object.keys(settings.tariffs)])].sort();
  return sites.map((site) => {
    const tariff = Object.hasOwn(settings.tariffs, site) ? settings.tariffs[site] : undefined;
    const view = tariff && viewTariff(tariff, { currency: settings.currency, asOf: settings.asOf, schedules: [] });
    const [any] = view?.marginal ?? [];
    return {
      site,
      motors: schedules.filter((group) => group.site === site).reduce((sum, { motors }) => sum + motors, 0),
      tariff: tariff && (tariff.name ?? 'a tariff without a name'),
      energy: any?.energy ?? settings.energyPricePerKwh,
      average: view?.average,
      demand: any?.demand ?? settings.demandPricePerKwMonth,
    };
  });
}

/** The tariff of a site for its screen: cells of the form and what it comes to; a site without one begins at the flat prices. */
export async function loadTariff(studyId: string, site: string) {
  const study = await readStudy(database().read, studyId);
  if (!study) return undefined;
  const { settings } = study;
  const schedules = (await readSiteSchedules(database().read, studyId)).filter((group) => group.site === site);
  const stored = Object.hasOwn(settings.tariffs, site) ? settings.tariffs[site] : undefined;
  if (!stored && schedules.length === 0) return undefined;
  const tariff = stored ?? flatTariff(settings);
  return {
    stored: stored !== undefined,
    motors: schedules.reduce((sum, { motors }) => sum + motors, 0),
    currency: settings.currency,
    cells: tariffCells(tariffToFile(tariff)),
    view: viewTariff(tariff, {
      currency: settings.currency,
      asOf: settings.asOf,
      schedules,
      savings: tariff.usage ? await readDecidedSavings(database().read, studyId, site) : [],
    }),
  };
}

/** The study's flat prices written as a tariff. */
function flatTariff(settings: Settings): Tariff {
  return {
    energy: [{ name: 'all hours', pricePerKwh: settings.energyPricePerKwh }],
    blocks: [],
    demand: [{ name: 'any time', price: settings.demandPricePerKwMonth, unit: 'kW' }],
    fixedPerMonth: 0,
    taxes: [],
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

/** The settings of a study as a settings file, with what is wanted of its plan; the same that the command line reads. */
export async function loadSettingsFile(studyId: string): Promise<{ readonly name: string; readonly text: string } | undefined> {
  const db = database().read;
  const force = await studyInForce(db, studyId);
  if (!force) return undefined;
  const plan = planToFile(await readWishes(db, studyId), await readTerms(db, studyId));
  return {
    name: 'settings.json',
    text: `${JSON.stringify({ ...settingsToJson(force.study.settings, force.study.pricesFile), plan }, undefined, 2)}\n`,
  };
}
