import fc from 'fast-check';
import { abs, add, type Complex, complex, divide, multiply } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { sequenceMagnitudes } from '@/lib/engine/quantity/sequence';
import { checkCases, type PublishedCase } from './cases/published';

const phasor = (c: PublishedCase, name: string): Complex => {
  const [re = 0, im = 0] = (c.inputs[name]?.value ?? []) as number[];
  return complex(re, im);
};

/** Fortescue's transformation by a general library, the zero sequence taken out. */
function bySymmetricalComponents(a: Complex, b: Complex, c: Complex): { zero: Complex; positive: Complex; negative: Complex } {
  const turn = complex({ r: 1, phi: (2 * Math.PI) / 3 });
  const back = complex({ r: 1, phi: (-2 * Math.PI) / 3 });
  const third = (x: unknown) => divide(x as Complex, 3) as Complex;
  return {
    zero: third(add(a, b, c)),
    positive: third(add(a, multiply(turn, b) as Complex, multiply(back, c) as Complex)),
    negative: third(add(a, multiply(back, b) as Complex, multiply(turn, c) as Complex)),
  };
}

const magnitude = (x: Complex) => abs(x) as unknown as number;

/** Negative over positive sequence: what IEC 60034-1 and 61000-4-30 call the unbalance factor. */
function unbalanceFactor(values: readonly [number, number, number]): number {
  const { positive, negative } = sequenceMagnitudes(values) ?? { positive: Number.NaN, negative: Number.NaN };
  return negative / positive;
}

checkCases('./sequence.json', {
  'F-IEC-VUF': (c) => ({ vuf_pct: 100 * unbalanceFactor(c.inputs.v?.value as [number, number, number]) }),
  'F-WAD-13.2': (c) => {
    const parts = bySymmetricalComponents(phasor(c, 'ia'), phasor(c, 'ib'), phasor(c, 'ic'));
    // The differences of the phasors hold no zero sequence; their sequences are √3 times those of the phasors.
    const minus = (x: Complex, y: Complex) => magnitude(add(x, multiply(y, -1) as Complex) as Complex);
    const [a, b, d] = [phasor(c, 'ia'), phasor(c, 'ib'), phasor(c, 'ic')];
    const ours = sequenceMagnitudes([minus(a, b), minus(b, d), minus(d, a)]);
    const [one, two] = [ours?.positive ?? Number.NaN, ours?.negative ?? Number.NaN];
    expect(one / Math.sqrt(3)).toBeCloseTo(magnitude(parts.positive), 6);
    expect(two / Math.sqrt(3)).toBeCloseTo(magnitude(parts.negative), 6);
    return {
      i0_re: parts.zero.re,
      i0_im: parts.zero.im,
      i1_re: parts.positive.re,
      i1_im: parts.positive.im,
      i2_re: parts.negative.re,
      i2_im: parts.negative.im,
      ratio_pct: (100 * two) / one,
    };
  },
});

describe('sequence magnitudes', () => {
  it('are all positive sequence when balanced, half and half when one phase is open', () => {
    expect(sequenceMagnitudes([400, 400, 400])?.positive).toBeCloseTo(400, 9);
    expect(unbalanceFactor([400, 400, 400])).toBeLessThan(1e-7);
    // A single-phased motor: two equal currents and none in the third is no triangle with area, so both sequences are alike.
    expect(unbalanceFactor([20, 20, 1e-9])).toBeCloseTo(1, 6);
  });

  it.each([[[0, 10, 10]], [[-1, 10, 10]], [[1, 1, 3]], [[Number.NaN, 1, 1]], [[Number.POSITIVE_INFINITY, 1, 1]]] as [
    [number, number, number],
  ][])('have no answer for %j', (values) => {
    expect(sequenceMagnitudes(values)).toBeUndefined();
  });

  it('agree with the published closed form, whatever the order and the unit', () => {
    const magnitudes = fc.double({ min: 0.7, max: 1.3, noNaN: true });
    fc.assert(
      fc.property(magnitudes, magnitudes, magnitudes, fc.double({ min: 0.01, max: 1e4, noNaN: true }), (a, b, c, unit) => {
        const beta = (a ** 4 + b ** 4 + c ** 4) / (a ** 2 + b ** 2 + c ** 2) ** 2;
        const root = Math.sqrt(Math.max(0, 3 - 6 * beta));
        const published = Math.sqrt(Math.max(0, (1 - root) / (1 + root)));
        expect(unbalanceFactor([a, b, c])).toBeCloseTo(published, 6);
        expect(unbalanceFactor([c * unit, a * unit, b * unit])).toBeCloseTo(published, 6);
      }),
    );
  });
});
