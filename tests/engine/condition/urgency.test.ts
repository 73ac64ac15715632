import { describe, expect, it } from 'vitest';
import { type IndicatorResult, urgencyOf } from '@/lib/engine';

type Judged = Pick<IndicatorResult, 'id' | 'band' | 'trend'>;
const judged = (id: string, band?: 'within' | 'near' | 'beyond', direction?: 'worse' | 'better' | 'steady'): Judged => ({
  id,
  ...(band && { band }),
  ...(direction && { trend: { per_year: { value: 1, u: 0.1, unit: 'mm/s/a' }, readings: 3, since: '2024-01-01', direction } }),
});

describe('how urgent a suspicion is', () => {
  it.each([
    ['beyond', undefined, 1],
    ['beyond', 'better', 1],
    ['near', 'worse', 0.5],
    ['near', undefined, 0.3],
    ['near', 'steady', 0.3],
    ['near', 'better', 0.2],
    ['within', 'worse', 0.1],
    ['within', undefined, 0.1],
    [undefined, undefined, 0.1],
  ] as const)('%s and %s count %d', (band, direction, share) => {
    expect(urgencyOf([judged('vibration', band, direction)], ['vibration']).share).toBe(share);
  });

  it('goes by the worst that speaks for the suspicion, not by what speaks for another', () => {
    const list = [judged('vibration', 'near'), judged('bearing-temperature', 'near', 'worse'), judged('overload', 'beyond')];
    expect(urgencyOf(list, ['vibration', 'bearing-temperature'])).toEqual({ share: 0.5, because: 'near and getting worse' });
  });

  it('goes by all where nothing that speaks has a verdict', () => {
    expect(urgencyOf([judged('vibration', 'near'), judged('rotor-sideband')], ['rotor-sideband']).share).toBe(0.3);
    expect(urgencyOf([judged('overload', 'beyond')], []).share).toBe(1);
    expect(urgencyOf([], []).share).toBe(0.1);
  });
});
