import type { Plate } from '../motor';

/** Bridge and handling: 1.2 % with the temperature written down; 3.2 % where 25 °C is taken for a cold winding (common practice). */
const WITH_TEMPERATURE = 0.012;
const WITHOUT = 0.032;

/** Standard uncertainty of a winding resistance as written on the sheet, as a share of it: the instrument and its temperature. */
export function resistanceDoubt({ statorResistanceTempC }: Pick<Plate, 'statorResistanceTempC'>): number {
  return statorResistanceTempC === undefined ? WITHOUT : WITH_TEMPERATURE;
}
