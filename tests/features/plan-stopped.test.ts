import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import type { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { readPlanProgress, readSolution, readTerms } from '@/lib/features/plan/data';
import { setTerms } from '@/lib/features/plan/mutations';
import { startPlan, stopPlan } from '@/lib/features/plan/runner';
import { database } from '@/lib/platform/db';
import { keepPlan } from './support/keep-plan';
import { someMotors, studyWith } from './support/study-with-demo';
import { programDatabase } from './support/temporary-database';

/** The runner as a process has it: threads of its own, on the database of the data folder. */
const holder: typeof globalThis & { lossbookPlans?: ReadonlyMap<string, { readonly thread: Worker }> } = globalThis;
let temporary: ReturnType<typeof programDatabase>;
let study: string;
const db = () => database();
const threadOf = (): Worker => {
  const work = holder.lossbookPlans?.get(study);
  if (!work) throw new Error('nothing is at work');
  return work.thread;
};
const solving = async (): Promise<void> => {
  while ((await readPlanProgress(db().read, study)).active?.stage !== 'solving') await wait(20);
};
const attempts = () =>
  db().read.planSolution.findMany({
    where: { studyId: study },
    select: { state: true, result: true, problem: true, finishedAt: true },
    orderBy: [{ startedAt: 'asc' }, { id: 'asc' }],
  });

beforeAll(async () => {
  temporary = programDatabase();
  study = await studyWith(db(), someMotors(60));
  await db().write((tx) => enqueueEvaluation(tx, study));
  await workThroughQueue(db(), { otherServers: () => true, jobs: 1 });
  await keepPlan(db(), study);
  // Twenty further budgets, each of them a plan: long enough to be stopped in the middle.
  const terms = await readTerms(db().read, study);
  const frontier = Array.from({ length: 20 }, (_, n) => 0.05 * (n + 1));
  await setTerms(db(), { studyId: study, who: 'P. Planner', terms: { ...terms, frontier } });
});
afterAll(() => temporary.remove());

describe('a plan that is stopped', () => {
  it('while it is solved ends its thread, keeps nothing of it, and leaves the plan before as it was', async () => {
    const before = await readSolution(db().read, study);
    expect(before).toBeDefined();
    await startPlan(study);
    const thread = threadOf();
    const said: unknown[] = [];
    thread.on('message', (news) => said.push(news));
    await solving();
    const ended = once(thread, 'exit');
    await stopPlan(study);
    // Ended from outside, and not because it had done: a thread that comes to its end by itself says so with 0.
    expect(await ended).toEqual([1]);
    expect(thread.threadId).toBe(-1);
    expect(said.every((news) => typeof news === 'object' && news !== null && 'stage' in news)).toBe(true);
    expect(holder.lossbookPlans?.has(study)).toBe(false);
    const rows = await attempts();
    expect(rows.map(({ state }) => state)).toEqual(['done', 'cancelled']);
    expect(rows[1]).toMatchObject({ result: null, problem: 'Working the plan out was stopped.' });
    expect(rows[1]?.finishedAt).toBeInstanceOf(Date);
    expect(await readSolution(db().read, study)).toEqual(before);
    const progress = await readPlanProgress(db().read, study);
    expect(progress.active).toBeUndefined();
    expect(progress.stopped).toBe('Working the plan out was stopped.');
  });

  it('before it is solved ends by itself, since it holds the database, and keeps nothing either', async () => {
    await startPlan(study);
    const thread = threadOf();
    const ended = once(thread, 'exit');
    await stopPlan(study);
    expect(await ended).toEqual([0]);
    expect((await attempts()).map(({ state }) => state)).toEqual(['done', 'cancelled', 'cancelled']);
    // The book can be written to: nothing holds it.
    await setTerms(db(), {
      studyId: study,
      who: 'P. Planner',
      terms: { ...(await readTerms(db().read, study)), frontier: [0.5] },
    });
  });

  it('for a newer one gives way to it, and what is kept in the end is the newer one alone', async () => {
    await startPlan(study);
    const first = threadOf();
    const firstEnded = once(first, 'exit');
    await startPlan(study);
    const second = threadOf();
    expect(second).not.toBe(first);
    const secondEnded = once(second, 'exit');
    await firstEnded;
    expect(await secondEnded).toEqual([0]);
    while ((await readPlanProgress(db().read, study)).active !== undefined) await wait(20);
    const solution = await readSolution(db().read, study);
    expect(solution && 'years' in solution.outcome && solution.outcome.frontier?.map(({ multiple }) => multiple)).toEqual([0.5]);
    expect((await attempts()).map(({ state }) => state)).toEqual(['done']);
  });
});
