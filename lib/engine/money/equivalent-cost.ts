/** A span of years over which a machine costs least a year. */
export interface EconomicLife {
  readonly years: number;
  /** Equal yearly cost over that span, in currency a year. */
  readonly yearlyCost: number;
}

/**
 * The life over which a machine is cheapest a year: its price and its rising upkeep spread evenly over the years it is kept.
 *
 * `upkeep` is by year, at its end, the first year first. Units: currency, rate a fraction a year. Valid for: rates above −1;
 * `undefined` without a year. Of equal costs the shorter life is given.
 * Source: R. Panneerselvam, Engineering Economics, 2001, example 8.1; annual equivalent cost as the annuity of the present value.
 */
export function economicLife(price: number, upkeep: readonly number[], rate: number): EconomicLife | undefined {
  let best: EconomicLife | undefined;
  let spent = price;
  let annuity = 0;
  let factor = 1;
  upkeep.forEach((cost, index) => {
    factor /= 1 + rate;
    spent += cost * factor;
    annuity += factor;
    const yearlyCost = spent / annuity;
    if (!best || yearlyCost < best.yearlyCost) best = { years: index + 1, yearlyCost };
  });
  return best;
}
