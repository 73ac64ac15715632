import { describe, expect, it } from 'vitest';
import type { OptionResult } from '@/lib/engine';
import { frontier, type NoPlan, type Plan, type PlanMotor, type PlanWishes, planFleet, wishCosts } from '@/lib/engine';
import { costIn } from '@/lib/engine/plan/prepare';
import { SETTINGS } from '../support/study';

const settings = { ...SETTINGS, budget: [10_000, 8000] };

function option(id: string, cost: number, byYear: readonly number[], more: Partial<OptionResult> = {}): OptionResult {
  const timing = id.includes('at-failure') ? 'at-failure' : 'now';
  const worth = byYear[0] ?? 0;
  return {
    id,
    action: id.split('-')[0] as OptionResult['action'],
    timing,
    rated_power_kw: 30,
    cost,
    net_present_value: { value: worth, u: 1, unit: 'USD' },
    cash_flow: [],
    net_present_value_by_year: byYear,
    findings: [],
    ...more,
  };
}

const keep = option('keep', 0, [0, 0]);

function motor(tag: string, options: readonly OptionResult[], more: Partial<PlanMotor> = {}): PlanMotor {
  return {
    site: 'North',
    tag,
    rank: Number(tag.slice(1)),
    failed: false,
    trust: { level: 'sound', findings: [] },
    options: [keep, ...options],
    ...more,
  };
}

const BREACH = { code: 'a-breach', text: 'The winding leaks to earth.' };

const FLEET: readonly PlanMotor[] = [
  motor('M1', [option('replace-now', 6000, [9000, 8200])]),
  motor('M2', [option('replace-now', 5000, [7000, 6400]), option('resize-now', 4000, [6500, 5900])]),
  motor('M3', [option('replace-now', 4500, [4000, 3600])]),
  motor('M4', [option('replace-now', 3000, [-200, -300]), option('replace-at-failure', 900, [700, 700])]),
  motor('M5', [option('replace-now', 2000, [5000, 4500])], { trust: { level: 'not-usable', findings: [] } }),
  motor('M6', [option('repair-now', 3500, [0, 0])], { failed: true }),
  motor('M7', []),
];

async function plan(motors = FLEET, changes: Partial<typeof settings> = {}, wishes: PlanWishes = {}): Promise<Plan> {
  const found = await planFleet(motors, { ...settings, ...changes }, wishes);
  if (!found || 'problems' in found) throw new Error('no plan');
  return found;
}

const picked = ({ years }: Plan) => years.map(({ items }) => items.map(({ tag, option: id }) => `${tag} ${id}`));

