'use server';

import { revalidatePath } from 'next/cache';
import type { Settings } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { capitalised } from '@/lib/platform/format';
import { wakeRunner } from '../evaluation/runner';
import { issueLine } from '../fleet/issue-line';
import { planFromFile } from '../plan/wish-file';
import { replacePrices } from '../prices/mutations';
import { readStudy } from '../study/data';
import { changedMeanwhile, joinCells, meanwhileProblem, openedOn, typedOf } from '../study/meanwhile';
import { type SettingsWritten, takeBackSettings, writeSettings } from '../study/mutations';
import { readPrices } from '../study/prices';
import { type Refusal, refusedFields, whoSchema } from '../study/schema';
import { readSettings, type SettingsProblem, settingsToJson } from '../study/settings';
import { type TariffFile, tariffToFile } from '../study/tariff-schema';
import { rememberWho } from '../study/who';
import { readDecidedSavings, readSiteSchedules } from './data';
import { takeSettings } from './mutations';
import { sayInPerCent } from './per-cent';
import { fileForm, type SetupState, settingsForm, type TariffState, tariffForm, undoForm } from './schema';
import { SETTING_FIELDS, shownSetting, smallPerCents, typedSettings } from './setting-fields';
import { isPerCent, tariffCells, typedTariff } from './tariff-cells';
import { cellOf, placeWords } from './tariff-problem';
import { viewTariff } from './tariff-view';

function formProblem(error: Refusal): SetupState {
  return {
    problem: { text: error.issues[0]?.message ?? 'The form cannot be read.', remedy: 'Fill it in and send it again.' },
    refused: refusedFields(error),
  };
}

const NO_STUDY: SetupState = { problem: { text: 'There is no such study any more.', remedy: 'Go back to the first page.' } };

async function store(study: string, jsonText: string, who: string, why: string | undefined): Promise<SetupState> {
  const read = readSettings(jsonText);
  if (!read.ok)
    return {
      problem: read.problem,
      ...(read.problem.key !== '' && { refused: { [fieldOf(read.problem.key)]: `${read.problem.text} ${read.problem.remedy}` } }),
    };
  const done = await writeSettings(database(), { id: study, settings: read.settings, pricesFile: read.pricesFile, who, why });
  if (!done.ok) return { problem: done.problem };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  const warned = read.warnings.map((warning) => warning.text).join(' ');
  if (done.value.changed === 0) return { done: 'Nothing was different; nothing was saved.' };
  return {
    done: `Saved; ${changedWords(done.value)} ${warned}`.trim(),
    ...(done.value.batch !== undefined && { batch: done.value.batch }),
  };
}

/** What is wrong with a settings file in the words of the form: by the name of the field, and without what only a file can do. */
function settingProblem({ code, key, text, remedy }: SettingsProblem): SetupState {
  const field = SETTING_FIELDS.find((each) => each.key === key);
  if (code !== 'bad-value' || !field) return { problem: { text, remedy }, refused: { [fieldOf(key)]: `${text} ${remedy}` } };
  const said = {
    text: (field.perCent ? sayInPerCent(text) : text).replace(key, field.label),
    remedy: 'Correct it, or empty the field for its usual value.',
  };
  return { problem: said, refused: { [field.key]: `${said.text} ${said.remedy}` } };
}

/** The field of the form that holds a key of the settings file, which may lie deep inside it. */
function fieldOf(key: string): string {
  return SETTING_FIELDS.find((field) => key === field.key || key.startsWith(`${field.key}.`))?.key ?? key;
}

function changedWords({ changed }: SettingsWritten): string {
  return `${changed} ${changed === 1 ? 'key' : 'keys'} changed, and the fleet is being evaluated again.`;
}

/** Gives the settings that one act changed their former values, as a new act. */
export async function undoSettings(_: SetupState, form: FormData): Promise<SetupState> {
  const parsed = undoForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return formProblem(parsed.error);
  const { study, who, batch } = parsed.data;
  const done = await takeBackSettings(database(), { id: study, batch, who });
  if (!done.ok) return { problem: done.problem };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  return { done: `Taken back; ${changedWords(done.value)}` };
}

