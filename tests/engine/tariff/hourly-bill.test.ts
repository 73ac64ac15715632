/** Marginal prices against bills that are worked out hour by hour, twice, by a meter and a clerk of their own (`hourly-bill.ts`). */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluateMotor } from '@/lib/engine';
import { fromMoney } from '@/lib/engine/money/money';
import { fleetSaving } from '@/lib/engine/tariff/fleet-saving';
import { marginalPrices } from '@/lib/engine/tariff/marginal';
import { readSchedule } from '@/lib/engine/tariff/schedule';
import { type TariffFile, tariffFromFile, tariffSchema } from '@/lib/features/study/tariff-schema';
import { motorOf, study } from '../support/study';
import { type Grid, meterYear, type PlainDemand, type PlainSite, type PlainTariff, worthOf } from './hourly-bill';

/** Days and hours as a text for the program and as a grid for the clerk, made side by side. */
interface Hours {
  readonly text: string;
  readonly grid: Grid;
}
const NAMES = ['Mo', 'Tu', 'We', 'Th', 'Fr', 'Sa', 'Su'] as const;
const two = (hour: number) => String(hour).padStart(2, '0');
function hours(days: readonly number[], from: number, to: number): Hours {
  const grid = NAMES.map(() => Array.from({ length: 24 }, () => false));
  for (const day of days)
    for (let hour = from; hour < (to > from ? to : to + 24); hour++) {
      const row = grid[(day + Math.floor(hour / 24)) % 7];
      if (row) row[hour % 24] = true;
    }
  return { text: `${days.map((day) => NAMES[day]).join(',')} ${two(from)}:00-${two(to)}:00`, grid };
}
const ALWAYS = hours([0, 1, 2, 3, 4, 5, 6], 0, 24);
const WORKDAYS = [0, 1, 2, 3, 4];
const SUMMER = [6, 7, 8, 9];

/** A demand charge or a period with hours that both sides can read. */
type Timed<T> = Omit<T, 'grid'> & { readonly hours?: Hours };
interface Rules extends Omit<PlainTariff, 'energy' | 'demand'> {
  readonly energy: readonly Timed<PlainTariff['energy'][number]>[];
  readonly demand: readonly Timed<PlainDemand>[];
}
const NOTHING: Rules = { energy: [{ name: 'all hours', price: 0.1 }], blocks: [], demand: [], fixed: 0, taxes: [] };
const ANY_TIME = { name: 'any time', price: 10, unit: 'kW' } as const;

const plain = (rules: Rules): PlainTariff => ({
  ...rules,
  energy: rules.energy.map(({ hours: when, ...rest }) => ({ ...rest, ...(when && { grid: when.grid }) })),
  demand: rules.demand.map(({ hours: when, ...rest }) => ({ ...rest, ...(when && { grid: when.grid }) })),
});

/** The same rules as a settings file states them, with what the site takes as its meters show it. */
function file(rules: Rules, site: PlainSite): TariffFile {
  const years = NAMES.map((_, weekday) => meterYear(plain(rules), site, weekday));
  const monthly = (of: (month: (typeof years)[number][number]) => number) =>
    Array.from({ length: 12 }, (_, at) => years.reduce((sum, year) => sum + (year[at] ? of(year[at]) : 0), 0) / years.length);
  const rule = rules.powerFactor;
  return tariffSchema.parse({
    energy: rules.energy.map(({ name, months, hours: when, price }) => ({
      ...{ name, price_per_kwh: price },
      ...(months && { months }),
      ...(when && { when: when.text }),
    })),
    blocks: rules.blocks.map(({ upToKwh, upToKwhPerKw, price }) => ({
      ...(upToKwh !== undefined && { up_to_kwh: upToKwh }),
      ...(upToKwhPerKw !== undefined && { up_to_kwh_per_kw: upToKwhPerKw }),
      price_per_kwh: price,
    })),
    demand: rules.demand.map(({ name, months, hours: when, price, unit, ratchet, minimum }) => ({
      ...{ name, [unit === 'kW' ? 'price_per_kw' : 'price_per_kva']: price },
      ...(months && { months }),
      ...(when && { when: when.text }),
      ...(ratchet && { ratchet }),
      ...(minimum !== undefined && { minimum }),
    })),
    ...(rule?.kind === 'scaled-demand' && { power_factor: rule }),
    ...(rule?.kind === 'per-point' && {
      power_factor: { kind: rule.kind, below: rule.below, price_per_kwh_per_point: rule.price },
    }),
    ...(rule?.kind === 'reactive-energy' && {
      power_factor: { kind: rule.kind, price_per_kvarh: rule.price, free_kvarh_per_kwh: rule.free },
    }),
    fixed_per_month: rules.fixed,
    taxes: rules.taxes.map((rate, at) => ({ name: `tax ${at + 1}`, rate })),
    usage: {
      energy_kwh: Object.fromEntries(rules.energy.map(({ name }, at) => [name, monthly((month) => month.kwh[at] ?? 0)])),
      demand_kw: Object.fromEntries(rules.demand.map(({ name }, at) => [name, monthly((month) => month.peak[at]?.kw ?? 0)])),
      power_factor: site.powerFactor,
    },
  });
}

