import { parentPort, workerData } from 'node:worker_threads';
import { gzipSync } from 'node:zlib';
import { openDatabase } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { readProgress } from '../evaluation/data';
import { readPlanInputs } from './data';
import type { PlanStage } from './schema';
import { workOutPlan } from './work-out';

/**
 * The thread that works one plan out (see `runner.ts`). It reads with a connection of its own and lets it go before it solves: from then on it holds
 * nothing that would suffer if it were stopped in the middle.
 */

/** What the thread is started with. */
export interface SolveStart {
  readonly studyId: string;
  /** One cell; not zero once the plan is no longer wanted. */
  readonly stop: SharedArrayBuffer;
}

/** What it says: how far it is, and last what came of it; no result where nothing is evaluated or the solver found nothing. */
export type SolveNews =
  | { readonly stage: PlanStage }
  | { readonly result: Uint8Array; readonly hash: string }
  | { readonly nothing: 'not-evaluated' | 'unsolved' };

const LOOK_AGAIN_MS = 250;

async function solve({ studyId, stop }: SolveStart, say: (news: SolveNews) => void): Promise<void> {
  const flag = new Int32Array(stop);
  const cancelled = () => Atomics.load(flag, 0) !== 0;
  const db = openDatabase(readEnv().databaseFile);
  let inputs: Awaited<ReturnType<typeof readPlanInputs>>;
  try {
    say({ stage: 'waiting' });
    while ((await readProgress(db.read, studyId)).active !== undefined && !cancelled()) {
      await new Promise((resolve) => setTimeout(resolve, LOOK_AGAIN_MS));
    }
    say({ stage: 'reading' });
    inputs = cancelled() ? undefined : await readPlanInputs(db.read, studyId);
  } finally {
    await db.close();
  }
  if (cancelled()) return;
  if (!inputs) {
    say({ nothing: 'not-evaluated' });
    return;
  }
  say({ stage: 'solving' });
  const outcome = await workOutPlan(inputs, cancelled);
  if (cancelled()) return;
  if (outcome) say({ result: gzipSync(JSON.stringify(outcome)), hash: inputs.hash });
  else say({ nothing: 'unsolved' });
}

if (parentPort) {
  const port = parentPort;
  const start: SolveStart = workerData;
  void solve(start, (news) => port.postMessage(news));
}
