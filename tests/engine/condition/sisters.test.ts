import { describe, expect, it } from 'vitest';
import { amongSisters } from '@/lib/engine/condition/sisters';

describe('a value among those of sister motors', () => {
  it('has the median, and a scatter that one odd sister does not move, worked by hand', () => {
    // Median 2.0; deviations 0.2, 0.1, 0, 0.1, 7.0: their median 0.1 is 0.148, below a tenth of 2.0; three times 0.2 is 0.6.
    const sisters = [1.8, 1.9, 2.0, 2.1, 9.0];
    expect(amongSisters(2.59, sisters)).toEqual({ count: 5, median: 2, standing: 'like' });
    expect(amongSisters(2.61, sisters)?.standing).toBe('above');
    expect(amongSisters(1.39, sisters)?.standing).toBe('below');
  });

  it('goes by their scatter where that is larger than a tenth', () => {
    // Median 2.5; deviations 1.5, 0.5, 0.5, 1.5: median 1.0, times 1.4826 and three is 4.45.
    expect(amongSisters(6.9, [1, 2, 3, 4])?.standing).toBe('like');
    expect(amongSisters(7.0, [1, 2, 3, 4])?.standing).toBe('above');
  });

  it.each([[[]], [[1]], [[1, 2]]])('says nothing beside %j', (sisters) => {
    expect(amongSisters(5, sisters)).toBeUndefined();
  });

  it('of three alike, only another value stands apart', () => {
    expect(amongSisters(0, [0, 0, 0])?.standing).toBe('like');
    expect(amongSisters(1, [0, 0, 0])?.standing).toBe('above');
  });
});
