import type { MotorScope } from '../../context';
import type { Plate } from '../../motor';
import type { Strength } from '../../result';
import type { HypothesisId } from '../hypothesis-id';
import type { IndicatorJudgement } from '../indicator';
import { INDICATORS } from '../registry';
import { combine, type Prior } from './combine';
import { type Evidence, gatherEvidence, type Observation, observationsOf, rowsFor } from './evidence';
import { type NextMeasurement, nextMeasurement } from './next-measurement';

/** A reading that is not there, or without verdict, and would say something. */
interface MissingEvidence {
  readonly indicator: string;
  readonly group: string;
  readonly text: string;
}

/** One suspicion with what speaks for it, against it, and what is missing. */
export interface Hypothesis {
  readonly id: HypothesisId;
  readonly chance: number;
  readonly odds: number;
  readonly strength: Strength;
  readonly forIt: readonly Evidence[];
  readonly againstIt: readonly Evidence[];
  readonly missing: readonly MissingEvidence[];
}

export interface Suspicions {
  /** Likeliest first. */
  readonly hypotheses: readonly Hypothesis[];
  readonly next?: NextMeasurement | undefined;
}

/** A group counts as independent support only from this ratio on (common practice): less hardly moves the odds. */
const SUPPORT_FROM = 2;
/** A missing reading is named when its worse outcome would weigh at least this much. */
const WORTH_NAMING = 3;
/** A suspicion for which nothing speaks is listed when one of its main signs, from this ratio on, was read without a verdict. */
const MAIN_SIGN = 20;
/** Years over which a failure announces itself: the share of failures of one year counts as what may be seen now (common practice). */
const WARNING_YEARS = 1;
/** Odds from which two groups make a moderate and a strong suspicion (contract of the results). */
const MODERATE_ODDS = 1;
const STRONG_ODDS = 9;

/**
 * Weighs what indicators say of each suspicion. Listed are those for which something speaks, and those of which a reading was taken that
 * could not be judged, if that is one of its main signs. Units: chances 0 to 1. Source: tables of evidence and base rates; {@link combine}.
 */
export function weighSuspicions(
  scope: MotorScope,
  plate: Plate,
  indicators: readonly IndicatorJudgement[],
  agreement: Observation | undefined,
): Suspicions {
  const rows = rowsFor(scope.tables.faultEvidence, plate);
  const observations = observationsOf(indicators);
  if (agreement) observations.push(agreement);
  const evidence = gatherEvidence(rows, observations);
  const judged = new Set(observations.map((seen) => seen.indicator));
  const unjudged = new Map(indicators.flatMap((entry) => (judged.has(entry.id) ? [] : [[entry.id, entry] as const])));
  if (!evidence.some((entry) => entry.logRatio > 0) && unjudged.size === 0) return { hypotheses: [] };
  const chances = combine(priorsFor(scope, rows, evidence), evidence);
  const hypotheses: Hypothesis[] = [];
  for (const [id, chance] of chances) {
    const own = evidence.filter((entry) => entry.hypothesis === id);
    const forIt = own.filter((entry) => entry.logRatio > 0).sort((a, b) => b.logRatio - a.logRatio);
    const about = rows.filter((row) => row.hypothesis === id && row.beyond >= WORTH_NAMING);
    if (forIt.length === 0 && !about.some((row) => row.beyond >= MAIN_SIGN && unjudged.has(row.indicator))) continue;
    const odds = chance / (1 - chance);
    hypotheses.push({
      id,
      chance,
      odds,
      strength: strengthOf(forIt, odds),
      forIt,
      againstIt: own.filter((entry) => entry.logRatio < 0).sort((a, b) => a.logRatio - b.logRatio),
      missing: about
        .filter((row) => !judged.has(row.indicator))
        .map((row) => ({
          indicator: row.indicator,
          group: row.group,
          text: whyMissing(row.indicator, unjudged.get(row.indicator)),
        })),
    });
  }
  hypotheses.sort((a, b) => b.odds - a.odds);
  const leading = hypotheses.slice(0, 2).map((hypothesis) => hypothesis.id);
  return { hypotheses, next: nextMeasurement(rows, leading, judged, plate.status) };
}

function strengthOf(forIt: readonly Evidence[], odds: number): Strength {
  const groups = new Set(forIt.filter((entry) => entry.logRatio >= Math.log(SUPPORT_FROM)).map((entry) => entry.group));
  if (groups.size < 2 || odds < MODERATE_ODDS) return 'weak';
  return odds < STRONG_ODDS ? 'moderate' : 'strong';
}

const TITLES = new Map(INDICATORS.map((indicator) => [indicator.id, indicator]));

function whyMissing(id: string, unjudged: IndicatorJudgement | undefined): string {
  const indicator = TITLES.get(id);
  if (unjudged) return `${unjudged.title} was read, but has no verdict. ${unjudged.findings[0]?.text ?? ''}`.trim();
  return indicator
    ? `${indicator.title} was not read (${indicator.needs.join(', ')}).`
    : 'No two ways to the load were read to compare.';
}

/** Chances before anything was read, for every suspicion that something can be said of. */
function priorsFor(scope: MotorScope, rows: readonly { hypothesis: HypothesisId }[], evidence: readonly Evidence[]): Prior[] {
  const about = new Set([...rows, ...evidence].map((entry) => entry.hypothesis));
  return scope.tables.faultBaseRates.rows
    .filter((row) => about.has(row.hypothesis))
    .map((row) => ({
      hypothesis: row.hypothesis,
      chance:
        row.failureSharePct === undefined
          ? (row.prevalencePct ?? 0) / 100
          : (row.failureSharePct / 100) * scope.settings.failureRatePerYear * WARNING_YEARS,
    }))
    .filter((prior) => prior.chance > 0 && prior.chance < 1);
}
