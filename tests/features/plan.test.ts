import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { MotorResult, OptionResult } from '@/lib/engine';
import { readResults, readShownRunId } from '@/lib/features/evaluation/data';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readInputsHash, readPlanInputs, readPlanProgress, readSolution, readTerms, readWishes } from '@/lib/features/plan/data';
import { lowResults } from '@/lib/features/plan/low-case';
import {
  beginSolution,
  cancelSolutions,
  dropWishes,
  failSolution,
  keepSolution,
  type MotorWish,
  setMotorWish,
  setTerms,
  stillWanted,
} from '@/lib/features/plan/mutations';
import type { PlannedProgramme } from '@/lib/features/plan/programme';
import type { PlanTerms } from '@/lib/features/plan/terms';
import { planFromFile, planToFile } from '@/lib/features/plan/wish-file';
import { planWishesSchema } from '@/lib/features/plan/wishes';
import { mustWords } from '@/lib/features/plan/words';
import { workOutPlan } from '@/lib/features/plan/work-out';
import { toMinor } from '@/lib/platform/money';
import { keepPlan } from './support/keep-plan';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

/** Motors of every kind of decision, with all that have failed. */
const ALL = someMotors(120);
const FLEET = [
  ...ALL.filter((motor) => motor.plate.status === 'failed'),
  ...ALL.filter((motor) => motor.plate.status !== 'failed').filter((_, at) => at % 6 === 0),
  // One that nobody has read.
  ...ALL.filter((motor) => motor.plate.status !== 'failed')
    .slice(1, 2)
    .map((motor) => ({ ...motor, tag: 'UNREAD', readings: [] })),
  // One that has failed, and one whose winding leaks to earth.
  ...ALL.slice(2, 3).map((motor) => ({ ...motor, tag: 'FAILED', plate: { ...motor.plate, status: 'failed' as const } })),
  ...ALL.slice(3, 4).map((motor) => ({
    ...motor,
    tag: 'LEAKS',
    plate: { ...motor.plate, insulationSystem: 'thermosetting' as const },
    readings: motor.readings.map((reading) => ({ ...reading, insulationResistanceMohm: 1, insulationTempC: 40 })),
  })),
];
let temporary: TemporaryDatabase;
let study: string;
const results = new Map<string, MotorResult>();
let first: PlannedProgramme;

const plan = async (): Promise<PlannedProgramme> => {
  const inputs = await readPlanInputs(temporary.db.read, study);
  const outcome = inputs && (await workOutPlan(inputs));
  if (!outcome || 'problems' in outcome) throw new Error('there is no plan');
  return outcome;
};
const wish = (motorId: string, changes: Partial<MotorWish>): MotorWish => ({
  studyId: study,
  motorId,
  who: 'P. Planner',
  choice: 'free',
  bundle: '',
  ...changes,
});
const idOf = ({ site, tag }: { readonly site: string; readonly tag: string }): string => {
  const found = [...results].find(([, result]) => result.site === site && result.tag === tag);
  if (!found) throw new Error(`there is no ${site} ${tag}`);
  return found[0];
};
/** An option that nothing speaks against but that its load is assumed. */
const standing = ({ action, timing, findings, net_present_value_by_year: [worth] }: OptionResult) =>
  action !== 'keep' &&
  timing === 'now' &&
  worth !== undefined &&
  findings.every(({ severity, code }) => severity !== 'disqualifies' || code === 'screening-only');
/** A motor of the first plan that has not failed, and the year it is in. */
const planned = () => {
  const found = first.years
    .flatMap(({ year, items }) => items.map((item) => ({ year, item })))
    .find(({ item }) => item.net_present_value !== undefined && item.trust !== 'not-usable');
  if (!found) throw new Error('nothing is planned');
  return found;
};

beforeAll(async () => {
  temporary = temporaryDatabase();
  study = await studyWith(temporary.db, FLEET);
  expect(await readPlanInputs(temporary.db.read, study)).toBeUndefined();
  await temporary.db.write((tx) => enqueueEvaluation(tx, study));
  await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
  const run = (await readShownRunId(temporary.db.read, study)) ?? '';
  for await (const { motorId, result } of readResults(temporary.db.read, run)) results.set(motorId ?? '', result);
  first = await plan();
});
afterAll(() => temporary.remove());

