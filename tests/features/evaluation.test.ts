import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { compareNaturally, compareSisters, evaluateMotor, fleetKeyOf, motorResult, ranksOf } from '@/lib/engine';
import { readProgress, readResults, readShownRunId } from '@/lib/features/evaluation/data';
import { engineInUse, engineOf } from '@/lib/features/evaluation/engine-in-use';
import { contextHash, inputHash } from '@/lib/features/evaluation/input-hash';
import { enqueueEvaluation, enqueueOutdated } from '@/lib/features/evaluation/mutations';
import { resultRow } from '@/lib/features/evaluation/result-row';
import { claimRun, requeueAbandoned, storeBlock } from '@/lib/features/evaluation/run-store';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readStudyMotors } from '@/lib/features/fleet/data';
import { studyInForce } from '@/lib/features/study/context';
import { defaultSettings, settingsToJson } from '@/lib/features/study/settings';
import { fromMinor } from '@/lib/platform/money';
import { loadTables } from '@/lib/reference/load';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

const COUNT = 24;
let scratch: TemporaryDatabase;
let studyId: string;

beforeEach(async () => {
  scratch = temporaryDatabase();
  studyId = await studyWith(scratch.db, someMotors(COUNT));
});
afterEach(() => scratch.remove());

async function evaluate(): Promise<void> {
  await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
  await workThroughQueue(scratch.db, { jobs: 1 });
}

async function storedRows() {
  return scratch.db.read.motorEvaluation.findMany({ where: { studyId }, orderBy: { naturalKey: 'asc' } });
}

/** What the engine says of the same motors without the database: the reference for what is stored. */
async function expected() {
  const stored = await readStudyMotors(scratch.db.read, studyId);
  const reference = loadTables();
  const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };
  const results = stored.map(({ motor }) => motorResult(evaluateMotor(motor, study)));
  const ranks = ranksOf(results);
  const sisters = compareSisters(results.map((result) => fleetKeyOf(result).sisters));
  return results
    .map(({ ranking: _ranking, likeness: _likeness, ...rest }, index) => {
      const among = sisters[index] ?? [];
      return { ...rest, rank: ranks[index], ...(among.length > 0 && { sisters: among }) };
    })
    .sort(byPlace);
}

function byPlace(a: { site: string; tag: string }, b: typeof a): number {
  return compareNaturally(a.site, b.site) || compareNaturally(a.tag, b.tag);
}

describe('an evaluation', () => {
  test('keeps what the engine says, with the ranks of the whole fleet', async () => {
    await evaluate();
    const runId = (await readShownRunId(scratch.db.read, studyId)) ?? '';
    const results = [];
    for await (const { result } of readResults(scratch.db.read, runId)) results.push(result);
    expect(results.sort(byPlace)).toEqual(JSON.parse(JSON.stringify(await expected())));
  });

  test('writes the columns of the lists from the same result', async () => {
    await evaluate();
    const byTag = new Map((await expected()).map((result) => [result.tag, result]));
    for (const row of await storedRows()) {
      const result = byTag.get(row.tag);
      const chosen = result?.options.find((option) => option.id === result.decision.option);
      expect(row.rank).toBe(result?.rank);
      expect(row.loadFraction).toBe(result?.load_fraction?.value ?? null);
      expect(row.loadFractionU).toBe(result?.load_fraction?.u ?? null);
      expect(row.totalLossKw).toBe(result?.losses?.total.value ?? null);
      expect(row.trust).toBe(result?.trust.level);
      expect(row.option).toBe(result?.decision.option);
      const value = row.netPresentValueMinor === null ? undefined : fromMinor(row.netPresentValueMinor, 'USD');
      if (chosen?.net_present_value === undefined) expect(value).toBeUndefined();
      else expect(Math.abs((value ?? 0) - chosen.net_present_value.value)).toBeLessThanOrEqual(0.005 + 1e-9);
    }
  });

  test('says how it stands', async () => {
    expect(await readProgress(scratch.db.read, studyId)).toEqual({});
    await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
    expect((await readProgress(scratch.db.read, studyId)).active).toMatchObject({ state: 'queued' });
    await workThroughQueue(scratch.db, { jobs: 1 });
    const progress = await readProgress(scratch.db.read, studyId);
    expect(progress.shown).toMatchObject({ state: 'done', done: COUNT, total: COUNT, reused: 0 });
    expect(progress.active).toBeUndefined();
  });
});

