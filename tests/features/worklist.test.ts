import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { oddsWords } from '@/lib/features/condition/words';
import { unpackResult } from '@/lib/features/evaluation/data';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { sistersOf } from '@/lib/features/evaluation/sisters-text';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
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
      const parts = item.riskParts;
      if (parts) expect(item.risk, item.tag).toBeCloseTo(parts.chance * parts.consequence * parts.urgency, 9);
    }
    expect(items.find((item) => item.tag === 'Q-1')?.outage).toBe(true);
    expect(items.find((item) => item.tag === 'E-5')?.why).toContain('A repair now is decided.');
    expect(items.find((item) => item.tag === 'G-9')?.why).toContain('A new motor in place of the repair is decided.');
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

  it('the run keeps with each motor how it stands among its sisters: counted again here by type, then by place', async () => {
    const { db } = temporary;
    const rows = await db.read.motorEvaluation.findMany({
      where: { studyId: study },
      include: { motor: { include: { drivenLoad: true, area: true } } },
    });
    const facts = rows.map((row) => ({ row, motor: row.motor, result: unpackResult(row.details) }));
    const kept = facts.flatMap(({ row, motor, result }) => sistersOf(row.sisters).map((found) => ({ found, motor, result })));
    expect(kept.length).toBeGreaterThan(0);
    for (const { found, motor, result } of kept) {
      expect(['overload', 'voltage-deviation', 'voltage-unbalance']).not.toContain(found.indicator);
      const own = result.condition.indicators.find((entry) => entry.id === found.indicator);
      const like = facts.filter(({ motor: other, result: theirs }) => {
        if (!motor || !other || other.id === motor.id || other.siteName !== motor.siteName) return false;
        const ratio = other.ratedPowerKw / motor.ratedPowerKw;
        const sameType = other.ratedVoltageV === motor.ratedVoltageV && ratio < 1.0201 && ratio > 1 / 1.0201;
        const samePlace =
          other.areaId === motor.areaId &&
          other.drivenLoad?.drivenMachine === motor.drivenLoad?.drivenMachine &&
          ratio < 2.0001 &&
          ratio > 1 / 2.0001;
        return (
          (found.alike === 'type' ? sameType : samePlace) &&
          theirs.likeness.poles === result.likeness.poles &&
          theirs.likeness.drive_fed === result.likeness.drive_fed &&
          other.machineKind === motor.machineKind &&
          theirs.condition.indicators.some((entry) => entry.id === found.indicator && entry.value.unit === own?.value.unit)
        );
      });
      expect(found.count, `${result.tag} ${found.indicator}`).toBe(like.length);
      expect(found.count).toBeGreaterThanOrEqual(5);
    }
  });

  it('below the list stand the motors within their limits that are worse than like ones, each once', async () => {
    const list = await readWorklist(temporary.db.read, study);
    const rows = await temporary.db.read.motorEvaluation.findMany({ where: { studyId: study } });
    const listed = new Set(list?.items.map((item) => item.tag));
    const expected = rows.filter((row) => !listed.has(row.tag) && sistersOf(row.sisters).some(({ worse }) => worse));
    expect(list?.apart.map((item) => item.tag).sort()).toEqual(expected.map((row) => row.tag).sort());
    for (const item of list?.items ?? [])
      expect(item.apart.length > 0, item.tag).toBe(
        sistersOf(rows.find((row) => row.tag === item.tag)?.sisters ?? null).some(({ worse }) => worse),
      );
  });

  it('sisters survive a run that takes every result over', async () => {
    const { db } = temporary;
    const keptBy = async () =>
      new Map(
        (await db.read.motorEvaluation.findMany({ where: { studyId: study }, select: { tag: true, sisters: true } })).map(
          ({ tag, sisters }) => [tag, sisters],
        ),
      );
    const before = await keptBy();
    await db.write((tx) => enqueueEvaluation(tx, study));
    await workThroughQueue(db, { otherServers: () => true, jobs: 1 });
    expect(await keptBy()).toEqual(before);
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