/** Saves the settings as typed; numbers by the sheet's strict reader, the whole by the settings file's own schema. */
export async function saveSettings(_: SetupState, form: FormData): Promise<SetupState> {
  const cells = new Map(SETTING_FIELDS.map(({ key }) => [key, String(form.get(key) ?? '')]));
  const typed = typedOf(form);
  const parsed = settingsForm.safeParse({ study: form.get('study'), who: form.get('who'), why: form.get('why') ?? undefined });
  if (!parsed.success) return { ...formProblem(parsed.error), typed };
  await rememberWho(parsed.data.who);
  const study = await readStudy(database().read, parsed.data.study);
  if (!study) return { ...NO_STUDY, typed };
  const inForce = settingsToJson(study.settings, study.pricesFile);
  const now = new Map(SETTING_FIELDS.map((field) => [field.key, shownSetting(inForce, field)]));
  const joined = joinCells(cells, openedOn(form), now);
  if (joined.clashes.size > 0)
    return {
      typed: { ...typed, ...Object.fromEntries(joined.cells) },
      seen: Object.fromEntries(now),
      refused: Object.fromEntries(
        [...joined.clashes].map(([key, value]) => [
          key,
          `Somebody has set this to ${value === '' ? 'its usual value' : value} since the page was opened.`,
        ]),
      ),
      problem: {
        text: 'What you changed has been changed by somebody else since this page was opened; nothing was saved.',
        remedy: 'Look at the values that say so. Save again to have yours.',
      },
    };
  const { file, refused } = typedSettings(joined.cells);
  if (Object.keys(refused).length > 0)
    return {
      refused,
      typed,
      problem: {
        text: 'Some values cannot be taken as they are; nothing was saved.',
        remedy: 'Mend those that say so and save again.',
      },
    };
  const checked = readSettings(JSON.stringify(file));
  if (!checked.ok) return { ...settingProblem(checked.problem), typed };
  const state = await store(parsed.data.study, JSON.stringify(file), parsed.data.who, parsed.data.why);
  if (state.problem) return { ...state, typed };
  return { ...state, done: [state.done, ...smallPerCents(joined.cells, now)].join(' ') };
}

/** Takes a settings file: what it does not name goes back to its default, but for the wishes of the plan, which then stay. */
export async function takeSettingsFile(_: SetupState, form: FormData): Promise<SetupState> {
  const typed = typedOf(form);
  const parsed = fileForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...formProblem(parsed.error), typed };
  const { study, who, file } = parsed.data;
  await rememberWho(who);
  const read = readSettings(await file.text());
  if (!read.ok) return { problem: read.problem, typed };
  const plan = read.plansNamed ? planFromFile(read.plan, who) : undefined;
  if (plan && !plan.ok) return { problem: plan.problem, typed };
  const { settings, pricesFile } = read;
  const why = `Settings file ${file.name}`;
  const done = await takeSettings(database(), { id: study, settings, pricesFile, who, why, plan: plan?.value });
  if (!done.ok) return { problem: done.problem, typed };
  const { changed, planChanged, batch } = done.value;
  if (changed + planChanged === 0) return { done: 'Nothing was different; nothing was saved.' };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  const said = [
    changed > 0 ? changedWords(done.value) : 'no key changed.',
    ...(planChanged > 0
      ? [`${planChanged} ${planChanged === 1 ? 'wish' : 'wishes'} of the plan changed: work it out anew.`]
      : []),
    ...read.warnings.map((warning) => warning.text),
  ];
  return { done: `Saved; ${said.join(' ')}`, ...(batch !== undefined && { batch }) };
}