describe('evaluated again', () => {
  test('unchanged motors keep their row; one run is left', async () => {
    await evaluate();
    const before = (await storedRows()).map(({ id, rank }) => ({ id, rank }));
    await evaluate();
    expect((await readProgress(scratch.db.read, studyId)).shown).toMatchObject({ reused: COUNT, done: COUNT });
    expect((await storedRows()).map(({ id, rank }) => ({ id, rank }))).toEqual(before);
    expect(await scratch.db.read.evaluationRun.count({ where: { studyId } })).toBe(1);
  });

  test('only the changed motor is evaluated, and the ranks are those of the new fleet', async () => {
    await evaluate();
    const [motor] = await readStudyMotors(scratch.db.read, studyId);
    await scratch.db.read.drivenLoad.update({
      where: { motorId: motor?.id ?? '' },
      data: { hoursPerYear: 8760, dutyProfile: null },
    });
    await evaluate();
    expect((await readProgress(scratch.db.read, studyId)).shown).toMatchObject({ reused: COUNT - 1 });
    const ranks = new Map((await expected()).map(({ tag, rank }) => [tag, rank]));
    for (const row of await storedRows()) expect(row.rank).toBe(ranks.get(row.tag));
  });

  test('changed settings change every result', async () => {
    await evaluate();
    const settings = settingsToJson({ ...defaultSettings(), energyPricePerKwh: 0.2 });
    await scratch.db.read.study.update({ where: { id: studyId }, data: { settings: JSON.stringify(settings) } });
    await evaluate();
    expect((await readProgress(scratch.db.read, studyId)).shown).toMatchObject({ reused: 0, done: COUNT });
  });

  test('a motor that is gone leaves the results', async () => {
    await evaluate();
    const [motor] = await readStudyMotors(scratch.db.read, studyId);
    await scratch.db.read.motor.delete({ where: { id: motor?.id ?? '' } });
    await evaluate();
    const rows = await storedRows();
    expect(rows).toHaveLength(COUNT - 1);
    expect(rows.map(({ rank }) => rank).sort((a, b) => a - b)).toEqual(rows.map((_, at) => at + 1));
  });
});

describe('of an earlier engine', () => {
  test('is asked for by nobody, and made at the start of the program, anew for every motor', async () => {
    await evaluate();
    await enqueueOutdated(scratch.db);
    expect((await readProgress(scratch.db.read, studyId)).active).toBeUndefined();

    const earlier = `${engineInUse()}0`;
    await scratch.db.write((tx) => tx.evaluationRun.updateMany({ where: { studyId }, data: { engineVersion: earlier } }));
    await scratch.db.write((tx) => tx.motorEvaluation.updateMany({ where: { studyId }, data: { inputHash: earlier } }));
    await enqueueOutdated(scratch.db);
    await enqueueOutdated(scratch.db);
    expect(await scratch.db.read.evaluationRun.count({ where: { studyId, state: 'queued' } })).toBe(1);
    await workThroughQueue(scratch.db, { jobs: 1 });
    expect((await readProgress(scratch.db.read, studyId)).active).toBeUndefined();
    expect((await readProgress(scratch.db.read, studyId)).shown).toMatchObject({ reused: 0, engineVersion: engineInUse() });
  });

  test('is told from today’s by any change of a source, not by its place', () => {
    const [one, same, other] = ['one', 'same', 'other'].map((name) => path.join(scratch.env.dataFolder, name));
    for (const folder of [one, same, other]) mkdirSync(path.join(folder ?? '', 'load'), { recursive: true });
    for (const folder of [one, same]) writeFileSync(path.join(folder ?? '', 'load', 'slip.ts'), 'export const a = 1;');
    writeFileSync(path.join(other ?? '', 'load', 'slip.ts'), 'export const a = 2;');
    expect(engineOf(one ?? '')).toMatch(/^[0-9.]+\+[0-9a-f]{12}$/);
    expect(engineOf(same ?? '')).toBe(engineOf(one ?? ''));
    expect(engineOf(other ?? '')).not.toBe(engineOf(one ?? ''));
  });
});

