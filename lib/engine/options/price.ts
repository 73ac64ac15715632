import type { Leaf } from '../formula/apply';
import type { Enclosure } from '../motor';
import type { Price, PriceList } from '../settings';
import { shortRating } from './ratings';

/** A price found in the list. */
interface ListedPrice {
  readonly price: number;
  /** Standard uncertainty over price. */
  readonly spread: number;
  /** What was matched, in words. */
  readonly matched: string;
  /** The price as a figure, for whoever asks. */
  readonly leaf: Leaf<'currency'>;
  /** The line of this very rating, when there is one; never that of another pole count, whose speed and efficiency are other ones. */
  readonly line: Price | undefined;
  readonly extrapolated: boolean;
  /** Weeks until delivery: those of the line of this rating, between two lines the longer; absent where none is stated. */
  readonly leadTimeWeeks: number | undefined;
}

/** What is asked for. */
export interface PriceQuery {
  readonly item: Price['item'];
  readonly ratedPowerKw: number;
  readonly poles: number;
  readonly enclosure: Enclosure;
}

/** Doubt of a listed price, and of one carried on beyond the list (common practice). */
const LISTED = 0.15;
const CARRIED_ON = 0.3;

/**
 * Difference of the logarithms of two ratings up to which a line's price is taken as it stands (29.83 and 30 kW); beyond it, as between 15 hp
 * and 11 kW, interpolation is the closer.
 */
const AT_LINE = 0.015;

/** Classes of which a motor is bought, the ones asked for first. A price of another class, or of none, serves nothing. */
export const BOUGHT_CLASSES: readonly string[] = ['premium', 'IE3', 'IE4'];

interface Curve {
  readonly lines: readonly { readonly logKw: number; readonly logPrice: number; readonly line: Price }[];
  /** A price that holds at any rating. */
  readonly flat?: number;
  readonly matched: string;
  /** What was found, by rating in kW: many motors of a study ask for the same few. */
  readonly found: Map<number, ListedPrice | undefined>;
}

/** Ratings are few, but for a sheet that states each motor's to the watt. */
const KEPT = 4000;

const curves = new WeakMap<PriceList, Map<string, Curve | undefined>>();

/**
 * A price from the list, interpolated on a straight line between logarithms of rating and price.
 *
 * Lines of the same poles and enclosure are taken first, then the same poles, then any; an empty cell of the list holds for all. Motors are
 * those of class premium or IE3; where the list has none of them, those of IE4, which are dearer and no worse. `undefined` when the list has no such item.
 * Units: kW, currency. Valid for: ratings within the list; beyond it the slope of its end is carried on with twice the doubt.
 * Source: common practice (prices of machines follow a power law of their size).
 */
export function listedPrice(list: PriceList, query: PriceQuery): ListedPrice | undefined {
  const curve = curveOf(list, query);
  if (!curve) return undefined;
  const { found } = curve;
  if (found.has(query.ratedPowerKw)) return found.get(query.ratedPowerKw);
  if (found.size >= KEPT) found.clear();
  const on = onCurve(curve, query);
  const made = on && {
    price: on.price,
    spread: on.spread,
    matched: curve.matched,
    leaf: priceLeaf(list, query, curve.matched, on),
    line: on.line,
    extrapolated: on.extrapolated,
    leadTimeWeeks: on.leadTimeWeeks,
  };
  found.set(query.ratedPowerKw, made);
  return made;
}

function priceLeaf(
  { invented }: PriceList,
  { item, ratedPowerKw }: PriceQuery,
  matched: string,
  { price, spread }: Pick<ListedPrice, 'price' | 'spread'>,
): Leaf<'currency'> {
  return {
    value: price,
    unit: 'currency',
    label: `price of ${item} at ${shortRating(ratedPowerKw)} kW`,
    origin: 'table',
    source: `${invented ? 'invented price list' : 'price list'}: ${matched}`,
    // One source for an item: a list that is dear for one rating is dear for the next.
    doubts: [{ id: `price:${item}`, label: `listed price of ${item}`, u: spread * price }],
  };
}

