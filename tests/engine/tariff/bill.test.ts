import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fromMoney, sumMoney } from '@/lib/engine/money/money';
import { yearBill } from '@/lib/engine/tariff/bill';
import { unpricedHours } from '@/lib/engine/tariff/compile';
import { fleetSaving } from '@/lib/engine/tariff/fleet-saving';
import { marginalByPeriod, marginalPrices } from '@/lib/engine/tariff/marginal';
import { readSchedule } from '@/lib/engine/tariff/schedule';
import { type Monthly, needsUsage, ofYear, priceIndex, type Tariff } from '@/lib/engine/tariff/tariff';
import { BY_TIME, DEMAND_KW, tariffOf, USAGE } from './tariffs';

const at = (when: string) => {
  const read = readSchedule(when);
  if (!read.ok) throw new Error(read.text);
  return read.week;
};
const marginal = (tariff: Tariff, when?: string, start = 0) =>
  when === undefined ? marginalPrices(tariff, undefined, '', start) : marginalPrices(tariff, at(when), when, start);
const amount = (tariff: Tariff, kind: string, month: number): number =>
  (yearBill(tariff).months[month - 1]?.lines ?? [])
    .filter((line) => line.kind === kind)
    .reduce((sum, line) => sum + fromMoney(line.amount), 0);
const ANY_TIME = { name: 'any time', price: 10, unit: 'kW' } as const;

describe('a bill', () => {
  it('itemises energy, blocks, demand, power factor, fixed charge and taxes, each by hand', () => {
    const tariff = tariffOf({
      pricePerKwh: 0.1,
      blocks: [{ upToKwh: 100_000, pricePerKwh: 0.02 }, { upToKwhPerKw: 400, pricePerKwh: 0.01 }, { pricePerKwh: 0 }],
      demand: [ANY_TIME],
      powerFactor: { kind: 'scaled-demand', target: 0.9 },
      fixedPerMonth: 250,
      taxes: [{ name: 'levy', rate: 0.05 }],
      usage: { energyKwh: 300_000, demandKw: 500, powerFactor: 0.8 },
    });
    expect(amount(tariff, 'energy', 1)).toBe(30000);
    // The first 100,000 at 0.02, up to 400 hours of 500 kW another 100,000 at 0.01, the rest at nothing.
    expect(amount(tariff, 'block', 1)).toBe(2000 + 1000);
    expect(amount(tariff, 'demand', 1)).toBe(500 * (0.9 / 0.8) * 10);
    expect(amount(tariff, 'fixed', 1)).toBe(250);
    expect(amount(tariff, 'tax', 1)).toBe(0.05 * (30000 + 3000 + 5625 + 250));
    expect(fromMoney(yearBill(tariff).total)).toBeCloseTo(12 * 1.05 * 38875, 6);
  });
  it('a block whose end by hours of use lies below the one before it takes nothing, and the next goes on from there', () => {
    const tariff = tariffOf({
      blocks: [{ upToKwh: 300_000, pricePerKwh: 0.02 }, { upToKwhPerKw: 200, pricePerKwh: 0.01 }, { pricePerKwh: 0.05 }],
      usage: { energyKwh: 350_000, demandKw: 500 },
    });
    // 200 hours of 500 kW end at 100,000: the first 300,000 at 0.02, the other 50,000 at 0.05.
    expect(amount(tariff, 'block', 1)).toBe(6000 + 2500);
  });
  it('bills reactive energy beyond what is free', () => {
    const tariff = tariffOf({
      powerFactor: { kind: 'reactive-energy', pricePerKvarh: 0.01, freeKvarhPerKwh: 0.5 },
      usage: { energyKwh: 100_000, demandKw: 300, powerFactor: 0.8 },
    });
    expect(amount(tariff, 'power-factor', 3)).toBeCloseTo(0.01 * (75_000 - 50_000), 6);
    const good = { ...tariff, usage: { energyKwh: 100_000, demandKw: 300, powerFactor: 0.95 } };
    expect(amount(good, 'power-factor', 3)).toBe(0);
  });
  it('bills at least a share of the highest of eleven months before, and at least the minimum', () => {
    const ratchet = { ...ANY_TIME, ratchet: { share: 0.8, months: 11 } };
    const tariff = tariffOf({ demand: [ratchet], usage: USAGE });
    const quantity = (month: number) =>
      yearBill(tariff).months[month - 1]?.lines.find((line) => line.kind === 'demand')?.quantity;
    expect([1, 7, 12].map(quantity)).toEqual([800, 1000, 800]);
    expect(amount(tariffOf({ demand: [{ ...ANY_TIME, minimum: 900 }], usage: USAGE }), 'demand', 1)).toBe(9000);
    const short = { ...ANY_TIME, ratchet: { share: 0.8, months: 2 } };
    expect(amount(tariffOf({ demand: [short], usage: USAGE }), 'demand', 12)).toBe(7400 - 400);
  });
  it('bills a seasonal peak in its months alone, and energy of named periods as stated', () => {
    const tariff: Tariff = {
      ...BY_TIME,
      demand: [{ ...ANY_TIME, months: [6, 7, 8, 9], when: 'Mo-Fr 12:00-20:00' }],
      usage: {
        energyKwh: { 'summer peak': [0, 0, 0, 0, 0, 9, 9, 9, 9, 0, 0, 0], day: 100, 'other hours': 50 },
        demandKw: { 'any time': 40 },
      },
    };
    expect(amount(tariff, 'demand', 5)).toBe(0);
    expect(amount(tariff, 'demand', 6)).toBe(400);
    expect(amount(tariff, 'energy', 6)).toBeCloseTo(9 * 0.17 + 100 * 0.11 + 50 * 0.08, 9);
  });
  it('adds up to the hundredth: lines to months, months to the year', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1e6, noNaN: true }), { minLength: 12, maxLength: 12 }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (energyKwh, powerFactor) => {
          const bill = yearBill({
            ...BY_TIME,
            blocks: [{ upToKwh: 50_000, pricePerKwh: 0.0123 }, { pricePerKwh: -0.001 }],
            demand: [{ ...ANY_TIME, unit: 'kVA' }],
            taxes: [{ name: 'levy', rate: 0.0825 }],
            usage: { energyKwh, demandKw: 300, powerFactor },
          });
          for (const month of bill.months) expect(sumMoney(month.lines.map((line) => line.amount))).toBe(month.total);
          expect(sumMoney(bill.months.map((month) => month.total))).toBe(bill.total);
        },
      ),
    );
  });
  it('says which hours have no price, and when use must be known', () => {
    expect(unpricedHours(BY_TIME)).toBeUndefined();
    expect(unpricedHours({ energy: [{ name: 'day', when: 'Mo-Fr', pricePerKwh: 1 }] })).toEqual({ month: 1, hours: 48 });
    expect(needsUsage(BY_TIME)).toBe(false);
    expect(needsUsage({ ...BY_TIME, demand: [{ ...ANY_TIME, unit: 'kVA' }] })).toBe(true);
  });
});

