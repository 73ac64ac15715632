import { describe, expect, it } from 'vitest';
import type { Contribution } from '@/lib/engine';
import { standingWords } from '@/lib/features/motor/contribution-words';

const DATES = new Map([
  [2, '2026-01-01'],
  [3, '2026-02-01'],
]);

function row(part: Partial<Contribution>): Contribution {
  const given = { value: 10, u: 0.5, unit: 'kW' };
  const figures = {
    given,
    fitted: 10,
    residual: 0,
    influence: 0.5,
    loadWithout: 0.7,
    pull: 0,
    share: 0,
    widthSource: 'common practice',
  };
  return { name: 'stamped_speed', kind: 'stamp', ...figures, ...part };
}

describe('what stands over the readings and stamps of a load', () => {
  it('names the heaviest and says that all fit', () => {
    const words = standingWords(
      [row({ share: 0.1 }), row({ name: 'input_power_row_2', kind: 'reading', row: 2, share: 0.79 })],
      DATES,
    );
    expect(words).toContain('input power has the largest part in the doubt of the load, 79');
    expect(words).toContain('None misses');
  });

  it('names what misses by two of its own deviations or more, with its date where there are several readings', () => {
    const words = standingWords(
      [
        row({ name: 'current_row_2', kind: 'reading', row: 2, residual: -2 }),
        row({ name: 'current_row_3', kind: 'reading', row: 3, residual: 3.5 }),
        row({ residual: 1.9, share: 0.3 }),
      ],
      DATES,
    );
    expect(words).toContain('line current, 2026-01-01 (deserves a look)');
    expect(words).toContain('line current, 2026-02-01 (does not fit: it or an assumption is wrong)');
    expect(words.match(/rated slip/g)).toHaveLength(1);
    expect(words).not.toContain('None misses');
  });
});
