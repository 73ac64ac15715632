import type { MotorScope } from '../../context';
import type { Band } from '../../result';
import { CONDITION } from '../findings';
import type { Indicator, IndicatorInput } from '../indicator';
import { exceeds, limitOf } from '../limit';
import type { Margin } from '../limit-model';
import { INSTRUMENT, read, words } from './shared';
import { signatureGate } from './signature-gate';

/** Loads within so much of each other are compared (common practice). */
const SAME_LOAD = 0.15;

/**
 * Rotational-frequency sideband, dB below the line; gated by load as every signature. No published limit: it is compared with the first reading
 * of the same motor at about the same load, near from half the rise that counts as beyond. With nothing to compare, a level that is high on
 * any motor is near, and any other has no verdict. Limits: common practice.
 */
export const eccentricitySideband: Indicator = {
  id: 'eccentricity-sideband',
  title: 'Eccentricity sideband',
  needs: ['eccentricity_sideband_db'],
  limits: ['E1a', 'E1b', 'eccentricity-raised', 'eccentricity-rise'],
  present: ({ reading }) => reading.eccentricitySidebandDb !== undefined && reading.eccentricitySidebandDb > 0,
  judge(scope, input) {
    const level = input.reading.eccentricitySidebandDb;
    if (level === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: level,
      unit: 'dB',
      label: 'rotational-frequency sideband, dB below the line',
      row: input.reading.row,
      error: INSTRUMENT.levelDb,
      id: 'eccentricity',
    });
    const base = { value, limit: 'no published limit: trend', source: 'common practice', status: 'practice' as const };
    const gate = signatureGate(scope, input.loadFraction, 'eccentricity sideband');
    if (!gate.open) return { ...base, findings: gate.findings };
    const first = firstAtSameLoad(input);
    const { band, margin, limit, source } = first === undefined ? byLevel(scope, level) : byRise(scope, level, first);
    const findings = band === undefined ? [CONDITION.make('eccentricity-trend-only', { level })] : [];
    return { ...base, limit, source, band, margin, findings: [...gate.findings, ...findings], weight: gate.weight };
  },
};

/** The earliest level read at about this load. */
function firstAtSameLoad({ earlier, loadFraction }: IndicatorInput): number | undefined {
  if (!loadFraction) return undefined;
  const same = earlier.find(
    (loaded) => loaded.loadFraction && Math.abs(loaded.loadFraction.value - loadFraction.value) <= SAME_LOAD,
  );
  return same?.reading.eccentricitySidebandDb;
}

interface Verdict {
  readonly band?: Band | undefined;
  readonly margin?: Margin;
  readonly limit: string;
  readonly source: string;
}

function byRise(scope: MotorScope, level: number, first: number): Verdict {
  const limit = limitOf(scope, 'eccentricity-rise');
  const rise = first - level;
  const band = exceeds(limit.value, rise) ? (exceeds(limit.value / 2, rise) ? 'within' : 'near') : 'beyond';
  return {
    band,
    // A rise is the difference of two readings, each with the error of its meter.
    margin: { value: limit.value - rise, u: (Math.SQRT2 * INSTRUMENT.levelDb) / Math.sqrt(3), unit: 'dB' },
    limit: `beyond from ${words(limit.value)} dB closer to the line than at first (${words(first)} dB)`,
    source: limit.source,
  };
}

function byLevel(scope: MotorScope, level: number): Verdict {
  const limit = limitOf(scope, 'eccentricity-raised');
  const raised = !exceeds(level, limit.value);
  return {
    band: raised ? 'near' : undefined,
    limit: raised ? `near up to ${words(limit.value)} dB; no published limit: trend` : 'no published limit: trend',
    source: limit.source,
  };
}