describe('marginal prices', () => {
  it('of flat prices are those prices, and the average is dearer by what is fixed', () => {
    const tariff = tariffOf({ demand: [ANY_TIME], fixedPerMonth: 100, usage: USAGE });
    expect(marginal(tariff)).toMatchObject({
      energyPerKwh: 0.11,
      demandPerKwMonth: 10,
      firstYearDemandShare: 1,
      reactivePerKvarMonth: 0,
      reactivePerKvarh: 0,
      variesByTime: false,
    });
    const bill = yearBill(tariff);
    expect(fromMoney(bill.total) / bill.kwh).toBeGreaterThan(0.11);
  });
  it('by time of use are the mean over the hours in which the motor runs, by hand', () => {
    // 122 of 365 days are summer; in the day hours of summer 8 of 15 are peak.
    const summer = 122 / 365;
    const day = summer * ((8 / 15) * 0.17 + (7 / 15) * 0.11) + (1 - summer) * 0.11;
    expect(marginal(BY_TIME, 'Mo-Fr 07:00-22:00').energyPerKwh).toBeCloseTo(day, 9);
    expect(marginal(BY_TIME, 'Sa,Su').energyPerKwh).toBe(0.08);
    expect(marginal(BY_TIME, 'Mo-Fr 22:00-07:00').energyPerKwh).toBe(0.08);
    expect(marginal(BY_TIME).energyPerKwh).toBeCloseTo((75 * day + 93 * 0.08) / 168, 9);
    expect(marginalByPeriod(BY_TIME)).toEqual([0.17, 0.11, 0.08]);
    expect(marginal(BY_TIME).variesByTime).toBe(true);
  });
  it('with blocks are those of the last block, far from the average', () => {
    const tariff = tariffOf({
      pricePerKwh: 0.08,
      blocks: [{ upToKwh: 100_000, pricePerKwh: 0.06 }, { pricePerKwh: 0 }],
      usage: { energyKwh: 250_000, demandKw: 0 },
    });
    expect(marginal(tariff).energyPerKwh).toBe(0.08);
    const bill = yearBill(tariff);
    expect(fromMoney(bill.total) / bill.kwh).toBeCloseTo(0.08 + (0.06 * 100_000) / 250_000, 9);
  });
  it('with blocks by hours of use give a kilowatt a price in energy too', () => {
    const tariff = tariffOf({
      pricePerKwh: 0.08,
      blocks: [{ upToKwhPerKw: 200, pricePerKwh: 0.05 }, { pricePerKwh: 0 }],
      demand: [ANY_TIME],
      usage: { energyKwh: 250_000, demandKw: 800 },
    });
    expect(marginal(tariff).demandPerKwMonth).toBeCloseTo(10 + 200 * 0.05, 9);
  });
  it('of demand that is billed in four months are a third of its price, and nothing for a motor that never runs in its hours', () => {
    const tariff = { ...BY_TIME, demand: [{ ...ANY_TIME, months: [6, 7, 8, 9], when: 'Mo-Fr 12:00-20:00' }] };
    expect(marginal(tariff).demandPerKwMonth).toBeCloseTo(40 / 12, 9);
    expect(marginal(tariff, 'Mo-Fr 20:00-24:00').demandPerKwMonth).toBe(0);
  });
  it('under a ratchet: months that the peak sets count their share, and come late', () => {
    const ratchet = { ...ANY_TIME, ratchet: { share: 0.8, months: 11 } };
    const tariff = tariffOf({ demand: [ratchet], usage: USAGE });
    // July sets 800 kW for the months below it: January to April and November, December; May and October are at 800 already.
    const held = DEMAND_KW.filter((kw) => kw < 800).length;
    const level = DEMAND_KW.filter((kw) => kw === 800).length;
    const free = 12 - held - level;
    // One kilowatt less: a month at the level falls with the ratchet, by its share.
    expect(marginal(tariff).demandPerKwMonth * 12).toBeCloseTo(10 * (free + 0.8 * (held + level)), 6);
    // From January on the old July holds until May; the new one sets October to December.
    expect(marginal(tariff).firstYearDemandShare).toBeCloseTo((free + 0.8 * 3) / (free + 0.8 * (held + level)), 8);
    // After a change in August the old July holds every month that a ratchet sets; June to September come at once.
    expect(marginal(tariff, undefined, 7).firstYearDemandShare).toBeCloseTo(free / (free + 0.8 * (held + level)), 8);
    // The whole of last year's peak: nothing at all until it is forgotten.
    const whole = tariffOf({
      demand: [{ ...ANY_TIME, ratchet: { share: 1, months: 12 } }],
      usage: { energyKwh: 1, demandKw: 500 },
    });
    expect(marginal(whole)).toMatchObject({ demandPerKwMonth: 10, firstYearDemandShare: 0 });
    expect(marginal(tariffOf({ demand: [ANY_TIME], usage: USAGE })).firstYearDemandShare).toBe(1);
    // By hand: 100 kWh for each kW at 0.02, the rest at 0.05. A kilowatt less moves 100 kWh to the dearer block, 3 a month, and is worth 10 − 3
    // a month once the old peak is forgotten; until then it costs the 3.
    const costs = { ...whole, blocks: [{ upToKwhPerKw: 100, pricePerKwh: 0.02 }, { pricePerKwh: 0.05 }] };
    const found = marginal({ ...costs, usage: { energyKwh: 100_000, demandKw: 500 } });
    expect(found.demandPerKwMonth).toBeCloseTo(7, 6);
    expect(found.firstYearDemandShare).toBeCloseTo(-3 / 7, 6);
  });
  it('of apparent power split into kilowatts by the cosine and kilovars by the sine (right triangle)', () => {
    const tariff = tariffOf({
      demand: [{ ...ANY_TIME, unit: 'kVA' }],
      usage: { energyKwh: 1000, demandKw: 4000, powerFactor: 0.8 },
    });
    expect(marginal(tariff).demandPerKwMonth).toBeCloseTo(10 * 0.8, 2);
    expect(marginal(tariff).reactivePerKvarMonth).toBeCloseTo(10 * 0.6, 2);
    expect(marginal(tariff).reactivePerKvarh).toBe(0);
  });
  it('of reactive energy are its price beyond what is free, and nothing below', () => {
    const of = (powerFactor: number) =>
      marginal(
        tariffOf({
          powerFactor: { kind: 'reactive-energy', pricePerKvarh: 0.01, freeKvarhPerKwh: 0.5 },
          usage: { energyKwh: 100_000, demandKw: 300, powerFactor },
        }),
      );
    expect(of(0.8).reactivePerKvarh).toBe(0.01);
    // A saved kilowatt-hour takes its free kilovar-hours along.
    expect(of(0.8).energyPerKwh).toBeCloseTo(0.11 - 0.5 * 0.01, 9);
    expect(of(0.95)).toMatchObject({ reactivePerKvarh: 0, energyPerKwh: 0.11 });
  });
  it('take the taxes along, and leave what is fixed out', () => {
    const tariff = tariffOf({
      fixedPerMonth: 500,
      taxes: [
        { name: 'a', rate: 0.05 },
        { name: 'b', rate: 0.02 },
      ],
    });
    expect(marginal(tariff).energyPerKwh).toBeCloseTo(0.11 * 1.07, 9);
  });
  it('scale with the unit of currency', () => {
    const scaled: Tariff = {
      ...BY_TIME,
      energy: BY_TIME.energy.map((period) => ({ ...period, pricePerKwh: 100 * period.pricePerKwh })),
    };
    expect(marginal(scaled).energyPerKwh).toBeCloseTo(100 * marginal(BY_TIME).energyPerKwh, 6);
  });
});

