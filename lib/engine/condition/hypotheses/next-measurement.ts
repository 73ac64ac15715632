import type { MotorStatus } from '../../motor';
import { DEAD, LIVE } from '../../quantity/cautions';
import type { FaultEvidenceRow } from '../../tables';
import type { HypothesisId } from '../hypothesis-id';
import { INDICATORS } from '../registry';
import { HYPOTHESIS_WORDS } from './words';

/** The reading that would best tell two suspicions apart, or one from a sound motor. */
export interface NextMeasurement {
  readonly indicator: string;
  /** Columns of the fleet sheet to fill. */
  readonly columns: readonly string[];
  readonly between: readonly HypothesisId[];
  readonly text: string;
}

const TURNING = 'Guards stay on; keep clear of turning parts. Under a stroboscope a turning shaft looks still.';
const SIGNATURE = `Read at 75 % load or more, if the process owner agrees; never raise the load for a reading alone. ${LIVE}`;

/** How a reading of each group is taken safely. */
const CAUTION: Readonly<Record<string, string>> = {
  'supply-voltage': LIVE,
  'line-current': `${LIVE} Never open a current-transformer secondary.`,
  'load-estimates': LIVE,
  load: LIVE,
  'current-spectrum': SIGNATURE,
  'resistance-test': DEAD,
  'insulation-test': DEAD,
  'winding-heat': 'Read an embedded detector, or the resistance right after stopping, locked out and proved dead.',
  vibration: TURNING,
  'bearing-heat': TURNING,
  speeds: TURNING,
  duty: 'Count the starts over a working day.',
};

/**
 * Of the readings that are missing, the one whose two outcomes differ most between the leading suspicions: half the distance of the logarithms
 * beyond the limit and half of those within. Of a motor that is out of service only those taken at standstill count. Undefined when nothing that
 * is missing would tell them apart.
 */
export function nextMeasurement(
  rows: readonly FaultEvidenceRow[],
  leading: readonly HypothesisId[],
  judged: ReadonlySet<string>,
  status: MotorStatus,
): NextMeasurement | undefined {
  const [first, second] = leading;
  if (first === undefined) return undefined;
  const log = (hypothesis: HypothesisId | undefined, indicator: string, band: 'beyond' | 'within') => {
    const row = rows.find((entry) => entry.hypothesis === hypothesis && entry.indicator === indicator);
    return row ? Math.log(row[band]) : 0;
  };
  let best: { row: FaultEvidenceRow; apart: number } | undefined;
  for (const row of rows) {
    if (status !== 'running' && CAUTION[row.group] !== DEAD) continue;
    if (judged.has(row.indicator) || (row.hypothesis !== first && row.hypothesis !== second)) continue;
    const gap = (band: 'beyond' | 'within') => Math.abs(log(first, row.indicator, band) - log(second, row.indicator, band));
    const apart = (gap('beyond') + gap('within')) / 2;
    if (apart > (best?.apart ?? 0)) best = { row, apart };
  }
  const chosen = best && INDICATORS.find((indicator) => indicator.id === best.row.indicator);
  if (!best || !chosen) return undefined;
  const between = second === undefined ? [first] : [first, second];
  const names = between.map((id) => HYPOTHESIS_WORDS[id]);
  return {
    indicator: chosen.id,
    columns: chosen.needs,
    between,
    text: `${chosen.title} would best tell ${names[0]} from ${names[1] ?? 'a sound motor'}. ${CAUTION[best.row.group] ?? LIVE}`,
  };
}
