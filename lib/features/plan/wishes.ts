import { z } from 'zod';
import { type PlanWishes, USUAL_JOBS, USUAL_READINGS } from '@/lib/engine';

const name = z.string().trim().min(1);
const motor = { site: z.string().default(''), tag: name };
const year = z.int().min(1900).max(2200);
const hours = z.number().nonnegative();
const reading = z.strictObject({ cost: z.number().nonnegative(), u: z.number().positive() });
const factor = z.number().gt(0).max(1);

/** What people want of a plan, as the settings file and the screens write it; years are those of the calendar, hours those of a year. */
export const planWishesSchema = z.strictObject({
  pins: z
    .array(
      z
        .strictObject({ ...motor, option: name.optional(), year: year.optional() })
        .refine(({ option, year: when }) => option !== undefined || when !== undefined, {
          message: 'wants nothing',
          params: { remedy: 'Give an option, a year or both; must_do asks for any option in any year.' },
        }),
    )
    .default([]),
  forbid: z.array(z.strictObject(motor)).default([]),
  must_do: z.array(z.strictObject({ ...motor, year: year.optional() })).default([]),
  bundles: z.array(z.strictObject({ name, motors: z.array(z.strictObject(motor)).min(2) })).default([]),
  /** Typed by whoever answers for the figures. */
  overrides: z.array(z.strictObject({ ...motor, by: name, reason: name })).default([]),
  limits: z
    .array(
      z
        .strictObject({
          site: z.string().optional(),
          area: z.string().optional(),
          year: year.optional(),
          outage_hours: hours.optional(),
          crew_hours: hours.optional(),
        })
        .refine(({ outage_hours, crew_hours }) => outage_hours !== undefined || crew_hours !== undefined, {
          message: 'limits nothing',
          params: { remedy: 'Give outage_hours, crew_hours or both.' },
        }),
    )
    .default([]),
  jobs: z
    .array(
      z.strictObject({
        action: z.enum(['repair', 'replace', 'resize']).optional(),
        up_to_kw: z.number().positive().optional(),
        outage_hours: hours,
        crew_hours: hours,
      }),
    )
    .default(() =>
      USUAL_JOBS.map(({ action, upToKw, outageHours, crewHours }) => ({
        ...(action !== undefined && { action }),
        ...(upToKw !== undefined && { up_to_kw: upToKw }),
        outage_hours: outageHours,
        crew_hours: crewHours,
      })),
    ),
  robust: z.strictObject({ energy_price: factor, hours: factor }).nullable().default(null),
  /** What a reading costs, and its standard uncertainty: load as a share of the rating, hours as a share, efficiency as a fraction. */
  readings: z
    .strictObject({
      load: reading.default(USUAL_READINGS.load),
      hours: reading.default(USUAL_READINGS.hours),
      efficiency: reading.default(USUAL_READINGS.efficiency),
    })
    .default(USUAL_READINGS),
  /** Multiples of the budget that are planned as well. */
  frontier: z.array(z.number().gt(0).max(100)).max(20).default([]),
});

/** The wishes as they are written, complete. */
export type PlanWishesFile = z.infer<typeof planWishesSchema>;

/** No wishes at all, with what is usual. */
export function noWishes(): PlanWishesFile {
  return planWishesSchema.parse({});
}

/** The wishes as the engine takes them. */
export function readWishes(file: PlanWishesFile): PlanWishes {
  return {
    pins: file.pins,
    forbid: file.forbid,
    mustDo: file.must_do,
    bundles: file.bundles,
    overrides: file.overrides,
    limits: file.limits.map(({ outage_hours, crew_hours, ...where }) => ({
      ...where,
      outageHours: outage_hours,
      crewHours: crew_hours,
    })),
    jobs: file.jobs.map(({ action, up_to_kw, outage_hours, crew_hours }) => ({
      action,
      upToKw: up_to_kw,
      outageHours: outage_hours,
      crewHours: crew_hours,
    })),
    readings: file.readings,
    ...(file.robust && { robust: { energyPrice: file.robust.energy_price, hours: file.robust.hours } }),
  };
}
