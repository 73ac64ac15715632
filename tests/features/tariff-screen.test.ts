import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Motor } from '@/lib/engine';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readDecidedSavings, readSiteSchedules } from '@/lib/features/setup/data';
import { isPerCent, MOST_ROWS, TARIFF_FIELDS, TARIFF_ROWS, tariffCells, typedTariff } from '@/lib/features/setup/tariff-cells';
import { cellOf, placeWords } from '@/lib/features/setup/tariff-problem';
import { viewTariff } from '@/lib/features/setup/tariff-view';
import { readSettings } from '@/lib/features/study/settings';
import { tariffToFile } from '@/lib/features/study/tariff-schema';
import { someMotors, studyWith } from './support/study-with-demo';
import { FULL_TARIFF, PLAIN_TARIFF } from './support/tariffs';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

const typed = (cells: Readonly<Record<string, string>>) => typedTariff(new Map(Object.entries(cells)));
const about = (schedules: readonly { schedule: string; motors: number }[] = []) => ({
  currency: 'USD',
  asOf: '2026-01-01',
  schedules,
});

describe('the tariff form', () => {
  it.each([
    ['with every part', FULL_TARIFF],
    ['with next to nothing', PLAIN_TARIFF],
    [
      'by points of the power factor',
      { ...FULL_TARIFF, powerFactor: { kind: 'per-point', below: 0.86, pricePerKwhPerPoint: 0.005 } },
    ],
    [
      'by reactive energy',
      { ...FULL_TARIFF, powerFactor: { kind: 'reactive-energy', pricePerKvarh: 0.01, freeKvarhPerKwh: 0.5 } },
    ],
  ] as const)('sent as it is shown gives the same tariff back: %s', (_, tariff) => {
    const { file, refused } = typed(tariffCells(tariffToFile(tariff)));
    expect(refused).toEqual({});
    const read = readSettings(JSON.stringify({ tariffs: { North: file } }));
    expect(read.ok ? read.settings.tariffs.North : read.problem).toEqual(tariff);
  });

  it('leaves out rows without a typed cell, wherever they stand', () => {
    const { file, rows } = typed({
      'energy.0.name': '',
      'energy.3.name': 'all hours',
      'energy.3.price_per_kwh': '0.11',
      'demand.0.unit': 'kVA',
    });
    expect(file).toEqual({ energy: [{ name: 'all hours', price_per_kwh: 0.11 }] });
    expect(rows.get('energy.0')).toBe('energy.3');
  });

  it.each([
    ['6-9', [6, 7, 8, 9]],
    ['11-2', [1, 2, 11, 12]],
    [' 1 - 3 , 6 ', [1, 2, 3, 6]],
    ['12', [12]],
  ])('reads the months %s', (text, months) => {
    expect(typed({ 'energy.0.months': text }).file.energy).toEqual([{ months }]);
  });

  it.each([
    ['energy.0.months', 'June'],
    ['energy.0.months', '0-3'],
    ['energy.0.months', '3-13'],
    ['energy.0.price_per_kwh', '0,11'],
    ['demand.2.minimum', '1,000'],
    ['escalation', '2 %; 3,5 %'],
    ['energy.0.price_per_kwh', '11 %'],
    ['usage.energy_kwh', '1; two'],
    ['usage.energy_kwh', 'day: 1\nnights'],
    ['fixed_per_month', 'none'],
  ])('refuses %s typed as “%s” in words', (cell, text) => {
    expect(typed({ [cell]: text }).refused[cell]?.length).toBeGreaterThan(20);
  });

  it('takes shares and rates in per cent, and everything else as it is', () => {
    const { file } = typed({
      'taxes.0.rate': '5.5',
      escalation: '2; 3 %',
      'demand.0.ratchet_share': '80',
      'power_factor.limit': '0.9',
    });
    expect(file).toMatchObject({ taxes: [{ rate: 0.055 }], escalation: [0.02, 0.03], demand: [{ ratchet: { share: 0.8 } }] });
    const names = [
      'taxes.3.rate',
      'escalation',
      'demand.1.ratchet_share',
      'demand.1.price',
      'power_factor.limit',
      'blocks.0.price_per_kwh',
    ];
    expect(names.filter(isPerCent)).toEqual(names.slice(0, 3));
  });

  it('leads a fault of the whole back to its cell and says its place in words', () => {
    const read = typed({ 'energy.2.name': 'a', 'energy.5.name': 'b', 'demand.1.name': 'c', 'blocks.4.price_per_kwh': '1' });
    expect(cellOf('energy.1.price_per_kwh', read)).toBe('energy.5.price_per_kwh');
    expect(cellOf('energy.0.months.1', read)).toBe('energy.2.months');
    expect(cellOf('demand.0', read)).toBe('demand.1.price');
    expect(cellOf('demand.0.ratchet.share', read)).toBe('demand.1.ratchet_share');
    expect(cellOf('blocks.0', read)).toBe('blocks.4.up_to_kwh');
    expect(cellOf('energy', read)).toBe('energy.0.name');
    expect(cellOf('usage', read)).toBe('usage.energy_kwh');
    expect(cellOf('usage.demand_kw.c', read)).toBe('usage.demand_kw');
    expect(cellOf('power_factor.below', read)).toBe('power_factor.limit');
    expect(placeWords('energy.1.price_per_kwh')).toBe('Energy, row 2, price per kwh');
    expect(placeWords('')).toBe('The tariff');
  });

  it('names each cell once, with a label, and notes for single fields', () => {
    const names = [...TARIFF_ROWS.flatMap(({ part, cells }) => cells.map((cell) => `${part}.${cell.name}`))];
    expect(new Set(names).size).toBe(names.length);
    for (const field of Object.values(TARIFF_FIELDS).flat()) expect(field.note.length).toBeGreaterThan(10);
    expect(MOST_ROWS).toBe(100);
  });
});

