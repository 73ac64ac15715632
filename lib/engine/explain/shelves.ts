import { isBarred } from '../decide/limits';
import type { Evaluation } from '../evaluate';
import { standardFrame } from '../options/costs';
import { shortRating } from '../options/ratings';
import { bestShelf, type ShelfWorth } from '../options/shelf';

/** Motors of a site that one kind of new motor on the shelf would serve, and the number of spares that is worth most. */
export interface ShelfOf {
  readonly site: string;
  readonly ratedPowerKw: number;
  readonly poles: number;
  /** As stamped, else as the rating comes by the table; absent where neither is known. */
  readonly frame?: string | undefined;
  readonly tags: readonly string[];
  /** Spares already in the fleet of this rating, number of poles and frame; of what class they are does not count. */
  readonly inStock: number;
  readonly best: ShelfWorth;
}

interface Group {
  readonly site: string;
  readonly ratedPowerKw: number;
  readonly poles: number;
  readonly frame: string | undefined;
  readonly tags: string[];
  readonly values: number[];
  inStock: number;
  purchase: number;
}

/**
 * For each rating, number of poles, frame, enclosure and mounting of a site: whether new motors are worth keeping on the shelf, so that a failed
 * motor can be replaced at once. Motors on an assumed load do not count. What is worth most comes first; the time to restock and the yearly
 * keeping are the caller's, since no sheet holds them.
 *
 * Units: currency, years. Source: {@link bestShelf}; the worth of a replacement at failure as the options give it. For a page, not for the evaluation.
 */
export function shelvesOf(
  evaluations: readonly Evaluation[],
  given: { readonly restockYears: number; readonly keepingPerYear: number },
): ShelfOf[] {
  const groups = new Map<string, Group>();
  for (const evaluation of evaluations) collect(groups, evaluation);
  const settings = evaluations[0]?.scope.settings;
  if (!settings) return [];
  const shelves: ShelfOf[] = [];
  for (const { values, purchase, ...group } of groups.values()) {
    if (values.length === 0) continue;
    const best = bestShelf({
      valuesAtFailure: values,
      purchase,
      failureRatePerYear: settings.failureRatePerYear,
      discountRate: settings.discountRate,
      horizonYears: settings.horizonYears,
      ...given,
    });
    if (best) shelves.push({ ...group, best });
  }
  return shelves.sort((a, b) => b.best.value - a.best.value);
}

function collect(groups: Map<string, Group>, { motor, machine, options, scope }: Evaluation): void {
  const { plate } = motor;
  const spare = plate.status === 'spare';
  const later = options.find((option) => option.action === 'replace' && option.timing === 'at-failure');
  const value = later?.figures.net_present_value?.value;
  const purchase = later?.workings?.worths.purchaseOption?.quantity.value;
  const counts = later !== undefined && !isBarred(later) && value !== undefined && purchase !== undefined;
  if (!spare && !counts) return;
  const { poles } = machine.plate;
  const enclosure = plate.enclosure ?? 'enclosed';
  const frame = plate.frame?.trim().toUpperCase() ?? standardFrame(scope.tables, plate.ratedPowerKw, { poles, enclosure });
  const key = [motor.site, shortRating(plate.ratedPowerKw), poles, enclosure, plate.mounting ?? 'foot', frame ?? ''].join('|');
  let group = groups.get(key);
  if (!group) {
    group = { site: motor.site, ratedPowerKw: plate.ratedPowerKw, poles, frame, tags: [], values: [], inStock: 0, purchase: 0 };
    groups.set(key, group);
  }
  if (spare) group.inStock += 1;
  if (!counts) return;
  group.tags.push(motor.tag);
  group.values.push(value);
  // Prices of like motors may differ by a quotation: the dearest is on the safe side.
  group.purchase = Math.max(group.purchase, purchase);
}
