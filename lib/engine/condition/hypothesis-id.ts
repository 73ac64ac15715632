/** What a person may suspect, in the words of the results file. */
export const HYPOTHESIS_IDS = [
  'supply',
  'overload-ventilation',
  'moisture-dirt',
  'stator-winding',
  'rotor-cage',
  'eccentricity',
  'bearing',
  'misalignment-soft-foot',
  'belt-drive',
  'driven-machine',
  'instrument-data',
] as const;

export type HypothesisId = (typeof HYPOTHESIS_IDS)[number];