describe('a plan as it is kept', () => {
  it('has every motor once, keeps each budget, and its sums agree to the cent', () => {
    const items = first.years.flatMap((year) => year.items);
    const keys = [...items, ...first.at_failure, ...first.left_out].map(({ site, tag }) => `${site} ${tag}`);
    expect(new Set(keys).size).toBe(FLEET.length);
    expect(keys.length).toBe(FLEET.length);
    expect(items.length).toBeGreaterThan(0);
    for (const { items, spent, budget } of first.years) {
      expect(items.reduce((sum, { cost }) => sum + toMinor(cost, 'USD'), 0n)).toBe(toMinor(spent, 'USD'));
      expect(spent).toBeLessThanOrEqual(budget);
    }
    const worth = items.reduce((sum, item) => sum + toMinor(item.net_present_value ?? 0, 'USD'), 0n);
    expect(worth).toBe(toMinor(first.value, 'USD'));
    expect(first.value).toBeLessThanOrEqual(first.bound + 0.01);
  });

  it('says of each item that must be done why, and of no other', () => {
    const items = first.years.flatMap((year) => year.items);
    const why = new Map(items.flatMap((item) => (item.must ? [[item.tag, mustWords(item, first)] as const] : [])));
    expect([...why.keys()].sort()).toEqual(['FAILED', 'LEAKS']);
    expect(why.get('FAILED')).toEqual(['It has failed.']);
    expect(why.get('LEAKS')).toHaveLength(1);
    expect(why.get('LEAKS')?.[0]).toMatch(/insulation resistance.*1 MΩ is below the minimum of 5 MΩ/);
    for (const item of items.filter(({ must }) => must !== true)) expect(mustWords(item, first)).toEqual([]);
  });

  it('has each item’s figures from the result of its motor', () => {
    for (const [at, { items }] of first.years.entries())
      for (const item of items) {
        const option = results.get(idOf(item))?.options.find(({ id }) => id === item.option);
        expect(item.energy_saved).toEqual(option?.energy_saved);
        expect(item.cash_flow).toEqual(option?.cash_flow);
        expect(item.net_present_value).toBe(option?.net_present_value_by_year[at]);
        // Carried out at once it is the option's own value; later it is another one, and so is its doubt.
        if (at === 0 && item.net_present_value !== undefined)
          expect(item.net_present_value_u).toBeCloseTo(option?.net_present_value?.u ?? Number.NaN, 2);
        else if (item.net_present_value !== undefined) expect(item.net_present_value_u).toBeGreaterThan(0);
      }
    // The whole is surer than if one cause moved every motor, and less sure than if none were shared (GUM 5.2.2 and 5.1.2).
    for (const { items, net_present_value_u: u } of [
      ...first.years,
      { items: first.years.flatMap(({ items }) => items), net_present_value_u: first.net_present_value_u },
    ]) {
      const each = items.map(({ net_present_value_u = 0 }) => net_present_value_u);
      expect(u).toBeGreaterThanOrEqual(Math.hypot(...each) - 0.01);
      expect(u).toBeLessThanOrEqual(each.reduce((sum, part) => sum + part, 0) + 0.01);
    }
  });
});

