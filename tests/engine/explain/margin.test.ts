import { describe, expect, it } from 'vitest';
import { atTheMargin, evaluateMotor } from '@/lib/engine';
import type { Settings } from '@/lib/engine/settings';
import { marginSentences } from '@/lib/features/motor/margin-words';
import { motorOf, study } from '../support/study';
import { BY_TIME, tariffOf } from '../tariff/tariffs';

const of = (settings: Partial<Settings> = {}, schedule?: string) =>
  atTheMargin(
    evaluateMotor(motorOf({ plate: schedule === undefined ? {} : { schedule }, motor: { site: 'North' } }), study(settings)),
  );

describe('what a saving is worth at the margin', () => {
  it('is the flat price without a tariff, and there is no average', () => {
    expect(of()).toEqual({ energyPerKwh: 0.11, demandPerKwMonth: 9.5, coincidence: 0.8, firstYearDemandShare: 1 });
  });
  it('stands beside the average of the whole bill, by hand', () => {
    const North = tariffOf({
      pricePerKwh: 0.1,
      demand: [{ name: 'any time', price: 10, unit: 'kW', ratchet: { share: 1, months: 11 } }],
      fixedPerMonth: 1000,
      usage: { energyKwh: 10_000, demandKw: 50 },
    });
    const found = of({ tariffs: { North } });
    // (10,000 × 0.1 + 50 × 10 + 1,000) / 10,000 = 0.25; the ratchet holds every month of the year after the change but the last.
    expect(found.averagePerKwh).toBeCloseTo(0.25, 9);
    expect([found.energyPerKwh, found.demandPerKwMonth]).toEqual([0.1, 10]);
    expect(found.firstYearDemandShare).toBeCloseTo(1 / 12, 9);
    const [energy, demand] = marginSentences(found, 'EUR');
    expect(energy).toBe(
      'A saved kilowatt-hour is worth 0.100\u202fEUR here; the site pays 0.250\u202fEUR on average, fixed charges and demand included.',
    );
    expect(demand).toMatch(/worth 10\.00\sEUR a month, and 80\s% .*; in the first year only 8\s% of that comes/);
  });
  it('goes by the hours of the motor, and says where a kilowatt is worth nothing', () => {
    const found = of({ tariffs: { North: BY_TIME } }, 'Sa,Su');
    expect(found).toMatchObject({ energyPerKwh: 0.08, demandPerKwMonth: 0 });
    expect(marginSentences(found, 'USD')[1]).toBe('A saved kilowatt is worth nothing on the bill.');
  });
  it('names what reactive power costs where it is charged', () => {
    const powerFactor = { kind: 'reactive-energy', pricePerKvarh: 0.02, freeKvarhPerKwh: 0.3 } as const;
    const North = tariffOf({ powerFactor, usage: { energyKwh: 10_000, demandKw: 50, powerFactor: 0.8 } });
    expect(of({ tariffs: { North } }).reactive).toEqual({ perKvarMonth: 0, perKvarh: expect.closeTo(0.02, 9) });
  });
});
