import { netPresentValue } from './present-value';

/**
 * Modified internal rate of return: what is spent is financed at one rate, what comes in is reinvested at another until the end. Always one
 * rate, where a plain one may be none or several.
 *
 * Units: flows in currency, index 0 at the start, then at each year's end; rates a fraction a year.
 * Valid for: rates above −1; `undefined` without both an outlay and an income, or with the start alone.
 * Source: definition as in spreadsheets (compared with formulajs MIRR); with one outlay at the start it is the adjusted rate of return of
 * NIST Handbook 135 (from memory).
 */
export function modifiedRateOfReturn(flows: readonly number[], financeRate: number, reinvestRate: number): number | undefined {
  const years = flows.length - 1;
  if (years < 1) return undefined;
  const spent = -netPresentValue(
    flows.map((flow) => Math.min(flow, 0)),
    financeRate,
  );
  const earned = netPresentValue(
    flows.map((flow) => Math.max(flow, 0)),
    reinvestRate,
  );
  if (!(spent > 0 && earned > 0)) return undefined;
  return (1 + reinvestRate) * (earned / spent) ** (1 / years) - 1;
}
