import { CONSTANTS } from '../formula/constants';
import { NORMAL_FACTOR } from '../quantity/coverage';
import type { Finding } from '../quantity/finding';
import { standardUncertainty } from '../quantity/quantity';
import { BENCH } from './findings';
import type { LoadSide } from './load-side';
import type { Winding } from './resistance';
import type { BenchPlate } from './test';

/** Half a step of a stamped efficiency, in points. */
const ROUNDING = 0.05;
/** Slip may differ from the stamped one by this share (NEMA MG 1 12.46, from memory). */
const SLIP_TOLERANCE = 0.2;
/** Current at rated load may differ from the stamped one by this share (NEMA MG 1 12.47, from memory). */
const CURRENT_TOLERANCE = 0.1;
/** A resistance further from the one in the book than this tells of another winding or connection (common practice). */
const RESISTANCE_TOLERANCE = 0.05;

/** What a test contradicts on the plate and in the book, each beyond its tolerance and the test's own 95 % interval. */
export function plateConflicts(
  plate: BenchPlate,
  given: {
    readonly load: LoadSide;
    readonly reference: Winding;
    readonly copper: number;
    readonly frequencyHz: number;
    readonly poles: number | undefined;
  },
): Finding[] {
  const findings: Finding[] = [];
  const rated = given.load.loads.find((each) => each.loadFraction === 1);
  if (rated && plate.nominalEfficiencyPct !== undefined) {
    const expanded = NORMAL_FACTOR * standardUncertainty(rated.efficiency) * 100;
    const efficiency_pct = rated.efficiency.value * 100;
    if (Math.abs(efficiency_pct - plate.nominalEfficiencyPct) > expanded + ROUNDING) {
      const evidence = { efficiency_pct, nominal_pct: plate.nominalEfficiencyPct, expanded_pct: expanded };
      findings.push(BENCH.make('efficiency-off-plate', evidence));
    }
  }
  if (rated && plate.ratedSpeedRpm !== undefined && given.poles !== undefined) {
    const synchronous = (2 * CONSTANTS.seconds_per_minute.value * given.frequencyHz) / given.poles;
    const stamped = synchronous - plate.ratedSpeedRpm;
    const off = Math.abs(synchronous - rated.speed.value - stamped);
    if (stamped > 0 && off > SLIP_TOLERANCE * stamped + NORMAL_FACTOR * standardUncertainty(rated.speed)) {
      findings.push(BENCH.make('speed-off-plate', { speed: rated.speed.value, stamped: plate.ratedSpeedRpm }));
    }
  }
  if (rated && plate.ratedCurrentA !== undefined) {
    const off = Math.abs(rated.current.value - plate.ratedCurrentA);
    if (off > CURRENT_TOLERANCE * plate.ratedCurrentA + NORMAL_FACTOR * standardUncertainty(rated.current)) {
      findings.push(BENCH.make('current-off-plate', { current: rated.current.value, stamped: plate.ratedCurrentA }));
    }
  }
  const { statorResistanceOhm: known, statorResistanceTempC: at } = plate;
  if (known !== undefined && at !== undefined) {
    const { resistance, temperature } = given.reference;
    const moved = (resistance.value * (given.copper + at)) / (given.copper + temperature.value);
    const doubt =
      NORMAL_FACTOR *
      Math.hypot(
        standardUncertainty(resistance) / resistance.value,
        standardUncertainty(temperature) / (given.copper + temperature.value),
      );
    if (Math.abs(moved / known - 1) > RESISTANCE_TOLERANCE + doubt) {
      findings.push(BENCH.make('resistance-off-book', { resistance: moved, known, temperature: at }));
    }
  }
  return findings;
}