describe('interrupted', () => {
  /** Does what a run does up to the middle, and leaves it there as a dead process would. */
  async function halfDone(): Promise<string> {
    await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
    const run = await claimRun(scratch.db);
    const inForce = await studyInForce(scratch.db.read, studyId);
    if (!run || !inForce) throw new Error('the run or the study is missing');
    const hash = contextHash(inForce.context);
    const motors = (await readStudyMotors(scratch.db.read, studyId)).slice(0, 10);
    const rows = motors.map(({ id, naturalKey, motor }) => ({
      motorId: id,
      naturalKey,
      inputHash: inputHash(hash, motor),
      row: resultRow(evaluateMotor(motor, inForce.context), 'USD'),
    }));
    await storeBlock(scratch.db, run, rows);
    return run.id;
  }

  test('a run that a dead process left is finished by the next, which takes over what was done', async () => {
    const runId = await halfDone();
    await workThroughQueue(scratch.db, { jobs: 1 });
    const { shown } = await readProgress(scratch.db.read, studyId);
    expect(shown).toMatchObject({ id: runId, state: 'done', reused: 10, done: COUNT });
    expect(await storedRows()).toHaveLength(COUNT);
  });

  test("another server's run is left alone while it shows signs of life", async () => {
    const runId = await halfDone();
    await requeueAbandoned(scratch.db, true);
    expect((await readProgress(scratch.db.read, studyId)).active).toMatchObject({ id: runId, state: 'running' });
    const past = new Date(Date.now() - 60_000);
    await scratch.db.read.evaluationRun.update({ where: { id: runId }, data: { heartbeatAt: past } });
    await requeueAbandoned(scratch.db, true);
    expect((await readProgress(scratch.db.read, studyId)).active).toMatchObject({ id: runId, state: 'queued' });
  });

  test('a cancelled run leaves the figures of the one before', async () => {
    await evaluate();
    const before = await readShownRunId(scratch.db.read, studyId);
    const settings = settingsToJson({ ...defaultSettings(), energyPricePerKwh: 0.2 });
    await scratch.db.read.study.update({ where: { id: studyId }, data: { settings: JSON.stringify(settings) } });
    const id = await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
    // Asked to stop before it begins: the first look between blocks sees it.
    await scratch.db.read.evaluationRun.update({ where: { id }, data: { cancelRequested: true } });
    await workThroughQueue(scratch.db, { jobs: 1 });
    const progress = await readProgress(scratch.db.read, studyId);
    expect(progress.stopped).toMatchObject({ id, state: 'cancelled' });
    expect(progress.shown?.id).toBe(before);
  });

  test('a new wish stops the run at work, and one waiting run serves all wishes', async () => {
    await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
    const working = await claimRun(scratch.db);
    const next = await scratch.db.write((tx) => enqueueEvaluation(tx, studyId));
    expect(await scratch.db.write((tx) => enqueueEvaluation(tx, studyId))).toBe(next);
    const row = await scratch.db.read.evaluationRun.findUnique({ where: { id: working?.id ?? '' } });
    expect(row?.cancelRequested).toBe(true);
    expect((await readProgress(scratch.db.read, studyId)).active?.id).toBe(next);
  });

  test('a fault of the program ends the run with a sentence', async () => {
    await scratch.db.read.study.update({ where: { id: studyId }, data: { settings: '{"horizon_years":"long"}' } });
    const log = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    await evaluate();
    expect(log).toHaveBeenCalledOnce();
    log.mockRestore();
    const { stopped } = await readProgress(scratch.db.read, studyId);
    expect(stopped).toMatchObject({ state: 'failed' });
    expect(stopped?.problem).toMatch(/^The evaluation stopped/);
  });
});
