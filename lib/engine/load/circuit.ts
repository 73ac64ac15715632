import type { MotorScope } from '../context';
import { weightedMean } from '../formula/apply';
import { covariance, type Quantity } from '../quantity/quantity';
import type { LoadMethod, MethodOutcome } from './method';

const NOTHING: MethodOutcome = { missing: [], why: [], findings: [] };

/**
 * Load by power and current together: the two ways weighted by their full covariance, so that what they share does not count twice.
 *
 * Needs input power and line current on the line. With the power factor of the point known, reactive power confirms or refutes the plate.
 * Source: best linear unbiased combination of two correlated estimates (JCGM 100 annex H.2 for correlated inputs).
 */
export const circuitMethod: LoadMethod = {
  id: 'circuit',
  title: 'Circuit',
  needs: ['input_power_kw', 'current_a'],
  validity: 'As input power; the current adds weight where it rises with the load.',
  source: 'exact per-phase circuit; combination after JCGM 100',
  page: 'methods/load-by-circuit.md',
  estimate(scope, { before }) {
    const byPower = before.get('input-power') ?? NOTHING;
    const byCurrent = before.get('current') ?? NOTHING;
    const missing = [...byPower.missing, ...byCurrent.missing];
    if (!byPower.loadFraction || !byCurrent.loadFraction) return { missing, why: [], findings: [] };
    return {
      loadFraction: best(scope, byPower.loadFraction, byCurrent.loadFraction),
      missing: [],
      why: ['power and current together'],
      findings: [],
    };
  },
};

function best(scope: MotorScope, a: Quantity<'1'>, b: Quantity<'1'>): Quantity<'1'> {
  const aa = covariance(a, a);
  const bb = covariance(b, b);
  const ab = covariance(a, b);
  const spread = aa + bb - 2 * ab;
  // A weight outside of 0 to 1 would lean on the difference of two nearly equal estimates: it is kept between.
  const weight = spread > 0 ? Math.min(1, Math.max(0, (bb - ab) / spread)) : 1;
  return weightedMean(
    scope,
    '1',
    [
      { name: 'input_power', quantity: a, weight },
      { name: 'current', quantity: b, weight: 1 - weight },
    ],
    {
      label: 'Load by power and current together',
      tex: 'x = w x_P + (1 - w) x_I,\\quad w = \\frac{u_I^2 - u_{PI}}{u_P^2 + u_I^2 - 2 u_{PI}}',
      source: 'Correlated estimates weighted by their covariance',
    },
  );
}
