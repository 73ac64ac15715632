import { hiddenPeriods, usageBeyondPeak } from '@/lib/engine';
import { formatNumber } from '@/lib/platform/format';
import type { SettingsFile } from './settings-schema';
import { tariffFromFile } from './tariff-schema';

/** Settings that can be used, and that somebody should look at again. */
export interface SettingsWarning {
  readonly code:
    | 'depreciation-without-tax'
    | 'tax-without-depreciation'
    | 'discount-rate-negative'
    | 'emission-factor-high'
    | 'per-cent-small'
    | 'period-never-holds'
    | 'usage-beyond-peak';
  readonly key: string;
  readonly text: string;
}

/** No supply gives off more for a kilowatt-hour; old coal comes to about 1.3 kg (from memory). */
const MOST_EMITTED = 2;

const whole = (value: number): string => formatNumber(value, 0);

/** What is doubtful in settings that can be read; each sentence names its key and what to do. */
export function warningsOf(file: SettingsFile): SettingsWarning[] {
  const warnings: SettingsWarning[] = [];
  const warn = (code: SettingsWarning['code'], key: string, text: string) => warnings.push({ code, key, text });
  if (file.depreciation !== null && file.tax_rate === 0)
    warn('depreciation-without-tax', 'depreciation', 'Depreciation changes nothing while tax_rate is 0: figures are before tax.');
  if (file.depreciation === null && file.tax_rate > 0)
    warn(
      'tax-without-depreciation',
      'tax_rate',
      'Tax is taken on savings, but no purchase is written off: state depreciation, or values are on the low side.',
    );
  if (file.discount_rate < 0)
    warn(
      'discount-rate-negative',
      'discount_rate',
      `discount_rate is ${file.discount_rate}: below zero, money counts the more the later it comes. Take the sign away unless that is meant.`,
    );
  const factors = file.emission_factor_kg_per_kwh;
  const highest = typeof factors === 'number' ? factors : Math.max(...factors);
  if (highest > MOST_EMITTED)
    warn(
      'emission-factor-high',
      'emission_factor_kg_per_kwh',
      `emission_factor_kg_per_kwh is ${highest}: no supply gives off more than about ${MOST_EMITTED} kg a kilowatt-hour. Grams are written in kilograms, 373 g as 0.373.`,
    );
  const spare = file.policy.spare_capacity_pct;
  if (spare > 0 && spare < 1)
    warn(
      'per-cent-small',
      'policy.spare_capacity_pct',
      `policy.spare_capacity_pct is ${spare} %. It is in per cent: a tenth is written 10.`,
    );
  for (const [site, tariff] of Object.entries(file.tariffs)) {
    for (const index of hiddenPeriods(tariffFromFile(tariff)))
      warn(
        'period-never-holds',
        `tariffs.${site}.energy.${index}`,
        `tariffs.${site}.energy.${index} (${tariff.energy[index]?.name ?? ''}) never holds: the periods listed before it take all its hours. Put the narrow periods first, or remove it.`,
      );
    const beyond = usageBeyondPeak(tariffFromFile(tariff));
    if (beyond)
      warn(
        'usage-beyond-peak',
        `tariffs.${site}.usage`,
        `tariffs.${site}.usage: the ${whole(beyond.energyKwh)} kWh of month ${beyond.month} are ${whole(beyond.meanKw)} kW on average, more than its highest demand of ${whole(beyond.highestKw)} kW. energy_kwh is of a month; compare both with the bill.`,
      );
  }
  return warnings;
}