const SITE: PlainSite = {
  kw: [500, 500, 520, 540, 580, 640, 700, 680, 610, 560, 520, 500],
  peakKw: [700, 700, 720, 760, 800, 900, 1000, 950, 880, 800, 740, 700],
  powerFactor: Array.from({ length: 12 }, () => 0.86),
  machine: ALWAYS.grid,
};

/** Each price that the program states, and the same by the difference of two bills over the units saved. */
function bothWays(rules: Rules, machine: Hours, { site = SITE, changedIn = 1 } = {}) {
  const taken = { ...site, machine: machine.grid };
  const tariff = tariffFromFile(file(rules, taken));
  const read = readSchedule(machine.text);
  if (!read.ok) throw new Error(read.text);
  const stated = marginalPrices(tariff, read.week, machine.text, changedIn - 1);
  const clerk = plain(rules);
  const hoursAYear = worthOf(clerk, taken, {}).machineHours;
  const demand = worthOf(clerk, taken, { peakKw: 1 }, changedIn);
  const counted = {
    energyPerKwh: worthOf(clerk, taken, { kwh: 1 / hoursAYear }).steady,
    demandPerKwMonth: demand.steady / 12,
    firstYearDemandShare: demand.steady > 1e-6 ? demand.first / demand.steady : 1,
    reactivePerKvarMonth: worthOf(clerk, taken, { peakKvar: 1 }).steady / 12,
    reactivePerKvarh: worthOf(clerk, taken, { kvarh: 1 / hoursAYear }).steady,
  };
  return { stated, counted, tariff, taken, hoursAYear };
}

function agree(rules: Rules, machine: Hours, more: Parameters<typeof bothWays>[2] = {}) {
  const { stated, counted } = bothWays(rules, machine, more);
  for (const [name, value] of Object.entries(counted)) {
    const own = stated[name as keyof typeof counted];
    // A bill of a million has a noise of 1e-10; shares of a first year are quotients of two such differences.
    expect(Math.abs(own - value), `${name}: stated ${own}, counted ${value}`).toBeLessThan(1e-6 + 1e-6 * Math.abs(value));
  }
  return stated;
}

