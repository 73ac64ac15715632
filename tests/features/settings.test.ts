import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Settings } from '@/lib/engine';
import { defaultSettings, readSettings, type SettingsProblem, settingsToJson } from '@/lib/features/study/settings';
import { FULL_TARIFF, PLAIN_TARIFF } from './support/tariffs';

function mustRead(text: string) {
  const outcome = readSettings(text);
  if (!outcome.ok) throw new Error(outcome.problem.text);
  return outcome;
}

function problemOf(value: unknown): SettingsProblem | undefined {
  const outcome = readSettings(typeof value === 'string' ? value : JSON.stringify(value));
  return outcome.ok ? undefined : outcome.problem;
}

describe('the settings of a study', () => {
  it('have the defaults that the format of the settings file states', () => {
    expect(settingsToJson(defaultSettings())).toEqual({
      schema: 1,
      currency: 'USD',
      frequency_hz: 60,
      standards: 'nema',
      as_of: '2026-01-01',
      energy_price_per_kwh: 0.11,
      demand_price_per_kw_month: 9.5,
      demand_coincidence: 0.8,
      discount_rate: 0.08,
      energy_price_escalation: 0,
      horizon_years: 15,
      tax_rate: 0,
      policy: {
        max_simple_payback_years: 3,
        min_probability: 0.8,
        max_reading_age_years: 5,
        at_failure: 'repair',
        spare_capacity_pct: 10,
        resize_below_load_fraction: 0.5,
      },
      budget: [250000, 250000, 250000],
      money_terms: 'real',
      inflation: 0,
      include_failure_cost: false,
      objective: 'net-present-value',
      assumed_load: 0.65,
      repair_shop: 'unknown',
      rebates: [],
      depreciation: null,
      tariffs: {},
      emission_factor_kg_per_kwh: 0.373,
      failure_rate_per_year: 0.05,
      accuracy: { voltage_pct: 0.5, current_pct: 1, power_pct: 1, speed_rpm: 1 },
      load_curves: {},
      limits: {},
      prices: null,
    });
  });

  it('take a default for each key that is missing, also inside policy and accuracy', () => {
    expect(mustRead('{}').settings).toEqual(defaultSettings());
    const { settings, pricesFile } = mustRead(
      '\ufeff{"policy":{"at_failure":"replace"},"accuracy":{"power_pct":0.2},"prices":"lists/prices.csv"}',
    );
    expect(settings.policy).toEqual({ ...defaultSettings().policy, atFailure: 'replace' });
    expect(settings.accuracy).toEqual({ ...defaultSettings().accuracy, powerPct: 0.2 });
    expect(pricesFile).toBe('lists/prices.csv');
    expect(mustRead('{"prices":null}').pricesFile).toBeUndefined();
  });

  it('come back the same from a written file, whatever they are', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true }).map((value) => value + 0);
    const amount = fc.double({ min: 0, max: 1e9, noNaN: true }).map((value) => value + 0);
    const settings: fc.Arbitrary<Settings> = fc.record({
      schema: fc.constant(1),
      currency: fc.constantFrom('USD', 'EUR', 'INR'),
      frequencyHz: fc.constantFrom(50, 60),
      standards: fc.constantFrom('nema', 'iec'),
      asOf: fc.constantFrom('2026-01-01', '2024-02-29'),
      energyPricePerKwh: amount,
      demandPricePerKwMonth: amount,
      demandCoincidence: share,
      discountRate: share,
      energyPriceEscalation: fc.oneof(
        fc.constant([0.03, 0.02]),
        fc.double({ min: -0.4, max: 1, noNaN: true }).map((value) => value + 0),
      ),
      horizonYears: fc.integer({ min: 1, max: 60 }),
      taxRate: share,
      policy: fc.record({
        maxSimplePaybackYears: amount,
        minProbability: share,
        maxReadingAgeYears: amount,
        atFailure: fc.constantFrom('repair', 'replace'),
        spareCapacityPct: amount,
        resizeBelowLoadFraction: share,
      }),
      budget: fc.array(amount, { maxLength: 5 }),
      moneyTerms: fc.constantFrom('real', 'nominal'),
      inflation: share,
      includeFailureCost: fc.boolean(),
      objective: fc.constantFrom('net-present-value', 'energy', 'emissions', 'risk'),
      assumedLoad: fc.double({ min: 0.01, max: 1.5, noNaN: true }),
      repairShop: fc.constantFrom('unknown', 'accredited'),
      rebates: fc.array(
        fc.record(
          {
            action: fc.constantFrom('replace', 'resize'),
            perKw: amount,
            perKwh: amount,
            perMotor: amount,
            cap: amount,
            capShare: share,
          },
          { requiredKeys: ['action', 'perKw'] },
        ),
      ),
      emissionFactorKgPerKwh: fc.oneof(amount, fc.array(amount, { minLength: 1, maxLength: 30 })),
      tariffs: fc.constantFrom({}, { North: FULL_TARIFF }, { '': PLAIN_TARIFF }),
      depreciation: fc.constantFrom<Settings['depreciation']>(
        null,
        { method: 'straight-line', years: 7 },
        { method: 'declining-balance', years: 5, factor: 1.5 },
        { method: 'declining-balance', years: 5 },
      ),
      failureRatePerYear: share,
      accuracy: fc.record({ voltagePct: amount, currentPct: amount, powerPct: amount, speedRpm: amount }),
      loadCurves: fc.constantFrom(
        {},
        {
          kiln: [
            { speedPct: 0, torquePct: 0 },
            { speedPct: 99.5, torquePct: 80 },
          ],
        },
      ),
      limits: fc.constantFrom({}, { 'bearing-trip': { value: 95, reason: 'agreed with the maker' } }),
    });
    fc.assert(
      fc.property(settings, fc.constantFrom(undefined, 'prices.csv'), (given, pricesFile) => {
        const read = mustRead(JSON.stringify(settingsToJson(given, pricesFile)));
        expect(read.settings).toEqual(given);
        expect(read.pricesFile).toBe(pricesFile);
      }),
    );
  });

  it.each([
    [{ discont_rate: 0.08 }, 'discont_rate', 'discount_rate'],
    [{ policy: { max_payback_years: 3 } }, 'policy.max_payback_years', 'policy.max_simple_payback_years'],
    [{ accuracy: { voltage: 1 } }, 'accuracy.voltage', 'accuracy.voltage_pct'],
    [{ discountRate: 0.08 }, 'discountRate', 'discount_rate'],
    [{ limits: { 'belt-slp': { value: 3, reason: 'agreed' } } }, 'limits.belt-slp', 'limits.belt-slip'],
  ])('name the unknown key of %j and the nearest known one', (value, key, near) => {
    expect(problemOf(value)).toMatchObject({ code: 'unknown-key', key });
    expect(problemOf(value)?.remedy).toContain(`${near}?`);
  });

  it('list the known keys when none is near', () => {
    expect(problemOf({ colour: 'red' })?.remedy).toContain('discount_rate');
    // A formula of the table of limits is no number that could be set.
    const formula = problemOf({ limits: { E2: { value: 3, reason: 'agreed' } } });
    expect(formula).toMatchObject({ code: 'unknown-key', key: 'limits.E2' });
    expect(formula?.remedy).toMatch(/^Remove it. Known are C1, /);
    expect(problemOf({ __proto__x: 1 })?.code).toBe('unknown-key');
    expect(problemOf('{"__proto__": {"budget": [1]}}')?.code).toBe('unknown-key');
  });

  it.each([
    ['schema', { schema: 2 }],
    ['currency', { currency: 'dollars' }],
    ['frequency_hz', { frequency_hz: 55 }],
    ['as_of', { as_of: '01/02/2026' }],
    ['as_of', { as_of: '2026-02-30' }],
    ['as_of', { as_of: '2026-02-01T10:00' }],
    ['discount_rate', { discount_rate: 8 }],
    ['discount_rate', { discount_rate: '0.08' }],
    ['horizon_years', { horizon_years: 2.5 }],
    ['budget.1', { budget: [1, -1] }],
    ['policy.at_failure', { policy: { at_failure: 'wait' } }],
    ['rebates.0.action', { rebates: [{ action: 'keep', per_kw: 3 }] }],
    ['load_curves.kiln', { load_curves: { kiln: [{ speed_pct: 100, torque_pct: 80 }] } }],
    [
      'load_curves.kiln.1.speed_pct',
      {
        load_curves: {
          kiln: [
            { speed_pct: 50, torque_pct: 80 },
            { speed_pct: 50, torque_pct: 90 },
          ],
        },
      },
    ],
    [
      'load_curves.kiln.1.torque_pct',
      {
        load_curves: {
          kiln: [
            { speed_pct: 0, torque_pct: 0 },
            { speed_pct: 100, torque_pct: 0 },
          ],
        },
      },
    ],
    ['load_curves.kiln.0.torque_pct', { load_curves: { kiln: [{ speed_pct: 0, torque_pct: -1 }] } }],
    ['limits.C1.reason', { limits: { C1: { value: 4.5, reason: ' ' } } }],
    ['limits.C1.value', { limits: { C1: { value: 0, reason: 'agreed' } } }],
    ['limits.A3.value', { limits: { C1: { value: 2, reason: 'agreed' }, A3: { value: -5, reason: 'agreed' } } }],
    ['plan.limits.0.crew_hours', { plan: { limits: [{ area: 'mill', crew_hours: -1 }] } }],
    ['energy_price_per_kwh', { energy_price_per_kwh: null }],
    ['', []],
    ['', null],
    ['', 'null'],
  ])('name %s where its value cannot be used', (key, value) => {
    expect(problemOf(value)).toMatchObject({ code: 'bad-value', key });
    expect(problemOf(value)?.text).toMatch(/^\S.{8,}\.$/);
  });

  it.each([
    [{ discount_rate: 8 }, 'discount_rate: is 8, and the most is 1.', '8 % is written 0.08'],
    [{ policy: { min_probability: 80 } }, 'policy.min_probability: is 80, and the most is 1.', '80 % is written 0.8'],
    [{ energy_price_escalation: [0.02, 2.5] }, 'energy_price_escalation.1: is 2.5', '2.5 % is written 0.025'],
    [{ assumed_load: 65 }, 'assumed_load: is 65, and the most is 1.5.', '65 % is written 0.65'],
    [{ horizon_years: 0 }, 'horizon_years: is 0, and the least is 1.', 'leave the key out'],
    [{ discount_rate: -8 }, 'discount_rate: is -8, and it must be above -0.5.', 'leave the key out'],
    [{ budget: new Array<number>(61).fill(1) }, 'budget: Too big', 'leave the key out'],
    [{ frequency_hz: 55 }, 'frequency_hz: is neither 50 nor 60.', 'leave the key out'],
    [
      { tariffs: { A: { energy: [{ name: 'all', price_per_kwh: 0.1 }], usage: { energy_kwh: 9 } } } },
      'tariffs.A.usage.demand_kw: is missing.',
      'Add it to tariffs.A.usage.',
    ],
  ])('say of %j what it is, what is allowed and how it is written', (value, text, remedy) => {
    expect(problemOf(value)?.text).toContain(text);
    expect(problemOf(value)?.remedy).toContain(remedy);
  });

  it('say that a text is not JSON', () => {
    for (const text of ['', '{', '{"a":1,}', 'schema: 1', '{"horizon_years": NaN}'])
      expect(problemOf(text)?.code).toBe('not-json');
  });

  it('take a number too large for the language as a value that cannot be used', () => {
    expect(problemOf('{"energy_price_per_kwh": 1e999}')?.code).toBe('bad-value');
  });

  it('leave a study that holds such a limit already readable', () => {
    const text = JSON.stringify({ limits: { C1: { value: -2, reason: 'old' }, Z9: { value: 1, reason: 'old' } } });
    expect(readSettings(text).ok).toBe(false);
    const kept = readSettings(text, { kept: true });
    expect(kept.ok && Object.keys(kept.settings.limits)).toEqual(['C1', 'Z9']);
  });

  it('warn of what can be used and is hardly meant, each by its key', () => {
    const warned = (value: object) => mustRead(JSON.stringify(value)).warnings.map(({ code, key }) => [code, key]);
    expect(warned({ discount_rate: -0.02 })).toEqual([['discount-rate-negative', 'discount_rate']]);
    for (const factor of [373, [0.3, 0.2, 250]])
      expect(warned({ emission_factor_kg_per_kwh: factor })).toEqual([['emission-factor-high', 'emission_factor_kg_per_kwh']]);
    expect(warned({ emission_factor_kg_per_kwh: [1.3, 0.2] })).toEqual([]);
    expect(warned({ policy: { spare_capacity_pct: 0.1 } })).toEqual([['per-cent-small', 'policy.spare_capacity_pct']]);
    expect(warned({ policy: { spare_capacity_pct: 0 } })).toEqual([]);
    // The narrow period stands behind the one that takes every hour; in the other order both hold.
    const all = { name: 'all', price_per_kwh: 0.1 };
    const peak = { name: 'peak', when: 'Mo-Fr 12:00-20:00', price_per_kwh: 0.3 };
    expect(warned({ tariffs: { North: { energy: [all, peak] } } })).toEqual([['period-never-holds', 'tariffs.North.energy.1']]);
    expect(warned({ tariffs: { North: { energy: [peak, all] } } })).toEqual([]);
    // 720 h of April at 100 kW are 72,000 kWh: one more cannot be; nor in 672 h of February.
    const taken = (energy: number | number[], demand: object[], kw: unknown = 100) => ({
      tariffs: { North: { energy: [all], demand, usage: { energy_kwh: energy, demand_kw: kw } } },
    });
    const months = (april: number) => [1, 1, 1, april, 1, 1, 1, 1, 1, 1, 1, 1];
    const any = { name: 'any', price_per_kw: 9 };
    const noon = { name: 'noon', when: 'Mo-Fr 12:00-13:00', price_per_kw: 9 };
    expect(warned(taken(months(72_000), [any]))).toEqual([]);
    expect(warned(taken(months(72_001), [any]))).toEqual([['usage-beyond-peak', 'tariffs.North.usage']]);
    expect(warned(taken(67_201, [any]))).toEqual([['usage-beyond-peak', 'tariffs.North.usage']]);
    // The peak of an hour at noon says nothing of the other hours.
    expect(warned(taken(72_001, [noon], { noon: 100 }))).toEqual([]);
    for (const { text } of mustRead(JSON.stringify(taken(72_001, [any]))).warnings)
      expect(text).toMatch(/72,001 kWh.*107 kW.*100 kW/);
  });

  it('warn when tax and depreciation do not belong together', () => {
    const codes = (text: string) => mustRead(text).warnings.map(({ code, key }) => [code, key]);
    expect(codes('{"depreciation":{"method":"straight-line","years":7}}')).toEqual([
      ['depreciation-without-tax', 'depreciation'],
    ]);
    expect(codes('{"tax_rate":0.25}')).toEqual([['tax-without-depreciation', 'tax_rate']]);
    expect(codes('{"tax_rate":0.25,"depreciation":{"method":"declining-balance","years":7}}')).toEqual([]);
    expect(codes('{}')).toEqual([]);
  });
});
