import type { ReadingEvaluation } from '../load/reading';
import type { CompletedPlate } from '../machine/model';
import type { Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import { standardUncertainty } from '../quantity/quantity';
import type { MethodId, TrustLevel } from '../result';
import type { Settings } from '../settings';
import { TRUST } from './findings';

/** How far a motor's energy figures may be trusted, and why. */
interface TrustJudgement {
  readonly level: TrustLevel;
  readonly findings: readonly Finding[];
}

/** An evaluated reading with how far it may be trusted by itself. */
export interface TrustedReading extends ReadingEvaluation {
  readonly level: TrustLevel;
  readonly trustFindings: readonly Finding[];
}

/** A second way to the load confirms the first only if its own standard uncertainty is at most this (load fraction). */
const CONFIRMING = 0.1;

/** Ways that rest on a meter of their own. What is made of them (power and current together, segregated losses) confirms nothing. */
const INDEPENDENT: ReadonlySet<MethodId> = new Set(['input-power', 'slip', 'current']);

/** Years between two ISO dates, by days of 365.25; negative when `later` is earlier. */
export function yearsBetween(earlier: string, later: string): number {
  return (dayNumber(later) - dayNumber(earlier)) / 365.25;
}

/** Whole days since 1970 of the date that an ISO text begins with. */
function dayNumber(iso: string): number {
  return Date.parse(iso.slice(0, 10)) / 86_400_000;
}

/** Findings of one reading that concern trust beside those of its values: age, missing date, number of ways. */
export function readingTrust(settings: Settings, plate: CompletedPlate, evaluated: ReadingEvaluation): TrustJudgement {
  const { reading, point } = evaluated;
  const findings: Finding[] = [];
  if (reading.takenAt === undefined) findings.push(TRUST.make('reading-undated', { row: reading.row }));
  else {
    const years = yearsBetween(reading.takenAt, settings.asOf);
    if (years > settings.policy.maxReadingAgeYears)
      findings.push(TRUST.make('reading-stale', { row: reading.row, years, limit: settings.policy.maxReadingAgeYears }));
    if (years < 0)
      findings.push(TRUST.make('reading-after-study', { row: reading.row, taken_at: reading.takenAt, as_of: settings.asOf }));
  }
  if (!point) return { level: 'not-usable', findings };
  const confirmed = confirmation(evaluated, findings);
  const warned = [...evaluated.findings, ...findings].some((found) => found.severity === 'warning');
  return { level: confirmed && plate.efficiencyKnown && !warned ? 'sound' : 'provisional', findings };
}

/** True when two independent ways to the load agree and both are sure enough to say something. */
function confirmation(evaluated: ReadingEvaluation, findings: Finding[]): boolean {
  const row = evaluated.reading.row;
  const used = evaluated.estimates.filter(({ used: taken, method }) => taken && INDEPENDENT.has(method));
  const first = used[0];
  if (!first) return false;
  if (used.length === 1) {
    findings.push(TRUST.make('one-way-to-load', { row, method: first.method }));
    return false;
  }
  const doubts = used
    .map((estimate) => ({ method: estimate.method, u: standardUncertainty(estimate.loadFraction) }))
    .sort((a, b) => a.u - b.u);
  const second = doubts[1];
  if (!second || second.u > CONFIRMING) {
    findings.push(TRUST.make('second-way-weak', { row, method: doubts[0]?.method ?? first.method, u: second?.u ?? 0 }));
    return false;
  }
  return evaluated.combination?.birgeRatio === 1;
}

/**
 * Trust in a motor's energy figures.
 *
 * `sound`: two independent ways to the load agree, efficiency or class is known, nothing warns. `provisional`: something is missing, old
 * or doubtful. `not-usable`: no reading gives a usable load. Low load alone never lowers it.
 * `capping` are findings from elsewhere that cap the level (plate, signature readings at low load).
 */
export function judgeTrust(given: {
  status: Plate['status'];
  readings: readonly ReadingEvaluation[];
  inUse: TrustedReading | undefined;
  capping: readonly Finding[];
}): TrustJudgement {
  const { inUse, readings, status } = given;
  if (!inUse) {
    const last = readings[readings.length - 1];
    const bar =
      status === 'running'
        ? TRUST.make('no-usable-reading', { readings: readings.length })
        : TRUST.make('not-in-service', { status });
    return { level: 'not-usable', findings: [bar, ...(last?.findings ?? []), ...given.capping] };
  }
  const findings: Finding[] = [...inUse.findings, ...inUse.trustFindings, ...given.capping];
  const latest = readings.filter((evaluated) => evaluated.reading.readingCondition === 'coupled').at(-1);
  if (latest && latest !== inUse && carriesLoad(latest))
    findings.push(
      TRUST.make('latest-reading-unusable', { row: latest.reading.row, used: inUse.reading.row }),
      ...latest.findings.filter((found) => found.severity !== 'note'),
    );
  const load = inUse.point?.loadFraction.value ?? 0;
  if (load > 1.02) findings.push(TRUST.make('overloaded', { load }));
  const warned = findings.some((found) => found.severity !== 'note');
  return { level: inUse.level === 'sound' && !warned ? 'sound' : 'provisional', findings };
}

/** True when a reading was meant to give a load: it holds power, current or speed. */
function carriesLoad(evaluated: ReadingEvaluation): boolean {
  const { reading } = evaluated;
  return reading.inputPowerKw !== undefined || reading.currentA !== undefined || reading.shaftSpeedRpm !== undefined;
}
