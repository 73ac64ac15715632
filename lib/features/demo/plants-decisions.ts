import type { Motor } from '@/lib/engine';
import { all, type Plant, plate } from './plant';

const without = (motor: Motor): Motor => ({ ...motor, readings: [] });

/** A standing offer of an invented dealer: so much a kilowatt for premium motors of common ratings. */
const offer = (perKw: number) => plate((own) => ({ quotedPrice: Math.round((perKw * own.ratedPowerKw) / 10) * 10 }));

/** Circumstances that decide: offers, failures, motors out of service, unknown hours, a slip of the pen in a quotation. */
export const DECISION_PLANTS: readonly Plant[] = [
  { tag: 'N-1', story: 'a standing offer', change: offer(24) },
  { tag: 'M-1', story: 'a standing offer', change: offer(26) },
  { tag: 'Q-5', story: 'a standing offer', change: offer(30) },
  { tag: 'Q-4', story: 'a standing offer', change: offer(26) },
  { tag: 'G-9', story: 'a standing offer', change: offer(24) },
  {
    tag: 'C-7',
    story: 'far too large, poor and never off',
    change: (motor) => ({
      ...plate(() => ({ nominalEfficiencyPct: 80, peakLoadKw: 5.5, loadInertiaKgm2: 0.4 }))(motor),
      hoursPerYear: 8700,
    }),
  },
  { tag: 'N-5', story: 'burnt out last week', change: plate(() => ({ status: 'failed' })) },
  {
    tag: 'N-6',
    story: 'burnt out and never measured',
    change: all(
      plate(() => ({ status: 'failed' })),
      without,
    ),
  },
  { tag: 'X-1', story: 'on the shelf', change: plate(() => ({ status: 'spare' })) },
  { tag: 'X-2', story: 'taken out years ago', change: plate(() => ({ status: 'retired' })) },
  { tag: 'X-3', story: 'nobody knows the hours', change: (motor) => ({ ...motor, hoursPerYear: undefined }) },
  { tag: 'V-2', story: 'a hoist brake motor', change: plate(() => ({ mounting: 'brake' })) },
];