/** Takes a price list in place of the one in use. Rows that cannot be read are named; the others are taken. */
export async function takePrices(_: SetupState, form: FormData): Promise<SetupState> {
  const typed = typedOf(form);
  const parsed = fileForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...formProblem(parsed.error), typed };
  const { study: id, who, file } = parsed.data;
  await rememberWho(who);
  const study = await readStudy(database().read, id);
  if (!study) return { ...NO_STUDY, typed };
  const read = await readPrices(
    { name: file.name, data: new Uint8Array(await file.arrayBuffer()) },
    { currency: study.settings.currency, asOf: study.settings.asOf },
  );
  if (!read.ok) return { problem: read.problem, typed };
  const done = await replacePrices(database(), {
    studyId: id,
    name: file.name,
    list: read.list,
    currency: study.settings.currency,
    who,
  });
  if (!done.ok) return { problem: done.problem, typed };
  wakeRunner();
  revalidatePath(`/${id}`, 'layout');
  const said = read.warnings.slice(0, 5).map((warning) => capitalised(issueLine(warning)));
  return {
    done: [
      `${read.list.prices.length} prices are in use now${read.rejectedRows > 0 ? `; ${read.rejectedRows} rows were left out` : ''}.`,
      ...said,
    ].join(' '),
  };
}

/** Works out a tariff as typed, saves it as the site's, or takes the site's away so that the flat prices serve. */
export async function sendTariff(_: TariffState, form: FormData): Promise<TariffState> {
  const parsed = tariffForm.safeParse(Object.fromEntries(form));
  const typed = typedOf(form);
  if (!parsed.success) return { ...formProblem(parsed.error), typed };
  const { study: id, site, intent, who } = parsed.data;
  const cells = new Map(Object.entries(typed));
  const study = await readStudy(database().read, id);
  if (!study) return { ...NO_STUDY, typed };
  const { settings } = study;
  const stored = Object.hasOwn(settings.tariffs, site) ? settings.tariffs[site] : undefined;
  const now = new Map(Object.entries(stored ? tariffCells(tariffToFile(stored)) : {}));
  if (intent !== 'work-out' && changedMeanwhile(openedOn(form), now))
    return {
      typed,
      seen: Object.fromEntries(now),
      problem: meanwhileProblem('The tariff of this site'),
    };
  if (intent === 'remove') {
    const { [site]: _gone, ...tariffs } = settings.tariffs;
    const state = await storeTariffs(id, { ...settingsToJson(settings, study.pricesFile), tariffs: tariffFiles(tariffs) }, who);
    return state.problem ? { ...state, typed } : state;
  }
  const read = typedTariff(cells);
  if (Object.keys(read.refused).length > 0)
    return {
      typed,
      refused: read.refused,
      problem: {
        text: 'Some cells cannot be taken as they are; nothing was saved.',
        remedy: 'Mend those that say so and send it again.',
      },
    };
  const file = {
    ...settingsToJson(settings, study.pricesFile),
    tariffs: { ...tariffFiles(settings.tariffs), [site]: read.file },
  };
  const checked = readSettings(JSON.stringify(file));
  if (!checked.ok) {
    const { text, remedy, key } = checked.problem;
    const inside = key.slice(`tariffs.${site}.`.length);
    const cell = cellOf(inside, read);
    const said = isPerCent(cell) ? { text: sayInPerCent(text), remedy: 'Correct the cell.' } : { text, remedy };
    const problem = { ...said, text: said.text.replace(`${key}:`, `${placeWords(inside)}:`) };
    return { typed, problem, refused: { [cell]: `${problem.text} ${problem.remedy}` } };
  }
  const tariff = checked.settings.tariffs[site];
  const schedules = (await readSiteSchedules(database().read, id)).filter((group) => group.site === site);
  const savings = tariff?.usage ? await readDecidedSavings(database().read, id, site) : [];
  const view = tariff && viewTariff(tariff, { currency: settings.currency, asOf: settings.asOf, schedules, savings });
  if (intent === 'work-out') return { typed, ...(view && { view }), done: 'Worked out as typed; not saved.' };
  const state = await storeTariffs(id, file, who);
  return { ...state, ...(state.problem && { typed }), ...(view && { view }) };
}

function tariffFiles(tariffs: Settings['tariffs']): Record<string, TariffFile> {
  return Object.fromEntries(Object.entries(tariffs).map(([site, tariff]) => [site, tariffToFile(tariff)]));
}

async function storeTariffs(study: string, file: object, who: string): Promise<SetupState> {
  const name = whoSchema.safeParse(who);
  if (!name.success) return formProblem(name.error);
  await rememberWho(name.data);
  return store(study, JSON.stringify(file), name.data, undefined);
}
