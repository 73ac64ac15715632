import type { Tariff, Usage } from '@/lib/engine/tariff/tariff';

/** One price of energy for all hours, with what a test adds. */
export function tariffOf(given: Partial<Tariff> & { readonly pricePerKwh?: number } = {}): Tariff {
  const { pricePerKwh = 0.11, ...rest } = given;
  return {
    energy: [{ name: 'all hours', pricePerKwh }],
    blocks: [],
    demand: [],
    fixedPerMonth: 0,
    taxes: [],
    ...rest,
  };
}

/** Summer peaks, days and other hours, as tariffs by time of use have them. Invented. */
export const BY_TIME: Tariff = tariffOf({
  energy: [
    { name: 'summer peak', months: [6, 7, 8, 9], when: 'Mo-Fr 12:00-20:00', pricePerKwh: 0.17 },
    { name: 'day', when: 'Mo-Fr 07:00-22:00', pricePerKwh: 0.11 },
    { name: 'other hours', pricePerKwh: 0.08 },
  ],
});

/** Highest kilowatts of each month at {@link USAGE}. */
export const DEMAND_KW: readonly number[] = [700, 700, 720, 760, 800, 900, 1000, 950, 880, 800, 740, 700];

/** A site of medium size whose peak is in summer. Invented. */
export const USAGE: Usage = {
  energyKwh: 400_000,
  demandKw: DEMAND_KW,
  powerFactor: 0.86,
};

/** By the hour, with a ratchet that holds the old peak for the first year; invented. */
export const WITH_RATCHET: Tariff = {
  energy: [
    { name: 'day', when: 'Mo-Fr 07:00-22:00', pricePerKwh: 0.13 },
    { name: 'other hours', pricePerKwh: 0.09 },
  ],
  blocks: [],
  demand: [{ name: 'any time', price: 9.5, unit: 'kW', ratchet: { share: 1, months: 11 } }],
  fixedPerMonth: 100,
  taxes: [],
  usage: { energyKwh: 900_000, demandKw: 2500 },
};
