import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Reading } from '../../motor';
import { type Indicator, judgement } from '../indicator';
import { bandAt, exceeds, limitOf, NEAR } from '../limit';
import { INSTRUMENT, read, share, words } from './shared';

/** One part of the vibration whose share in the whole speaks for a cause. */
interface Part {
  readonly id: string;
  readonly title: string;
  readonly column: string;
  readonly limit: string;
  readonly of: (reading: Reading) => number | undefined;
}

/**
 * Share of one part of the vibration in the whole at the worst bearing, in per cent. A share says something only where there is vibration: a part
 * that stays below the lowest edge of zone A of ISO 20816-3 (from memory) is within, whatever its share. Limits: common practice.
 */
function partIndicator(part: Part): Indicator {
  return {
    id: part.id,
    title: part.title,
    needs: ['vibration_mm_s', part.column],
    limits: [part.limit],
    present: ({ reading }) => (reading.vibrationMmS ?? 0) > 0 && (part.of(reading) ?? -1) >= 0,
    judge(scope, { reading }) {
      const size = part.of(reading);
      if (size === undefined || reading.vibrationMmS === undefined) return { value: undefined, findings: [] };
      const velocity = (value: number, label: string) =>
        // One transducer reads both, so its gain cancels; what is left is far smaller than the limits are sharp.
        read(scope, {
          value,
          unit: 'mm/s',
          label,
          row: reading.row,
          error: share(value, INSTRUMENT.vibrationPct / 2),
          id: `${part.id}:${label}`,
        });
      const value = apply(scope, C.vibration_share, {
        part: velocity(size, part.title.toLowerCase()),
        whole: velocity(reading.vibrationMmS, 'vibration velocity, RMS'),
      });
      const limit = limitOf(scope, part.limit);
      const quiet = quietBelow(scope);
      const base = {
        value,
        limit: `at most ${words(limit.value)} % of the whole, from ${words(quiet)} mm/s on`,
        source: limit.source,
        status: limit.status,
      };
      if (!exceeds(size, quiet)) return judgement(base, { band: 'within', findings: [] });
      const judged = bandAt(value, limit, part.title.toLowerCase(), {
        beyond: exceeds(value.value, limit.value),
        near: !exceeds(NEAR * limit.value, value.value),
      });
      return judgement(base, judged);
    },
  };
}

/** The lowest edge between zones A and B: below it a machine is as quiet as a new one, mm/s. */
function quietBelow(scope: MotorScope): number {
  return Math.min(...scope.tables.vibrationZones.rows.map((row) => row.ab));
}

export const vibrationAxial = partIndicator({
  id: 'vibration-axial',
  title: 'Axial vibration',
  column: 'vibration_axial_mm_s',
  limit: 'axial-share',
  of: (reading) => reading.vibrationAxialMmS,
});

export const vibrationOnce = partIndicator({
  id: 'vibration-1x',
  title: 'Vibration at shaft speed',
  column: 'vibration_1x_mm_s',
  limit: 'share-1x',
  of: (reading) => reading.vibration1xMmS,
});

export const vibrationTwice = partIndicator({
  id: 'vibration-2x',
  title: 'Vibration at twice shaft speed',
  column: 'vibration_2x_mm_s',
  limit: 'share-2x',
  of: (reading) => reading.vibration2xMmS,
});

export const vibrationTwiceLine = partIndicator({
  id: 'vibration-twice-line',
  title: 'Vibration at twice line frequency',
  column: 'vibration_2xline_mm_s',
  limit: 'share-2xline',
  of: (reading) => reading.vibration2xlineMmS,
});
