import type { HypothesisId } from '../hypothesis-id';

/** Each suspicion in the words of a sentence. */
export const HYPOTHESIS_WORDS: Readonly<Record<HypothesisId, string>> = {
  supply: 'a fault of the supply',
  'overload-ventilation': 'overload or poor cooling',
  'moisture-dirt': 'a wet or dirty winding',
  'stator-winding': 'a fault of the stator winding',
  'rotor-cage': 'a damaged rotor cage',
  eccentricity: 'an uneven air gap',
  bearing: 'a worn bearing',
  'misalignment-soft-foot': 'misalignment or a soft foot',
  'belt-drive': 'a fault of the belt drive',
  'driven-machine': 'a fault of the driven machine',
  'instrument-data': 'wrong readings',
};
