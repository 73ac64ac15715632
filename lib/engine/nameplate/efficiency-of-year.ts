import type { MotorScope } from '../context';
import type { EfficiencyClass, Plate } from '../motor';
import { beyondTable, listedEfficiency, type RatingQuery } from './class-efficiency';
import { lossOverFirstClass } from './sold-in-europe';

/** Where no table holds the class at the frequency (common practice). */
const UNLISTED_PCT = 88;

/**
 * The efficiency at rated load that most motors of a year had, in per cent, what it rests on in words, and its doubt as a share of the loss.
 * Standard motors by IEC are taken with the loss that those sold in Europe in that year had.
 */
export function efficiencyOfYear(
  { tables, settings }: MotorScope,
  plate: Plate,
  query: RatingQuery,
): { pct: number; basis: string; spread: number } {
  const guess = classOfYear(plate, settings.standards);
  const found = listedEfficiency(tables, query, guess.efficiencyClass);
  const table = found?.pct ?? UNLISTED_PCT;
  const sold =
    guess.efficiencyClass === 'standard' && settings.standards === 'iec' && plate.yearBuilt !== undefined
      ? lossOverFirstClass(plate.yearBuilt, query.poles)
      : 1;
  const named = found ? `table “${found.table}”${sold === 1 ? '' : `, ${sold.toFixed(2)} times its loss`}` : 'common practice';
  return {
    pct: sold === 1 ? table : 100 / (1 + sold * (100 / table - 1)),
    basis: `${guess.why}, so taken for ${guess.efficiencyClass}; ${named}`,
    spread: guess.spread * beyondTable(found),
  };
}

/** The class that most motors of a year had. Years: US law of 1992 in force from 1997, premium from 2011; IEC classes by EU law from 2011 and 2017. */
function classOfYear(plate: Plate, standards: 'nema' | 'iec'): { efficiencyClass: EfficiencyClass; why: string; spread: number } {
  const year = plate.yearBuilt;
  const oldFrame = plate.frame !== undefined && /^\d{3}U/i.test(plate.frame.trim());
  if (oldFrame) return { efficiencyClass: 'standard', why: 'a U frame, made before about 1964', spread: 0.2 };
  if (year === undefined) return { efficiencyClass: 'standard', why: 'year not known', spread: 0.25 };
  const [second, third] = standards === 'nema' ? [1998, 2011] : [2011, 2017];
  if (year < second) return { efficiencyClass: 'standard', why: `made in ${year}`, spread: 0.2 };
  if (year < third)
    return { efficiencyClass: standards === 'nema' ? 'energy-efficient' : 'IE2', why: `made in ${year}`, spread: 0.2 };
  return { efficiencyClass: standards === 'nema' ? 'premium' : 'IE3', why: `made in ${year}`, spread: 0.2 };
}
