import { database } from '@/lib/platform/db';
import { studyInForce } from '../study/context';
import { defaultSettings, settingsToJson } from '../study/settings';
import { SETTING_GROUPS, shownSetting } from './setting-fields';

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
    prices: {
      invented: force.context.prices.invented,
      count: force.context.prices.prices.length,
      lines: force.context.prices.prices.slice(0, 500),
    },
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
