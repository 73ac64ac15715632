import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { neutralMoves, rerank, rerankable } from '@/lib/engine/client';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { inLabels } from '@/lib/features/fleet/screen-words';
import { readMovablePack, readRanking } from '@/lib/features/ranking/data';
import { type MovablePack, readMoves, writeMoves } from '@/lib/features/ranking/schema';
import { defaultSettings } from '@/lib/features/study/settings';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

/** Sixty motors of the demonstration, with all that have failed. */
const ALL = someMotors(200);
const FAILED = ALL.filter((motor) => motor.plate.status === 'failed');
const FLEET = [...ALL.filter((motor) => motor.plate.status !== 'failed').slice(0, 60 - FAILED.length), ...FAILED];

describe('the ranking', () => {
  let temporary: TemporaryDatabase;
  let study: string;
  beforeAll(async () => {
    temporary = temporaryDatabase();
    study = await studyWith(temporary.db, FLEET);
  });
  afterAll(() => temporary.remove());

  it('is not there before the first evaluation', async () => {
    expect(await readRanking(temporary.db.read, study, { skip: 0, take: 10 })).toBeUndefined();
  });

  it('lists every motor once in rank order, with reasons, page by page; its sums are those of its lines', async () => {
    await temporary.db.write((tx) => enqueueEvaluation(tx, study));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const all = await readRanking(temporary.db.read, study, { skip: 0, take: 1000 });
    expect(all?.motors.map((motor) => motor.rank)).toEqual(Array.from({ length: 60 }, (_, index) => index + 1));
    expect(all?.motors.every((motor) => motor.because.length > 0)).toBe(true);
    const second = await readRanking(temporary.db.read, study, { skip: 25, take: 25 });
    expect(second?.motors.map((motor) => motor.tag)).toEqual(all?.motors.slice(25, 50).map((motor) => motor.tag));
    for (const group of all?.sum.groups ?? []) {
      const lines = all?.motors.filter((motor) => motor.action === group.action && motor.timing === group.timing) ?? [];
      const usable = lines.filter((motor) => motor.trust !== 'not-usable');
      expect(lines.length).toBe(group.count);
      expect(usable.length).toBe(group.usable);
      expect(usable.reduce((sum, motor) => sum + (motor.cost ?? 0), 0)).toBeCloseTo(group.cost, 6);
      expect(usable.reduce((sum, motor) => sum + (motor.moneySaved ?? 0), 0)).toBeCloseTo(group.saved, 6);
      expect(usable.reduce((sum, motor) => sum + (motor.value ?? 0), 0)).toBeCloseTo(group.value, 6);
    }
    const now = all?.motors.filter(
      ({ action, timing, trust }) => (action === 'replace' || action === 'resize') && timing === 'now' && trust !== 'not-usable',
    );
    const each = now?.map(({ moneySavedU = 0 }) => moneySavedU) ?? [];
    expect(each.length).toBeGreaterThan(1);
    expect(all?.sum.savedNow.value).toBeCloseTo(now?.reduce((sum, { moneySaved = 0 }) => sum + moneySaved, 0) ?? 0, 1);
    // Between independent motors (GUM 5.1.2) and motors whose doubts are all one: those of a site are taken as read with one set of meters (5.2.2).
    expect(all?.sum.savedNow.u).toBeGreaterThan(Math.hypot(...each));
    expect(all?.sum.savedNow.u).toBeLessThan(each.reduce((sum, u) => sum + u, 0));
    for (const motor of all?.motors ?? []) {
      expect(motor.bought !== undefined, motor.tag).toBe(motor.action === 'replace' || motor.action === 'resize');
    }
    expect(all?.sum.total).toBe(60);
    expect(all?.sum.notUsable).toBe(all?.motors.filter((motor) => motor.trust === 'not-usable').length);
  });

  it('is what the browser makes of the pack when nothing is moved, and is stale with results kept from before', async () => {
    const text = await readMovablePack(temporary.db.read, study);
    const pack: MovablePack = JSON.parse(text ?? '');
    const motors = pack.motors.map(({ motor }) => motor);
    const found = rerank(rerankable(motors, pack.settings), neutralMoves(pack.settings));
    const stored = await readRanking(temporary.db.read, study, { skip: 0 });
    expect(found.map(({ index }) => motors[index]?.tag)).toEqual(stored?.motors.map(({ tag }) => tag));
    expect(found.map(({ decision }) => decision.option)).toEqual(stored?.motors.map(({ option }) => option));
    expect(found.map(({ decision }) => decision.because.map((reason) => inLabels(reason.text)))).toEqual(
      stored?.motors.map(({ because }) => because),
    );
    const some = await temporary.db.read.motorEvaluation.findFirst({ select: { id: true, movable: true } });
    const keep = async (movable: Uint8Array<ArrayBuffer> | null) =>
      temporary.db.write(async (tx) => {
        await tx.motorEvaluation.update({ where: { id: some?.id ?? '' }, data: { movable } });
      });
    await keep(null);
    expect(await readMovablePack(temporary.db.read, study)).toBe('stale');
    await keep(some?.movable ?? null);
    expect(await readMovablePack(temporary.db.read, 'no such study')).toBeUndefined();
  });

  it('of the motors to be replaced now, those that are not within policy have failed', async () => {
    const all = await readRanking(temporary.db.read, study, { skip: 0 });
    expect(all?.motors.length).toBe(60);
    const { policy } = defaultSettings();
    const now = (all?.motors ?? []).filter(
      (motor) => motor.bought !== undefined && motor.timing === 'now' && motor.trust !== 'not-usable',
    );
    const within = now.filter(
      (motor) =>
        (motor.payback ?? Number.POSITIVE_INFINITY) <= policy.maxSimplePaybackYears &&
        (motor.odds ?? 0) >= policy.minProbability &&
        (motor.value ?? 0) > 0,
    );
    expect(within.length).toBe(all?.sum.withinPolicy);
    expect(within.length).toBeGreaterThan(0);
    const others = now.filter((motor) => !within.includes(motor));
    expect(others.length).toBeGreaterThan(0);
    for (const motor of others) expect(FAILED.map(({ tag }) => tag)).toContain(motor.tag);
  });

  it('filters by decision and by area, and says how many it found', async () => {
    const keep = await readRanking(temporary.db.read, study, { action: 'keep', timing: 'now', skip: 0, take: 1000 });
    expect(keep?.found).toBe(keep?.motors.length);
    expect(keep?.motors.every((motor) => motor.action === 'keep')).toBe(true);
    const area = keep?.areas[0];
    const there = await readRanking(temporary.db.read, study, { area, skip: 0, take: 1000 });
    expect(there?.motors.every((motor) => motor.area === area)).toBe(true);
    expect(there?.sum.total).toBe(60);
  });
});

