import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readRanking } from '@/lib/features/ranking/data';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

describe('the ranking', () => {
  let temporary: TemporaryDatabase;
  let study: string;
  beforeAll(async () => {
    temporary = temporaryDatabase();
    study = await studyWith(temporary.db, someMotors(60));
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
      expect(lines.length).toBe(group.count);
      expect(lines.reduce((sum, motor) => sum + (motor.cost ?? 0), 0)).toBeCloseTo(group.cost, 6);
      expect(lines.reduce((sum, motor) => sum + (motor.moneySaved ?? 0), 0)).toBeCloseTo(group.saved, 6);
    }
    expect(all?.sum.total).toBe(60);
    expect(all?.sum.notUsable).toBe(all?.motors.filter((motor) => motor.trust === 'not-usable').length);
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
