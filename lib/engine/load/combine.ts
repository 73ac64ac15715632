import gammainc from '@stdlib/math-base-special-gammainc';
import { inverse, Matrix } from 'ml-matrix';
import type { MotorScope } from '../context';
import { weightedMean } from '../formula/apply';
import { combineParts, covariance, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Agreement } from '../result';

/** One estimate that takes part. */
export interface NamedEstimate {
  readonly method: string;
  readonly loadFraction: Quantity<'1'>;
}

/** The combination and how well its members agree. */
export interface Combination {
  readonly loadFraction: Quantity<'1'>;
  readonly agreement?: Agreement | undefined;
  /** Factor by which the interval was widened; 1 when the members agree. */
  readonly birgeRatio: number;
}

/** Below this chance the members are taken to disagree. */
export const DISAGREEMENT = 0.01;

/**
 * Inverse-variance mean of several load estimates.
 *
 * Weights are 1/u²; the doubt of the mean follows from the sources, so estimates that share a stamp are not counted twice. Agreement is
 * the chi-squared of the differences with their full covariance. When the chance of so large a value is below 1 % the interval is widened
 * by the Birge ratio, √(χ²/ν).
 * Source: GUM 5.2; R. T. Birge, Phys. Rev. 40 (1932) 207 for the ratio.
 */
export function combineEstimates(scope: MotorScope, estimates: readonly NamedEstimate[]): Combination | undefined {
  const first = estimates[0];
  if (!first) return undefined;
  if (estimates.length === 1) return { loadFraction: first.loadFraction, birgeRatio: 1 };
  const mean = weightedMean(
    scope,
    '1',
    estimates.map((estimate) => ({
      name: estimate.method.replaceAll('-', '_'),
      quantity: estimate.loadFraction,
      weight: standardUncertainty(estimate.loadFraction) ** -2,
    })),
    {
      label: 'Inverse-variance mean of the ways to the load',
      tex: 'x = \\frac{\\sum_i x_i / u_i^2}{\\sum_i 1 / u_i^2}',
      source: 'GUM 5.2; weights by the doubt of each way',
    },
  );
  const agreement = agreementOf(estimates.map((estimate) => estimate.loadFraction));
  if (agreement.p >= DISAGREEMENT) return { loadFraction: mean, agreement, birgeRatio: 1 };
  const birgeRatio = Math.sqrt(agreement.chi_squared / agreement.degrees_of_freedom);
  const widened: Quantity<'1'> = { unit: '1', value: mean.value, parts: combineParts([[birgeRatio, mean.parts]]) };
  const step = scope.trace?.get(mean);
  if (step) scope.trace?.set(widened, step);
  return { loadFraction: widened, agreement, birgeRatio };
}

/** Chi-squared of the scatter of correlated estimates of one value: rᵀC⁻¹r − (1ᵀC⁻¹r)²/(1ᵀC⁻¹1), with n − 1 degrees of freedom. */
export function agreementOf(estimates: readonly Quantity<'1'>[]): Agreement {
  const n = estimates.length;
  const c = new Matrix(n, n);
  // A thousandth of the smallest variance on the diagonal keeps estimates that rest on the same sources apart.
  const jitter = 1e-3 * Math.min(...estimates.map((estimate) => standardUncertainty(estimate) ** 2)) + 1e-15;
  estimates.forEach((a, i) => {
    estimates.forEach((b, j) => {
      c.set(i, j, covariance(a, b) + (i === j ? jitter : 0));
    });
  });
  const weight = inverse(c);
  let rr = 0;
  let r1 = 0;
  let one = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const w = weight.get(i, j);
      const ri = estimates[i]?.value ?? 0;
      const rj = estimates[j]?.value ?? 0;
      rr += w * ri * rj;
      r1 += w * rj;
      one += w;
    }
  }
  const chi = Math.max(0, rr - (r1 * r1) / one);
  return { chi_squared: chi, degrees_of_freedom: n - 1, p: gammainc(chi / 2, (n - 1) / 2, true, true) };
}
