import { compareSisters, type FleetKey, fleetKeyOf, ranksOf } from '@/lib/engine';
import type { Database } from '@/lib/platform/db';
import { type Reader, unpackResult } from './data';
import { deleteRows, insertEvaluations, type PlacedRow, placeRows, type Run } from './run-rows';
import { sistersText } from './sisters-text';

/** What the runner keeps of its runs. Each step is one short transaction, so that nobody else's change waits long. */

/** Without a sign of life for so long, a run of another process counts as abandoned. */
const SILENCE_MS = 30_000;

/**
 * Puts runs back into the queue that a process left behind when it ended. What they had done is taken over.
 * @param otherServers whether another server may be at work on them.
 */
export async function requeueAbandoned(db: Database, otherServers: boolean): Promise<void> {
  await db.write(async (tx) => {
    const silent = otherServers ? { heartbeatAt: { lt: new Date(Date.now() - SILENCE_MS) } } : {};
    await tx.evaluationRun.updateMany({
      where: { state: 'running', cancelRequested: true, ...silent },
      data: { state: 'cancelled', finishedAt: new Date() },
    });
    await tx.evaluationRun.updateMany({ where: { state: 'running', ...silent }, data: { state: 'queued' } });
  });
}

/** Takes the run that has waited longest; `undefined` when none waits. */
export async function claimRun(db: Database): Promise<Run | undefined> {
  return db.write(async (tx) => {
    const run = await tx.evaluationRun.findFirst({
      where: { state: 'queued' },
      select: { id: true, studyId: true },
      orderBy: [{ queuedAt: 'asc' }, { id: 'asc' }],
    });
    if (run === null) return undefined;
    const now = new Date();
    await tx.evaluationRun.update({ where: { id: run.id }, data: { state: 'running', startedAt: now, heartbeatAt: now } });
    return run;
  });
}

interface RunStart {
  readonly engineVersion: string;
  readonly tableEditions: readonly { readonly id: string; readonly edition: string }[];
  readonly settings: unknown;
  readonly settingsHash: string;
  readonly inputsHash: string;
  readonly total: number;
  readonly reused: number;
}

/** Writes down what a run is evaluated with, and how much there is to do. */
export async function beginRun(db: Database, runId: string, start: RunStart): Promise<void> {
  const { total, reused, tableEditions, settings, ...rest } = start;
  await db.write(async (tx) => {
    await tx.evaluationRun.updateMany({
      where: { id: runId },
      data: {
        ...rest,
        tableEditions: JSON.stringify(tableEditions),
        settings: JSON.stringify(settings),
        progressTotal: total,
        progressDone: reused,
        reused,
        heartbeatAt: new Date(),
      },
    });
  });
}

/**
 * Ids of earlier results of a study by the hash of what went into them; those of this very run come first. Those kept from before results could be
 * ranked at other prices, or had limits of their own, are worked out anew.
 */
export async function readEarlier(db: Reader, run: Run): Promise<Map<string, string>> {
  const rows = await db.motorEvaluation.findMany({
    where: {
      studyId: run.studyId,
      movable: { not: null },
      OR: [{ loadFraction: null }, { loadFractionLow: { not: null } }],
    },
    select: { id: true, runId: true, inputHash: true },
  });
  // The last of a hash stays in the map.
  rows.sort((a, b) => Number(a.runId === run.id) - Number(b.runId === run.id));
  return new Map(rows.map(({ inputHash, id }) => [inputHash, id]));
}

/** Whether somebody asked the run to stop, or it is gone with its study. */
export async function stopAsked(db: Database, runId: string): Promise<boolean> {
  const run = await db.read.evaluationRun.findUnique({ where: { id: runId }, select: { cancelRequested: true } });
  return run?.cancelRequested ?? true;
}

/** Keeps a block of results and the progress. */
export async function storeBlock(db: Database, run: Run, rows: readonly PlacedRow[]): Promise<void> {
  await db.write(async (tx) => {
    const kept = await tx.evaluationRun.updateMany({
      where: { id: run.id },
      data: { progressDone: { increment: rows.length }, heartbeatAt: new Date() },
    });
    if (kept.count > 0) await insertEvaluations(tx, run, rows);
  });
}

/** Ends a run that came to no result; what it has done stays for the next one to take over. */
export async function endRun(db: Database, runId: string, state: 'cancelled' | 'failed', problem?: string): Promise<void> {
  await db.write(async (tx) => {
    await tx.evaluationRun.updateMany({
      where: { id: runId },
      data: { state, problem: problem ?? null, finishedAt: new Date() },
    });
  });
}

/** What the steps over the fleet need of the results that are kept, by the hash of their inputs; each is unpacked only if it is asked for. */
async function readFleetKeys(db: Reader, studyId: string): Promise<ReadonlyMap<string, () => FleetKey>> {
  const rows = await db.motorEvaluation.findMany({ where: { studyId }, select: { inputHash: true, details: true } });
  return new Map(rows.map(({ inputHash, details }) => [inputHash, () => fleetKeyOf(unpackResult(details))]));
}

/**
 * Finishes a run in one transaction: takes over the earlier results that still hold, ranks the fleet and compares like motors, and lets the run before go.
 * Until then the screens show that one.
 * @param fresh what the steps over the fleet need of the motors that this run has evaluated, by the hash of their inputs: these need not be unpacked again.
 */
export async function finishRun(
  db: Database,
  run: Run,
  motors: readonly { readonly motorId: string; readonly inputHash: string }[],
  fresh: ReadonlyMap<string, FleetKey>,
): Promise<void> {
  const earlierKeys = motors.every(({ inputHash }) => fresh.has(inputHash))
    ? new Map<string, () => FleetKey>()
    : await readFleetKeys(db.read, run.studyId);
  const keys = motors.map(({ inputHash }) => {
    const key = fresh.get(inputHash) ?? earlierKeys.get(inputHash)?.();
    if (key === undefined) throw new Error('a result of the run is missing');
    return key;
  });
  const ranks = ranksOf(keys);
  const sisters = compareSisters(keys.map((key) => key.sisters));
  await db.write(async (tx) => {
    const earlier = await readEarlier(tx, run);
    const places = motors.map(({ motorId, inputHash }, index) => {
      const id = earlier.get(inputHash);
      if (id === undefined) throw new Error('a result of the run is missing');
      return { id, motorId, rank: ranks[index] ?? 0, sisters: sistersText(sisters[index] ?? []) };
    });
    await deleteRows(
      tx,
      run.id,
      places.map(({ id }) => id),
    );
    await placeRows(tx, run.id, places);
    const now = new Date();
    await tx.evaluationRun.update({
      where: { id: run.id },
      data: { state: 'done', progressDone: motors.length, finishedAt: now, heartbeatAt: now },
    });
    await tx.evaluationRun.deleteMany({
      where: { studyId: run.studyId, id: { not: run.id }, state: { in: ['done', 'cancelled', 'failed'] } },
    });
  });
}
