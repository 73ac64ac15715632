import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensureDemo } from '@/lib/features/demo/mutations';
import { readStudyMotors } from '@/lib/features/fleet/data';
import { readStudies, readStudy } from '@/lib/features/study/data';
import { archiveStudy, createStudy, deleteStudy, renameStudy, writeSettings } from '@/lib/features/study/mutations';
import { defaultSettings } from '@/lib/features/study/settings';
import { imported } from './support/import-sheet';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase;
beforeAll(() => {
  temporary = temporaryDatabase();
});
afterAll(() => temporary.remove());

const who = 'A. Tester';

async function study(name: string): Promise<string> {
  const made = await createStudy(temporary.db, { name, who }, new Date('2026-05-04T12:00:00Z'));
  if (!made.ok) expect.fail(made.problem.text);
  return made.value.id;
}

const history = (studyId: string) =>
  temporary.db.read.changeEvent.findMany({ where: { studyId }, orderBy: [{ at: 'asc' }, { field: 'asc' }] });

describe('studies', () => {
  test('a new one has the default settings, today as its date, and a line in its history', async () => {
    const id = await study('new');
    const stored = await readStudy(temporary.db.read, id);
    expect(stored?.settings).toEqual({ ...defaultSettings(), asOf: '2026-05-04' });
    expect((await history(id)).map((event) => [event.what, event.who, event.verified])).toEqual([['created', who, false]]);
  });

  test('a name is given once', async () => {
    const id = await study('one name');
    const other = await study('another name');
    expect(await createStudy(temporary.db, { name: 'one name', who })).toMatchObject({
      ok: false,
      problem: { code: 'name-taken' },
    });
    expect(await renameStudy(temporary.db, { id: other, name: 'one name', who })).toMatchObject({ ok: false });
    expect(await renameStudy(temporary.db, { id, name: 'a better name', who })).toMatchObject({ ok: true });
    expect((await readStudy(temporary.db.read, id))?.name).toBe('a better name');
    expect(await renameStudy(temporary.db, { id: 'nobody', name: 'x', who })).toMatchObject({
      ok: false,
      problem: { code: 'no-study' },
    });
  });

  test('one is put aside before it can go; then all of it goes', async () => {
    const id = await study('goes');
    await imported(temporary.db, id, 'tag,rated_power_kw,rated_voltage_v,taken_at,input_power_kw\nA,30,460,2025-01-01,20\n');
    expect(await deleteStudy(temporary.db, id)).toMatchObject({ ok: false, problem: { code: 'in-use' } });
    await archiveStudy(temporary.db, { id, archived: true, who });
    const entries = await readStudies(temporary.db.read);
    expect(entries.at(-1)).toMatchObject({ id, motors: 1, readings: 1 });
    await archiveStudy(temporary.db, { id, archived: false, who });
    expect((await readStudy(temporary.db.read, id))?.archivedAt).toBeUndefined();
    await archiveStudy(temporary.db, { id, archived: true, who });
    expect(await deleteStudy(temporary.db, id)).toMatchObject({ ok: true });
    const where = { studyId: id };
    const { read } = temporary.db;
    expect(
      await Promise.all([read.motor.count({ where }), read.reading.count({ where }), read.changeEvent.count({ where })]),
    ).toEqual([0, 0, 0]);
  });
});

describe('settings of a study', () => {
  test('each changed key has its line in the history, and the fleet is evaluated again', async () => {
    const id = await study('settings');
    const before = (await readStudy(temporary.db.read, id))?.settings ?? defaultSettings();
    const settings = { ...before, energyPricePerKwh: 0.14, policy: { ...before.policy, minProbability: 0.9 } };
    expect(await writeSettings(temporary.db, { id, settings, who, why: 'new tariff' })).toEqual({
      ok: true,
      value: { changed: 2, batch: expect.any(String) },
    });
    expect((await readStudy(temporary.db.read, id))?.settings).toEqual(settings);
    const changes = (await history(id)).filter(({ subject }) => subject === 'settings');
    expect(changes.map(({ field, fromValue, toValue, why }) => [field, fromValue, toValue, why])).toEqual([
      ['energy_price_per_kwh', '0.11', '0.14', 'new tariff'],
      ['policy.min_probability', '0.8', '0.9', 'new tariff'],
    ]);
    expect(await temporary.db.read.evaluationRun.count({ where: { studyId: id, state: 'queued' } })).toBe(1);
    expect(await writeSettings(temporary.db, { id, settings, who })).toEqual({ ok: true, value: { changed: 0 } });
  });

  test('a currency with other minor units leaves typed amounts as they were', async () => {
    const id = await study('currency');
    await imported(temporary.db, id, 'tag,rated_power_kw,rated_voltage_v,quoted_price,quoted_repair\nA,30,460,4300.25,\n');
    const price = async () => (await readStudyMotors(temporary.db.read, id))[0]?.motor.plate;
    const settings = { ...defaultSettings(), currency: 'KWD' };
    await writeSettings(temporary.db, { id, settings, who });
    expect(await price()).toMatchObject({ quotedPrice: 4300.25, quotedRepair: undefined });
    await writeSettings(temporary.db, { id, settings: { ...settings, currency: 'JPY' }, who });
    expect(await price()).toMatchObject({ quotedPrice: 4300 });
  });
});

describe('the demonstration', () => {
  test('is made once, comes back as it was on the day it was put aside, and is made afresh on a later one', async () => {
    const today = new Date('2026-05-04T12:00:00Z');
    const made = await ensureDemo(temporary.db, today);
    if (!made.ok) expect.fail(made.problem.text);
    const { id } = made.value;
    expect(made.value.made).toBe(true);
    const motors = await readStudyMotors(temporary.db.read, id);
    expect(motors.length).toBeGreaterThan(150);
    expect(await readStudy(temporary.db.read, id)).toMatchObject({ demo: true, settings: { asOf: '2026-05-04' } });
    expect(await ensureDemo(temporary.db)).toEqual({ ok: true, value: { id, made: false } });
    await archiveStudy(temporary.db, { id, archived: true, who });
    expect(await ensureDemo(temporary.db, new Date('2026-05-04T18:00:00Z'))).toEqual({ ok: true, value: { id, made: false } });
    expect((await readStudy(temporary.db.read, id))?.archivedAt).toBeUndefined();
    expect((await readStudyMotors(temporary.db.read, id)).length).toBe(motors.length);

    await archiveStudy(temporary.db, { id, archived: true, who });
    const later = await ensureDemo(temporary.db, new Date('2026-06-01T08:00:00Z'));
    if (!later.ok) expect.fail(later.problem.text);
    expect(later.value.made).toBe(true);
    const fresh = await readStudy(temporary.db.read, later.value.id);
    expect(fresh).toMatchObject({ demo: true, settings: { asOf: '2026-06-01' } });
    const old = await readStudy(temporary.db.read, id);
    expect(old?.archivedAt).toBeDefined();
    expect(fresh?.name).not.toBe(old?.name);
    // Brought back, the old one is as it was and stands beside the fresh one.
    await archiveStudy(temporary.db, { id, archived: false, who });
    expect((await readStudyMotors(temporary.db.read, id)).length).toBe(motors.length);
    expect((await readStudies(temporary.db.read)).filter(({ demo }) => demo).length).toBe(2);
  });
});
