import type { Tariff } from '@/lib/engine';

/** Every part that a tariff can have. Invented. */
export const FULL_TARIFF: Tariff = {
  name: 'Large general service (invented)',
  energy: [
    { name: 'summer peak', months: [6, 7, 8, 9], when: 'Mo-Fr 12:00-20:00', pricePerKwh: 0.17 },
    { name: 'day', when: 'Mo-Fr 07:00-22:00; Sa 08:00-12:00', pricePerKwh: 0.11 },
    { name: 'other hours', pricePerKwh: 0.08 },
  ],
  blocks: [{ upToKwh: 50000, pricePerKwh: 0.012 }, { upToKwhPerKw: 400, pricePerKwh: 0.006 }, { pricePerKwh: 0 }],
  demand: [
    { name: 'any time', price: 9.5, unit: 'kW', ratchet: { share: 0.8, months: 11 }, minimum: 50 },
    { name: 'summer peak', months: [6, 7, 8, 9], when: 'Mo-Fr 12:00-20:00', price: 6, unit: 'kVA' },
  ],
  powerFactor: { kind: 'scaled-demand', target: 0.9 },
  fixedPerMonth: 250,
  taxes: [
    { name: 'levy', rate: 0.02 },
    { name: 'sales tax', rate: 0.05 },
  ],
  escalation: [0.03, 0.02],
  usage: {
    energyKwh: { 'summer peak': [0, 0, 0, 0, 0, 9e4, 1e5, 1e5, 9e4, 0, 0, 0], day: 1.5e5, 'other hours': 1.2e5 },
    demandKw: [700, 700, 720, 760, 800, 900, 950, 940, 880, 800, 740, 700],
    powerFactor: 0.86,
  },
};

/** One price of energy and nothing else. */
export const PLAIN_TARIFF: Tariff = {
  energy: [{ name: 'all hours', pricePerKwh: 0.11 }],
  blocks: [],
  demand: [],
  fixedPerMonth: 0,
  taxes: [],
};
