import { type Indicator, judgement } from '../indicator';
import { bandBelow, limitOf } from '../limit';
import { INSTRUMENT, read, share, words } from './shared';

/** Enveloped acceleration of the bearings against the first reading of the same motor: no published limit, so a ratio only (common practice). */
export const bearingEnvelope: Indicator = {
  id: 'bearing-envelope',
  title: 'Bearing envelope against the first reading',
  needs: ['bearing_envelope_g'],
  limits: ['envelope-rise'],
  present: ({ reading }) => (reading.bearingEnvelopeG ?? 0) > 0,
  judge(scope, { reading, earlier }) {
    const first = earlier[0]?.reading.bearingEnvelopeG;
    const now = reading.bearingEnvelopeG;
    if (now === undefined || first === undefined) return { value: undefined, findings: [] };
    const value = read(scope, {
      value: now / first,
      unit: '1',
      label: 'enveloped acceleration over the first reading',
      row: reading.row,
      error: share(now / first, INSTRUMENT.envelopePct),
      id: 'envelope',
    });
    const limit = limitOf(scope, 'envelope-rise');
    const judged = bandBelow(value, limit, 'bearing envelope');
    const held = {
      value,
      limit: `at most ${words(limit.value)} times the first reading`,
      source: limit.source,
      status: limit.status,
    };
    return judgement(held, judged);
  },
};