describe('a fleet billed once, as a whole', () => {
  it('saves what the motors save apart where every price is straight', () => {
    const tariff = { ...BY_TIME, demand: [ANY_TIME], usage: { energyKwh: 400_000, demandKw: 900 } };
    const savings = [
      { kwh: 12_000, kw: 3, schedule: 'Mo-Fr 07:00-22:00' },
      { kwh: 30_000, kw: 4 },
    ];
    const together = fleetSaving(tariff, savings);
    expect(Math.abs(fromMoney(together.saved) - fromMoney(together.apart))).toBeLessThan(0.3);
    expect(together.beyondUse).toBe(false);
    expect(fromMoney(together.before.total) - fromMoney(together.after.total)).toBeCloseTo(fromMoney(together.saved), 9);
  });
  it('meets a minimum once: many small demand savings come to less than their sum', () => {
    const tariff = tariffOf({ demand: [{ ...ANY_TIME, minimum: 480 }], usage: { energyKwh: 100_000, demandKw: 500 } });
    const one = fleetSaving(tariff, [{ kwh: 0, kw: 10 }]);
    expect(fromMoney(one.saved)).toBeCloseTo(1200, 9);
    const five = fleetSaving(tariff, new Array(5).fill({ kwh: 0, kw: 10 }));
    expect(fromMoney(five.apart)).toBeCloseTo(6000, 9);
    expect(fromMoney(five.saved)).toBeCloseTo(12 * 20 * 10, 9);
  });
  it('says so when more is saved than the site is stated to take', () => {
    const tariff = tariffOf({ usage: { energyKwh: 1000, demandKw: 10 } });
    const all = fleetSaving(tariff, [{ kwh: 20_000, kw: 1 }]);
    expect(all.beyondUse).toBe(true);
    expect(fromMoney(all.after.total)).toBe(0);
  });
  it('saves nothing without savings', () => {
    const none = fleetSaving(BY_TIME, []);
    expect([none.saved, none.apart]).toEqual([0, 0]);
  });
});

describe('figures by year', () => {
  it('carry the last of a list on, and grow by the product of their rates', () => {
    expect([0, 1, 2, 9].map((year) => ofYear([0.4, 0.3], year))).toEqual([0.4, 0.3, 0.3, 0.3]);
    expect(ofYear(0.4, 5)).toBe(0.4);
    expect(priceIndex(0.02, 3)).toBe(1.02 ** 3);
    expect(priceIndex([0.1, 0.02], 3)).toBeCloseTo(1.1 * 1.02 * 1.02, 12);
    expect(priceIndex([0.1], 0)).toBe(1);
  });
  it('take a month from a list or the same figure for each', () => {
    const lists: readonly Monthly[] = [5, new Array(12).fill(5)];
    const bills = lists.map((energyKwh) => yearBill(tariffOf({ usage: { energyKwh, demandKw: 1 } })).total);
    expect(bills[0]).toBe(bills[1]);
  });
});
