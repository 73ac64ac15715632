import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { oddsWords } from '@/lib/features/condition/words';
import { unpackResult } from '@/lib/features/evaluation/data';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readSisters } from '@/lib/features/motor/sisters';
import { readWorklist } from '@/lib/features/worklist/data';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

describe('the worklist', () => {
  let temporary: TemporaryDatabase;
  let study: string;
  beforeAll(async () => {
    temporary = temporaryDatabase();
    study = await studyWith(temporary.db, someMotors(200));
  });
  afterAll(() => temporary.remove());

  it('is not there before the first evaluation', async () => {
    expect(await readWorklist(temporary.db.read, study)).toBeUndefined();
  });

  it('holds exactly the motors that have failed or have an indicator near or beyond its limit: must-do first, then by risk', async () => {
    await temporary.db.write((tx) => enqueueEvaluation(tx, study));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    const list = await readWorklist(temporary.db.read, study);
    const rows = await temporary.db.read.motorEvaluation.findMany({ where: { studyId: study }, include: { motor: true } });
    const expected = rows.filter(
      (row) =>
        row.motor?.status === 'failed' ||
        unpackResult(row.details).condition.indicators.some(({ band }) => band === 'near' || band === 'beyond'),
    );
    const items = list?.items ?? [];
    expect(items.map((item) => item.tag).sort()).toEqual(expected.map((row) => row.tag).sort());
    expect(list?.total).toBe(200);
    const lastMust = items.findLastIndex((item) => item.mustDo);
    expect(items.slice(0, lastMust + 1).every((item) => item.mustDo)).toBe(true);
    const risks = items.slice(lastMust + 1).map((item) => item.risk ?? 0);
    expect(risks).toEqual([...risks].sort((a, b) => b - a));
  });

  it('puts first what must not be started or run, and says what to do about each', async () => {
    const items = (await readWorklist(temporary.db.read, study))?.items ?? [];
    // Planted: water in a terminal box, and a loose supply fuse.
    expect(
      items
        .filter((item) => item.mustDo && !item.failed)
        .map((item) => item.tag)
        .sort(),
    ).toEqual(['G-1', 'Q-1']);
    const failed = items.filter((item) => item.failed);
    expect(failed.length).toBeGreaterThan(0);
    expect(failed.every((item) => item.mustDo && item.outage && item.why.startsWith('It has failed.'))).toBe(true);
    for (const item of items) {
      expect(item.why.length, item.tag).toBeGreaterThan(10);
      expect(item.next.length, item.tag).toBeGreaterThan(10);
    }
    expect(items.find((item) => item.tag === 'Q-1')?.outage).toBe(true);
    expect(items.find((item) => item.tag === 'G-9')?.why).toContain('A repair now is decided.');
  });

  it('a stop that costs more is a larger risk, unless a standby takes over', async () => {
    const risk = async () => (await readWorklist(temporary.db.read, study))?.items.find((item) => item.tag === 'E-8')?.risk ?? 0;
    const { db } = temporary;
    const motor = await db.read.motor.findFirstOrThrow({ where: { studyId: study, tag: 'E-8' }, include: { drivenLoad: true } });
    const stop = (unplannedStopCostMinor: bigint, standby: boolean) =>
      db.write(async (tx) => {
        await tx.motor.update({ where: { id: motor.id }, data: { unplannedStopCostMinor } });
        await tx.drivenLoad.updateMany({ where: { motorId: motor.id }, data: { standby } });
      });
    await stop(0n, false);
    const without = await risk();
    await stop(5_000_000n, false);
    const costly = await risk();
    const item = (await readWorklist(db.read, study))?.items.find((entry) => entry.tag === 'E-8');
    const odds = item?.leading?.odds ?? 0;
    // 50,000 in money more, times the chance; beyond its limit, so in full.
    expect(costly - without).toBeCloseTo((50_000 * odds) / (1 + odds), 3);
    await stop(5_000_000n, true);
    expect(await risk()).toBeCloseTo(without, 9);
  });

  it('sisters are motors of the same rating, voltage and speed, and only what is the motor’s own is compared', async () => {
    const { db } = temporary;
    const rows = await db.read.motorEvaluation.findMany({ where: { studyId: study }, include: { motor: true } });
    let compared = 0;
    for (const row of rows.filter((entry) => entry.worstBand !== null).slice(0, 60)) {
      const { motor } = row;
      if (!motor || row.motorId === null) continue;
      const plate = {
        ratedPowerKw: motor.ratedPowerKw,
        ratedPowerUnit: 'hp',
        status: 'running',
        ratedVoltageV: motor.ratedVoltageV,
        ratedSpeedRpm: motor.ratedSpeedRpm ?? undefined,
        machineKind: 'cage',
      } as const;
      const result = unpackResult(row.details);
      const found = await readSisters(db.read, study, { motorId: row.motorId, plate, result });
      for (const [id, among] of found) {
        compared += 1;
        expect(['overload', 'voltage-deviation', 'voltage-unbalance']).not.toContain(id);
        const like = rows.filter(
          (other) =>
            other.motorId !== row.motorId &&
            Math.abs((other.motor?.ratedPowerKw ?? 0) / motor.ratedPowerKw - 1) <= 0.03 &&
            Math.abs((other.motor?.ratedSpeedRpm ?? 0) / (motor.ratedSpeedRpm ?? 1) - 1) <= 0.03 &&
            other.motor?.ratedVoltageV === motor.ratedVoltageV &&
            unpackResult(other.details).condition.indicators.some((entry) => entry.id === id),
        );
        expect(among.count, `${row.tag} ${id}`).toBe(like.length);
      }
    }
    expect(compared).toBeGreaterThan(0);
  });
});

describe('odds in words', () => {
  it.each([
    [250, 'more than 100 to 1'],
    [9.6, '10 to 1'],
    [1, 'about even'],
    [0.25, '1 in 5'],
    [0.02, '1 in 51'],
    [0.0004, 'less than 1 in 1,000'],
  ])('%d is %s', (odds, words) => {
    expect(oddsWords(odds)).toBe(words);
  });
});
