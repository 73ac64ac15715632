import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Motor } from '@/lib/engine';
import { readEvents } from '@/lib/features/history/data';
import { readTerms, readWishes } from '@/lib/features/plan/data';
import { planFromFile, planToFile } from '@/lib/features/plan/wish-file';
import { noWishes, planWishesSchema } from '@/lib/features/plan/wishes';
import { takeSettings } from '@/lib/features/setup/mutations';
import { readStudy } from '@/lib/features/study/data';
import { defaultSettings, readSettings, settingsToJson } from '@/lib/features/study/settings';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

/** The key `plan` in full over these motors: every part of it says something. */
function everyPart(motors: readonly Pick<Motor, 'site' | 'tag' | 'area'>[]) {
  const at = (index: number) => ({ site: motors[index]?.site ?? '', tag: motors[index]?.tag ?? '' });
  return planWishesSchema.parse({
    pins: [
      { ...at(0), option: 'replace-now-30-premium', year: 2027 },
      { ...at(1), option: 'repair-now' },
      { ...at(2), year: 2026 },
    ],
    forbid: [at(3)],
    must_do: [at(4), { ...at(5), year: 2027 }],
    bundles: [{ name: 'spring stop', motors: [at(6), at(7)] }],
    overrides: [{ ...at(8), by: 'R. Example', reason: 'meter checked by hand' }],
    limits: [
      { area: motors[0]?.area, year: 2026, outage_hours: 16 },
      { site: at(0).site, crew_hours: 120.5 },
    ],
    jobs: [
      { action: 'replace', up_to_kw: 75, outage_hours: 5, crew_hours: 9 },
      { outage_hours: 12, crew_hours: 30 },
    ],
    robust: { energy_price: 0.7, hours: 0.9 },
    readings: { load: { cost: 80, u: 0.02 }, hours: { cost: 10, u: 0.03 }, efficiency: { cost: 1500, u: 0.005 } },
    frontier: [0.5, 2],
  });
}

describe('the plan in a settings file', () => {
  const MOTORS = someMotors(12);
  let temporary: TemporaryDatabase;
  let study: string;
  beforeEach(async () => {
    temporary = temporaryDatabase();
    study = await studyWith(temporary.db, MOTORS);
  });
  afterEach(() => temporary.remove());

  const fileOf = async (id: string): Promise<string> => {
    const kept = await readStudy(temporary.db.read, id);
    if (!kept) throw new Error('there is no study');
    const plan = planToFile(await readWishes(temporary.db.read, id), await readTerms(temporary.db.read, id));
    return JSON.stringify({ ...settingsToJson(kept.settings, kept.pricesFile), plan }, undefined, 2);
  };
  const take = async (text: string, who = 'P. Planner') => {
    const read = readSettings(text);
    if (!read.ok) throw new Error(read.problem.text);
    const plan = read.plansNamed ? planFromFile(read.plan, who) : undefined;
    if (plan && !plan.ok) return plan;
    return takeSettings(temporary.db, {
      id: study,
      settings: read.settings,
      pricesFile: read.pricesFile,
      who,
      plan: plan?.value,
    });
  };
  const withPlan = (plan: object) => JSON.stringify({ ...settingsToJson(defaultSettings()), plan });

  it('is taken, kept and written again without a loss, whichever part of it', async () => {
    const plan = everyPart(MOTORS);
    expect(Object.keys(plan).sort()).toEqual(Object.keys(noWishes()).sort());
    for (const [part, value] of Object.entries(plan)) expect(value, part).not.toEqual(noWishes()[part as keyof typeof plan]);
    expect(await take(withPlan(plan))).toMatchObject({ ok: true });
    const written = await fileOf(study);
    const { plan: back } = JSON.parse(written);
    // The book lists wishes in natural order of their motors; what they ask for is the same.
    const inOrder = (file: typeof plan) => ({ ...file, pins: [...file.pins].sort((a, b) => a.tag.localeCompare(b.tag)) });
    expect(inOrder(planWishesSchema.parse(back))).toEqual(inOrder(plan));
    // A second turn changes nothing at all.
    expect(await take(written)).toMatchObject({ ok: true, value: { changed: 0, planChanged: 0 } });
    expect(await fileOf(study)).toBe(written);
  });

  it('stands in the history wish by wish under the name of whoever took it, overrides under their own', async () => {
    await take(withPlan(everyPart(MOTORS)), 'T. Taker');
    const { events } = await readEvents(temporary.db.read, study, 0, 100, 'plan');
    expect(new Set(events.map(({ who }) => who))).toEqual(new Set(['T. Taker']));
    expect(events.map(({ field }) => field).sort()).toEqual(
      [
        ...['pinned', 'pinned', 'pinned', 'forbidden', 'must', 'must', 'together', 'together', 'override'],
        ...['limits', 'jobs', 'robust', 'readings', 'frontier'],
      ].sort(),
    );
    const wishes = await readWishes(temporary.db.read, study);
    expect(wishes.find(({ kind }) => kind === 'override')?.by).toBe('R. Example');
    expect(wishes.find(({ kind }) => kind === 'must')?.by).toBe('T. Taker');
  });

  it('stays as it is where the file has no plan, and is emptied where the file’s plan is empty', async () => {
    await take(withPlan(everyPart(MOTORS)));
    const before = await fileOf(study);
    expect(await take(JSON.stringify(settingsToJson(defaultSettings())))).toMatchObject({ ok: true, value: { planChanged: 0 } });
    expect(await fileOf(study)).toBe(before);
    expect(await take(withPlan({}))).toMatchObject({ ok: true });
    expect(JSON.parse(await fileOf(study)).plan).toEqual(noWishes());
  });

  it.each([
    ['a motor', { forbid: [{ site: 'Nowhere', tag: 'X-1' }] }, 'Nowhere / X-1'],
    ['an area', { limits: [{ area: 'Attic', crew_hours: 5 }] }, 'Attic'],
    ['a site', { limits: [{ site: 'Nowhere', crew_hours: 5 }] }, 'Nowhere'],
    ['a year', { limits: [{ year: 1999, crew_hours: 5 }] }, '1999'],
  ])('that names %s which is not there is refused, with the settings beside it', async (_, plan, name) => {
    const file = { ...settingsToJson({ ...defaultSettings(), energyPricePerKwh: 0.5 }), plan };
    const done = await take(JSON.stringify(file));
    expect(done.ok ? '' : done.problem.text).toContain(name);
    expect((await readStudy(temporary.db.read, study))?.settings.energyPricePerKwh).toBe(defaultSettings().energyPricePerKwh);
  });

  it('that wishes one motor two things of a kind is refused by its name', async () => {
    const [motor] = MOTORS;
    const at = { site: motor?.site, tag: motor?.tag };
    const done = await take(
      withPlan({
        pins: [
          { ...at, year: 2026 },
          { ...at, year: 2027 },
        ],
      }),
    );
    expect(done.ok ? '' : done.problem.text).toContain(`${motor?.tag} stands twice under plan.pins`);
  });
});