describe('wishes', () => {
  it('a pinned motor is in its year, the plan says what that costs, and it is free again afterwards', async () => {
    const { item, year } = planned();
    const other = first.years.map((each) => each.year).find((each) => each !== year) ?? 0;
    const id = idOf(item);
    const done = await setMotorWish(temporary.db, wish(id, { choice: { option: item.option, year: other } }));
    expect(done).toEqual({ ok: true, value: { changed: 1 } });
    const moved = await plan();
    const there = moved.years.find((each) => each.year === other)?.items.some(({ tag, site }) => idOf({ tag, site }) === id);
    expect(there).toBe(true);
    expect(moved.value_without_wishes).toBeCloseTo(first.value, 2);
    expect(moved.value).toBeLessThanOrEqual(first.bound + 0.01);
    const history = await temporary.db.read.changeEvent.findMany({ where: { studyId: study, subject: 'plan' } });
    expect(history).toMatchObject([{ field: 'pinned', who: 'P. Planner', fromValue: null }]);
    expect(await setMotorWish(temporary.db, wish(id, { choice: { option: item.option, year: other } }))).toMatchObject({
      value: { changed: 0 },
    });
    await setMotorWish(temporary.db, wish(id, {}));
    expect(await readWishes(temporary.db.read, study)).toEqual([]);
    expect(await plan()).toEqual(first);
  });

  it('a motor that is to be left alone is left out, for that reason', async () => {
    const { item } = planned();
    await setMotorWish(temporary.db, wish(idOf(item), { choice: 'forbidden' }));
    const without = await plan();
    expect(without.left_out.find(({ tag, site }) => tag === item.tag && site === item.site)?.because.code).toBe('forbidden');
    expect(await dropWishes(temporary.db, { studyId: study, who: 'P. Planner' })).toBe(1);
    expect(await plan()).toEqual(first);
  });

  it('figures that may not be used enter only with a name and a reason, which the plan carries', async () => {
    const found = [...results].find(
      ([id, { trust, options }]) =>
        trust.level === 'not-usable' &&
        FLEET.some((motor) => motor.tag === results.get(id)?.tag && motor.plate.status !== 'failed') &&
        options.some(standing),
    );
    if (!found) throw new Error('the fleet has no such motor');
    const [id, { options, tag }] = found;
    const option = options.find(standing)?.id ?? '';
    const choice = { option, year: first.years[0]?.year ?? 0 };
    expect(await setMotorWish(temporary.db, wish(id, { choice }))).toMatchObject({ problem: { code: 'not-usable' } });
    const done = await setMotorWish(temporary.db, wish(id, { choice, override: 'Seen on site: it runs all day.' }));
    expect(done.ok).toBe(true);
    const item = (await plan()).years.flatMap(({ items }) => items).find((each) => each.tag === tag);
    expect(item?.override).toEqual({ by: 'P. Planner', reason: 'Seen on site: it runs all day.' });
    await dropWishes(temporary.db, { studyId: study, who: 'P. Planner' });
    const sound = [...results].find(([, { trust }]) => trust.level === 'sound')?.[0] ?? '';
    expect(await setMotorWish(temporary.db, wish(sound, { override: 'No need.' }))).toMatchObject({
      problem: { code: 'no-need' },
    });
  });

  it('something must be done with a motor that the plan had left, and the plan says what that takes', async () => {
    const left = first.left_out.find(({ because }) => because.code === 'not-worth-it') ?? first.at_failure[0];
    if (!left) throw new Error('every motor is in a year');
    const before = first.years.flatMap(({ items }) => items).length;
    const id = idOf(left);
    expect(await setMotorWish(temporary.db, wish(id, { choice: 'must' }))).toMatchObject({ ok: true });
    const forced = await plan();
    const item = forced.years.flatMap(({ items }) => items).find(({ tag, site }) => tag === left.tag && site === left.site);
    expect(item && mustWords(item, forced)).toEqual(['Must be done, as P. Planner wants it.']);
    expect(forced.years.flatMap(({ items }) => items).length).toBe(before + 1);
    const [kept] = forced.wishes;
    // The only wish costs what all wishes cost, to within what the two plans are proven.
    const all = (forced.value_without_wishes ?? 0) - forced.value;
    expect(kept?.kind).toBe('must');
    expect(Math.abs((kept?.cost ?? Number.NaN) - all)).toBeLessThanOrEqual(kept?.cost_within ?? 0);
    await setMotorWish(temporary.db, wish(id, {}));
    expect(await plan()).toEqual(first);
  });

  it('a latest year, a year without an option and an option without a year hold, and come back from the settings file', async () => {
    const { item, year } = planned();
    const id = idOf(item);
    const years = first.years.map((each) => each.year);
    const [begin, other] = [years[0] ?? 0, years.find((each) => each !== year) ?? 0];
    const where = (found: PlannedProgramme) =>
      found.years.flatMap((each) => each.items.filter((one) => idOf(one) === id).map(({ option }) => [each.year, option]));
    const kept = async (choice: MotorWish['choice']) => {
      expect(await setMotorWish(temporary.db, wish(id, { choice }))).toEqual({
        ok: true,
        value: { changed: expect.any(Number) },
      });
      const wishes = await readWishes(temporary.db.read, study);
      const file = planToFile(wishes, await readTerms(temporary.db.read, study));
      const again = planFromFile(planWishesSchema.parse(JSON.parse(JSON.stringify(file))), 'P. Planner');
      const plain = wishes.map(({ motorId: _, ...each }) => each);
      expect(again).toMatchObject({ ok: true, value: { wishes: plain } });
      return { wishes: plain, plan: await plan() };
    };

    const byFirst = await kept({ by: begin });
    expect(byFirst.wishes).toMatchObject([{ kind: 'must', year: begin }]);
    expect(where(byFirst.plan).map(([when]) => when)).toEqual([begin]);

    const inYear = await kept({ year: other });
    expect(inYear.wishes).toMatchObject([{ kind: 'pinned', year: other }]);
    expect(inYear.wishes[0]).not.toHaveProperty('option');
    expect(where(inYear.plan).map(([when]) => when)).toEqual([other]);

    const asOption = await kept({ option: item.option });
    expect(asOption.wishes).toMatchObject([{ kind: 'pinned', option: item.option }]);
    expect(asOption.wishes[0]).not.toHaveProperty('year');
    expect(where(asOption.plan).map(([, option]) => option)).toEqual([item.option]);

    for (const choice of [
      { by: begin - 1 },
      { year: begin - 1 },
      { year: begin + years.length },
      { option: 'no-such-option' },
      {},
    ])
      expect(await setMotorWish(temporary.db, wish(id, { choice }))).toMatchObject({ problem: { code: 'no-option' } });
    await setMotorWish(temporary.db, wish(id, {}));
    expect(await plan()).toEqual(first);
  });

  it('an option or a year that is not there is refused', async () => {
    const { item, year } = planned();
    const id = idOf(item);
    for (const choice of [
      { option: 'no-such-option', year },
      { option: item.option, year: 1999 },
      { option: 'keep', year },
    ])
      expect(await setMotorWish(temporary.db, wish(id, { choice }))).toMatchObject({ problem: { code: 'no-option' } });
    expect(await setMotorWish(temporary.db, wish('nobody', {}))).toMatchObject({ problem: { code: 'no-motor' } });
  });

  it('go with their motor', async () => {
    const extra = await studyWith(temporary.db, someMotors(1), 'Extra');
    const motor = await temporary.db.read.motor.findFirstOrThrow({ where: { studyId: extra } });
    await temporary.db.write((tx) =>
      tx.planWish.create({ data: { studyId: extra, motorId: motor.id, kind: 'forbidden', who: 'P. Planner' } }),
    );
    await temporary.db.write((tx) => tx.motor.delete({ where: { id: motor.id } }));
    expect(await readWishes(temporary.db.read, extra)).toEqual([]);
  });
});

