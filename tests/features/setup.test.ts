import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Settings } from '@/lib/engine';
import { readMotor } from '@/lib/features/fleet/data';
import { readEvents, readSubjects } from '@/lib/features/history/data';
import { readInstruments, readTakenAfterDue } from '@/lib/features/instruments/data';
import { putInstrument, removeInstrument } from '@/lib/features/instruments/mutations';
import { instrumentForm } from '@/lib/features/instruments/schema';
import { withInstruments } from '@/lib/features/instruments/with-instruments';
import { readPriceList, readPriceLists, readPricesOf } from '@/lib/features/prices/data';
import { addPrice, choosePriceList, removePrice, replacePrices } from '@/lib/features/prices/mutations';
import { SETTING_FIELDS, shownSetting, typedSettings } from '@/lib/features/setup/setting-fields';
import { studyInForce } from '@/lib/features/study/context';
import { takeBackSettings, writeSettings } from '@/lib/features/study/mutations';
import { defaultSettings, readSettings, settingsToJson } from '@/lib/features/study/settings';
import { recordChange } from '@/lib/platform/audit';
import { loadTables } from '@/lib/reference/load';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

/** Keys of a settings file, nested ones with a point; lists and maps count as one. */
function keysOf(file: Readonly<Record<string, unknown>>): string[] {
  return Object.entries(file).flatMap(([key, value]) =>
    (key === 'policy' || key === 'accuracy') && typeof value === 'object' && value !== null
      ? Object.keys(value).map((inner) => `${key}.${inner}`)
      : key === 'schema'
        ? []
        : [key],
  );
}

const usual = () => settingsToJson(defaultSettings());
const typed = (changes: Readonly<Record<string, string>> = {}) =>
  new Map(SETTING_FIELDS.map((field) => [field.key, changes[field.key] ?? shownSetting(usual(), field)]));

describe('the form of the settings', () => {
  it('holds every key of the settings file, once, with a meaning', () => {
    expect(SETTING_FIELDS.map((field) => field.key).sort()).toEqual(keysOf(usual()).sort());
    for (const field of SETTING_FIELDS) expect(field.meaning.length).toBeGreaterThan(10);
  });

  it('sent as it is shown gives the same settings back', () => {
    const { file, refused } = typedSettings(typed());
    expect(refused).toEqual({});
    const read = readSettings(JSON.stringify(file));
    expect(read.ok && read.settings).toEqual(defaultSettings());
  });

  it.each([
    ['energy_price_per_kwh', '0.145', 0.145],
    ['energy_price_per_kwh', '1.45e-1', 0.145],
    ['energy_price_per_kwh', ' 0.145 ', 0.145],
    ['discount_rate', '8', 0.08],
    ['discount_rate', '8.25 %', 0.0825],
    ['discount_rate', '7', 0.07],
    ['failure_rate_per_year', '5', 0.05],
    ['energy_price_escalation', '2; -1.5 %', [0.02, -0.015]],
  ])('understands %s typed as "%s"', (key, text, value) => {
    const { file } = typedSettings(typed({ [key]: text }));
    expect(file[key]).toEqual(value);
  });

  it.each([
    ['energy_price_per_kwh', '0,145'],
    ['energy_price_per_kwh', '１.45'],
    ['horizon_years', '1,500'],
    ['discount_rate', '8,25 %'],
    ['energy_price_per_kwh', '11 %'],
    ['budget', '250000; many'],
    ['limits', '{C1: 2}'],
  ])('refuses %s typed as "%s" in words, and changes nothing in silence', (key, text) => {
    const { refused } = typedSettings(typed({ [key]: text }));
    expect(refused[key]?.length).toBeGreaterThan(10);
  });

  it('leaves impossible values to the schema of the settings file', () => {
    const { file, refused } = typedSettings(typed({ 'policy.min_probability': '8000' }));
    expect(refused).toEqual({});
    const read = readSettings(JSON.stringify(file));
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.problem.key).toBe('policy.min_probability');
  });
});

