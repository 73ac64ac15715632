import { isBarred } from '../decide/limits';
import type { Evaluation } from '../evaluate';
import { frameSeries, plainFrame, standardFrame } from '../options/frames';
import { listedPrice } from '../options/price';
import { shortRating } from '../options/ratings';
import { bestShelf, discountedYears, type Shelf, type ShelfWorth, shelfWorth } from '../options/shelf';
import type { PriceList, Settings } from '../settings';

/** What a shelf has to know of one motor. */
interface ShelfMotor {
  readonly site: string;
  readonly tag: string;
  readonly ratedPowerKw: number;
  readonly poles: number;
  readonly enclosure: 'open' | 'enclosed';
  readonly mounting: string;
  /** As stamped, else as the rating comes by the table; absent where neither is known. */
  readonly frame?: string | undefined;
  /** It stands in stock itself. */
  readonly spare: boolean;
  /** Value over the horizon of a new motor at its failure, and that motor's price; absent where the shelf could not serve it. */
  readonly served?: { readonly value: number; readonly purchase: number } | undefined;
  /** What an unplanned stop costs production: 0 behind a standby, absent where nobody has said. */
  readonly stopCost?: number | undefined;
}

/** Motors of a site that one kind of new motor on the shelf would serve, and the number of spares that is worth most. */
export interface ShelfOf {
  readonly site: string;
  readonly ratedPowerKw: number;
  readonly poles: number;
  readonly enclosure: 'open' | 'enclosed';
  readonly mounting: string;
  readonly frame?: string | undefined;
  readonly tags: readonly string[];
  /** Spares already in the fleet of this rating, number of poles and frame; of what class they are does not count. */
  readonly inStock: number;
  readonly purchase: number;
  readonly restockYears: number;
  /** False where the price list states no lead time of this rating, and the caller's serves. */
  readonly restockListed: boolean;
  readonly best: ShelfWorth;
  /** The first spare alone, worth it or not. */
  readonly one: ShelfWorth;
  /** Present value over the horizon of the stops that find one spare on the shelf: the most that it could save by making them shorter. */
  readonly stopsMet: number;
  /** Motors served of which nobody has said what a stop costs: their stops are not in it. */
  readonly stopsUnknown: number;
}

/** What the caller states, since no sheet holds it. */
interface ShelfGiven {
  /** From the order to the delivery where the price list states none of the rating, in years. */
  readonly restockYears: number;
  /** Room, care and insurance of a motor kept, as a share of its price a year. */
  readonly keepingPerYear: number;
}

/** What a shelf takes from a motor's evaluation; `undefined` for a motor that it neither serves nor holds. */
export function shelfMotor({ motor, machine, options, scope }: Evaluation): ShelfMotor | undefined {
  const { plate } = motor;
  const spare = plate.status === 'spare';
  const later = options.find((option) => option.action === 'replace' && option.timing === 'at-failure');
  const value = later?.figures.net_present_value?.value;
  const purchase = later?.workings?.worths.purchaseOption?.quantity.value;
  const counts = later !== undefined && !isBarred(later) && value !== undefined && purchase !== undefined;
  if (!spare && !counts) return undefined;
  const { poles } = machine.plate;
  const enclosure = plate.enclosure ?? 'enclosed';
  const { settings, tables } = scope;
  const series = frameSeries(plate.frame, settings.standards);
  const stopCost = plate.standby === true ? 0 : plate.unplannedStopCost;
  return {
    site: motor.site,
    tag: motor.tag,
    ratedPowerKw: plate.ratedPowerKw,
    poles,
    enclosure,
    mounting: plate.mounting ?? 'foot',
    frame:
      plate.frame === undefined
        ? standardFrame(tables, plate.ratedPowerKw, { poles, enclosure, series })
        : plainFrame(plate.frame),
    spare,
    ...(counts && { served: { value, purchase } }),
    ...(stopCost !== undefined && { stopCost }),
  };
}

/**
 * For each rating, number of poles, frame, enclosure and mounting of a site: whether new motors are worth keeping on the shelf, so that a failed
 * motor can be replaced at once. Motors on an assumed load do not count. What is worth most comes first, then what lacks least.
 *
 * Units: currency, years. Source: {@link bestShelf}; the worth of a replacement at failure as the options give it. For a page, not for the evaluation.
 */
export function shelvesOf(
  motors: readonly ShelfMotor[],
  { settings, prices }: { readonly settings: Settings; readonly prices: PriceList },
  given: ShelfGiven,
): ShelfOf[] {
  const groups = new Map<string, ShelfMotor[]>();
  for (const motor of motors) {
    const { site, ratedPowerKw, poles, enclosure, mounting, frame = '' } = motor;
    const key = [site, shortRating(ratedPowerKw), poles, enclosure, mounting, frame].join('|');
    groups.set(key, [...(groups.get(key) ?? []), motor]);
  }
  return [...groups.values()]
    .flatMap((group) => shelfOf(group, { settings, prices, given }) ?? [])
    .sort((a, b) => b.best.value - a.best.value || b.one.value - a.one.value);
}

function shelfOf(
  group: readonly ShelfMotor[],
  { settings, prices, given }: { readonly settings: Settings; readonly prices: PriceList; readonly given: ShelfGiven },
): ShelfOf | undefined {
  const [first] = group;
  const served = group.flatMap(({ tag, served: found, stopCost }) => (found ? [{ tag, ...found, stopCost }] : []));
  if (!first || served.length === 0) return undefined;
  const { site, ratedPowerKw, poles, enclosure, mounting, frame } = first;
  const listed = leadTimeYears(prices, first);
  const shelf: Shelf = {
    valuesAtFailure: served.map(({ value }) => value),
    // Prices of like motors may differ by a quotation: the dearest is on the safe side.
    purchase: Math.max(...served.map(({ purchase }) => purchase)),
    failureRatePerYear: settings.failureRatePerYear,
    discountRate: settings.discountRate,
    horizonYears: settings.horizonYears,
    restockYears: listed ?? given.restockYears,
    keepingPerYear: given.keepingPerYear,
  };
  const best = bestShelf(shelf);
  const one = shelfWorth(shelf, 1);
  if (!best || !one) return undefined;
  // Only a motor for which a new one is worth something calls for the spare.
  const calling = served.filter(({ value }) => value > 0);
  const stops = calling.reduce((sum, { stopCost = 0 }) => sum + stopCost, 0) * shelf.failureRatePerYear * (1 - one.empty);
  return {
    ...{ site, ratedPowerKw, poles, enclosure, mounting, frame },
    tags: served.map(({ tag }) => tag),
    inStock: group.filter(({ spare }) => spare).length,
    purchase: shelf.purchase,
    restockYears: shelf.restockYears,
    restockListed: listed !== undefined,
    best,
    one,
    stopsMet: stops * discountedYears(shelf.discountRate, shelf.horizonYears),
    stopsUnknown: calling.filter(({ stopCost }) => stopCost === undefined).length,
  };
}

const WEEKS_A_YEAR = 365.25 / 7;

/** The lead time that the price list states for such a motor, in years. */
function leadTimeYears(prices: PriceList, { ratedPowerKw, poles, enclosure }: ShelfMotor): number | undefined {
  const weeks = listedPrice(prices, { item: 'motor', ratedPowerKw, poles, enclosure })?.leadTimeWeeks;
  return weeks === undefined ? undefined : weeks / WEEKS_A_YEAR;
}
