import { z } from 'zod';

/** Where a run stands: waiting, at work, finished, given up by somebody, or stopped by a fault. */
export const RUN_STATES = ['queued', 'running', 'done', 'cancelled', 'failed'] as const;
export type RunState = (typeof RUN_STATES)[number];

const time = z.iso.datetime();

/** One evaluation of a fleet, as screens see it. */
const runSummary = z.object({
  id: z.string(),
  state: z.enum(RUN_STATES),
  /** Motors with a result, and motors in all. */
  done: z.int().min(0),
  total: z.int().min(0),
  /** Motors whose earlier result was taken over, since nothing of theirs had changed. */
  reused: z.int().min(0),
  engineVersion: z.string(),
  queuedAt: time,
  finishedAt: time.optional(),
  /** A sentence, when it failed. */
  problem: z.string().optional(),
  /** Somebody asked it to stop, and it has not yet. */
  stopping: z.boolean(),
});
export type RunSummary = z.infer<typeof runSummary>;

/** What a screen needs to say of a study's evaluation. */
export const evaluationProgress = z.object({
  /** The run whose figures are shown; absent before the first one is finished. */
  shown: runSummary.optional(),
  /** The run at work or waiting. */
  active: runSummary.optional(),
  /** The last run, when it came to no result. */
  stopped: runSummary.optional(),
  /** There is no motor to be evaluated; said only where nothing was evaluated before. */
  empty: z.literal(true).optional(),
});
export type EvaluationProgress = z.infer<typeof evaluationProgress>;

/** What the screen sends to start or to stop an evaluation. */
export const studyForm = z.object({ studyId: z.string().min(1).max(64) });
