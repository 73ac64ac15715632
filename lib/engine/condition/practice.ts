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
      [
        'belt-slip',
        3,
        '%',
        'common practice: creep of 1 to 2 % is normal, above 3 % look for wear, tension or oil (read in a trade glossary)',
      ],
      ['belt-slip-synchronous', 0.5, '%', 'common practice: a toothed belt does not slip'],
      ['eccentricity-raised', 40, 'dB', 'common practice; levels differ by design, so it goes no further than near'],
      ['eccentricity-rise', 6, 'dB', 'common practice: twice the amplitude of the first reading'],
      ['envelope-rise', 2, '1', 'common practice: twice the first reading; no published limit'],
      ['axial-share', 50, '%', 'common practice: axial vibration of half the radial points at alignment'],
      ['share-1x', 80, '%', 'common practice'],
      ['share-2x', 50, '%', 'common practice'],
      ['share-2xline', 50, '%', 'common practice'],
      ['life-at-class', 1, '1', 'life at the highest temperature of the class'],
      ['bars-no-sign', 0.25, '1', OWN_SCALE],
      ['bars-likely', 0.5, '1', OWN_SCALE],
    ] as const
  ).map(([id, value, unit, source]) => [id, { id, value, unit, source, status: 'practice' }]),
);