describe('the plan of a fleet', () => {
  it('funds what is worth most within each year, what failed first, and lists every other motor once with its reason', async () => {
    const found = await plan();
    // 10,000 in 2026: the failed motor takes 3,500, M1 6,000. 8,000 in 2027: M2 resized, 4,000; M3 at 4,500 no longer fits beside it.
    // Other ways by hand: M2 and M6 now (8,500), M1 next: 7,000 + 8,200 = 15,200; M1 and M6 now, M2 replaced next: 15,400; M2 resized and
    // nothing else: 14,900; M2 now at 5,000 with M6, M1 then: 15,200. M2 resized now with M6 leaves 2,500.
    expect(picked(found)).toEqual([['M1 replace-now', 'M6 repair-now'], ['M2 replace-now']]);
    expect(found.value).toBe(15_400);
    expect(found.gap).toBeLessThan(0.2);
    expect(found.years.map(({ year, spent }) => [year, spent])).toEqual([
      [2026, 9500],
      [2027, 5000],
    ]);
    // 900 at 5 % a year, then at 5 % of what is left: 45 and 42.75.
    expect(found.at_failure).toEqual([{ site: 'North', tag: 'M4', option: 'replace-at-failure', expected_spend: [45, 42.75] }]);
    expect(found.left_out.map(({ tag, because }) => [tag, because.code])).toEqual([
      ['M3', 'beyond-budget'],
      ['M5', 'not-usable'],
      ['M7', 'no-option'],
    ]);
    // The plain list takes M6, M1 in 2026, M2 in 2027.
    expect(found.greedy_value).toBe(15_400);
  });

  it('an override lets a motor in and stands beside it; a pin and a ban are kept, and say what they cost', async () => {
    const at = (tag: string) => ({ site: 'North', tag });
    const free = await plan();
    const override = { by: 'R. Example', reason: 'meter checked by hand' };
    const let_in = await plan(FLEET, {}, { overrides: [{ ...at('M5'), ...override }] });
    expect(let_in.years.flatMap(({ items }) => items).find(({ tag }) => tag === 'M5')?.override).toEqual(override);
    expect(let_in.value).toBeGreaterThan(free.value);
    const wishes = { pins: [{ ...at('M3'), option: 'replace-now', year: 2026 }] };
    const pinned = await plan(FLEET, {}, wishes);
    expect(picked(pinned)[0]).toContain('M3 replace-now');
    expect(pinned.years[0]?.items.find(({ tag }) => tag === 'M3')).toMatchObject({
      must: true,
      pinned: true,
      because: [{ code: 'pinned', text: 'Somebody asked for replace-now in 2026.' }],
    });
    // By hand: M3 and M6 take 8,000 of 2026, and nothing fits the rest; M1 at 8,200 is the best of 2027: 12,200 in place of 15,400.
    expect(pinned.value).toBe(12_200);
    expect(await wishCosts(FLEET, settings, wishes, pinned)).toMatchObject([{ wish: 'pin', index: 0, cost: 3200 }]);
    const banned = await plan(FLEET, {}, { forbid: [at('M1')] });
    expect(picked(banned).flat().join(' ')).not.toContain('M1');
    expect(banned.left_out.find(({ tag }) => tag === 'M1')?.because.code).toBe('forbidden');
  });

  it('a must-do item is done in time even at a loss, and a breach of a safety limit in the first year', async () => {
    const found = await plan(FLEET, {}, { mustDo: [{ site: 'North', tag: 'M4', year: 2027 }] });
    expect(found.years.flatMap(({ items }) => items).find(({ tag }) => tag === 'M4')).toMatchObject({ must: true });
    const breach = motor('M8', [option('repair-now', 800, [-100, -100])], {
      safety: BREACH,
      trust: { level: 'not-usable', findings: [] },
    });
    const mended = await plan([...FLEET, breach]);
    expect(picked(mended)[0]).toContain('M8 repair-now');
    const why = (tag: string, { years }: Plan) => years.flatMap(({ items }) => items).find((each) => each.tag === tag)?.because;
    expect(why('M8', mended)).toEqual([BREACH]);
    expect(why('M6', mended)?.map(({ code }) => code)).toEqual(['failed']);
    expect(why('M1', mended)).toBeUndefined();
    expect(why('M4', found)).toEqual([{ code: 'asked-for', text: 'Somebody asked that something be done with it by 2027.' }]);
    const helpless = motor('M8', [], { safety: BREACH });
    expect((await plan([...FLEET, helpless])).left_out.find(({ tag }) => tag === 'M8')?.because.code).toBe(
      'safety-without-option',
    );
  });

  it('hours of outage and of crews are kept by area and year, a bundle takes its outage once, and what is lacking is named', async () => {
    const motors = ['M1', 'M2', 'M3'].map((tag) => motor(tag, [option('replace-now', 100, [1000, 900])], { area: 'mill' }));
    const jobs = [{ outageHours: 6, crewHours: 10 }];
    const limits = [{ area: 'mill', year: 2026, outageHours: 7 }];
    const counts = (found: Plan) => found.years.map(({ items }) => items.length);
    expect(counts(await plan(motors))).toEqual([3, 0]);
    const tight = await plan(motors, {}, { limits, jobs });
    expect(counts(tight)).toEqual([1, 2]);
    expect(tight.limits).toMatchObject([{ kind: 'outage', year: 2026, limit: 7, used: 6 }]);
    const bundles = [{ name: 'mill', motors: motors.map(({ site, tag }) => ({ site, tag })) }];
    expect(counts(await plan(motors, {}, { limits, jobs, bundles }))).toEqual([3, 0]);
    expect(counts(await plan(motors, {}, { limits: [{ crewHours: 25 }], jobs }))).toEqual([2, 1]);
    // Elsewhere nothing is limited, and no hours at all is a limit too.
    const apart = motors.map((each, at) => ({ ...each, area: at === 0 ? 'kiln' : 'mill' }));
    expect(counts(await plan(apart, {}, { limits: [{ area: 'kiln', outageHours: 0 }], jobs }))).toEqual([2, 0]);
    const failed = motors.map((each) => ({ ...each, failed: true }));
    const none = (await planFleet(failed, settings, { limits, jobs })) as NoPlan;
    expect(none.problems).toEqual([
      { code: 'hours-too-few', text: 'What must be done does not fit the hours of outage of mill in 2026: 11.0 h are lacking.' },
    ]);
  });

  it('a robust plan takes only what is worth it in the low case too', async () => {
    const motors = [
      motor('M1', [option('replace-now', 6000, [9000, 8200])], { low: { 'replace-now': [-50, -80] } }),
      motor('M2', [option('replace-now', 6000, [2000, 1800])], { low: { 'replace-now': [300, 200] } }),
    ];
    const robust = { energyPrice: 0.8, hours: 0.8 };
    expect(picked(await plan(motors, { budget: [6000] }))).toEqual([['M1 replace-now']]);
    const careful = await plan(motors, { budget: [6000] }, { robust });
    expect(picked(careful)).toEqual([['M2 replace-now']]);
    expect(careful.years[0]?.items[0]?.low_case_value).toBe(300);
    expect(careful.left_out.map(({ because }) => because.code)).toEqual(['not-robust']);
  });

  it('names what to measure next by what the reading is worth beyond its cost, in money of this plan', async () => {
    const doubt = (u: number, effect: number): NonNullable<PlanMotor['doubts']> => [
      { about: 'load', figure: { value: 0.6, u, unit: '1' }, effects: [{ option: 'replace-now', net_present_value: effect }] },
    ];
    const screening = { code: 'screening-only', severity: 'disqualifies' as const, text: '', cause: '', next: '', evidence: {} };
    const closed = { trust: { level: 'not-usable' as const, findings: [] } };
    const motors = [
      motor('M1', [option('replace-now', 1000, [1000, 900])], { doubts: doubt(0.02, 2000) }),
      motor('M2', [option('replace-now', 1000, [50_000, 45_000])], { doubts: doubt(0.02, 100) }),
      motor('M3', [option('replace-now', 1000, [3000, 2800], { findings: [screening] })], {
        ...closed,
        doubts: doubt(0.2, 3000),
      }),
    ];
    const readings = { load: { cost: 150, u: 0.02 }, hours: { cost: 1, u: 0.01 }, efficiency: { cost: 1, u: 0.01 } };
    const { measure_next } = await plan(motors, { budget: [1e6] }, { readings });
    // M1: 2000 L(0.5) = 395.6 at best; the reading is as doubtful as the load was, so that it moves by 2000/√2: 1414.2 L(0.7071),
    // with L(0.7071) = φ − 0.7071 (1 − Φ) = 0.31069 − 0.7071 × 0.23975 = 0.14116; so 199.6. M2: nothing can flip it. M3: closed without a reading.
    const [third, first] = measure_next;
    expect(measure_next.map(({ tag }) => tag)).toEqual(['M3', 'M1']);
    expect(first?.value_of_perfect).toBeCloseTo(395.6, 0);
    expect(first?.value_of_reading).toBeCloseTo(199.6, 0);
    expect(first?.net).toBeCloseTo(49.6, 0);
    // M3: 3000 and 3000 L(1) = 3000 × 0.08332 = 250 more, for what would not have been worth it.
    expect(third?.value_of_perfect).toBeCloseTo(3250, 0);
    const answered = [{ site: 'North', tag: 'M3', by: 'R. Example', reason: 'load known from the drive' }];
    const let_in = await plan(motors, { budget: [1e6] }, { overrides: answered });
    expect(picked(let_in)[0]).toContain('M3 replace-now');
    const barred = { ...screening, code: 'wrong-plate' };
    const ruled_out = [motor('M3', [option('replace-now', 1000, [3000, 2800], { findings: [barred] })], closed)];
    expect(picked(await plan(ruled_out, {}, { overrides: answered })).flat()).toEqual([]);
  });

  it('refuses wishes that cannot be, in words', async () => {
    const codes = async (wishes: PlanWishes) =>
      ((await planFleet(FLEET, settings, wishes)) as NoPlan).problems.map(({ code }) => code);
    expect(await codes({ forbid: [{ site: 'North', tag: 'M99' }] })).toEqual(['wish-unknown']);
    expect(await codes({ pins: [{ site: 'North', tag: 'M1', option: 'resize-now' }] })).toEqual(['wish-unknown']);
    expect(await codes({ pins: [{ site: 'North', tag: 'M1', year: 2031 }] })).toEqual(['wish-unknown']);
    expect(await codes({ limits: [{ area: 'kiln', crewHours: 5 }] })).toEqual(['limit-unknown']);
    expect(await codes({ limits: [{ site: 'Nrth', crewHours: 5 }] })).toEqual(['limit-unknown']);
    expect(await codes({ limits: [{ site: 'North', year: 2031, crewHours: 5 }] })).toEqual(['limit-unknown']);
    expect(await codes({ pins: [{ site: 'North', tag: 'M5', year: 2026 }] })).toEqual(['needs-override']);
    const both = { site: 'North', tag: 'M1', year: 2026 };
    expect(await codes({ pins: [both], forbid: [both] })).toEqual(['wishes-contradict']);
  });

  it('tells its stages, and may be called off', async () => {
    const stages = new Set<string>();
    await planFleet(FLEET, settings, {}, { progress: ({ stage }) => stages.add(stage) });
    expect([...stages]).toEqual(['bound', 'choose']);
    expect(await planFleet(FLEET, settings, {}, { cancelled: () => true })).toBeUndefined();
    expect(await frontier(FLEET, settings, {}, [1], { cancelled: () => true })).toBeUndefined();
  });

  it('draws what more or less money would bring', async () => {
    const points = await frontier(FLEET, settings, {}, [3, 0.1, 1]);
    expect(points?.map(({ multiple }) => multiple)).toEqual([0.1, 1, 3]);
    // A tenth cannot pay for the failed motor; three times pays for everything that is worth it, all of it in 2026.
    expect(points?.[0]).toEqual({ multiple: 0.1, budget: 1800 });
    expect(points?.[1]).toMatchObject({ budget: 18_000, spent: 14_500, value: 15_400 });
    expect(points?.[2]).toMatchObject({ value: 9000 + 7000 + 4000 });
  });

  it('a bundle is done in one year or not at all', async () => {
    const bundle = { name: 'pair', motors: ['M1', 'M3'].map((tag) => ({ site: 'North', tag })) };
    const found = await plan(FLEET, { budget: [10_600, 8000] }, { bundles: [bundle] });
    const years = ['M1', 'M3'].map((tag) => found.years.find(({ items }) => items.some((item) => item.tag === tag))?.year);
    expect(years[0]).toBe(years[1]);
  });

  it('does not depend on the order of the motors, and grows with the budget', async () => {
    const turned = await plan([...FLEET].reverse());
    expect(turned).toEqual(await plan());
    let last = 0;
    for (const share of [0.6, 1, 1.5, 3]) {
      const { value } = await plan(FLEET, { budget: [10_000 * share, 8000 * share] });
      expect(value).toBeGreaterThanOrEqual(last);
      last = value;
    }
  });

  it('takes the objective of the study: energy in place of money', async () => {
    const saving = (value: number) => ({ energy_saved: { value, u: 1, unit: 'kWh/a' } });
    const motors = [
      motor('M1', [option('replace-now', 6000, [9000, 8000], saving(1000))]),
      motor('M2', [option('replace-now', 6000, [1000, 900], saving(9000))]),
    ];
    expect(picked(await plan(motors, { budget: [6000] }))).toEqual([['M1 replace-now']]);
    expect(picked(await plan(motors, { budget: [6000], objective: 'energy' }))).toEqual([['M2 replace-now']]);
    const clean = (value: number) => ({ emissions_saved: { value, u: 1, unit: 'kg/a' } });
    const emitting = [
      motor('M1', [option('replace-now', 6000, [9000, 8000], clean(10))]),
      // Ten years at 0 and five at 300 kg are 100 kg a year over the horizon of fifteen.
      motor('M2', [
        option('replace-now', 6000, [1000, 900], {
          ...clean(0),
          emissions_saved_by_year: [...Array(10).fill(0), ...Array(5).fill(300)],
        }),
      ]),
    ];
    const least = await plan(emitting, { budget: [6000], objective: 'emissions' });
    expect([picked(least), least.value]).toEqual([[['M2 replace-now']], 100]);
  });

  it('says what does not fit when what must be done is too dear', async () => {
    const found = (await planFleet(FLEET, { ...settings, budget: [2000, 8000] })) as NoPlan;
    expect(found.problems).toEqual([
      { code: 'budget-too-small', text: 'What must be done does not fit the budget of 2026: USD 1500.00 are lacking.' },
    ]);
  });
});

describe('what an option costs in a later year', () => {
  const bought = option('replace-now', 10_000, [0, 0]);
  it('grows with inflation from the year after the first in nominal terms, and stays in real ones; whole cents', () => {
    const nominal = { ...settings, moneyTerms: 'nominal', inflation: 0.033 } as const;
    // 10,000 · 1.033² = 10,670.89 by hand.
    expect([0, 1, 2].map((year) => costIn(bought, year, nominal))).toEqual([10_000, 10_330, 10_670.89]);
    expect([0, 1, 2].map((year) => costIn(bought, year, { ...nominal, moneyTerms: 'real' }))).toEqual([10_000, 10_000, 10_000]);
  });
});
