import type { BenchContext } from '@/lib/engine/bench/evaluate';
import { USUAL_INSTRUMENTS } from '@/lib/engine/bench/test';
import { loadTables } from '@/lib/reference/load';
import { PLATE } from './synthetic';

/** The invented motor of {@link PLATE} tested by method B of IEEE 112 with the usual meters. */
export const METHOD_B: BenchContext = {
  plate: PLATE,
  method: 'ieee-112-b',
  instruments: USUAL_INSTRUMENTS,
  assumedStray: loadTables().tables.assumedStray,
};
