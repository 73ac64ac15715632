import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { MotorResult } from '@/lib/engine';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { setMotorWish } from '@/lib/features/plan/mutations';
import { readVersion } from '@/lib/features/sign-off/data';
import { readDraft } from '@/lib/features/sign-off/draft';
import { freezeProgramme } from '@/lib/features/sign-off/mutations';
import { notChosen } from '@/lib/features/sign-off/not-chosen';
import { agrees, reconcile } from '@/lib/features/sign-off/reconcile';
import { reportOf } from '@/lib/features/sign-off/report';
import { workbookOf } from '@/lib/features/sign-off/workbook-sum';
import { toMinor } from '@/lib/platform/money';
import { DECIDED_FLEET } from './support/decided-fleet';
import { keepPlan } from './support/keep-plan';
import { studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

const COUNT = DECIDED_FLEET.length;
let temporary: TemporaryDatabase;
let study: string;
const version = async () => {
  const found = await readVersion(temporary.db.read, study, 1);
  if (!found?.sound) throw new Error(`damaged: ${found?.damage}`);
  return found;
};

beforeAll(async () => {
  temporary = temporaryDatabase();
  study = await studyWith(temporary.db, DECIDED_FLEET);
  await temporary.db.write((tx) => enqueueEvaluation(tx, study));
  await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
  await keepPlan(temporary.db, study);
  const frozen = await freezeProgramme(temporary.db, { studyId: study, who: 'P. Planner' });
  if (!frozen.ok) throw new Error(frozen.problem.text);
});
afterAll(() => temporary.remove());

describe('the report of a programme', () => {
  it('is reported with the sums of the review, and every motor counted once', async () => {
    const { content } = await version();
    const { programme, settings } = content;
    const { currency } = settings;
    const report = reportOf(content);
    const [first] = reconcile(content);
    expect(toMinor(report.all.cost, currency)).toBe(first?.cost);
    expect(toMinor(report.all.worth, currency)).toBe(first?.worth);
    expect(report.items.length).toBe(first?.motors);
    const parts = [...report.byAction.values()];
    expect(parts.reduce((sum, { cost }) => sum + toMinor(cost, currency), 0n)).toBe(first?.cost);
    for (const name of ['energy', 'demand', 'money', 'emissions'] as const) {
      expect(parts.reduce((sum, part) => sum + part[name].value, 0)).toBeCloseTo(report.all[name].value, 6);
      // Between independent motors, whose doubts add by their squares (GUM 5.1.2), and motors all read with one meter, whose doubts add up.
      const each = report.items.map((item) => item[`${name}_saved`]?.u ?? 0);
      expect(report.all[name].u).toBeGreaterThan(Math.hypot(...each));
      expect(report.all[name].u).toBeLessThan(each.reduce((sum, u) => sum + u, 0));
    }
    // The plan worked its sum out from the evaluation itself, the report from what results keep of it: contributions below 0.3 % are left out there.
    const planned = programme.method === 'plan' ? programme.energy_saved : undefined;
    expect(planned?.value).toBeCloseTo(report.all.energy.value, 0);
    expect((planned?.u ?? 0) / report.all.energy.u).toBeCloseTo(1, 2);
    const left = report.exclusions.reduce((sum, { motors }) => sum + motors, 0);
    expect(report.items.length + report.waiting + left).toBe(COUNT);
    expect([...report.byTrust.values()].reduce((sum, { motors }) => sum + motors, 0)).toBe(report.fleet.motors);
    expect(report.byLoad.reduce((sum, { motors }) => sum + motors, 0)).toBe(report.inputPower.motors);
    expect(report.losses.value).toBeGreaterThan(0);
    expect(report.losses.value).toBeLessThan(report.inputPower.value);
    expect(programme.years.reduce((sum, { items }) => sum + items.length, 0)).toBe(report.items.length);
  });

  it('counts all doubts as independent in a version whose results know of no meters, and says so', async () => {
    const { content } = await version();
    expect(reportOf(content).metersKnown).toBe(true);
    const results = (content.results as readonly MotorResult[]).map(({ meters: _, ...rest }) => rest);
    const report = reportOf({ ...content, results });
    expect(report.metersKnown).toBe(false);
    // GUM 5.1.2: independent doubts add by their squares.
    expect(report.all.energy.u).toBeCloseTo(Math.hypot(...report.items.map((item) => item.energy_saved?.u ?? 0)), 6);
  });

  it('has beside each funded motor every option that was not chosen, with a cash flow that comes to its value', async () => {
    const { content } = await version();
    const results = content.results as readonly MotorResult[];
    const { discount_rate: rate } = content.settings;
    const choices = notChosen(content);
    expect(choices.length).toBe(content.programme.years.flatMap(({ items }) => items).length);
    let valued = 0;
    for (const { item, others } of choices) {
      const own = results.find(({ site, tag }) => site === item.site && tag === item.tag)?.options ?? [];
      const all = [
        item.option,
        ...others.map(({ id }) => id),
        ...own.filter(({ action }) => action === 'keep').map(({ id }) => id),
      ];
      expect(all.sort()).toEqual(own.map(({ id }) => id).sort());
      for (const { id, cashFlow, against, worth } of others) {
        const option = own.find((each) => each.id === id);
        if (!option?.net_present_value) continue;
        // The sum of the discounted flow (ASTM E917: year 0 undiscounted) is the value, but for half a cent of rounding a line and year.
        const sum = cashFlow.reduce((total, amount, year) => total + amount / (1 + Number(rate)) ** year, 0);
        expect(Math.abs(sum - option.net_present_value.value)).toBeLessThan(0.5);
        valued += 1;
        if (against.kind === 'worth') expect(against.less).toBeCloseTo((item.net_present_value ?? 0) - (worth ?? 0), 6);
        if (option.timing === 'at-failure') expect(against.kind).toMatch(/waits|ruled-out/);
      }
    }
    expect(valued).toBeGreaterThan(5);
  });

  it('reports what is saved in which year: each item from its own year on, to the horizon', async () => {
    const { content } = await version();
    const { programme, settings } = content;
    const report = reportOf(content);
    const years = programme.years.map(({ year }) => year);
    const last = years.at(-1) ?? 0;
    const end = (years[0] ?? 0) + settings.horizon_years - 1;
    expect(report.byYear.map(({ year, to }) => [year, to])).toEqual([...years.map((year) => [year, undefined]), [last + 1, end]]);
    let [energy, money, emissions, motors] = [0, 0, 0, 0];
    for (const [at, { items }] of programme.years.entries()) {
      for (const { energy_saved, money_saved, emissions_saved } of items) {
        energy += energy_saved?.value ?? 0;
        money += money_saved?.value ?? 0;
        emissions += emissions_saved?.value ?? 0;
        motors += 1;
      }
      const line = report.byYear[at];
      expect(line?.motors).toBe(motors);
      expect(line?.energy.value).toBeCloseTo(energy, 6);
      expect(line?.money.value).toBeCloseTo(money, 6);
      expect(line?.emissions?.value).toBeCloseTo(emissions, 6);
    }
    for (const name of ['energy', 'money', 'emissions'] as const) {
      expect(report.byYear.at(-1)?.[name]?.value).toBeCloseTo(report.all[name].value, 6);
      expect(report.byYear.at(-1)?.[name]?.u).toBeCloseTo(report.all[name].u, 6);
    }
  });

  it('counts emissions of each year by that year’s factor, and gives none where a line stands for several', async () => {
    const { content } = await version();
    const results = content.results as readonly MotorResult[];
    const halved = results.map((result) => ({
      ...result,
      options: result.options.map((option) => ({
        ...option,
        emissions_saved_by_year:
          option.emissions_saved && [1, 0.5, 0.25].map((share) => share * (option.emissions_saved?.value ?? 0)),
      })),
    }));
    const plain = reportOf(content).byYear;
    const report = reportOf({ ...content, results: halved }).byYear;
    for (const [at, share] of [1, 0.5, 0.25].entries()) {
      expect(report[at]?.emissions?.value).toBeCloseTo(share * (plain[at]?.emissions?.value ?? Number.NaN), 6);
      expect(report[at]?.emissions?.u).toBeCloseTo(share * (plain[at]?.emissions?.u ?? Number.NaN), 6);
    }
    expect(report.at(-1)?.emissions).toBeUndefined();
  });

  it('has as a draft the same report, and none once a wish has changed', async () => {
    const { content } = await version();
    const draft = await readDraft(temporary.db.read, study);
    if (!draft || draft === 'stale') throw new Error('there is no draft');
    expect(reportOf(draft)).toEqual(reportOf(content));
    const motor = await temporary.db.read.motor.findFirstOrThrow({ where: { studyId: study }, select: { id: true } });
    const wish = { studyId: study, motorId: motor.id, who: 'P. Planner', bundle: '' } as const;
    await setMotorWish(temporary.db, { ...wish, choice: 'forbidden' });
    expect(await readDraft(temporary.db.read, study)).toBe('stale');
    await setMotorWish(temporary.db, { ...wish, choice: 'free' });
    expect(await readDraft(temporary.db.read, study)).not.toBe('stale');
    expect(await readDraft(temporary.db.read, 'none')).toBeUndefined();
  });

  it('reports nothing funded in words that a page can show, without a figure out of nothing', async () => {
    const { content } = await version();
    const years = content.programme.years.map((year) => ({ ...year, items: [], spent: 0 }));
    const report = reportOf({ ...content, programme: { ...content.programme, years } });
    expect(report.all).toMatchObject({ motors: 0, cost: 0, worth: 0, energy: { value: 0, u: 0, motors: 0 } });
    expect(report.byAction.size).toBe(0);
  });
});

describe('the workbook of a frozen programme', () => {
  it('comes to the same to the cent, in whatever years the motors are done', async () => {
    const { content } = await version();
    const workbook = await workbookOf(content);
    if (workbook === 'changed') throw new Error('engine or tables have changed within a test');
    const sums = reconcile(content, workbook);
    expect(sums.length).toBe(reconcile(content).length + 1);
    expect(sums.at(-1)?.motors).toBeGreaterThan(0);
    expect(agrees(sums)).toBe(true);
    // The same with every motor a year later: costs as they are, worth by the results of that year.
    const [first, second, ...rest] = content.programme.years;
    if (!first || !second) throw new Error('there are not two years');
    const results = content.results as readonly MotorResult[];
    const moved = [...first.items, ...second.items].flatMap((item) => {
      const option = results
        .find(({ site, tag }) => site === item.site && tag === item.tag)
        ?.options.find(({ id }) => id === item.option);
      const worth = option?.net_present_value_by_year[1];
      return worth === undefined ? [] : [{ ...item, net_present_value: worth }];
    });
    expect(moved.length).toBeGreaterThan(0);
    const spent = moved.reduce((sum, { cost }) => sum + Math.round(100 * cost), 0) / 100;
    const value = moved.reduce((sum, { net_present_value: worth }) => sum + Math.round(100 * worth), 0) / 100;
    const years = [
      { ...first, items: [], spent: 0 },
      { ...second, items: moved, spent },
      ...rest.map((year) => ({ ...year, items: [], spent: 0 })),
    ];
    const later = { ...content, programme: { ...content.programme, years, value } };
    expect(agrees(reconcile(later, workbook))).toBe(true);
  });

  it('that is a cent off, or lacks a motor, is noticed', async () => {
    const { content } = await version();
    const workbook = await workbookOf(content);
    if (workbook === 'changed') throw new Error('engine or tables have changed within a test');
    const item = content.programme.years
      .flatMap(({ items }) => items)
      .find(({ net_present_value: worth }) => worth !== undefined);
    const key = `${item?.site}\n${item?.tag}\n${item?.option}`;
    const found = workbook.get(key);
    if (!found) throw new Error('the workbook lacks a motor');
    const off = { ...found, values: found.values.map((value) => (value ?? 0) + 0.01) };
    expect(agrees(reconcile(content, new Map([...workbook, [key, off]])))).toBe(false);
    expect(agrees(reconcile(content, new Map([...workbook, [key, { ...found, cost: (found.cost ?? 0) + 0.01 }]])))).toBe(false);
    expect(agrees(reconcile(content, new Map([...workbook].filter(([each]) => each !== key))))).toBe(false);
  });

  it('is not worked out by another engine or other tables than it was frozen with', async () => {
    const { content } = await version();
    expect(await workbookOf({ ...content, engine: '0.0.0' })).toBe('changed');
    expect(await workbookOf({ ...content, tables: content.tables.slice(1) })).toBe('changed');
  });
});
