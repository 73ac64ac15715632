import { gunzipSync } from 'node:zlib';
import { type Motor, type PlanMotor, planMotor, type Settings, type StudyContext, type TrustLevel } from '@/lib/engine';
import type { PrismaClient, Tx } from '@/lib/platform/db';
import { contentHash } from '@/lib/platform/hash';
import { fleetAsEvaluated } from '../evaluation/as-evaluated';
import { readProgress, readResults } from '../evaluation/data';
import { engineInUse } from '../evaluation/engine-in-use';
import { readStudyMotors } from '../fleet/data';
import { studyInForce } from '../study/context';
import { readStudy } from '../study/data';
import { settingsToJson } from '../study/settings';
import { lowResults } from './low-case';
import { type PlanOutcome, type PlanWish, planOutcome, planWish } from './programme';
import { PLAN_STAGES, type PlanProgress } from './schema';
import { engineTerms, type PlanTerms, storedTerms } from './terms';

export type Reader = PrismaClient | Tx;

/** A wish with the motor it concerns. */
export interface StoredWish extends PlanWish {
  readonly motorId: string;
}

/** The wishes of a study, in natural order of their motors. */
export async function readWishes(db: Reader, studyId: string, motorId?: string): Promise<StoredWish[]> {
  const rows = await db.planWish.findMany({
    where: { studyId, ...(motorId !== undefined && { motorId }) },
    include: { motor: { select: { siteName: true, tag: true } } },
    orderBy: [{ motor: { naturalKey: 'asc' } }, { kind: 'asc' }],
  });
  return rows.map(({ motorId, motor, kind, option, year, bundle, who, reason }) => ({
    motorId,
    ...planWish.parse({
      site: motor.siteName,
      tag: motor.tag,
      kind,
      by: who,
      ...(option !== null && { option }),
      ...(year !== null && { year }),
      ...(bundle !== null && { bundle }),
      ...(reason !== null && { reason }),
    }),
  }));
}

/** What the plan takes from a motor's result. */
export interface PlannedMotor extends Omit<PlanMotor, 'trust'> {
  readonly motorId: string;
  readonly trust: TrustLevel;
}

/** All that a plan is worked out from. */
export interface PlanInputs {
  readonly settings: Settings;
  readonly motors: readonly PlannedMotor[];
  readonly wishes: readonly StoredWish[];
  readonly terms: PlanTerms;
  /** The motors as they are evaluated, by their id, and the study to do so again: for the low case. */
  readonly again: { readonly study: StudyContext; readonly motors: ReadonlyMap<string, Motor> };
  /** Hash over all of it: a plan with another one is out of date. */
  readonly hash: string;
}

/** The run and hash of what a plan would be worked out from now; `undefined` while nothing is evaluated. */
export async function readInputsHash(
  db: Reader,
  studyId: string,
): Promise<{ readonly runId: string; readonly hash: string } | undefined> {
  const study = await readStudy(db, studyId);
  const { shown } = await readProgress(db, studyId);
  const run = shown && (await db.evaluationRun.findUnique({ where: { id: shown.id }, select: { id: true, inputsHash: true } }));
  if (!study || !run) return undefined;
  const wishes = (await readWishes(db, studyId)).map(({ motorId: _, ...wish }) => wish);
  const terms = await readTerms(db, studyId);
  const parts = { engine: engineInUse(), results: run.inputsHash, settings: settingsToJson(study.settings), wishes, terms };
  return { runId: run.id, hash: contentHash(parts) };
}

/** What holds of a study's plan as a whole. */
export async function readTerms(db: Reader, studyId: string): Promise<PlanTerms> {
  const row = await db.study.findUnique({ where: { id: studyId }, select: { planTerms: true } });
  return storedTerms(row?.planTerms ?? '{}');
}

/** What a plan is worked out from now; `undefined` while nothing is evaluated. */
export async function readPlanInputs(db: Reader, studyId: string): Promise<PlanInputs | undefined> {
  const now = await readInputsHash(db, studyId);
  const inForce = await studyInForce(db, studyId);
  if (!now || !inForce) return undefined;
  const { study, context } = inForce;
  const terms = await readTerms(db, studyId);
  const stored = await fleetAsEvaluated(db, inForce, await readStudyMotors(db, studyId, { withHistory: true }));
  const again = new Map(stored.map(({ id, motor }) => [id, motor]));
  const { robust } = engineTerms(terms);
  const low = robust && lowResults(context, robust);
  const failed = await db.motor.findMany({ where: { studyId, status: 'failed' }, select: { id: true } });
  const broken = new Set(failed.map(({ id }) => id));
  const motors: PlannedMotor[] = [];
  for await (const { motorId, result } of readResults(db, now.runId)) {
    if (motorId === undefined) continue;
    const known = again.get(motorId);
    const { trust, ...motor } = planMotor(result, { failed: broken.has(motorId), low: known && low?.(known) });
    motors.push({ ...motor, motorId, trust: trust.level });
  }
  return {
    settings: study.settings,
    motors,
    wishes: await readWishes(db, studyId),
    terms,
    again: { study: context, motors: again },
    hash: now.hash,
  };
}

/** Without a sign of life for so long, an attempt of a process that has ended counts as given up. */
const SILENCE_MS = 30_000;

/** Where working out a study's plan stands. */
export async function readPlanProgress(db: Reader, studyId: string, now = new Date()): Promise<PlanProgress> {
  const rows = await db.planSolution.findMany({
    where: { studyId },
    select: { id: true, state: true, stage: true, problem: true, startedAt: true, heartbeatAt: true },
    orderBy: [{ startedAt: 'desc' }, { id: 'desc' }],
  });
  const shown = rows.find(({ state }) => state === 'done');
  const [last] = rows;
  const silent = last !== undefined && now.getTime() - last.heartbeatAt.getTime() > SILENCE_MS;
  const progress = shown ? { shown: shown.id } : {};
  if (!last || last.state === 'done') return progress;
  if (last.state === 'running' && !silent) {
    const stage = PLAN_STAGES.find((each) => each === last.stage) ?? 'waiting';
    const seconds = Math.max(0, Math.round((now.getTime() - last.startedAt.getTime()) / 1000));
    return { ...progress, active: { id: last.id, stage, seconds } };
  }
  const interrupted = last.state === 'running' ? 'Working the plan out was interrupted.' : 'Working the plan out was stopped.';
  return { ...progress, stopped: last.problem ?? interrupted };
}

/** The latest outcome of a study's plan, with the hash of what it was worked out from. */
export async function readSolution(
  db: Reader,
  studyId: string,
): Promise<{ readonly outcome: PlanOutcome; readonly hash: string; readonly finishedAt: Date } | undefined> {
  const row = await db.planSolution.findFirst({
    where: { studyId, state: 'done' },
    orderBy: [{ startedAt: 'desc' }, { id: 'desc' }],
  });
  if (row?.result == null || row.finishedAt === null) return undefined;
  const outcome = planOutcome.parse(JSON.parse(gunzipSync(row.result).toString('utf8')));
  return { outcome, hash: row.inputsHash, finishedAt: row.finishedAt };
}
