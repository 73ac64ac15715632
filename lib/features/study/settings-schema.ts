import { z } from 'zod';
import { readDate } from '../fleet/taken-at';
import { planWishesSchema } from '../plan/wishes';
import { tariffSchema, yearlyAmount, yearlyGrowth } from './tariff-schema';

/** A day of the calendar, without time. */
const day = z.string().refine((text) => text.length === 10 && readDate(text) !== undefined, 'is not a date such as 2026-01-31');
const fraction = z.number().min(0).max(1);
const notNegative = z.number().nonnegative();
/** Rates of interest, inflation or escalation a year; below -50 % or above 100 % a per cent was meant. */
const rate = z.number().gt(-0.5).max(1);
const currency = z.string().regex(/^[A-Z]{3}$/, 'is not a currency code of three capital letters');

export const policySchema = z.strictObject({
  max_simple_payback_years: notNegative,
  min_probability: fraction,
  max_reading_age_years: notNegative,
  at_failure: z.enum(['repair', 'replace']),
  spare_capacity_pct: notNegative,
  resize_below_load_fraction: fraction,
});

export const accuracySchema = z.strictObject({
  voltage_pct: notNegative,
  current_pct: notNegative,
  power_pct: notNegative,
  speed_rpm: notNegative,
});

export const rebateSchema = z
  .strictObject({
    action: z.enum(['replace', 'resize']),
    per_kw: notNegative.optional(),
    per_kwh: notNegative.optional(),
    per_motor: notNegative.optional(),
    cap: notNegative.optional(),
    cap_share: fraction.optional(),
  })
  .refine((rebate) => rebate.per_kw !== undefined || rebate.per_kwh !== undefined || rebate.per_motor !== undefined, {
    message: 'pays nothing',
    params: { remedy: 'Give per_kw, per_kwh or per_motor.' },
  });

/** Torque of a driven machine by points: per cent of the motor's rated speed and torque. */
export const loadPointSchema = z.strictObject({ speed_pct: z.number().min(0).max(200), torque_pct: z.number().min(0).max(1000) });

/** From this speed on a motor runs, and its load takes torque; in per cent. */
const RUNNING_PCT = 50;

const loadCurveSchema = z
  .array(loadPointSchema)
  .max(200)
  .superRefine((points, context) => {
    if (points.length < 2)
      context.addIssue({
        code: 'custom',
        message: 'has fewer than two points',
        params: { remedy: 'Give two points or more, in the order of rising speed_pct.' },
      });
    points.forEach(({ speed_pct: speed, torque_pct: torque }, index) => {
      const before = points[index - 1]?.speed_pct;
      if (before !== undefined && speed <= before)
        context.addIssue({
          code: 'custom',
          path: [index, 'speed_pct'],
          message: `is ${speed}, not above the ${before} of the point before`,
          params: { remedy: 'Write the points in the order of rising speed_pct, each speed once.' },
        });
      if (torque === 0 && (speed >= RUNNING_PCT || index === points.length - 1))
        context.addIssue({
          code: 'custom',
          path: [index, 'torque_pct'],
          message: 'is 0 where the motor runs, and a running load takes torque',
          params: { remedy: `Write a torque above 0 from ${RUNNING_PCT} % of rated speed on and at the last point.` },
        });
    });
  });

const depreciationSchema = z.discriminatedUnion('method', [
  z.strictObject({ method: z.literal('straight-line'), years: z.int().min(1).max(60) }),
  z.strictObject({
    method: z.literal('declining-balance'),
    years: z.int().min(1).max(60),
    factor: z.number().min(1).max(10).optional(),
  }),
]);

export const limitSchema = z.strictObject({
  value: z.number(),
  reason: z.string().trim().min(1, 'says nothing: write why this limit holds here'),
});

/**
 * The settings file as it is written, all keys named. Money is in the study's currency; rates, shares and
 * probabilities are fractions; keys that end in `_pct` are per cent.
 */
export const settingsFileSchema = z.strictObject({
  schema: z.literal(1),
  currency,
  frequency_hz: z.union([z.literal(50), z.literal(60)], { error: 'is neither 50 nor 60' }),
  standards: z.enum(['nema', 'iec']),
  as_of: day,
  energy_price_per_kwh: notNegative,
  demand_price_per_kw_month: notNegative,
  demand_coincidence: fraction,
  discount_rate: rate,
  energy_price_escalation: yearlyGrowth,
  horizon_years: z.int().min(1).max(60),
  tax_rate: fraction,
  policy: policySchema,
  budget: z.array(notNegative).max(60),
  money_terms: z.enum(['real', 'nominal']),
  inflation: rate,
  include_failure_cost: z.boolean(),
  objective: z.enum(['net-present-value', 'energy', 'emissions', 'risk']),
  assumed_load: z.number().gt(0).max(1.5),
  repair_shop: z.enum(['unknown', 'accredited']),
  rebates: z.array(rebateSchema),
  load_curves: z.record(z.string().trim().min(1, 'has an empty name').max(100), loadCurveSchema),
  depreciation: depreciationSchema.nullable(),
  tariffs: z.record(z.string(), tariffSchema),
  emission_factor_kg_per_kwh: yearlyAmount,
  failure_rate_per_year: fraction,
  accuracy: accuracySchema,
  limits: z.record(z.string(), limitSchema),
  prices: z.string().min(1).nullable(),
});

/** The settings file with every key filled in. */
export type SettingsFile = z.infer<typeof settingsFileSchema>;

/** A settings file as people may write it: any key, also of the nested ones, may be missing. */
export const partialSettingsSchema = settingsFileSchema
  .extend({ policy: policySchema.partial(), accuracy: accuracySchema.partial() })
  .partial()
  .extend({ plan: planWishesSchema.optional() });
