import { gunzipSync } from 'node:zlib';
import type { MotorResult } from '@/lib/engine';
import type { PrismaClient, Tx } from '@/lib/platform/db';
import type { StoredResult } from './result-row';
import { type EvaluationProgress, RUN_STATES, type RunState, type RunSummary } from './schema';
import { sistersOf } from './sisters-text';

export type Reader = PrismaClient | Tx;

const RUN_FIELDS = {
  id: true,
  state: true,
  progressDone: true,
  progressTotal: true,
  reused: true,
  engineVersion: true,
  queuedAt: true,
  finishedAt: true,
  problem: true,
  cancelRequested: true,
} as const;

interface RunRow {
  readonly id: string;
  readonly state: string;
  readonly progressDone: number;
  readonly progressTotal: number;
  readonly reused: number;
  readonly engineVersion: string;
  readonly queuedAt: Date;
  readonly finishedAt: Date | null;
  readonly problem: string | null;
  readonly cancelRequested: boolean;
}

function stateOf(text: string): RunState {
  return RUN_STATES.find((state) => state === text) ?? 'failed';
}

function summary(row: RunRow): RunSummary {
  const state = stateOf(row.state);
  return {
    id: row.id,
    state,
    done: row.progressDone,
    total: row.progressTotal,
    reused: row.reused,
    engineVersion: row.engineVersion,
    queuedAt: row.queuedAt.toISOString(),
    ...(row.finishedAt !== null && { finishedAt: row.finishedAt.toISOString() }),
    ...(row.problem !== null && { problem: row.problem }),
    stopping: state === 'running' && row.cancelRequested,
  };
}

/** What there is to say of a study's evaluation now. */
export async function readProgress(db: Reader, studyId: string): Promise<EvaluationProgress> {
  const rows = await db.evaluationRun.findMany({
    where: { studyId },
    select: RUN_FIELDS,
    orderBy: [{ queuedAt: 'desc' }, { id: 'desc' }],
  });
  const runs = rows.map(summary);
  const shown = runs.find(({ state }) => state === 'done');
  // One run may be stopping for the sake of the next, which waits: the next is what counts.
  const active = runs.find(({ state }) => state === 'queued') ?? runs.find(({ state }) => state === 'running');
  const last = runs[0];
  const stopped = active === undefined && (last?.state === 'cancelled' || last?.state === 'failed') ? last : undefined;
  const empty = runs.length === 0 && (await db.motor.findFirst({ where: { studyId }, select: { id: true } })) === null;
  return { ...(shown && { shown }), ...(active && { active }), ...(stopped && { stopped }), ...(empty && { empty }) };
}

/** The id of the run whose figures a study's screens show: the latest finished one. */
export async function readShownRunId(db: Reader, studyId: string): Promise<string | undefined> {
  const row = await db.evaluationRun.findFirst({
    where: { studyId, state: 'done' },
    select: { id: true },
    orderBy: [{ queuedAt: 'desc' }, { id: 'desc' }],
  });
  return row?.id;
}

/** A result from its compressed form. */
export function unpackResult(details: Uint8Array): StoredResult {
  const value: StoredResult = JSON.parse(gunzipSync(details).toString('utf8'));
  return value;
}

/** A motor's result with its rank, as in the results file. */
interface RankedResult {
  readonly motorId: string | undefined;
  readonly result: MotorResult;
}

/** Results per question: their compressed forms are some kilobytes each. */
const CHUNK = 500;

/**
 * The whole results of a run in the order asked for, a few hundred at a time.
 * @param motorIds only these, in this order; else all, in natural order of site and tag.
 */
export async function* readResults(db: Reader, runId: string, motorIds?: readonly string[]): AsyncGenerator<RankedResult> {
  const ids = motorIds ?? (await motorIdsOf(db, runId));
  for (let at = 0; at < ids.length; at += CHUNK) {
    const part = ids.slice(at, at + CHUNK);
    const rows = await db.motorEvaluation.findMany({
      where: { runId, motorId: { in: part } },
      select: { motorId: true, rank: true, sisters: true, details: true },
    });
    const byId = new Map(rows.map((row) => [row.motorId, row]));
    for (const id of part) {
      const row = byId.get(id);
      if (row === undefined) continue;
      const { ranking: _ranking, likeness: _likeness, ...result } = unpackResult(row.details);
      const sisters = sistersOf(row.sisters);
      yield { motorId: id, result: { ...result, rank: row.rank, ...(sisters.length > 0 && { sisters }) } };
    }
  }
}

async function motorIdsOf(db: Reader, runId: string): Promise<string[]> {
  const rows = await db.motorEvaluation.findMany({
    where: { runId },
    select: { motorId: true },
    orderBy: { naturalKey: 'asc' },
  });
  return rows.flatMap(({ motorId }) => (motorId === null ? [] : [motorId]));
}

/** One motor's result in the run that is shown. */
export async function readResult(db: Reader, studyId: string, motorId: string): Promise<MotorResult | undefined> {
  const runId = await readShownRunId(db, studyId);
  if (runId === undefined) return undefined;
  for await (const { result } of readResults(db, runId, [motorId])) return result;
  return undefined;
}

/** What a run was made with, for the head of exports. */
export interface RunMaking {
  readonly engineVersion: string;
  readonly tableEditions: readonly { readonly id: string; readonly edition: string }[];
  readonly finishedAt: Date | undefined;
}

/** What a run was made with. */
export async function readRunMaking(db: Reader, runId: string): Promise<RunMaking | undefined> {
  const row = await db.evaluationRun.findUnique({
    where: { id: runId },
    select: { engineVersion: true, tableEditions: true, finishedAt: true },
  });
  if (row === null) return undefined;
  const tableEditions: RunMaking['tableEditions'] = JSON.parse(row.tableEditions);
  return { engineVersion: row.engineVersion, tableEditions, finishedAt: row.finishedAt ?? undefined };
}