describe('a study’s setup', () => {
  let temporary: TemporaryDatabase;
  let study: string;
  beforeEach(async () => {
    temporary = temporaryDatabase();
    study = await studyWith(temporary.db, someMotors(3));
  });
  afterEach(() => temporary.remove());

  it('changed settings are in force, stand in the history key by key, and queue an evaluation', async () => {
    const settings = {
      ...defaultSettings(),
      energyPricePerKwh: 0.2,
      policy: { ...defaultSettings().policy, maxSimplePaybackYears: 5 },
    };
    expect(await writeSettings(temporary.db, { id: study, settings, who: 'R. Example', why: 'new contract' })).toMatchObject({
      ok: true,
      value: { changed: 2 },
    });
    expect((await studyInForce(temporary.db.read, study))?.context.settings.energyPricePerKwh).toBe(0.2);
    const { events, total } = await readEvents(temporary.db.read, study, 0, 10);
    expect(total).toBe(2);
    expect(events.map((event) => [event.field, event.from, event.to]).sort()).toEqual([
      ['energy_price_per_kwh', '0.11', '0.2'],
      ['policy.max_simple_payback_years', '3', '5'],
    ]);
    expect(await temporary.db.read.evaluationRun.count({ where: { studyId: study, state: 'queued' } })).toBe(1);
    expect(await readSubjects(temporary.db.read, study)).toEqual([{ subject: 'settings', count: 2 }]);
    expect((await readEvents(temporary.db.read, study, 0, 10, 'settings')).total).toBe(2);
    expect((await readEvents(temporary.db.read, study, 0, 10, 'prices')).total).toBe(0);
  });

  it('the history says in words what it keeps as data', async () => {
    const values: readonly (readonly [unknown, string])[] = [
      [{ motorsAdded: 2, rowsRejected: 0 }, 'motors added 2, rows rejected 0'],
      [
        {
          steps: [
            { fraction: 1, hoursPerYear: 4000 },
            { fraction: 0.5, hoursPerYear: 2000 },
          ],
        },
        'steps 1@4000; 0.5@2000',
      ],
      [{ kw: 37.285, unit: 'hp' }, '50\u202fhp'],
      [[250000, 100000], '250000; 100000'],
      [true, 'yes'],
      ['IE3', 'IE3'],
    ];
    await temporary.db.write(async (tx) => {
      for (const [to] of values)
        await recordChange(tx, {
          studyId: study,
          who: 'R. Example',
          subject: 'study',
          subjectId: study,
          subjectLabel: 'Works',
          what: 'changed',
          to,
        });
    });
    const { events } = await readEvents(temporary.db.read, study, 0, 20);
    expect(events.map(({ to }) => to).sort()).toEqual(values.map(([, text]) => text).sort());
  });

  it('changed settings are taken back key by key as a new act, and that act again; never over a later change', async () => {
    const { db } = temporary;
    const inForce = async () => (await studyInForce(db.read, study))?.study.settings;
    const before = await inForce();
    const written = async (change: Partial<Settings>) => {
      const settings = { ...defaultSettings(), ...(await inForce()), ...change };
      const done = await writeSettings(db, { id: study, settings, who: 'R. Example' });
      return (done.ok && done.value.batch) || '';
    };
    const policy = { ...defaultSettings().policy, maxSimplePaybackYears: 5 };
    const first = await written({ energyPricePerKwh: 0.2, policy, currency: 'EUR' });
    const second = await written({ horizonYears: 20 });
    const undone = await takeBackSettings(db, { id: study, batch: first, who: 'S. Example' });
    expect(undone).toMatchObject({ ok: true, value: { changed: 3 } });
    expect(await inForce()).toEqual({ ...before, horizonYears: 20 });
    const { events } = await readEvents(db.read, study, 0, 3);
    expect(events.map(({ who, what, field, to }) => [who, what, field, to]).sort()).toEqual([
      ['S. Example', 'undone', 'currency', 'USD'],
      ['S. Example', 'undone', 'energy_price_per_kwh', '0.11'],
      ['S. Example', 'undone', 'policy.max_simple_payback_years', '3'],
    ]);
    expect(await takeBackSettings(db, { id: study, batch: first, who: 'S. Example' })).toMatchObject({
      ok: false,
      problem: { code: 'changed-since' },
    });
    const again = await takeBackSettings(db, { id: study, batch: (undone.ok && undone.value.batch) || '', who: 'S. Example' });
    expect(again.ok).toBe(true);
    expect((await inForce())?.energyPricePerKwh).toBe(0.2);
    await written({ horizonYears: 25 });
    const late = await takeBackSettings(db, { id: study, batch: second, who: 'S. Example' });
    expect(late.ok ? '' : late.problem.text).toContain('horizon_years');
    expect((await inForce())?.horizonYears).toBe(25);
    const other = await studyWith(db, [], 'Other');
    expect((await takeBackSettings(db, { id: other, batch: second, who: 'S. Example' })).ok).toBe(false);
  });

  it('a price list of one’s own takes the place of the shipped one, to the cent', async () => {
    expect((await studyInForce(temporary.db.read, study))?.context.prices.invented).toBe(true);
    const list = {
      invented: false,
      prices: [
        {
          ...({ item: 'motor', ratedPowerKw: 30, poles: 4, efficiencyClass: 'premium', price: 4300.05 } as const),
          date: '2025-11-01',
          leadTimeWeeks: 6,
        },
      ],
    };
    for (const name of ['first.csv', 'second.csv']) {
      expect((await replacePrices(temporary.db, { studyId: study, name, list, currency: 'USD', who: 'R. Example' })).ok).toBe(
        true,
      );
    }
    const stored = await readPriceList(temporary.db.read, study);
    expect(stored?.invented).toBe(false);
    expect(stored?.prices).toMatchObject(list.prices);
    const { events } = await readEvents(temporary.db.read, study, 0, 10);
    expect(events[0]?.from).toBe('first.csv');
    const empty = await replacePrices(temporary.db, {
      studyId: study,
      name: 'empty.csv',
      list: { invented: false, prices: [] },
      currency: 'USD',
      who: 'R. Example',
    });
    expect(empty.ok).toBe(false);
    expect((await readPriceList(temporary.db.read, study))?.prices.length).toBe(1);
  });

  it('a former price list is kept and can serve again, and so can the shipped one', async () => {
    const { db } = temporary;
    const take = (price: number) => {
      const list = { invented: false, prices: [{ item: 'rewind', price } as const] };
      return replacePrices(db, { studyId: study, name: 'quotes.csv', list, currency: 'USD', who: 'R. Example' });
    };
    await take(1900);
    await take(2100);
    const inForce = async () => (await studyInForce(db.read, study))?.context.prices;
    const lists = await readPriceLists(db.read, study);
    expect(lists.map(({ name, inUse, count }) => [name, inUse, count])).toEqual([
      ['quotes.csv (2)', true, 1],
      ['quotes.csv', false, 1],
    ]);
    const back = { studyId: study, who: 'R. Example' };
    expect((await choosePriceList(db, { ...back, listId: lists[1]?.id })).ok).toBe(true);
    expect((await inForce())?.prices.map((price) => price.price)).toEqual([1900]);
    expect((await choosePriceList(db, { ...back, listId: undefined })).ok).toBe(true);
    expect((await inForce())?.invented).toBe(true);
    expect((await choosePriceList(db, { ...back, listId: 'none' })).ok).toBe(false);
    const other = await studyWith(db, [], 'Other');
    expect((await choosePriceList(db, { ...back, studyId: other, listId: lists[0]?.id })).ok).toBe(false);
    const { events } = await readEvents(db.read, study, 0, 10);
    expect(events.map(({ from, to }) => [from, to])).toEqual([
      ['quotes.csv', 'the shipped, invented list'],
      ['quotes.csv (2)', 'quotes.csv'],
      ['quotes.csv', 'quotes.csv (2), 1 prices'],
      ['the shipped, invented list', 'quotes.csv, 1 prices'],
    ]);
  });

  it('one price is added before those of its rating, to a copy of the shipped list if that serves, and removed again', async () => {
    const { db } = temporary;
    const shipped = loadTables().prices;
    const price = { item: 'motor', ratedPowerKw: 30, poles: 4, efficiencyClass: 'premium', price: 4321 } as const;
    const wish = { studyId: study, who: 'R. Example' };
    expect((await addPrice(db, { ...wish, price, shipped })).ok).toBe(true);
    expect((await addPrice(db, { ...wish, price: { ...price, price: 4000 }, shipped })).ok).toBe(true);
    const list = await readPriceList(db.read, study);
    expect(list?.invented).toBe(true);
    expect(list?.prices.length).toBe(shipped.prices.length + 2);
    expect(list?.prices.slice(0, 2).map((line) => line.price)).toEqual([4000, 4321]);
    expect(list?.prices.slice(2)).toEqual(
      shipped.prices.map((line) => expect.objectContaining({ item: line.item, price: line.price })),
    );
    const [own] = await readPriceLists(db.read, study);
    const [first] = await readPricesOf(db.read, own?.id ?? '');
    const gone = await removePrice(db, { ...wish, priceId: first?.id ?? '' });
    expect(gone.ok && gone.value).toEqual(first?.price);
    expect((await readPriceList(db.read, study))?.prices[0]?.price).toBe(4321);
    const { events } = await readEvents(db.read, study, 0, 10);
    expect(events.map(({ what, from, to }) => [what, from, to])).toEqual([
      ['deleted', 'motor, 30 kW, 4 poles, 4000 USD', ''],
      ['added', '', 'motor, 30 kW, 4 poles, 4000 USD'],
      ['added', '', 'motor, 30 kW, 4 poles, 4321 USD'],
    ]);
    expect(await db.read.evaluationRun.count({ where: { studyId: study, state: 'queued' } })).toBe(1);
  });

  it('the last price of a list cannot be removed', async () => {
    const { db } = temporary;
    const list = { invented: false, prices: [{ item: 'rewind', price: 1900 } as const] };
    await replacePrices(db, { studyId: study, name: 'one.csv', list, currency: 'USD', who: 'R. Example' });
    const [own] = await readPriceLists(db.read, study);
    const [only] = await readPricesOf(db.read, own?.id ?? '');
    expect((await removePrice(db, { studyId: study, who: 'R. Example', priceId: only?.id ?? '' })).ok).toBe(false);
    expect((await readPriceList(db.read, study))?.prices.length).toBe(1);
  });

  it('an instrument’s errors serve readings that name it and state none; what is stored stays as written', async () => {
    const { db } = temporary;
    const instrument = {
      name: 'analyser 1',
      serialNumber: 'S 17',
      voltagePct: 0.2,
      currentPct: 0.4,
      powerPct: 0.6,
      speedRpm: undefined,
      calibratedOn: '2024-05-02',
      calibrationDueOn: '2025-05-02',
    };
    expect((await putInstrument(db, { studyId: study, who: 'R. Example', instrument })).ok).toBe(true);
    const [stored] = await readInstruments(db.read, study);
    expect(stored).toMatchObject(instrument);
    const first = await db.read.motor.findFirst({ where: { studyId: study }, orderBy: { naturalKey: 'asc' } });
    const motor = (await readMotor(db.read, first?.id ?? ''))?.motor;
    if (!motor) throw new Error('a motor was planted');
    const reading = motor.readings[0];
    expect(reading?.instrument).toBe('analyser 1');
    expect(reading?.powerAccuracyPct).toBeUndefined();
    expect(withInstruments(motor, [stored ?? { id: '', ...instrument }]).readings[0]?.powerAccuracyPct).toBe(0.6);
    const own = { ...motor, readings: motor.readings.map((entry) => ({ ...entry, powerAccuracyPct: 2 })) };
    expect(withInstruments(own, [{ id: '', ...instrument }]).readings[0]?.powerAccuracyPct).toBe(2);
    expect((await removeInstrument(db, { studyId: study, who: 'R. Example', id: stored?.id ?? '' })).ok).toBe(true);
    expect(await readInstruments(db.read, study)).toEqual([]);
    const { events } = await readEvents(db.read, study, 0, 10);
    expect(events.map((event) => event.what)).toEqual(['deleted', 'added']);
    expect(events.at(1)?.to).toContain('serial number S 17, voltage 0.2 %');
    expect(events.at(1)?.to).toContain('calibrated 2024-05-02, due 2025-05-02');
  });

  it('counts readings from after the day on which calibration was due, and none that is left out or of another meter', async () => {
    const { db } = temporary;
    const [first, second] = await db.read.reading.findMany({ where: { studyId: study }, orderBy: { id: 'asc' }, take: 2 });
    if (!first || !second) throw new Error('readings were planted');
    const meter = [{ name: 'meter 7', calibrationDueOn: '2025-05-02' }];
    const late = async () => (await readTakenAfterDue(db.read, study, meter)).get('meter 7') ?? 0;
    const set = (id: string, data: { takenAt?: string; instrument?: string; excludedAt?: Date }) =>
      db.read.reading.update({ where: { id }, data });
    expect(await late()).toBe(0);
    await set(first.id, { instrument: 'meter 7', takenAt: '2025-05-02T23:59' });
    expect(await late()).toBe(0);
    await set(first.id, { takenAt: '2025-05-03' });
    expect(await late()).toBe(1);
    await set(second.id, { instrument: 'meter 7', takenAt: '2026-01-01T08:00', excludedAt: new Date(0) });
    expect(await late()).toBe(1);
    expect(await readTakenAfterDue(db.read, study, [{ name: 'meter 7', calibrationDueOn: undefined }])).toEqual(new Map());
  });

  const emptyForm = {
    who: 'R. Example',
    name: 'meter',
    serial: '',
    voltage: '',
    current: '',
    power: '',
    speed: '',
    calibrated: '',
    due: '',
  };

  it.each([
    { calibrated: '2.5.2024' },
    { calibrated: '2025-02-29' },
    { due: '2025-05-02T10:00' },
    { calibrated: '2025-05-02', due: '2024-05-02' },
  ])('days of calibration that cannot be are refused in words: %o', (typed) => {
    expect(instrumentForm.safeParse({ ...emptyForm, study }).success).toBe(true);
    const parsed = instrumentForm.safeParse({ ...emptyForm, study, ...typed });
    expect(parsed.error?.issues[0]?.message).toMatch(/Write it as|due after/);
  });

  it.each(['0,5', '-1', '１', '1 %', 'good'])('an error typed as “%s” is refused in words', (text) => {
    const parsed = instrumentForm.safeParse({ ...emptyForm, study, voltage: text });
    expect(parsed.success).toBe(false);
    expect(parsed.error?.issues[0]?.message.length).toBeGreaterThan(10);
  });
});
