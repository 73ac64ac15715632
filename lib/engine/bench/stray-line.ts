import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { BENCH } from './findings';
import { coefficient, correlation, type Fit, fitPowers } from './least-squares';
import type { TestedPoint } from './load-point';
import type { BenchScope } from './meters';
import type { BenchMethod } from './method';

/** The line of residual loss over torque squared. */
export interface StrayLine {
  readonly slope: Quantity<'W/(N m)²'>;
  readonly intercept: Quantity<'W'>;
  readonly correlation: number;
  /** Row of the point that was left out. */
  readonly discarded: number | undefined;
  readonly fit: Fit;
}

/**
 * Stray-load loss as the slope of the residual loss over the square of the torque.
 *
 * Units: W, N·m. Where the correlation coefficient falls below the limit of the method, or the slope is not positive, the one point whose
 * removal raises the correlation most is left out, once; if the line still fails, the test is refused with the reason.
 * `undefined` for fewer than three points. Source: IEEE 112-2017 clause 5.7 and IEC 60034-2-1:2014 clause 6.1.3 (both from memory);
 * the limit 0.9 of IEEE 112 is confirmed by a trade article (Pumps & Systems, September 2007).
 */
export function strayLine(
  scope: BenchScope,
  tested: readonly TestedPoint[],
  method: BenchMethod,
): { line?: StrayLine; findings: Finding[] } {
  const all = tested.flatMap(({ row, dynamometer }) =>
    dynamometer ? [{ row, x: dynamometer.torqueSquared, y: dynamometer.residual }] : [],
  );
  const whole = lineThrough(scope, all, undefined);
  if (!whole) return { findings: [] };
  if (meets(whole, method)) return { line: whole, findings: [] };
  const without = all
    .map(({ row }) =>
      lineThrough(
        scope,
        all.filter((point) => point.row !== row),
        row,
      ),
    )
    .filter((line) => line !== undefined)
    .sort((a, b) => b.correlation - a.correlation)[0];
  const line = without && (meets(without, method) || without.correlation > whole.correlation) ? without : whole;
  const findings: Finding[] = [];
  if (line.discarded !== undefined) {
    const evidence = { row: line.discarded, before: whole.correlation, after: line.correlation };
    findings.push(BENCH.make('stray-point-discarded', evidence));
  }
  if (line.slope.value <= 0) findings.push(BENCH.make('stray-slope-not-positive', { slope: line.slope.value }));
  else if (line.correlation < method.correlation) {
    findings.push(BENCH.make('correlation-below-limit', { correlation: line.correlation, limit: method.correlation }));
  }
  return { line, findings };
}

function meets(line: StrayLine, method: BenchMethod): boolean {
  return line.correlation >= method.correlation && line.slope.value > 0;
}

type LinePoint = { readonly row: number; readonly x: Quantity<'(N m)²'>; readonly y: Quantity<'W'> };

function lineThrough(scope: BenchScope, points: readonly LinePoint[], discarded: number | undefined): StrayLine | undefined {
  if (points.length < 3) return undefined;
  const fit = fitPowers(scope, 'bench:stray', [0, 1], points);
  const r = correlation(points);
  if (!fit || r === undefined) return undefined;
  return { slope: coefficient(fit, 1, 'W/(N m)²'), intercept: coefficient(fit, 0, 'W'), correlation: r, discarded, fit };
}
