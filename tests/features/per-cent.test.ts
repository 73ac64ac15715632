import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asPerCent, readPerCent, sayInPerCent } from '@/lib/features/setup/per-cent';
import { SETTING_FIELDS, shownSetting, smallPerCents } from '@/lib/features/setup/setting-fields';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';

const usual = settingsToJson(defaultSettings());
const typed = (changes: Readonly<Record<string, string>> = {}) =>
  new Map(SETTING_FIELDS.map((field) => [field.key, changes[field.key] ?? shownSetting(usual, field)]));

describe('rates and shares of the form', () => {
  const shown = (key: string) => typed().get(key);

  it('stand in per cent as their unit says, and every other figure as it is', () => {
    expect(shown('discount_rate')).toBe('8');
    expect(shown('policy.spare_capacity_pct')).toBe(String(defaultSettings().policy.spareCapacityPct));
    for (const { key, unit, perCent } of SETTING_FIELDS)
      expect(unit.startsWith('%'), key).toBe(perCent === true || key.endsWith('_pct'));
  });

  it('come back from per cent to the very same number, however many digits it has', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.5, max: 2, noNaN: true }), (value) => {
        expect(readPerCent(asPerCent(value))).toBe(value === 0 ? 0 : value);
      }),
    );
    for (const value of [0.07, 0.29, 0.1 + 0.2, 1e-7, 1]) expect(readPerCent(asPerCent(value))).toBe(value);
  });

  it('are told in per cent where the schema refuses them, but for the place', () => {
    expect(sayInPerCent('tariffs.2.rate: is 2.5, and the most is 2')).toBe('tariffs.2.rate: is 250 %, and the most is 200 %');
  });

  it('are doubted when they are newly less than one per cent, as a fraction would be', () => {
    const before = typed();
    expect(smallPerCents(typed({ discount_rate: '0.08' }), before)).toEqual([
      'Discount rate is now 0.08 %, less than one in a hundred; 8 % is written 8.',
    ]);
    expect(smallPerCents(typed({ discount_rate: '1', energy_price_per_kwh: '0.2' }), before)).toEqual([]);
    expect(smallPerCents(typed({ discount_rate: '0.5' }), typed({ discount_rate: '0.5' }))).toEqual([]);
  });
});
