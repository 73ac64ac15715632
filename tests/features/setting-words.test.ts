import { describe, expect, test } from 'vitest';
import { bySettingOrder, settingName, settingValue } from '@/lib/features/setup/setting-words';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { flatSettings } from '@/lib/features/study/settings-change';

describe('settings in the words of the form', () => {
  test('every key of a settings file but those of its make has a label of the form', () => {
    const keys = [...flatSettings(settingsToJson(defaultSettings())).keys()];
    expect(keys.filter((key) => settingName(key).group === '')).toEqual(['schema']);
  });

  test('keys stand in the order of the form, others after them', () => {
    expect(['own_rule', 'policy.at_failure', 'discount_rate', 'as_of'].sort(bySettingOrder)).toEqual([
      'as_of',
      'discount_rate',
      'policy.at_failure',
      'own_rule',
    ]);
  });

  test('a key that the form does not have goes by its own words', () => {
    expect(settingName('policy.old_rule')).toEqual({ label: 'policy, old rule', unit: '', group: '' });
  });

  test.each([
    ['budget', [250_000, 125_000.5], '250,000; 125,000.5'],
    ['rebates', [], 'none'],
    ['depreciation', null, 'none'],
    ['standards', 'nema', 'NEMA, North America'],
    ['include_failure_cost', true, 'yes'],
    ['emission_factor_kg_per_kwh', 0.373, '0.373'],
    ['as_of', '2026-11-27', '2026-11-27'],
  ])('%s', (key, value, words) => expect(settingValue(key, value)).toBe(words));
});
