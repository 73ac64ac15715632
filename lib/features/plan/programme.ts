import { z } from 'zod';

/** A programme as it is kept and frozen: what is done with which motor in which year. Members are named as in the results file. */

const figure = z.object({
  value: z.number(),
  u: z.number(),
  unit: z.string(),
  low: z.number().optional(),
  high: z.number().optional(),
});
const because = z.object({ code: z.string(), text: z.string() });
const motor = z.object({ site: z.string(), tag: z.string() });
/** Who wanted something, and why. */
const answer = z.object({ by: z.string(), reason: z.string() });

const item = motor.extend({
  rank: z.number(),
  option: z.string(),
  action: z.string(),
  rated_power_kw: z.number(),
  efficiency_class: z.string().optional(),
  /** Money of the item's year, in units of the currency; at the prices of the study's day where money is real. */
  cost: z.number(),
  /** If carried out in the item's year, dated as of the study; absent where nothing but the need to act is known. */
  net_present_value: z.number().optional(),
  /** Its standard uncertainty; absent in plans from before they had any. */
  net_present_value_u: z.number().optional(),
  /** What the option changes in each year of the horizon, the investment first, before discounting, if carried out at once. */
  cash_flow: z.array(z.number()),
  /** The net present value with lower prices and shorter hours; absent in plans that did not look, and where nothing is known of it. */
  low_case_value: z.number().optional(),
  probability_within_policy: z.number().optional(),
  energy_saved: figure.optional(),
  demand_saved: figure.optional(),
  money_saved: figure.optional(),
  emissions_saved: figure.optional(),
  simple_payback: figure.optional(),
  trust: z.string().optional(),
  /** True where something has to be done with the motor, worth it or not. */
  must: z.boolean().optional(),
  /** Why it has to be; absent in versions frozen before plans said so. */
  because: z.array(because).optional(),
  override: answer.optional(),
});
const year = z.object({
  year: z.number(),
  budget: z.number(),
  spent: z.number(),
  items: z.array(item),
  /** Standard uncertainty of the sum of the items' net present values; absent as theirs are. */
  net_present_value_u: z.number().optional(),
  /** What one more unit of this year's money would bring, by the objective. */
  shadow_price: z.number().optional(),
});
const leftOut = motor.extend({ because });

/** The programme of versions frozen before plans were solved: motor by motor in the order of rank. */
const programmeByRank = z.object({
  method: z.literal('by-rank'),
  objective: z.string(),
  value: z.number(),
  years: z.array(year),
  left_out: z.array(leftOut),
});

/** What people wanted of a plan, motor by motor. */
export const planWish = motor.extend({
  kind: z.enum(['pinned', 'forbidden', 'must', 'together', 'override']),
  option: z.string().optional(),
  year: z.number().optional(),
  bundle: z.string().optional(),
  by: z.string(),
  reason: z.string().optional(),
  /** What it takes from the plan's worth, by the objective, and to within what that is proven; absent where it was not worked out. */
  cost: z.number().optional(),
  cost_within: z.number().optional(),
});
export type PlanWish = z.infer<typeof planWish>;

const hoursLimit = z.object({
  kind: z.enum(['outage', 'crew']),
  name: z.string(),
  year: z.number(),
  limit: z.number(),
  used: z.number(),
  shadow_price: z.number(),
});
const frontierPoint = z.object({
  multiple: z.number(),
  budget: z.number(),
  spent: z.number().optional(),
  value: z.number().optional(),
  bound: z.number().optional(),
});
const measureNext = motor.extend({
  about: z.enum(['load', 'hours', 'efficiency']),
  value_of_perfect: z.number(),
  value_of_reading: z.number(),
  cost: z.number(),
  net: z.number(),
});

const programmeByPlan = z.object({
  method: z.literal('plan'),
  objective: z.string(),
  /** Sum over the items, by the objective; no plan within the limits is worth more than `bound`. */
  value: z.number(),
  bound: z.number(),
  gap: z.number(),
  /** The same by the order of rank, each motor's best option in the first year with room. */
  greedy_value: z.number(),
  /** Worth of the best plan if nobody had pinned, forbidden or bundled anything; absent where nobody has. */
  value_without_wishes: z.number().optional(),
  years: z.array(year),
  /** Over all items: the standard uncertainty of the sum of net present values, and the energy saved once all is done. Absent in plans from before they had any. */
  net_present_value_u: z.number().optional(),
  energy_saved: figure.optional(),
  at_failure: z.array(motor.extend({ option: z.string(), expected_spend: z.array(z.number()) })),
  left_out: z.array(leftOut),
  wishes: z.array(planWish),
  /** The case of low_case_value, as factors; `binding` where nothing may be chosen that is not worth it there too. */
  low_case: z.object({ energy_price: z.number(), hours: z.number(), binding: z.boolean() }).optional(),
  limits: z.array(hoursLimit).optional(),
  frontier: z.array(frontierPoint).optional(),
  measure_next: z.array(measureNext).optional(),
});
export type PlannedProgramme = z.infer<typeof programmeByPlan>;

export const programme = z.discriminatedUnion('method', [programmeByPlan, programmeByRank]);
export type Programme = z.infer<typeof programme>;
export type ProgrammeItem = z.infer<typeof item>;

/** What came of working a plan out: a programme, or why there is none. */
export const planOutcome = z.union([programmeByPlan, z.object({ problems: z.array(because) })]);
export type PlanOutcome = z.infer<typeof planOutcome>;