function onCurve(curve: Curve, query: PriceQuery): Omit<ListedPrice, 'matched' | 'leaf'> | undefined {
  if (curve.flat !== undefined)
    return { price: curve.flat, spread: LISTED, line: undefined, extrapolated: false, leadTimeWeeks: undefined };
  const { lines } = curve;
  const [first] = lines;
  const last = lines[lines.length - 1];
  if (!first || !last) return undefined;
  const x = Math.log(query.ratedPowerKw);
  let above = 0;
  while (above < lines.length && (lines[above]?.logKw ?? 0) < x - AT_LINE) above += 1;
  const at = lines[above];
  if (at && Math.abs(at.logKw - x) <= AT_LINE) {
    const ofThesePoles = at.line.poles === undefined || at.line.poles === query.poles;
    const line = ofThesePoles ? at.line : undefined;
    return { price: at.line.price, spread: LISTED, line, extrapolated: false, leadTimeWeeks: at.line.leadTimeWeeks };
  }
  const outside = above === 0 || above === lines.length;
  const right = Math.min(Math.max(above, 1), lines.length - 1);
  const a = lines[right - 1] ?? first;
  const b = lines[right] ?? last;
  const slope = a.logKw === b.logKw ? 0 : (b.logPrice - a.logPrice) / (b.logKw - a.logKw);
  const price = Math.exp(a.logPrice + slope * (x - a.logKw));
  const spread = outside ? CARRIED_ON : LISTED;
  return {
    price,
    spread,
    line: undefined,
    extrapolated: outside,
    leadTimeWeeks: outside ? undefined : longerWait(a.line, b.line),
  };
}

/** Weeks until delivery between two lines: the longer that is stated. */
function longerWait({ leadTimeWeeks: one }: Price, { leadTimeWeeks: other }: Price): number | undefined {
  if (one === undefined || other === undefined) return one ?? other;
  return Math.max(one, other);
}

function curveOf(list: PriceList, query: PriceQuery): Curve | undefined {
  let known = curves.get(list);
  if (!known) {
    known = new Map();
    curves.set(list, known);
  }
  const key = `${query.item}|${query.poles}|${query.enclosure}`;
  if (known.has(key)) return known.get(key);
  const curve = makeCurve(list, query);
  known.set(key, curve);
  return curve;
}

function makeCurve(list: PriceList, query: PriceQuery): Curve | undefined {
  const { lines: rightItem, called } = linesOf(list, query.item);
  const poles = (line: Price) => line.poles === undefined || line.poles === query.poles;
  const enclosure = (line: Price) => line.enclosure === undefined || line.enclosure === query.enclosure;
  const ways: readonly [string, (line: Price) => boolean][] = [
    [`${query.poles} poles, ${query.enclosure}`, (line) => poles(line) && enclosure(line)],
    [`${query.poles} poles, any enclosure`, poles],
    [`any poles, ${query.enclosure}`, enclosure],
    ['any poles and enclosure', () => true],
  ];
  for (const [words, fits] of ways) {
    const lines = rightItem.filter(fits);
    if (lines.length === 0) continue;
    const specific = lines.some((line) => line.poles !== undefined || line.enclosure !== undefined);
    const matched = specific ? `${called}, ${words}` : called;
    return curveThrough(lines, matched);
  }
  return undefined;
}

function curveThrough(lines: readonly Price[], matched: string): Curve {
  const rated = lines.filter((line) => line.ratedPowerKw !== undefined && line.ratedPowerKw > 0 && line.price > 0);
  const points = rated
    .map((line) => ({ logKw: Math.log(line.ratedPowerKw ?? 1), logPrice: Math.log(line.price), line }))
    .sort((a, b) => a.logKw - b.logKw)
    // Of two lines of one rating the first listed holds, so that a price does not depend on chance.
    .filter((point, index, all) => index === 0 || point.logKw !== all[index - 1]?.logKw);
  if (points.length > 0) return { lines: points, matched, found: new Map() };
  return { lines: [], flat: lines[0]?.price ?? 0, matched, found: new Map() };
}

/** The lines of an item that may serve, and what they are called. */
function linesOf(list: PriceList, item: Price['item']): { readonly lines: readonly Price[]; readonly called: string } {
  const lines = list.prices.filter((line) => line.item === item && line.price >= 0);
  if (item !== 'motor') return { lines, called: item };
  const premium = lines.filter(({ efficiencyClass }) => efficiencyClass === 'premium' || efficiencyClass === 'IE3');
  if (premium.length > 0) return { lines: premium, called: item };
  return { lines: lines.filter(({ efficiencyClass }) => efficiencyClass === 'IE4'), called: 'motor of class IE4' };
}