describe('the moves in an address', () => {
  const read = (query: string) => {
    const params = new URLSearchParams(query);
    return readMoves((name) => params.get(name) ?? undefined, 0.08);
  };

  it('come back as they were written, and say nothing when nothing is moved', () => {
    expect(read('')).toEqual({ energyPrice: 1, hours: 1, cost: 1, discountRate: 0.08 });
    expect(writeMoves(read(''), 0.08)).toEqual({});
    const moves = read('price=1.2&hours=0.5&rate=12');
    expect(moves).toEqual({ energyPrice: 1.2, hours: 0.5, cost: 1, discountRate: 0.12 });
    expect(writeMoves(moves, 0.08)).toEqual({ price: '1.2', hours: '0.5', rate: '12' });
  });

  it('stay within their ends, and what is no number moves nothing', () => {
    expect(read('price=1000&hours=0&rate=-3')).toEqual({ energyPrice: 4, hours: 0.25, cost: 1, discountRate: 0 });
    expect(read('price=dear&cost=&rate=NaN')).toEqual(read(''));
  });
});

describe('motors whose hours nobody said', () => {
  const [first, second, third] = someMotors(30).filter(
    ({ plate, hoursPerYear, readings }) => plate.status === 'running' && hoursPerYear !== undefined && readings.length > 0,
  );
  let temporary: TemporaryDatabase;
  beforeAll(() => {
    temporary = temporaryDatabase();
  });
  afterAll(() => temporary.remove());

  it('are counted, those alone of which no saving can be told', async () => {
    if (!first || !second || !third) throw new Error('The demonstration has no such motors.');
    const without = (motor: typeof first) => ({ ...motor, hoursPerYear: undefined, plateDuty: undefined });
    const study = await studyWith(temporary.db, [without(first), second, without(third)]);
    await temporary.db.write((tx) => enqueueEvaluation(tx, study));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const all = await readRanking(temporary.db.read, study, { skip: 0, take: 10 });
    const told = all?.motors.filter(
      ({ because, trust }) =>
        trust !== 'not-usable' && because.some((words) => words.startsWith('The hours a year are not known')),
    );
    expect(told?.map(({ tag }) => tag).sort()).toEqual([first.tag, third.tag].sort());
    expect(all?.sum.hoursUnknown).toBe(2);
  });
});
