import type { Quantity } from '../quantity/quantity';
import type { Basis } from './flow-counts';

/** What one unit of a basis is worth for this motor; running splits into energy, demand and power factor. */
export interface Worth {
  readonly quantity: Quantity<'currency/a'> | Quantity<'currency'>;
  readonly energy?: number;
  readonly kwh?: number | undefined;
  readonly demand?: number;
  readonly demandCost?: Quantity<'currency/a'> | undefined;
  readonly powerFactor?: number;
}

/** Worth of each basis; one that is missing counts as zero, which the caller must have found right. */
export type Worths = { readonly [B in Basis]?: Worth | undefined };