describe('marginal prices are the difference of two bills worked out hour by hour', () => {
  const shift = hours(WORKDAYS, 6, 22);
  const night = hours(WORKDAYS, 22, 6);
  it('flat, with fixed charges and taxes', () => {
    const flat = { ...NOTHING, fixed: 400, taxes: [0.05, 0.02], demand: [ANY_TIME] };
    expect(agree(flat, shift).energyPerKwh).toBeCloseTo(0.107, 9);
  });
  it('seasonal', () => {
    const energy = [
      { name: 'summer', months: SUMMER, price: 0.16 },
      { name: 'winter', price: 0.09 },
    ];
    // 122 of 365 days.
    expect(agree({ ...NOTHING, energy }, shift).energyPerKwh).toBeCloseTo(0.09 + (0.07 * 122) / 365, 9);
  });
  it('by time of use, for shifts, nights, weekends and a machine that always runs', () => {
    const energy = [
      { name: 'summer peak', months: SUMMER, hours: hours(WORKDAYS, 12, 20), price: 0.19 },
      { name: 'day', hours: hours([0, 1, 2, 3, 4, 5], 7, 22), price: 0.12 },
      { name: 'rest', price: 0.07 },
    ];
    for (const machine of [shift, night, hours([5, 6], 0, 24), ALWAYS]) agree({ ...NOTHING, energy }, machine);
  });
  it('demand in its hours: nothing for a machine that never meets them', () => {
    const demand = [
      ANY_TIME,
      { name: 'afternoon', hours: hours(WORKDAYS, 12, 18), months: SUMMER, price: 7, unit: 'kW' } as const,
    ];
    expect(agree({ ...NOTHING, demand }, shift).demandPerKwMonth).toBeCloseTo(10 + 7 / 3, 9);
    expect(agree({ ...NOTHING, demand }, night).demandPerKwMonth).toBeCloseTo(10, 9);
  });
  it('demand under a ratchet, in every month in which the change may be made', () => {
    const demand = [{ ...ANY_TIME, ratchet: { share: 0.8, months: 11 }, minimum: 300 }];
    for (let changedIn = 1; changedIn <= 12; changedIn++) agree({ ...NOTHING, demand }, shift, { changedIn });
  });
  it('a ratchet of a charge that is billed in some months only: the others have no demand of it', () => {
    const demand = [{ ...ANY_TIME, months: SUMMER, ratchet: { share: 0.9, months: 11 } }];
    const winterPeak = { ...SITE, peakKw: [...SITE.peakKw].reverse().map((kw, at) => (at < 2 ? 1500 : kw)) };
    for (const changedIn of [1, 5, 8]) agree({ ...NOTHING, demand }, shift, { site: winterPeak, changedIn });
  });
  it('blocks by kilowatt-hours and by hours of use', () => {
    const byUse = [{ upToKwh: 200_000, price: 0.03 }, { upToKwhPerKw: 450, price: 0.02 }, { price: 0.005 }];
    agree({ ...NOTHING, blocks: byUse, demand: [ANY_TIME] }, shift);
    const hoursOfUse = [{ upToKwhPerKw: 400, price: 0.03 }, { price: 0.005 }];
    expect(agree({ ...NOTHING, blocks: hoursOfUse, demand: [ANY_TIME] }, shift).demandPerKwMonth).toBeGreaterThan(10);
    // Under a ratchet fewer kilowatts first shorten the cheap block, and cost money.
    const dearer = [{ upToKwhPerKw: 100, price: 0.02 }, { price: 0.05 }];
    const held = { ...ANY_TIME, ratchet: { share: 1, months: 12 } };
    const inAugust = agree({ ...NOTHING, blocks: dearer, demand: [held] }, shift, { changedIn: 8 });
    // By hand: the old July holds all twelve months, in each of which 100 kWh cost 0.03 more; later 10 − 3 a month are saved.
    expect(inAugust.firstYearDemandShare).toBeCloseTo(-3 / 7, 6);
  });
  it('each charge for a low power factor', () => {
    for (const powerFactor of [
      { kind: 'scaled-demand', target: 0.95 },
      { kind: 'per-point', below: 0.9, price: 0.0004 },
      { kind: 'reactive-energy', price: 0.012, free: 0.3 },
    ] as const)
      agree({ ...NOTHING, powerFactor, demand: [ANY_TIME], taxes: [0.19] }, shift);
    agree({ ...NOTHING, demand: [{ ...ANY_TIME, unit: 'kVA', ratchet: { share: 0.75, months: 11 } }] }, shift, { changedIn: 3 });
  });
});

describe('what an option saves a year is the difference of two bills worked out hour by hour', () => {
  const machine = hours(WORKDAYS, 6, 22);
  const energy = [
    { name: 'summer peak', months: SUMMER, hours: hours(WORKDAYS, 12, 20), price: 0.19 },
    { name: 'rest', price: 0.08 },
  ];
  const ratchet = { ...ANY_TIME, ratchet: { share: 0.8, months: 11 } };
  const rules: Rules = { ...NOTHING, energy, demand: [ratchet], fixed: 300, taxes: [0.07] };
  it.each([0, 0.4, 1])('with %s of the saved kilowatts in the billed peak', (demandCoincidence) => {
    const { tariff, taken, hoursAYear } = bothWays(rules, machine);
    const motor = motorOf({
      plate: { schedule: machine.text, demandCoincidence },
      motor: { site: 'North', hoursPerYear: Math.floor(hoursAYear) },
    });
    const { options } = evaluateMotor(motor, study({ tariffs: { North: tariff } }));
    const { energy_saved, demand_saved, money_saved } = options.find(({ id }) => id.startsWith('replace-now'))?.figures ?? {};
    const [kwh, kw] = [energy_saved?.value ?? Number.NaN, demand_saved?.value ?? 0];
    expect(kwh).toBeGreaterThan(0);
    const steady = worthOf(plain(rules), taken, { kwh: kwh / hoursAYear, peakKw: kw }).steady;
    expect(money_saved?.value).toBeCloseTo(steady, 3);
    // The motor runs at one load, so its kilowatts are the same in every hour.
    expect(kw).toBeCloseTo((demandCoincidence * kwh) / Math.floor(hoursAYear), 6);
  });
});

const money = (most: number) => fc.integer({ min: 1, max: 1000 }).map((part) => (most * part) / 1000);
const someDays = fc.subarray([0, 1, 2, 3, 4, 5, 6], { minLength: 1 });
const someHours = fc
  .record({ days: someDays, from: fc.integer({ min: 0, max: 23 }), length: fc.integer({ min: 1, max: 23 }) })
  .map(({ days, from, length }) => hours(days, from, ((from + length - 1) % 24) + 1));
const someMonths = fc.subarray([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], { minLength: 1 });
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
/** Without the keys whose value is not given. */
type Given<T> = { [Key in keyof T as undefined extends T[Key] ? never : Key]: T[Key] } & {
  [Key in keyof T as undefined extends T[Key] ? Key : never]?: Exclude<T[Key], undefined>;
};
function given<T extends object>(record: T): Given<T> {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as Given<T>;
}

