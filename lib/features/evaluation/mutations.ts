import { type Database, database, type Tx } from '@/lib/platform/db';
import { newId } from '@/lib/platform/id';
import { readProgress } from './data';
import { engineInUse } from './engine-in-use';
import { wakeRunner } from './runner';

/**
 * Queues an evaluation inside the caller's transaction, so that a change and the wish to have it evaluated are kept together. A run
 * that waits already serves; one at work is asked to stop, since it has read what is now old, and what it has done is taken over.
 * Call {@link wakeRunner} once the transaction is through.
 * @returns the id of the waiting run.
 */
export async function enqueueEvaluation(tx: Tx, studyId: string): Promise<string> {
  const waiting = await tx.evaluationRun.findFirst({ where: { studyId, state: 'queued' }, select: { id: true } });
  if (waiting !== null) return waiting.id;
  await tx.evaluationRun.updateMany({ where: { studyId, state: 'running' }, data: { cancelRequested: true } });
  const id = newId();
  // What it is evaluated with is written when it begins: until then anything may change.
  await tx.evaluationRun.create({
    data: { id, studyId, engineVersion: '', tableEditions: '[]', settings: '{}', settingsHash: '', inputsHash: '' },
  });
  return id;
}

/** Has a study's fleet evaluated, as soon as the runner comes to it; returns at once. Only what changed is evaluated again. */
export async function requestEvaluation(studyId: string): Promise<string> {
  const id = await database().write((tx) => enqueueEvaluation(tx, studyId));
  wakeRunner();
  return id;
}

/**
 * Queues an evaluation of every study whose figures were computed by another state of the engine, as after an upgrade: nobody has changed anything
 * there, so nobody would ask for it.
 */
export async function enqueueOutdated(db: Database): Promise<void> {
  const engine = engineInUse();
  for (const { id } of await db.read.study.findMany({ select: { id: true } })) {
    const { shown } = await readProgress(db.read, id);
    if (shown && shown.engineVersion !== engine) await db.write((tx) => enqueueEvaluation(tx, id));
  }
}

/** Asks a study's waiting or working run to stop; the figures of the last finished one stay. */
export async function cancelEvaluation(studyId: string): Promise<void> {
  await database().write(async (tx) => {
    await tx.evaluationRun.updateMany({
      where: { studyId, state: 'queued' },
      data: { state: 'cancelled', finishedAt: new Date() },
    });
    await tx.evaluationRun.updateMany({ where: { studyId, state: 'running' }, data: { cancelRequested: true } });
  });
}