describe('what holds of the plan as a whole', () => {
  const terms = async (changes: Partial<PlanTerms>) => {
    const before = await readTerms(temporary.db.read, study);
    return setTerms(temporary.db, { studyId: study, who: 'P. Planner', terms: { ...before, ...changes } });
  };

  it('hours of outage are kept to, and an hour more is never worth less than nothing', async () => {
    await terms({ limits: [{ outage_hours: 8 }] });
    const tight = await plan();
    expect(tight.limits?.length).toBeGreaterThan(0);
    for (const { used, limit, shadow_price } of tight.limits ?? []) {
      expect(limit).toBe(8);
      expect(used).toBeLessThanOrEqual(limit);
      expect(shadow_price).toBeGreaterThanOrEqual(0);
    }
    expect(tight.value).toBeLessThanOrEqual(first.bound + 0.01);
    expect(await terms({ limits: [] })).toMatchObject({ value: { changed: 1 } });
    expect(await terms({ limits: [] })).toMatchObject({ value: { changed: 0 } });
    const history = await temporary.db.read.changeEvent.findMany({ where: { studyId: study, subjectLabel: 'the plan' } });
    expect(history.map(({ field }) => field)).toEqual(['limits', 'limits']);
  });

  it('each item’s value in the low case is that of the motor evaluated there, and is lower where energy is saved', async () => {
    const inputs = await readPlanInputs(temporary.db.read, study);
    if (!inputs) throw new Error('nothing is evaluated');
    expect(first.low_case).toEqual({ energy_price: 0.8, hours: 0.8, binding: false });
    const evaluate = lowResults(inputs.again.study, { energyPrice: 0.8, hours: 0.8 });
    let known = 0;
    for (const [at, { items }] of first.years.entries())
      for (const item of items) {
        const motor = inputs.again.motors.get(idOf(item));
        const option = motor && evaluate(motor).options.find(({ id }) => id === item.option);
        expect(item.low_case_value).toBe(option?.net_present_value_by_year[at]);
        if (item.low_case_value === undefined || item.net_present_value === undefined) continue;
        known += 1;
        if ((item.money_saved?.value ?? 0) > 0) expect(item.low_case_value).toBeLessThan(item.net_present_value);
      }
    expect(known).toBeGreaterThan(0);
  });

  it('where the low case binds, only what is worth its money there is chosen freely', async () => {
    await terms({ robust: { energy_price: 0.5, hours: 0.5 } });
    const careful = await plan();
    expect(careful.low_case).toEqual({ energy_price: 0.5, hours: 0.5, binding: true });
    const free = careful.years.flatMap(({ items }) => items).filter(({ must }) => !must);
    for (const { low_case_value } of free) expect(low_case_value).toBeGreaterThanOrEqual(0);
    expect(careful.value).toBeLessThanOrEqual(first.bound + 0.01);
    await terms({ robust: null });
  });

  it('more money never brings less, and the plan as it is stands among the other budgets', async () => {
    await terms({ frontier: [0.02, 0.25, 1, 2] });
    const { frontier = [], value } = await plan();
    expect(frontier.map(({ multiple }) => multiple)).toEqual([0.02, 0.25, 1, 2]);
    const known = frontier.flatMap((point) =>
      point.value === undefined || point.bound === undefined ? [] : [{ ...point, value: point.value, bound: point.bound }],
    );
    for (const [at, point] of known.entries()) {
      const next = known[at + 1];
      // To within what each is proven.
      if (next) expect(next.bound).toBeGreaterThanOrEqual(point.value - 0.01);
    }
    expect(known.find(({ multiple }) => multiple === 1)?.value).toBeCloseTo(value, 2);
    await terms({ frontier: [] });
    expect(await plan()).toEqual(first);
  });
});

