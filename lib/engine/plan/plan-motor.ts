import type { MotorResult } from '../result';

/** What the plan takes from a motor's result. */
export type PlanMotor = Pick<MotorResult, 'site' | 'tag' | 'rank' | 'trust' | 'options'> & {
  /** A failed motor must be seen to. */
  readonly failed: boolean;
};

/** What people want of the plan, by motor (`site` and `tag` joined by {@link motorKey}). */
export interface Wishes {
  /** The option and year that a motor must have. */
  readonly pinned?: ReadonlyMap<string, { readonly option: string; readonly year: number }>;
  /** Motors that must not be touched. */
  readonly forbidden?: ReadonlySet<string>;
  /** Motors whose figures are not usable and that somebody answers for. */
  readonly overrides?: ReadonlyMap<string, { readonly by: string; readonly reason: string }>;
  /** Motors that are done in one year or not at all. */
  readonly bundles?: readonly (readonly string[])[];
  readonly cancelled?: () => boolean;
}

export const motorKey = ({ site, tag }: { readonly site: string; readonly tag: string }): string => `${site}\n${tag}`;
