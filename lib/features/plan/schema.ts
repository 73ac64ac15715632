import { z } from 'zod';
import { whoSchema } from '../study/schema';

/** What is being done at a plan, in order. */
export const PLAN_STAGES = ['waiting', 'reading', 'solving', 'keeping'] as const;
export type PlanStage = (typeof PLAN_STAGES)[number];

/** What a screen needs to say of a study's plan. */
export const planProgress = z.object({
  /** The solution that is shown; absent before the first. */
  shown: z.string().optional(),
  active: z.object({ id: z.string(), stage: z.enum(PLAN_STAGES), seconds: z.number() }).optional(),
  /** A sentence on the last attempt, when it came to nothing. */
  stopped: z.string().optional(),
});
export type PlanProgress = z.infer<typeof planProgress>;

const id = z.string().min(1).max(64);
export const studyForm = z.object({ studyId: id });

/** Longest name of a bundle. */
const LONGEST_BUNDLE = 60;

/** What somebody wants of the plan for one motor. */
export const wishForm = z
  .object({
    study: id,
    motor: id,
    who: whoSchema,
    /** `free`, `forbidden`, `must`, or an option and a year joined by a blank, either of which may be `any`. */
    choice: z.union([z.enum(['free', 'forbidden', 'must']), z.string().regex(/^\S+ (\d{4}|any)$/)], {
      error: 'Choose what is to be done with it.',
    }),
    /** Latest year of `must`; empty for none. */
    by: z
      .string()
      .regex(/^(\d{4})?$/, 'Choose the latest year, or none.')
      .default(''),
    bundle: z.string().trim().max(LONGEST_BUNDLE, `A name has at most ${LONGEST_BUNDLE} characters.`).default(''),
    override: z.literal('yes').optional(),
    reason: z.string().trim().max(500, 'Write a reason of at most 500 characters.').default(''),
  })
  .refine(({ override, reason }) => override === undefined || reason !== '', {
    error: 'Write why its figures may be used all the same; the review shows it first.',
    path: ['reason'],
  });

/** Budgets by year and what the plan is best by; the amounts are read apart. */
export const budgetForm = z.object({
  study: id,
  who: whoSchema,
  objective: z.string().max(40),
  money_terms: z.enum(['real', 'nominal']),
});

export const dropForm = z.object({ study: id, who: whoSchema });
