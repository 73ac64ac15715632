import type { SisterResult } from '../result';
import { tidy } from '../result-figure';
import { SAME_RATING } from '../same-rating';
import { amongSisters, FEWEST_SISTERS } from './among-sisters';
import { COMPARED, type ComparedValue, type SisterFacts } from './likeness';
import { lowerIsWorse } from './trend';

/** Sisters of one duty may differ in rating by so much (common practice): levels differ more beyond. */
const LIKE_RATING = 2;
/** Sisters that are compared at most, the nearest in rating: more say no more. */
const MOST = 60;

/**
 * How each motor's indicators stand among those of its sisters: a step over the whole fleet, after every motor has been evaluated by itself. It alters
 * no figure, band, odds or rank. Sisters are motors of one type at a site (kind, poles, rated voltage, with or without a drive, the same rating);
 * where fewer than five of these carry the indicator, motors of the same area, driven machine, kind and poles within twice the rating.
 * The lists come in the order given; a motor without enough sisters has an empty one.
 */
export function compareSisters(fleet: readonly SisterFacts[]): readonly (readonly SisterResult[])[] {
  const types = groupsOf(fleet, typeKey);
  const places = groupsOf(fleet, placeKey);
  return fleet.map((own, index) => {
    if (own.values.length === 0) return [];
    const type = nearest(types.get(typeKey(own) ?? ''), { index, own, within: 1 + SAME_RATING });
    let place: readonly SisterFacts[] | undefined;
    const results: SisterResult[] = [];
    for (const value of own.values) {
      let found = standing(value, type, 'type');
      if (!found) {
        place ??= nearest(places.get(placeKey(own) ?? ''), { index, own, within: LIKE_RATING });
        found = standing(value, place, 'place');
      }
      if (found) results.push(found);
    }
    return results;
  });
}

function typeKey({ site, likeness, values }: SisterFacts): string | undefined {
  const { machine_kind, poles, rated_voltage_v, drive_fed } = likeness;
  return values.length === 0 ? undefined : JSON.stringify([site, machine_kind, poles, rated_voltage_v, drive_fed]);
}

function placeKey({ site, area, likeness, values }: SisterFacts): string | undefined {
  const { machine_kind, poles, drive_fed, driven_machine } = likeness;
  if (area === undefined || driven_machine === undefined || values.length === 0) return undefined;
  return JSON.stringify([site, area, driven_machine, machine_kind, poles, drive_fed]);
}

/** One motor in its group. */
interface Member {
  readonly index: number;
  readonly facts: SisterFacts;
}

/** The members of each group by rating; those of one rating stay in the order given. */
function groupsOf(
  fleet: readonly SisterFacts[],
  keyOf: (facts: SisterFacts) => string | undefined,
): ReadonlyMap<string, readonly Member[]> {
  const groups = new Map<string, Member[]>();
  fleet.forEach((facts, index) => {
    const key = keyOf(facts);
    if (key === undefined) return;
    const known = groups.get(key);
    if (known) known.push({ index, facts });
    else groups.set(key, [{ index, facts }]);
  });
  for (const members of groups.values()) members.sort((a, b) => a.facts.ratedPowerKw - b.facts.ratedPowerKw || a.index - b.index);
  return groups;
}

/** The members on both sides of a motor whose rating differs by a factor of at most `within`, the nearest places first. */
function nearest(
  members: readonly Member[] | undefined,
  { index, own, within }: { readonly index: number; readonly own: SisterFacts; readonly within: number },
): readonly SisterFacts[] {
  if (!members) return [];
  const at = placeOf(members, own.ratedPowerKw, index);
  const ratio = (member: Member) =>
    Math.max(member.facts.ratedPowerKw / own.ratedPowerKw, own.ratedPowerKw / member.facts.ratedPowerKw);
  const found: SisterFacts[] = [];
  for (let step = 1; found.length < MOST && (at - step >= 0 || at + step < members.length); step++)
    for (const member of [members[at - step], members[at + step]])
      if (member && ratio(member) <= within && found.length < MOST) found.push(member.facts);
  return found;
}

/** Where a motor stands among the members, which are sorted by rating and then by their place in the fleet. */
function placeOf(members: readonly Member[], ratedPowerKw: number, index: number): number {
  let low = 0;
  let high = members.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    const { facts, index: other } = members[middle] ?? { facts: { ratedPowerKw }, index };
    if (facts.ratedPowerKw < ratedPowerKw || (facts.ratedPowerKw === ratedPowerKw && other < index)) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** What the sisters read of an indicator in the same unit. */
function valuesOf({ id, unit }: ComparedValue, sisters: readonly SisterFacts[]): number[] {
  const found: number[] = [];
  for (const { values } of sisters)
    for (const other of values) if (other.id === id && other.unit === unit) found.push(other.value);
  return found;
}

function standing(own: ComparedValue, sisters: readonly SisterFacts[], alike: SisterResult['alike']): SisterResult | undefined {
  const scale = COMPARED.get(own.id);
  if (scale === undefined || sisters.length < FEWEST_SISTERS) return undefined;
  const values = valuesOf(own, sisters);
  const found = amongSisters(own, values, scale);
  if (!found) return undefined;
  const { count, median, low, high, standing: stands } = found;
  return {
    indicator: own.id,
    alike,
    value: tidy(own.value),
    count,
    median: tidy(median),
    low: tidy(low),
    high: tidy(high),
    unit: own.unit,
    standing: stands,
    worse: stands === (lowerIsWorse(own.id, own.unit) ? 'below' : 'above'),
  };
}
