import type { Plate } from '../../motor';
import type { Band } from '../../result';
import type { EvidenceWhen, FaultEvidenceRow, ReferenceTables } from '../../tables';
import type { HypothesisId } from '../hypothesis-id';
import type { IndicatorJudgement } from '../indicator';
import { isBelted } from '../lines/mechanical';

/** One judged reading as far as hypotheses go: its band and how far it counts. */
export interface Observation {
  readonly indicator: string;
  readonly title: string;
  readonly band: Band;
  /** 0 to 1. */
  readonly weight: number;
  /** What was read against which limit, in words. */
  readonly words: string;
  readonly sharedWith: readonly HypothesisId[];
}

/** What one observation says of one hypothesis. `logRatio` is the natural logarithm of how many times likelier it is with the fault. */
export interface Evidence {
  readonly hypothesis: HypothesisId;
  readonly indicator: string;
  readonly group: string;
  readonly text: string;
  readonly logRatio: number;
}

/** Driven machines whose torque pulsates by nature (common practice). */
const PULSATING: ReadonlySet<string> = new Set(['compressor', 'crusher', 'mill', 'mixer']);

/** True when a row of evidence is about this motor. */
function applies(when: EvidenceWhen | undefined, plate: Plate): boolean {
  if (when === 'belted') return isBelted(plate);
  if (when === 'pulsating') return plate.drivenMachine !== undefined && PULSATING.has(plate.drivenMachine);
  return true;
}

type Row = ReferenceTables['faultEvidence']['rows'][number];

/** The rows of evidence that are about this motor. */
export function rowsFor(table: ReferenceTables['faultEvidence'], plate: Plate): readonly Row[] {
  return table.rows.filter((row) => applies(row.when, plate));
}

/** Judged indicators as observations: those with a band. */
export function observationsOf(indicators: readonly IndicatorJudgement[]): Observation[] {
  return indicators.flatMap(({ band, id, title, limit, weight, sharedWith, trend }) => {
    if (band === undefined) return [];
    // Within its limit but surely getting worse: no reason to look elsewhere, and none to suspect yet.
    const open = band === 'within' && trend?.direction === 'worse';
    const words = `${band}${trend?.direction === 'worse' ? ' and getting worse' : ''} (${limit})`;
    return [{ indicator: id, title, band, weight: open ? 0 : (weight ?? 1), words, sharedWith: sharedWith ?? [] }];
  });
}

/**
 * Everything that the observations say: each row of the table whose indicator was judged, its ratio raised to the observation's weight. A line
 * that cannot be told from one of another cause speaks for that cause as strongly as for its own.
 */
export function gatherEvidence(rows: readonly Row[], observations: readonly Observation[]): readonly Evidence[] {
  const list: Evidence[] = [];
  for (const seen of observations) {
    const about = rows.filter((row) => row.indicator === seen.indicator);
    for (const row of about) list.push(evidenceOf(row, row.hypothesis, row.meaning, seen));
    const strongest = about.reduce<Row | undefined>((best, row) => (best && best.beyond >= row.beyond ? best : row), undefined);
    if (!strongest) continue;
    for (const cause of seen.sharedWith)
      if (!about.some((row) => row.hypothesis === cause))
        list.push(evidenceOf(strongest, cause, 'its line stands where this cause makes one too', seen));
  }
  return list;
}

function evidenceOf(row: FaultEvidenceRow, hypothesis: HypothesisId, meaning: string, seen: Observation): Evidence {
  return {
    hypothesis,
    indicator: seen.indicator,
    group: row.group,
    text: `${seen.title} ${seen.words}: ${meaning}.`,
    logRatio: seen.weight * Math.log(row[seen.band]),
  };
}
