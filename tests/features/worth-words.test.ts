import { describe, expect, it } from 'vitest';
import type { Increment } from '@/lib/engine';
import { stepWords } from '@/lib/features/motor/worth-words';

/** Without the narrow and no-break spaces of a formatted amount. */
const plain = (text: string): string => text.replace(/[\u00a0\u202f]/g, ' ');

const step = (changes: Partial<Increment>): string => {
  const none: Increment = {
    from: undefined,
    to: 'new',
    extraCost: 0,
    netPresentValue: 0,
    rateOfReturn: { kind: 'none' },
    accepted: false,
  };
  return plain(stepWords({ ...none, ...changes }, (id) => id, 'USD'));
};

describe('what a dearer option adds, in words', () => {
  it('says what it costs and brings, and that nothing is nothing', () => {
    expect(step({})).toBe('new: against what is done anyway it costs no more now and adds no value: not worth it.');
    expect(step({ extraCost: 800, netPresentValue: -292.4, from: 'old' })).toBe(
      'new: against “old” it costs 800 USD more now and takes away 292 USD of value: not worth it.',
    );
    expect(step({ extraCost: -800, netPresentValue: 1316, accepted: true, rateOfReturn: { kind: 'one', rate: 0.42 } })).toBe(
      'new: against what is done anyway it costs 800 USD less now and adds 1,316 USD of value, 42.0 % a year on the difference: worth it.',
    );
    // The rate of a loan says nothing of what comes of the difference.
    expect(step({ netPresentValue: -5, rateOfReturn: { kind: 'loan', rate: 0.3 } })).not.toContain('%');
  });
});