describe('an attempt to work a plan out', () => {
  const progress = (now?: Date) => readPlanProgress(temporary.db.read, study, now);

  it('is shown while it is at work, can be given up, and then keeps nothing', async () => {
    const id = await beginSolution(temporary.db, study);
    expect(await stillWanted(temporary.db, id, 'solving')).toBe(true);
    expect(await progress()).toMatchObject({ active: { id, stage: 'solving' } });
    expect((await progress(new Date(Date.now() + 60_000))).stopped).toContain('interrupted');
    await cancelSolutions(temporary.db, study);
    expect((await progress()).stopped).toContain('stopped');
    expect(await stillWanted(temporary.db, id, 'solving')).toBe(false);
    await keepSolution(temporary.db, id, { hash: 'x', result: new Uint8Array([1]) });
    expect(await readSolution(temporary.db.read, study)).toBeUndefined();
  });

  it('leaves the one before in place when it comes to nothing', async () => {
    await keepPlan(temporary.db, study);
    const kept = await readSolution(temporary.db.read, study);
    expect(kept?.outcome).toEqual(first);
    const id = await beginSolution(temporary.db, study);
    await failSolution(temporary.db, id, 'The solver found no plan.');
    expect((await progress()).stopped).toBe('The solver found no plan.');
    expect((await readSolution(temporary.db.read, study))?.outcome).toEqual(first);
    await keepPlan(temporary.db, study);
    expect(await temporary.db.read.planSolution.count({ where: { studyId: study } })).toBe(1);
  });

  it('is out of date once a wish or a budget has changed, and is not when they are as before', async () => {
    const hash = async () => (await readInputsHash(temporary.db.read, study))?.hash;
    const kept = (await readSolution(temporary.db.read, study))?.hash;
    expect(await hash()).toBe(kept);
    const id = idOf(planned().item);
    await setMotorWish(temporary.db, wish(id, { choice: 'forbidden' }));
    expect(await hash()).not.toBe(kept);
    await setMotorWish(temporary.db, wish(id, {}));
    expect(await hash()).toBe(kept);
  });
});
