import { availableParallelism } from 'node:os';
import type { FleetKey } from '@/lib/engine';
import type { Database } from '@/lib/platform/db';
import { problemOf } from '@/lib/platform/errors';
import { contentHash } from '@/lib/platform/hash';
import { loadTables } from '@/lib/reference/load';
import { readStudyMotors, type StoredMotor } from '../fleet/data';
import { studyInForce } from '../study/context';
import { settingsToJson } from '../study/settings';
import { fleetAsEvaluated } from './as-evaluated';
import { engineInUse } from './engine-in-use';
import { evaluateFleet } from './evaluate-fleet';
import { contextHash, inputHash, inputsHash } from './input-hash';
import { enqueueOutdated } from './mutations';
import { beginRun, claimRun, endRun, finishRun, readEarlier, requeueAbandoned, stopAsked, storeBlock } from './run-store';

interface QueueOptions {
  /** Whether another server uses the same data folder; its runs are left to it as long as they show signs of life. */
  readonly otherServers?: () => boolean;
  /** Threads for a large fleet; by default two, or one where there is only one processor. */
  readonly jobs?: number;
}

/**
 * Works through the queue of evaluations until it is empty. Runs that a dead process left behind are begun again, and studies whose figures come
 * from another state of the engine join the queue.
 */
export async function workThroughQueue(db: Database, options: QueueOptions = {}): Promise<void> {
  await requeueAbandoned(db, options.otherServers?.() ?? false);
  await enqueueOutdated(db);
  const jobs = options.jobs ?? Math.min(2, availableParallelism());
  for (let run = await claimRun(db); run; run = await claimRun(db)) {
    try {
      await evaluateStudy(db, run, jobs);
    } catch (error) {
      console.error('An evaluation failed.', error);
      await endRun(db, run.id, 'failed', `The evaluation stopped: ${problemOf(error).text}`);
    }
  }
}

async function evaluateStudy(db: Database, run: { readonly id: string; readonly studyId: string }, jobs: number): Promise<void> {
  const inForce = await studyInForce(db.read, run.studyId);
  if (inForce === undefined) return;
  const { settings } = inForce.context;
  const stored = await readStudyMotors(db.read, run.studyId, { withHistory: true });
  const motors = await fleetAsEvaluated(db.read, inForce, stored);
  const context = contextHash(inForce.context);
  const hashes = new Map(motors.map((stored) => [stored.id, inputHash(context, stored.motor)]));
  const hashOf = (stored: StoredMotor): string => hashes.get(stored.id) ?? '';

  const earlier = await readEarlier(db.read, run);
  const changed = motors.filter((stored) => !earlier.has(hashOf(stored)));
  await beginRun(db, run.id, {
    engineVersion: engineInUse(),
    tableEditions: loadTables().passports.map(({ id, edition }) => ({ id, edition })),
    settings: settingsToJson(settings, inForce.study.pricesFile),
    settingsHash: contentHash(settings),
    inputsHash: inputsHash([...hashes.values()]),
    total: motors.length,
    reused: motors.length - changed.length,
  });

  let next = 0;
  const fresh = new Map<string, FleetKey>();
  const finished = await evaluateFleet(
    changed.map(({ motor }) => motor),
    inForce.context,
    {
      jobs,
      shape: 'rows',
      cancelled: () => stopAsked(db, run.id),
      take: async (results) => {
        const rows = results.flatMap((row) => {
          const stored = changed[next++];
          return stored === undefined
            ? []
            : [{ row, motorId: stored.id, naturalKey: stored.naturalKey, inputHash: hashOf(stored) }];
        });
        await storeBlock(db, run, rows);
        for (const { row, inputHash: hash } of rows) fresh.set(hash, row.key);
      },
    },
  );
  if (!finished || (await stopAsked(db, run.id))) await endRun(db, run.id, 'cancelled');
  else
    await finishRun(
      db,
      run,
      motors.map((stored) => ({ motorId: stored.id, inputHash: hashOf(stored) })),
      fresh,
    );
}
