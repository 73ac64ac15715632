import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Motor } from '@/lib/engine';
import { changeMany, previewBulk, takeBackMany } from '@/lib/features/bulk-edit/mutations';
import type { BulkField } from '@/lib/features/bulk-edit/schema';
import { readStudyMotors } from '@/lib/features/fleet/data';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let scratch: TemporaryDatabase;
let studyId: string;

beforeEach(async () => {
  scratch = temporaryDatabase();
  studyId = await studyWith(scratch.db, someMotors(8));
});
afterEach(() => scratch.remove());

const motors = () => readStudyMotors(scratch.db.read, studyId);

async function order(field: BulkField, value: string, count = 5) {
  const chosen = (await motors()).slice(0, count).map(({ id, version }) => ({ id, version }));
  return { studyId, motors: chosen, field, value };
}

const BY = { who: 'Trial Reader', why: 'survey' };

type Case = [field: BulkField, typed: string, read: (motor: Motor) => unknown, wanted: unknown];

/** The motors as far as people state them: what a change and its undoing must leave alike. */
async function stated() {
  return (await motors()).map(({ motor }) => motor);
}

describe('a preview', () => {
  test('says what would change and changes nothing', async () => {
    const before = await stated();
    const preview = await previewBulk(scratch.db, await order('area', 'Pump house'));
    expect(preview).toMatchObject({ ok: true, value: { changing: 5, same: 0, overtaken: 0, understood: 'Pump house' } });
    expect(await stated()).toEqual(before);
  });

  test.each([
    ['hours_per_year', '4,3'],
    ['hours_per_year', '9000'],
    ['demand_coincidence', '1.5'],
    ['status', 'sleeping'],
    ['status', ''],
    ['quoted_price', '1,250'],
    ['quoted_price', 'cheap'],
  ] as const)('refuses %s %s in words', async (field, value) => {
    const preview = await previewBulk(scratch.db, await order(field, value));
    expect(preview.ok).toBe(false);
    if (!preview.ok) expect(preview.problem.remedy).not.toBe('');
  });

  test('tells motors that somebody else changed since', async () => {
    const seen = await order('status', 'spare');
    await scratch.db.read.motor.update({ where: { id: seen.motors[0]?.id ?? '' }, data: { version: { increment: 1 } } });
    expect(await previewBulk(scratch.db, seen)).toMatchObject({ ok: true, value: { changing: 4, overtaken: 1 } });
    expect(await changeMany(scratch.db, seen, BY)).toMatchObject({ ok: true, value: { changed: 4 } });
  });
});

describe.each<Case>([
  ['area', 'Pump house', (motor) => motor.area, 'Pump house'],
  ['area', '', (motor) => motor.area, undefined],
  ['status', 'spare', (motor) => motor.plate.status, 'spare'],
  ['hours_per_year', '1234.5', (motor) => motor.hoursPerYear, 1234.5],
  ['hours_per_year', '', (motor) => motor.hoursPerYear, undefined],
  ['demand_coincidence', '0.35', (motor) => motor.plate.demandCoincidence, 0.35],
  ['quoted_price', '1250.05', (motor) => motor.plate.quotedPrice, 1250.05],
  ['quoted_repair', '99', (motor) => motor.plate.quotedRepair, 99],
  ['unplanned_stop_cost', '0', (motor) => motor.plate.unplannedStopCost, 0],
])('changing %s to "%s"', (field, typed, read, wanted) => {
  test('changes these motors and no other, keeps the history, asks for an evaluation, and can be taken back', async () => {
    const before = await stated();
    const versions = (await motors()).map(({ version }) => version);
    const done = await changeMany(scratch.db, await order(field, typed), BY);
    if (!done.ok) throw new Error(done.problem.text);
    const after = await stated();
    expect(after.slice(0, 5).map(read)).toEqual(Array(5).fill(wanted));
    expect(after.slice(5)).toEqual(before.slice(5));
    const changed = before.slice(0, 5).filter((motor) => read(motor) !== wanted).length;
    expect(done.value.changed).toBe(changed);
    expect((await motors()).filter(({ version }, at) => version > (versions[at] ?? 0))).toHaveLength(changed);
    const events = await scratch.db.read.changeEvent.findMany({ where: { batch: done.value.batch } });
    expect(events).toHaveLength(changed);
    expect(events[0]).toMatchObject({ who: 'Trial Reader', why: 'survey', field, what: 'changed', verified: false });
    expect(await scratch.db.read.evaluationRun.count({ where: { studyId, state: 'queued' } })).toBe(1);

    const back = await takeBackMany(scratch.db, studyId, done.value.batch, 'Trial Reader');
    expect(back).toMatchObject({ ok: true, value: { changed } });
    expect(await stated()).toEqual(before);
  });
});

describe('taking back', () => {
  test('leaves motors alone that were changed again since', async () => {
    const done = await changeMany(scratch.db, await order('status', 'spare'), BY);
    if (!done.ok) throw new Error(done.problem.text);
    await changeMany(scratch.db, await order('status', 'retired', 2), BY);
    const back = await takeBackMany(scratch.db, studyId, done.value.batch, 'Trial Reader');
    if (!back.ok) throw new Error(back.problem.text);
    const now = (await stated()).slice(0, 5).map((motor) => motor.plate.status);
    expect(now.slice(0, 2)).toEqual(['retired', 'retired']);
    expect(now.slice(2)).not.toContain('spare');
  });

  test('says so when there is nothing to take back', async () => {
    expect(await takeBackMany(scratch.db, studyId, 'no-such', 'Trial Reader')).toMatchObject({ ok: false });
  });
});
