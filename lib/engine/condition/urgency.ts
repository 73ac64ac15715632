import type { IndicatorResult } from '../result';

/** How soon a fault may turn into a stop. */
interface Urgency {
  /** Share of the consequence that counts now, 0 to 1. */
  readonly share: number;
  /** What it goes by: `near and getting worse`. */
  readonly because: string;
}

/**
 * Shares by band and trend. Common practice, by judgement: beyond a limit a fault is taken to end in a stop within a year; near it within about
 * three, or two if it is surely getting worse; one that no reading shows yet within ten. No published rate was found.
 */
const RULE = {
  beyond: { share: 1, because: 'beyond its limit' },
  'near worse': { share: 0.5, because: 'near and getting worse' },
  near: { share: 0.3, because: 'near its limit' },
  'near better': { share: 0.2, because: 'near and getting better' },
  within: { share: 0.1, because: 'within every limit' },
} as const;

type Judged = Pick<IndicatorResult, 'id' | 'band' | 'trend'>;

/**
 * How urgent a suspicion is: by the worst of the indicators that speak for it, or of all where none that speaks has a verdict.
 * Units: share 0 to 1. A steady trend counts as none. Source: the rule above, common practice.
 */
export function urgencyOf(indicators: readonly Judged[], speaking: readonly string[]): Urgency {
  const own = indicators.filter(({ id, band }) => band !== undefined && speaking.includes(id));
  return (own.length > 0 ? own : indicators)
    .map(ofOne)
    .reduce((most, each) => (each.share > most.share ? each : most), RULE.within);
}

function ofOne({ band, trend }: Judged): Urgency {
  if (band === 'beyond') return RULE.beyond;
  if (band !== 'near') return RULE.within;
  if (trend?.direction === 'worse') return RULE['near worse'];
  return trend?.direction === 'better' ? RULE['near better'] : RULE.near;
}
