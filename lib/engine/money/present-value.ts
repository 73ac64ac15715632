/**
 * Present value of flows at the start (index 0) and at the end of each year after it.
 *
 * Units: flows in currency, rate a fraction a year in the same terms (real or nominal) as the flows.
 * Valid for: rates above −1.
 * Source: NIST Handbook 135 and ASTM E917, end-of-year convention.
 */
export function netPresentValue(flows: readonly number[], rate: number): number {
  let value = 0;
  // Horner's rule from the last year back: one division a year and no powers.
  for (let year = flows.length - 1; year >= 0; year--) value = value / (1 + rate) + (flows[year] ?? 0);
  return value;
}
