import { describe, expect, test } from 'vitest';
import { bySettingOrder, settingLines, settingName, settingText, settingValue } from '@/lib/features/setup/setting-words';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { flatSettings } from '@/lib/features/study/settings-change';
import { tariffToFile } from '@/lib/features/study/tariff-schema';
import { FULL_TARIFF } from './support/tariffs';

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
    ['discount_rate', 0.08, '8'],
    ['energy_price_escalation', [0.02, -0.005], '2; −0.5'],
  ])('%s', (key, value, words) => expect(settingValue(key, value)).toBe(words));

  test('the history says rates in the unit of the form', () => {
    expect(settingText('discount_rate', '0.08')).toBe('8');
    expect(settingText('energy_price_escalation', '0.02; 0.03')).toBe('2; 3');
    expect(settingText('energy_price_per_kwh', '0.11')).toBe('0.11');
    expect(settingText('discount_rate', '')).toBe('');
  });

  test('a tariff is read line by line in the words of the form, rates in per cent', () => {
    expect(settingName('tariffs.Works. North')).toEqual({ label: 'Tariff of Works. North', unit: '', group: 'Prices of energy' });
    expect(['policy.at_failure', 'tariffs.Works', 'as_of'].sort(bySettingOrder)).toEqual([
      'as_of',
      'tariffs.Works',
      'policy.at_failure',
    ]);
    expect(settingLines('policy', {})).toBeUndefined();
    expect(settingLines('tariffs.Works', tariffToFile(FULL_TARIFF))).toEqual([
      'Large general service (invented)',
      'Energy: summer peak, months 6-9, hours Mo-Fr 12:00-20:00, price 0.17 per kWh',
      'Energy: day, hours Mo-Fr 07:00-22:00; Sa 08:00-12:00, price 0.11 per kWh',
      'Energy: other hours, price 0.08 per kWh',
      'Demand: any time, price 9.5 per kW and month, ratchet share 80 %, ratchet months 11, minimum 50 kW',
      'Demand: summer peak, months 6-9, hours Mo-Fr 12:00-20:00, price 6 per kVA and month',
      'Blocks: up to 50,000 kWh a month, price 0.012 per kWh',
      'Blocks: or up to 400 kWh for each kW, price 0.006 per kWh',
      'Blocks: price 0 per kWh',
      'Taxes: levy, rate 2 %',
      'Taxes: sales tax, rate 5 %',
      'Other charges: low power factor raises the billed kilowatts, its limit 0.9, fixed charge 250 a month, escalation 3; 2 % a year',
      'Energy of the whole site, kWh a month: summer peak: 0; 0; 0; 0; 0; 90000; 100000; 100000; 90000; 0; 0; 0 | day: 150000 | other hours: 120000',
      'Highest demand of the whole site, kW a month: 700; 700; 720; 760; 800; 900; 950; 940; 880; 800; 740; 700',
      'Power factor of the site 0.86',
    ]);
  });
});
