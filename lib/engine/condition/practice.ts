import type { Limit } from './limit-model';

const OWN_SCALE = 'own scale in estimated bars, to be proven on data';

/** Limits of common practice that stand in no published table, by id. Where one number is remembered from a text, the source says so. */
export const PRACTICE: Readonly<Record<string, Limit>> = Object.fromEntries(
  (
    [
      ['current-unbalance-ceiling', 10, '%', 'common practice'],
      ['bearing-alarm', 90, '°C', 'common practice for greased bearings, at the outer ring'],
      ['bearing-trip', 105, '°C', 'common practice for greased bearings, at the outer ring'],
      ['sideband-no-sign', 54, 'dB', 'common practice'],
      ['sideband-likely', 45, 'dB', 'common practice; the usual bound of textbooks, from memory'],
      ['bars-no-sign', 0.25, '1', OWN_SCALE],
      ['bars-likely', 0.5, '1', OWN_SCALE],
    ] as const
  ).map(([id, value, unit, source]) => [id, { id, value, unit, source, status: 'practice' }]),
);
