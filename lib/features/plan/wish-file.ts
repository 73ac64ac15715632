import { motorKey } from '@/lib/engine';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import type { PlanWish } from './programme';
import { type PlanTerms, planTermsSchema } from './terms';
import type { PlanWishesFile } from './wishes';
import { nameOf } from './words';

/** The wishes and terms of a study as the key `plan` of its settings file. Only who answers for an override has a place there. */
export function planToFile(wishes: readonly PlanWish[], terms: PlanTerms): PlanWishesFile {
  const of = (kind: PlanWish['kind']) => wishes.filter((wish) => wish.kind === kind);
  const at = ({ site, tag }: PlanWish) => ({ site, tag });
  const bundles = new Map<string, { site: string; tag: string }[]>();
  for (const wish of of('together')) {
    const name = wish.bundle ?? '';
    bundles.set(name, [...(bundles.get(name) ?? []), at(wish)]);
  }
  return {
    pins: of('pinned').map((wish) => ({
      ...at(wish),
      ...(wish.option !== undefined && { option: wish.option }),
      ...(wish.year !== undefined && { year: wish.year }),
    })),
    forbid: of('forbidden').map(at),
    must_do: of('must').map((wish) => ({ ...at(wish), ...(wish.year !== undefined && { year: wish.year }) })),
    // A name that one motor alone bears binds nothing yet, and the file wants two.
    bundles: [...bundles].flatMap(([name, motors]) => (motors.length > 1 ? [{ name, motors }] : [])),
    overrides: of('override').map((wish) => ({ ...at(wish), by: wish.by, reason: wish.reason ?? '' })),
    ...terms,
  };
}

/** What a settings file wants of a plan, motor by motor, and of the plan as a whole. */
export interface PlanFromFile {
  readonly wishes: readonly PlanWish[];
  readonly terms: PlanTerms;
}

/**
 * Reads the key `plan` of a settings file into wishes of single motors. Refused where one motor is wished two things of a kind, which a study
 * cannot keep.
 * @param who whoever takes the file: it has no names but those who answer for an override.
 */
export function planFromFile(file: PlanWishesFile, who: string): Result<PlanFromFile> {
  const wishes: PlanWish[] = [
    ...file.pins.map((pin): PlanWish => ({ ...pin, kind: 'pinned', by: who })),
    ...file.forbid.map((motor): PlanWish => ({ ...motor, kind: 'forbidden', by: who })),
    ...file.must_do.map((motor): PlanWish => ({ ...motor, kind: 'must', by: who })),
    ...file.bundles.flatMap(({ name, motors }) =>
      motors.map((motor): PlanWish => ({ ...motor, kind: 'together', bundle: name, by: who })),
    ),
    ...file.overrides.map((override): PlanWish => ({ ...override, kind: 'override' })),
  ];
  const seen = new Set<string>();
  for (const wish of wishes) {
    const key = `${motorKey(wish)}\n${wish.kind}`;
    if (seen.has(key))
      return refuse(
        'wished-twice',
        `${nameOf(wish)} stands twice under ${PLACES[wish.kind]}.`,
        'Leave one of the two in the file, and send it again.',
      );
    seen.add(key);
  }
  return ok({ wishes, terms: planTermsSchema.parse(termsOf(file)) });
}

const PLACES: Readonly<Record<PlanWish['kind'], string>> = {
  pinned: 'plan.pins',
  forbidden: 'plan.forbid',
  must: 'plan.must_do',
  together: 'plan.bundles',
  override: 'plan.overrides',
};

function termsOf({ limits, jobs, robust, readings, frontier }: PlanWishesFile): PlanTerms {
  return { limits, jobs, robust, readings, frontier };
}