const charges = fc
  .array(
    fc.record({
      months: maybe(someMonths),
      hours: maybe(someHours),
      price: money(20),
      unit: fc.constantFrom('kW' as const, 'kVA' as const),
      ratchet: maybe(fc.record({ share: money(1), months: fc.integer({ min: 1, max: 12 }) })),
      minimum: maybe(money(900)),
    }),
    { maxLength: 3 },
  )
  .map((list) => list.map((charge, at) => ({ name: `charge ${at}`, ...given(charge) })));
const periods = fc
  .array(fc.record({ months: maybe(someMonths), hours: maybe(someHours), price: money(0.3) }), { maxLength: 3 })
  .chain((narrow) =>
    money(0.3).map((price) => [
      ...narrow.map((period, at) => ({ name: `period ${at}`, ...given(period) })),
      { name: 'the rest', price },
    ]),
  );
const rule: fc.Arbitrary<PlainTariff['powerFactor']> = fc.oneof(
  fc.constant(undefined),
  money(1).map((target) => ({ kind: 'scaled-demand' as const, target })),
  fc.record({ kind: fc.constant('per-point' as const), below: money(1), price: money(0.001) }),
  fc.record({ kind: fc.constant('reactive-energy' as const), price: money(0.03), free: money(1) }),
);
const blocks = (perKw: boolean): fc.Arbitrary<PlainTariff['blocks']> =>
  fc.oneof(
    fc.constant([]),
    fc
      .record({ first: money(300_000), more: money(300_000), prices: fc.tuple(money(0.05), money(0.05), money(0.05)) })
      .map(({ first, more, prices: [a, b, c] }) => [
        { upToKwh: first, price: a },
        { upToKwh: first + more, price: b },
        { price: c },
      ]),
    perKw
      ? fc
          .record({ use: money(700), prices: fc.tuple(money(0.05), money(0.05)) })
          .map(({ use, prices: [a, b] }) => [{ upToKwhPerKw: use, price: a }, { price: b }])
      : fc.constant([]),
  );
const tariffs: fc.Arbitrary<Rules> = charges.chain((demand) =>
  fc
    .record({
      energy: periods,
      blocks: blocks(demand.length > 0),
      powerFactor: rule,
      fixed: money(1000),
      taxes: fc.array(money(0.25), { maxLength: 2 }),
    })
    .map((rest) => given({ ...rest, demand })),
);
const sites: fc.Arbitrary<PlainSite> = fc
  .record({
    kw: fc.array(fc.integer({ min: 100, max: 800 }), { minLength: 12, maxLength: 12 }),
    over: money(1),
    powerFactor: fc.array(fc.integer({ min: 70, max: 99 }), { minLength: 12, maxLength: 12 }),
  })
  .map(({ kw, over, powerFactor }) => ({
    kw,
    peakKw: kw.map((power) => power * (1.3 + over)),
    powerFactor: powerFactor.map((percent) => percent / 100),
    machine: ALWAYS.grid,
  }));

describe('for any tariff, site, hours of the machine and month of the change', () => {
  it('each marginal price is the difference of two bills over the units saved', () => {
    fc.assert(
      fc.property(tariffs, sites, someHours, fc.integer({ min: 1, max: 12 }), (rules, site, machine, changedIn) => {
        agree(rules, machine, { site, changedIn });
      }),
      { numRuns: 40, interruptAfterTimeLimit: 240_000, markInterruptAsFailure: true },
    );
  });
  it('what a whole machine saves is what its two bills differ by, whatever blocks and minimums it passes on the way', () => {
    // The saving stays below a fifth of the least peak, so that no other hour becomes the peak.
    fc.assert(
      fc.property(tariffs, sites, someHours, money(20), (rules, site, machine, kw) => {
        const { tariff, taken, hoursAYear } = bothWays(rules, machine, { site });
        const saving = { kwh: kw, peakKw: kw, kvarh: 0.6 * kw, peakKvar: 0.6 * kw };
        const counted = worthOf(plain(rules), taken, saving).steady;
        const year = { kwh: kw * hoursAYear, kvarh: 0.6 * kw * hoursAYear, kw, kvar: 0.6 * kw, schedule: machine.text };
        const { saved } = fleetSaving(tariff, [year]);
        // Each of at most 14 lines a month is rounded to the hundredth, in two years of bills. Where a block ends on the way, the day on
        // which a year begins moves the energy on either side of it a little; the program spreads weekdays evenly.
        expect(Math.abs(fromMoney(saved) - counted)).toBeLessThan(2 * 12 * 14 * 0.005 + 1e-3 * Math.abs(counted));
      }),
      { numRuns: 20, interruptAfterTimeLimit: 240_000, markInterruptAsFailure: true },
    );
  });
});
