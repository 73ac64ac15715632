import { describe, expect, it } from 'vitest';
import { coefficient, correlation, type FitPoint, fitAt, fitPowers } from '@/lib/engine/bench/least-squares';
import { covariance, exact, type Quantity, Sources, standardUncertainty } from '@/lib/engine/quantity/quantity';
import { given, readCases } from '../cases/published';

const scope = () => ({ sources: new Sources() });
const points = (pairs: readonly (readonly [x: number, y: number])[]): FitPoint[] =>
  pairs.map(([x, y]) => ({ x: exact(x, '1'), y: exact(y, '1') }));

/** NIST Statistical Reference Datasets, Norris: [x, y]. The data are from memory; that they reproduce the certified values shows them right. */
const NORRIS = [
  [0.2, 0.1],
  [337.4, 338.8],
  [118.2, 118.1],
  [884.6, 888.0],
  [10.1, 9.2],
  [226.5, 228.1],
  [666.3, 668.5],
  [996.3, 998.5],
  [448.6, 449.1],
  [777.0, 778.9],
  [558.2, 559.2],
  [0.4, 0.3],
  [0.6, 0.1],
  [775.5, 778.1],
  [666.9, 668.8],
  [338.0, 339.3],
  [447.5, 448.9],
  [11.6, 10.8],
  [556.0, 557.7],
  [228.1, 228.3],
  [995.8, 998.0],
  [887.6, 888.8],
  [120.2, 119.6],
  [0.3, 0.3],
  [0.3, 0.6],
  [556.8, 557.6],
  [339.1, 339.3],
  [887.2, 888.0],
  [999.0, 998.5],
  [779.0, 778.9],
  [11.1, 10.2],
  [118.3, 117.6],
  [229.2, 228.9],
  [669.1, 668.4],
  [448.9, 449.2],
  [0.5, 0.2],
] as const;
const NO_INTERCEPT_1 = Array.from({ length: 11 }, (_, i) => [60 + i, 130 + i] as const);
const NO_INTERCEPT_2 = [
  [4, 3],
  [5, 4],
  [6, 4],
] as const;

describe('least squares against the NIST Statistical Reference Datasets (certified values from memory)', () => {
  it.each([
    // name, powers, data, coefficients, their standard deviations, residual standard deviation
    [
      'Norris',
      [0, 1],
      NORRIS,
      [-0.262323073774029, 1.00211681802045],
      [0.232818234301152, 0.000429796848199937],
      0.884796396144373,
    ],
    ['NoInt1', [1], NO_INTERCEPT_1, [2.07438016528926], [0.0165289256198347], 3.56753034006338],
    ['NoInt2', [1], NO_INTERCEPT_2, [0.727272727272727], [0.0420827318078432], 0.369274472937998],
  ] as const)('%s', (_, powers, data, coefficients, deviations, residual) => {
    const fit = fitPowers(scope(), 'nist', powers, points(data));
    expect(fit).toBeDefined();
    coefficients.forEach((certified, k) => {
      expect(Math.abs((fit?.coefficients[k] ?? 0) / certified - 1)).toBeLessThan(1e-11);
      // Exact points that scatter: all of the scatter is surplus, so the stated doubt is that of a plain fit.
      const u = fit ? standardUncertainty(coefficient(fit, k, '1')) : 0;
      expect(Math.abs(u / (deviations[k] ?? 1) - 1)).toBeLessThan(1e-9);
    });
    expect(Math.abs((fit?.deviation ?? 0) / residual - 1)).toBeLessThan(1e-11);
  });

  it('Norris: correlation is the root of the certified R²', () => {
    expect(correlation(points(NORRIS)) ?? 0).toBeCloseTo(Math.sqrt(0.999993745883712), 12);
  });
});

