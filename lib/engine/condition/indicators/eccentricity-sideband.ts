import { CONDITION } from '../findings';
import type { Indicator } from '../indicator';
import { INSTRUMENT, read } from './shared';
import { signatureGate } from './signature-gate';

/** Rotational-frequency sideband, dB below the line: no published limit, so a value to trend; gated by load as every signature. */
export const eccentricitySideband: Indicator = {
  id: 'eccentricity-sideband',
  title: 'Eccentricity sideband',
  needs: ['eccentricity_sideband_db'],
  limits: ['E1a', 'E1b'],
  present: ({ reading }) => reading.eccentricitySidebandDb !== undefined && reading.eccentricitySidebandDb > 0,
  judge(scope, { reading, loadFraction }) {
    const level = reading.eccentricitySidebandDb;
    if (level === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: level,
      unit: 'dB',
      label: 'rotational-frequency sideband, dB below the line',
      row: reading.row,
      error: INSTRUMENT.levelDb,
      id: 'eccentricity',
    });
    const gate = signatureGate(scope, loadFraction, 'eccentricity sideband');
    return {
      value,
      limit: 'no published limit: trend',
      source: 'common practice',
      status: 'practice',
      findings: gate.open ? [...gate.findings, CONDITION.make('eccentricity-trend-only', { level })] : gate.findings,
    };
  },
};
