import type { Finding, UnrankedMotor } from '@/lib/engine';
import { readingDates } from '../fleet/reading-dates';

/** A finding that keeps a motor from being sound, or a reading from being used. */
interface OpenFinding extends Pick<Finding, 'code' | 'severity' | 'text' | 'next' | 'evidence'> {
  /** Id of the condition indicator that it is about; absent where it is about load and losses. */
  readonly indicator?: string;
}

/** What a list of open points needs of a result, kept beside it: ten thousand whole results take seconds to unpack. */
export interface OpenFindings {
  readonly description?: string | undefined;
  readonly found: readonly OpenFinding[];
  /** Rows of the motor's dated readings with what their dates are; absent in results kept from before. */
  readonly dates?: readonly (readonly [row: number, date: string])[];
}

/** Findings that keep a motor from being sound, though they are but notes. */
const CAPPING_NOTES: ReadonlySet<string> = new Set([
  'one-way-to-load',
  'second-way-weak',
  'efficiency-unknown',
  'reading-undated',
]);

/** Findings beside a verdict that must not be used as it stands. */
const WEAKENED: ReadonlySet<string> = new Set(['signature-half-weight', 'sideband-one-side', 'sideband-not-unique']);

/** The open findings of a result: of verdicts that could not be given or count half, then of its figures. */
export function openFindingsOf({
  description,
  trust,
  condition,
  readings,
}: Pick<UnrankedMotor, 'description' | 'trust' | 'condition' | 'readings'>): OpenFindings {
  const short = ({ code, severity, text, next, evidence }: Finding): OpenFinding => ({ code, severity, text, next, evidence });
  const ofCondition = condition.indicators.flatMap(({ id, band, findings }) =>
    findings
      .filter((found) => band === undefined || WEAKENED.has(found.code))
      .map((found): OpenFinding => ({ ...short(found), indicator: id })),
  );
  const ofFigures = trust.findings
    .filter((found) => found.severity !== 'note' || (trust.level !== 'sound' && CAPPING_NOTES.has(found.code)))
    .map(short);
  return { description, found: [...ofCondition, ...ofFigures], dates: [...readingDates(readings)] };
}
