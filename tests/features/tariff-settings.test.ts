import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readSettings } from '@/lib/features/study/settings';
import { tariffToFile } from '@/lib/features/study/tariff-schema';
import { FULL_TARIFF, PLAIN_TARIFF } from './support/tariffs';

type Json = Record<string, unknown>;
const plain = (): Json => tariffToFile(PLAIN_TARIFF) as Json;
const full = (): Json => tariffToFile(FULL_TARIFF) as Json;

function problemOf(tariff: unknown) {
  const read = readSettings(JSON.stringify({ tariffs: { North: tariff } }));
  return read.ok ? undefined : read.problem;
}

/** What is wrong, where it is said to be wrong, and a word of the remedy. */
const FAULTS: readonly (readonly [what: string, tariff: unknown, key: string, text: RegExp, remedy: RegExp])[] = [
  ['no energy', { energy: [] }, 'tariffs.North.energy', /./, /./],
  [
    'hours without a price',
    { energy: [{ name: 'day', when: 'Mo-Fr 07:00-22:00', price_per_kwh: 0.1 }] },
    'tariffs.North.energy',
    /month 1, 93 hours a week have no price/,
    /last period without months and hours/,
  ],
  [
    'a month without a price',
    { energy: [{ name: 'winter', months: [1, 2, 3], price_per_kwh: 0.1 }] },
    'tariffs.North.energy',
    /month 4, 168 hours/,
    /last period/,
  ],
  [
    'unreadable hours',
    {
      energy: [
        { name: 'day', when: 'weekdays', price_per_kwh: 0.1 },
        { name: 'rest', price_per_kwh: 0.1 },
      ],
    },
    'tariffs.North.energy.0.when',
    /weekdays is no day/,
    /Mo-Fr 06:00-22:00/,
  ],
  ['a misspelt key', { ...plain(), demnd: [] }, 'tariffs.North.demnd', /not a setting/, /tariffs\.North\.demand/],
  [
    'a misspelt key inside',
    { ...plain(), energy: [{ name: 'a', price_per_kw: 0.1 }] },
    'tariffs.North.energy.0.price_per_kwh',
    /./,
    /./,
  ],
  [
    'two prices of demand',
    { ...plain(), demand: [{ name: 'a', price_per_kw: 1, price_per_kva: 1 }] },
    'tariffs.North.demand.0',
    /not one price/,
    /either price_per_kw or price_per_kva/,
  ],
  ['no price of demand', { ...plain(), demand: [{ name: 'a' }] }, 'tariffs.North.demand.0', /not one price/, /either/],
  [
    'a ratchet without bills',
    { ...plain(), demand: [{ name: 'a', price_per_kw: 9, ratchet: { share: 0.8, months: 11 } }] },
    'tariffs.North.usage',
    /missing/,
    /last twelve bills/,
  ],
  [
    'a ratchet in per cent',
    { ...full(), demand: [{ name: 'any time', price_per_kw: 9, ratchet: { share: 80, months: 11 } }] },
    'tariffs.North.demand.0.ratchet.share',
    /./,
    /./,
  ],
  [
    'blocks without an open end',
    { ...full(), blocks: [{ up_to_kwh: 100, price_per_kwh: 0.1 }] },
    'tariffs.North.blocks.0',
    /last block but has an end/,
    /rising order/,
  ],
  [
    'blocks out of order',
    { ...full(), blocks: [{ up_to_kwh: 100, price_per_kwh: 0.1 }, { up_to_kwh: 50, price_per_kwh: 0.1 }, { price_per_kwh: 0 }] },
    'tariffs.North.blocks.1',
    /end after/,
    /rising order/,
  ],
  [
    'a name used twice',
    {
      energy: [
        { name: 'a', months: [1], price_per_kwh: 0.1 },
        { name: 'a', price_per_kwh: 0.2 },
      ],
    },
    'tariffs.North.energy.1.name',
    /twice/,
    /own name/,
  ],
  [
    'use of a period that is not there',
    { ...plain(), usage: { energy_kwh: { nights: 5 }, demand_kw: 1 } },
    'tariffs.North.usage.energy_kwh.nights',
    /names nothing/,
    /all hours/,
  ],
  [
    'eleven months',
    { ...plain(), usage: { energy_kwh: new Array(11).fill(1), demand_kw: 1 } },
    'tariffs.North.usage.energy_kwh',
    /exactly 12/,
    /./,
  ],
  [
    'sums beyond all measure',
    { ...plain(), energy: [{ name: 'all hours', price_per_kwh: 1e300 }] },
    'tariffs.North',
    /too large to be kept exactly/,
    /too many digits/,
  ],
  [
    'a power factor in per cent',
    { ...full(), usage: { energy_kwh: 1, demand_kw: 1, power_factor: 86 } },
    'tariffs.North.usage.power_factor',
    /the most is 1/,
    /86 % is written 0\.86/,
  ],
  ['a tariff that is a note', { note: 'time of use' }, 'tariffs.North.energy', /./, /./],
];

describe('tariffs in the settings', () => {
  it.each(FAULTS)('refuse %s, saying where and what would make it right', (_, tariff, key, text, remedy) => {
    const problem = problemOf(tariff);
    expect(problem?.key).toBe(key);
    expect(problem?.text).toMatch(text);
    expect(problem?.remedy).toMatch(remedy);
  });
  it('stand in the manual as an example that is read', () => {
    const page = readFileSync(fileURLToPath(new URL('../../docs/methods/tariffs.md', import.meta.url)), 'utf8');
    const [, json = ''] = /```json\n([\s\S]*?)```/.exec(page) ?? [];
    const read = readSettings(json);
    expect(read.ok ? read.settings.tariffs['North works']?.blocks : read.problem).toHaveLength(3);
  });
  it('are read whole, and with next to nothing', () => {
    for (const tariff of [FULL_TARIFF, PLAIN_TARIFF]) {
      const read = readSettings(JSON.stringify({ tariffs: { North: tariffToFile(tariff) } }));
      expect(read.ok && read.settings.tariffs).toEqual({ North: tariff });
    }
    expect(problemOf({ energy: [{ name: 'all hours', price_per_kwh: 0.11 }] })).toBeUndefined();
  });
});
