import type { InsulationSystem, Plate, Winding } from '../../motor';

/** Kind of winding: as stated, else random below 1 kV and form above (common practice). */
export function windingOf(plate: Plate): Winding {
  return plate.winding ?? (plate.ratedVoltageV < 1000 ? 'random' : 'form');
}

/** Year from which windings are taken as thermosetting (IEEE 43-2013, from memory: "after about 1970"). */
const THERMOSETTING_FROM = 1971;

/** Year of the winding: of the last rewind, else of the motor. */
export function yearWound(plate: Plate): number | undefined {
  return plate.lastRewindYear ?? plate.yearBuilt;
}

/** Insulation system: as stated, else thermosetting when wound after 1970; unknown otherwise. */
export function insulationSystemOf(plate: Plate): InsulationSystem | undefined {
  if (plate.insulationSystem !== undefined) return plate.insulationSystem;
  const year = yearWound(plate);
  return year !== undefined && year >= THERMOSETTING_FROM ? 'thermosetting' : undefined;
}
