import { z } from 'zod';
import type { PlanWishes } from '@/lib/engine';
import { whoSchema } from '../study/schema';
import { noWishes, planWishesSchema, readWishes } from './wishes';

/** What holds of a plan as a whole, whichever motor: members of the settings file's `plan`. */
export const planTermsSchema = planWishesSchema.pick({ limits: true, jobs: true, robust: true, readings: true, frontier: true });
export type PlanTerms = z.infer<typeof planTermsSchema>;

/** The terms as a study keeps them; what is not stated is as usual. */
export function storedTerms(text: string): PlanTerms {
  return planTermsSchema.parse(JSON.parse(text));
}

/** The terms as the engine takes them. */
export function engineTerms(terms: PlanTerms): Pick<PlanWishes, 'limits' | 'jobs' | 'robust' | 'readings'> {
  const { limits, jobs, robust, readings } = readWishes({ ...noWishes(), ...terms });
  return { limits, jobs, readings, ...(robust && { robust }) };
}

/** Multiples of the budgets that are planned as well where somebody asks for it. */
export const USUAL_MULTIPLES = [0.25, 0.5, 0.75, 1, 1.5, 2] as const;

const EMPTY = '';
const trimmed = z.string().trim();

/** The terms as a form sends them: texts, to be read by the strict reader of numbers. */
export const termsForm = z.object({
  study: z.string().min(1).max(64),
  who: whoSchema,
  robust: z.literal('yes').optional(),
  robust_price: trimmed.default(EMPTY),
  robust_hours: trimmed.default(EMPTY),
  frontier: z.literal('yes').optional(),
});