describe('least squares against the calibration line of the GUM (JCGM 100:2008, annex H.3)', () => {
  const [published] = readCases('./regression.json');
  if (!published) throw new Error('the case is gone');
  const t = published.inputs.t_read?.value as number[];
  const b = published.inputs.correction?.value as number[];
  const fit = fitPowers(
    scope(),
    'gum',
    [0, 1],
    points(t.map((value, i) => [value - given(published, 't0'), b[i] ?? 0] as const)),
  );
  if (!fit) throw new Error('no fit');
  const intercept = coefficient(fit, 0, '1');
  const slope = coefficient(fit, 1, '1');
  const at30 = fitAt(fit, exact(10, '1'), '1');
  const ours: Readonly<Record<string, number>> = {
    intercept: intercept.value,
    slope: slope.value,
    u_intercept: standardUncertainty(intercept),
    u_slope: standardUncertainty(slope),
    corr: covariance(intercept, slope) / standardUncertainty(intercept) / standardUncertainty(slope),
    ss: fit.residuals.reduce((sum, residual) => sum + residual ** 2, 0),
    corr30: at30.value,
    u30: standardUncertainty(at30),
  };
  it.each(Object.keys(ours))('%s', (key) => {
    const printed = published.expected[key];
    expect(Math.abs((ours[key] ?? 0) - (printed?.value ?? Number.NaN))).toBeLessThanOrEqual(
      Math.max(printed?.tolerance_abs ?? 0, (printed?.tolerance_rel ?? 0) * Math.abs(printed?.value ?? 0)),
    );
    expect(Math.abs((ours[key] ?? 0) / (published.recomputed[key] ?? Number.NaN) - 1)).toBeLessThan(1e-6);
  });
});

describe('doubts of the points in the coefficients', () => {
  const base = [
    [1, 2.1],
    [2, 3.9],
    [3, 6.2],
    [4, 7.8],
    [5, 10.3],
  ] as const;
  const noisy = (s: ReturnType<typeof scope>, common: boolean): FitPoint[] =>
    base.map(([x, y], i) => {
      const q = (value: number, u: number, id: string): Quantity => ({
        unit: '1',
        value,
        parts: { at: [s.sources.number(id, id)], by: [u] },
      });
      return { x: q(x, 0.01, `x${i}`), y: common ? q(y, 0.05 * y, 'gain') : q(y, 0.5, `y${i}`) };
    });

  it.each([true, false])('agree with moving each point and fitting again (shared: %s)', (common) => {
    const s = scope();
    const given = noisy(s, common);
    const fit = fitPowers(s, 'numeric', [0, 1], given);
    const step = 1e-5;
    for (let source = 0; source < s.sources.list.length; source++) {
      if (s.sources.list[source]?.id.includes('scatter')) continue;
      const moved = (sign: number) =>
        fitPowers(
          scope(),
          'moved',
          [0, 1],
          given.map(({ x, y }) => {
            const by = (q: Quantity) => q.parts.by[q.parts.at.indexOf(source)] ?? 0;
            return { x: exact(x.value + sign * step * by(x), '1'), y: exact(y.value + sign * step * by(y), '1') };
          }),
        );
      for (const k of [0, 1]) {
        const numeric = ((moved(1)?.coefficients[k] ?? 0) - (moved(-1)?.coefficients[k] ?? 0)) / (2 * step);
        const parts = fit?.parts[k];
        const ours = parts?.by[parts.at.indexOf(source)] ?? 0;
        expect(ours).toBeCloseTo(numeric, 6);
      }
    }
  });

  it('add surplus scatter only where the points scatter more than they say', () => {
    const s = scope();
    fitPowers(s, 'wide', [0, 1], noisy(s, false));
    expect(s.sources.list.some((source) => source.id.includes('scatter'))).toBe(false);
    const t = scope();
    fitPowers(t, 'tight', [0, 1], points(base));
    expect(t.sources.list.some((source) => source.id.includes('scatter'))).toBe(true);
  });
});

describe('degenerate points', () => {
  it.each([
    ['none', []],
    ['one for a line', [[1, 1]]],
    [
      'equal abscissae',
      [
        [2, 1],
        [2, 3],
        [2, 5],
      ],
    ],
  ] as const)('%s: no fit', (_, data) => {
    expect(fitPowers(scope(), 'none', [0, 1], points(data))).toBeUndefined();
  });
  it('correlation needs two different values on each axis', () => {
    expect(
      correlation(
        points([
          [1, 1],
          [1, 2],
        ]),
      ),
    ).toBeUndefined();
    expect(
      correlation(
        points([
          [1, 2],
          [2, 2],
        ]),
      ),
    ).toBeUndefined();
  });
});
