import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Motor } from '@/lib/engine';
import { readStudyMotors } from '@/lib/features/fleet/data';
import { loadMeasures, loadSpares } from '@/lib/features/ranking/list-loader';
import { worthwhile, worthwhileTogether } from '@/lib/features/ranking/measure-words';
import { fleetSum, interacting, measuresCsv } from '@/lib/features/ranking/measures';
import { type MeasuresPage, readMeasures } from '@/lib/features/ranking/measures-page';
import { loadSpareOf } from '@/lib/features/ranking/spare-loader';
import { spareOf, spareSentences } from '@/lib/features/ranking/spare-of';
import { readSpares } from '@/lib/features/ranking/spares-page';
import { studyInForce } from '@/lib/features/study/context';
import { defaultSettings } from '@/lib/features/study/settings';
import { database } from '@/lib/platform/db';
import { someMotors, studyWith } from './support/study-with-demo';
import { programDatabase } from './support/temporary-database';

/** Some of them with a throttled fan on a V-belt: two measures on the same energy. */
function motors(): Motor[] {
  return someMotors(60).map((motor, at) =>
    at % 3 === 0
      ? {
          ...motor,
          plate: {
            ...motor.plate,
            drivenMachine: 'fan',
            flowControl: 'damper',
            coupling: 'v-belt',
            peakLoadKw: motor.plate.ratedPowerKw,
          },
        }
      : motor,
  );
}

let temporary: ReturnType<typeof programDatabase>;
let study: string;
let page: MeasuresPage;
beforeAll(async () => {
  temporary = programDatabase();
  study = await studyWith(database(), motors());
  const found = await readMeasures(database().read, study);
  if (!found) throw new Error('there is no study');
  page = found;
});
afterAll(() => temporary.remove());

describe('lists over the fleet in a thread of their own', () => {
  it('are those that are worked out here', async () => {
    const [measures, spares] = await Promise.all([loadMeasures(study), loadSpares(study, { weeks: '3' })]);
    expect(measures).toEqual(page);
    expect(spares).toEqual(await readSpares(database().read, study, { weeks: '3' }));
  });
  it('are none for a study that is not there', async () => {
    expect(await loadMeasures('none')).toBeUndefined();
    expect(await loadSpares('none', {})).toBeUndefined();
  });
});

describe('the spare for one motor', () => {
  it('is that of the list for each motor that the list names, in the words of the command line, and none for the others', async () => {
    const list = await readSpares(database().read, study, {});
    const { context } = (await studyInForce(database().read, study)) ?? {};
    if (!list || !context) throw new Error('there is no study');
    const fleet = await readStudyMotors(database().read, study, { withHistory: true });
    const sentencesOf = new Map(
      list.shelves.flatMap((shelf) => shelf.tags.map((tag) => [`${shelf.site}\n${tag}`, spareSentences(shelf)] as const)),
    );
    expect(sentencesOf.size).toBeGreaterThan(20);
    const all = fleet.map(({ motor }) => motor);
    for (const { id, motor } of fleet) {
      const said = await loadSpareOf(study, id);
      expect(said).toEqual(sentencesOf.get(`${motor.site}\n${motor.tag}`) ?? []);
      const spare = spareOf(motor, all, context);
      expect(said).toEqual(spare ? spareSentences(spare) : []);
    }
    expect(await loadSpareOf(study, 'none')).toEqual([]);
  });
});

