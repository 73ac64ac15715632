import path from 'node:path';
import type { Worker } from 'node:worker_threads';
import { database } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { beginSolution, cancelSolutions, failSolution, keepSolution, stillWanted } from './mutations';
import type { PlanStage } from './schema';
import type { SolveNews, SolveStart } from './solve-worker';

/** Works plans out beside the pages: each in a thread that lives outside the bundle, at most one for a study. */

interface Work {
  readonly id: string;
  readonly thread: Worker;
  readonly flag: Int32Array;
  stage: PlanStage;
}

// One per process, also when the development server loads this module anew.
const holder: typeof globalThis & { lossbookPlans?: Map<string, Work> | undefined } = globalThis;
holder.lossbookPlans ??= new Map();
const atWork = holder.lossbookPlans;

const SIGN_OF_LIFE_MS = 3_000;

/** Sentences for a plan that came to nothing. */
const NOTHING = {
  'not-evaluated': 'The fleet has not been evaluated yet: there is nothing to plan with.',
  unsolved: 'The solver came to no plan. Take wishes back, or make the budgets rounder, and try again.',
} as const;

/** Has the plan of a study worked out from what holds now; returns at once. What was at work for it is given up. */
export async function startPlan(studyId: string): Promise<void> {
  const db = database();
  release(studyId);
  const id = await beginSolution(db, studyId);
  // The bundler rewrites an imported `Worker`; asked for in this way, the built-in one is left alone.
  const { Worker: Thread } = process.getBuiltinModule('node:worker_threads');
  const starter = path.join(readEnv().projectFolder, 'lib', 'platform', 'start-worker.mjs');
  const start: SolveStart = { studyId, stop: new SharedArrayBuffer(4) };
  const data = { ...start, program: 'lib/features/plan/solve-worker.ts' };
  const thread = new Thread(starter, { workerData: data, execArgv: [] });
  thread.unref();
  const work: Work = { id, thread, flag: new Int32Array(start.stop), stage: 'waiting' };
  atWork.set(studyId, work);

  let told = false;
  const settle = async (keep: () => Promise<void>): Promise<void> => {
    told = true;
    try {
      await keep();
    } catch (error) {
      console.error('The plan could not be kept.', error);
    }
  };
  const look = async (): Promise<void> => {
    // Somebody may have given it up from another process.
    if (!(await stillWanted(db, id, work.stage))) letGo(studyId, work);
  };
  const timer = setInterval(() => void look().catch((error) => console.error(error)), SIGN_OF_LIFE_MS);
  timer.unref();
  thread.on('message', (news: SolveNews) => {
    if ('stage' in news) {
      work.stage = news.stage;
      void look().catch((error) => console.error(error));
    } else if ('result' in news) void settle(() => keepSolution(db, id, news));
    else void settle(() => failSolution(db, id, NOTHING[news.nothing]));
  });
  thread.on('error', (error) => {
    console.error('The thread that works a plan out stopped.', error);
    void settle(() => failSolution(db, id, 'Working the plan out failed; the log of the program has the details.'));
  });
  thread.on('exit', () => {
    clearInterval(timer);
    if (atWork.get(studyId) === work) atWork.delete(studyId);
    if (!told) void settle(() => failSolution(db, id, 'Working the plan out was stopped.'));
  });
}

/** Gives up whatever is at work for a study; the plan before stays. */
export async function stopPlan(studyId: string): Promise<void> {
  await cancelSolutions(database(), studyId);
  release(studyId);
}

function release(studyId: string): void {
  const work = atWork.get(studyId);
  if (work) letGo(studyId, work);
}

/** A thread that solves is stopped in the middle; one that still reads is asked to end, since it holds the database. */
function letGo(studyId: string, { thread, flag, stage }: Work): void {
  Atomics.store(flag, 0, 1);
  if (stage === 'solving') void thread.terminate();
  atWork.delete(studyId);
}