describe('what a tariff comes to on the screen', () => {
  it('shows the last kilowatt-hour beside the average, by hours of the site’s motors, and a bill that adds up', () => {
    const view = viewTariff(
      FULL_TARIFF,
      about([
        { schedule: 'Sa,Su', motors: 3 },
        { schedule: 'two shifts', motors: 1 },
        { schedule: '', motors: 9 },
      ]),
    );
    const [any, weekend, unreadable] = view.marginal;
    expect(view.marginal).toHaveLength(3);
    expect(weekend).toMatchObject({ hours: 'Sa,Su', motors: 3 });
    expect(weekend?.energy).toBeLessThan(any?.energy ?? 0);
    expect(unreadable?.unreadable).toContain('Mo-Fr 06:00-22:00');
    expect(unreadable?.energy).toBe(any?.energy);
    expect(view.average).toBeGreaterThan(any?.energy ?? 1);
    const total = view.bill?.months.reduce((sum, month) => sum + month.lines.reduce((part, line) => part + line.amount, 0), 0);
    expect(total).toBeCloseTo(view.bill?.total ?? Number.NaN, 6);
  });
  it('has no average and no bill without what the site takes', () => {
    const view = viewTariff(PLAIN_TARIFF, about());
    expect(view.average).toBeUndefined();
    expect(view.bill).toBeUndefined();
    expect(view.marginal[0]?.energy).toBe(0.11);
  });
});

describe('what a site’s decisions save together', () => {
  const savings = [
    { kwh: 12_000, kw: 3, schedule: 'Mo-Fr 07:00-22:00' },
    { kwh: 30_000, kw: 4 },
  ];
  it('is billed once beside the sum of the motors, and says what is not in it', () => {
    const { together } = viewTariff(FULL_TARIFF, { ...about(), savings });
    expect(together).toMatchObject({ motors: 2, kwh: 42_000, kw: 7, beyondUse: false, withoutPowerFactor: true });
    expect((together?.saved ?? 0) / (together?.apart ?? 1)).toBeGreaterThan(0.9);
    expect((together?.saved ?? 0) / (together?.apart ?? 1)).toBeLessThan(1.1);
  });
  it('is absent without decisions, or without what the site takes', () => {
    expect(viewTariff(FULL_TARIFF, about()).together).toBeUndefined();
    expect(viewTariff(PLAIN_TARIFF, { ...about(), savings }).together).toBeUndefined();
  });
});

describe('the hours that a site’s motors keep', () => {
  let temporary: TemporaryDatabase;
  beforeEach(() => {
    temporary = temporaryDatabase();
  });
  afterEach(() => temporary.remove());

  it('and what they save by their decisions is read from the evaluation shown; nothing before the first', async () => {
    const motors = someMotors(60);
    const study = await studyWith(temporary.db, motors);
    const site = motors[0]?.site ?? '';
    expect(await readDecidedSavings(temporary.db.read, study, site)).toEqual([]);
    await temporary.db.write((tx) => enqueueEvaluation(tx, study));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const savings = await readDecidedSavings(temporary.db.read, study, site);
    const rows = await temporary.db.read.motorEvaluation.findMany({
      where: { studyId: study, timing: 'now', action: { in: ['replace', 'resize'] }, trust: { not: 'not-usable' } },
    });
    expect(savings.length).toBe(rows.length);
    expect(savings.length).toBeGreaterThan(0);
    const kept = rows.reduce((sum, row) => sum + (row.energySavedKwhPerYear ?? 0), 0);
    expect(savings.reduce((sum, { kwh }) => sum + kwh, 0) / kept).toBeCloseTo(1, 6);
    expect(await readDecidedSavings(temporary.db.read, study, 'elsewhere')).toEqual([]);
  });

  it('are counted by site, those without hours too', async () => {
    const motors: Motor[] = someMotors(5).map((motor, index) => ({
      ...motor,
      plate: { ...motor.plate, schedule: index < 2 ? 'Mo-Fr 06:00-22:00' : undefined },
    }));
    const study = await studyWith(temporary.db, motors);
    const site = motors[0]?.site ?? '';
    expect(await readSiteSchedules(temporary.db.read, study)).toEqual([
      { site, schedule: '', motors: 3 },
      { site, schedule: 'Mo-Fr 06:00-22:00', motors: 2 },
    ]);
  });
});