describe('other measures over a fleet', () => {
  it('stand in the order of the money that a motor’s measures save together', () => {
    expect(page.motors.length).toBeGreaterThan(5);
    const saved = page.motors.map((motor) => fleetSum([motor], 'money').likely);
    expect(saved).toEqual([...saved].sort((a, b) => b - a));
  });
  it('of one motor that act on the same energy are not added', () => {
    const several = page.motors.filter((motor) => interacting(motor).length > 1);
    expect(several.length).toBeGreaterThan(2);
    for (const motor of several) {
      const sum = motor.found.measures.reduce((total, { energySaved }) => total + (energySaved?.likely ?? 0), 0);
      expect(fleetSum([motor], 'energy').likely).toBeLessThan(sum);
      expect(fleetSum([motor], 'energy').likely).toBe(motor.found.energySavedTogether?.likely);
    }
    const total = fleetSum(page.motors, 'energy');
    expect(total.low).toBeLessThanOrEqual(total.likely);
    expect(total.likely).toBeLessThanOrEqual(total.high);
  });
  it('save together at least what the energy is worth, and no more than that with a demand saved in every month', () => {
    const settings = defaultSettings();
    const several = page.motors.filter((motor) => interacting(motor).length > 1);
    for (const { tag, found } of several) {
      const kwh = found.energySavedTogether?.likely ?? Number.NaN;
      const money = found.moneySavedTogether?.likely ?? Number.NaN;
      const rated = motors().find((motor) => motor.tag === tag)?.plate.ratedPowerKw ?? Number.NaN;
      const energy = kwh * settings.energyPricePerKwh;
      // A motor cannot save more demand than it can take: well below twice its rating.
      expect(money).toBeGreaterThanOrEqual(energy);
      expect(money).toBeLessThanOrEqual(energy + 2 * rated * 12 * settings.demandPricePerKwMonth * settings.demandCoincidence);
    }
  });
  it('without a price say what they may cost: the saving of the years that the policy allows, by hand', () => {
    const settings = defaultSettings();
    const saving = { low: 100, likely: 400, high: 500 };
    expect(worthwhile({ moneySaved: saving }, settings).mayCost).toBe(1200);
    expect(worthwhile({ moneySaved: saving }, settings).words).toMatch(/^No list holds a price: .*3 years.*1,200/);
    expect(worthwhile({ moneySaved: saving, item: 'drive' }, settings).words).toMatch(/^No price in the list for a drive\. /);
    // A ratchet lets the first year have half: then half may be spent for a payback of three years.
    const half = { low: 50, likely: 200, high: 250 };
    expect(worthwhile({ moneySaved: saving, firstYearSaved: half }, settings).mayCost).toBe(600);
    const none = worthwhile({ moneySaved: saving, firstYearSaved: { low: 0, likely: 0, high: 0 } }, settings);
    expect(none).toEqual({ words: expect.stringMatching(/^No list holds a price: .*nothing comes back in the first year/) });
    expect(worthwhile({}, settings)).toEqual({ words: expect.stringContaining('never pays back') });
    expect(worthwhile({ moneySaved: { low: 0, likely: 0, high: 0 } }, settings).mayCost).toBeUndefined();
  });
  it('with a price say what it is and where from, and the payback with its limits against the policy', () => {
    const settings = defaultSettings();
    const priced = {
      moneySaved: { low: 100, likely: 400, high: 500 },
      cost: { value: 1210, u: 180, items: ['drive'], invented: false, extrapolated: false },
      payback: { low: 2.2, likely: 3.025, high: 12 },
    } as const;
    expect(worthwhile(priced, settings).words).toBe(
      'Costs about 1,200\u202fUSD (by the price list) and pays back in 3.0 years (2.2 to 12), beyond the 3 years of the policy.',
    );
    const invented = { ...priced, cost: { ...priced.cost, invented: true }, payback: { low: 1, likely: 2 } };
    expect(worthwhile(invented, settings).words).toMatch(
      /an invented price.* 2\.0 years \(1\.00 to never, at the least saving\), within/,
    );
    expect(worthwhile({ ...priced, payback: { low: 90, likely: 130, high: 200 } }, settings).words).toMatch(
      /in more than 100 years/,
    );
  });
  it('together cost what their prices add up to, and name what has none', () => {
    const several = page.motors.filter((motor) => interacting(motor).length > 1);
    for (const { found } of several) {
      const unpriced = found.measures.some(({ cost, energySavedInSequence = 0 }) => energySavedInSequence > 0 && !cost);
      const { words } = worthwhileTogether(found, page.settings);
      expect(words).toMatch(unpriced ? /^No price in the list for: [a-z, ]+\. Together/ : /^Costs about .*an invented price/);
    }
  });
  it('are read back from the file with the figures of the page', () => {
    const text = [...measuresCsv(page.motors, page.settings)].join('');
    const rows = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
    expect(rows.length).toBe(page.motors.reduce((sum, { found }) => sum + found.measures.length, 0));
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
    for (const row of rows) {
      const motor = page.motors.find(({ tag, site }) => tag === row.tag && site === row.site);
      const measure = motor?.found.measures.find(({ id }) => id === row.measure);
      expect(row.estimate).toBe('screening');
      expect(row.cost_from).toMatch(/^invented price list: |^no list holds a price$/);
      expect(row.cost === '').toBe(measure?.cost === undefined);
      if (measure?.payback) expect(Number(row.simple_payback_years)).toBeCloseTo(measure.payback.likely, 3);
      if (measure?.energySaved) expect(Number(row.energy_saved_kwh)).toBeCloseTo(measure.energySaved.likely, -1);
      const joint = motor ? interacting(motor) : [];
      if (joint.length > 1 && measure?.energySaved) expect(row.interacts_with).not.toBe('');
      else expect(row.interacts_with).toBe('');
    }
  });
});
