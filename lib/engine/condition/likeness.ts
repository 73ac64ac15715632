import type { Machine } from '../machine/model';
import type { Motor } from '../motor';
import type { Likeness, UnrankedMotor } from '../result';
import type { SisterScale } from './among-sisters';

/** Indicators of the motor itself that like motors share, with the scale on which they are compared; load, supply and starts are those of a place. */
export const COMPARED: ReadonlyMap<string, SisterScale> = new Map([
  ['current-unbalance', 'difference'],
  ['winding-resistance-unbalance', 'difference'],
  ['insulation-resistance', 'ratio'],
  ['winding-temperature', 'difference'],
  ['vibration', 'ratio'],
  ['vibration-axial', 'difference'],
  ['vibration-1x', 'difference'],
  ['vibration-2x', 'difference'],
  ['vibration-twice-line', 'difference'],
  ['bearing-temperature', 'difference'],
  ['rotor-sideband', 'difference'],
  ['eccentricity-sideband', 'difference'],
]);

/** One compared value of a motor. */
export interface ComparedValue {
  readonly id: string;
  readonly value: number;
  readonly u: number;
  readonly unit: string;
}

/** What the comparison of like motors needs of one. */
export interface SisterFacts {
  readonly site: string;
  readonly area: string | undefined;
  readonly ratedPowerKw: number;
  readonly likeness: Likeness;
  readonly values: readonly ComparedValue[];
}

/** By what a motor is recognized as another's sister. */
export function likenessOf({ plate }: Motor, machine: Machine): Likeness {
  return {
    machine_kind: plate.machineKind,
    poles: machine.plate.poles,
    rated_voltage_v: plate.ratedVoltageV,
    drive_fed: plate.driveFed === true,
    ...(plate.drivenMachine !== undefined && { driven_machine: plate.drivenMachine }),
  };
}

/** The few facts of a motor's result that the comparison needs, so that the rest can be let go. */
export function sisterFacts({
  site,
  area,
  rated_power_kw,
  likeness,
  condition,
}: Pick<UnrankedMotor, 'site' | 'area' | 'rated_power_kw' | 'likeness' | 'condition'>): SisterFacts {
  const values = condition.indicators.flatMap(({ id, value: { value, u, unit } }) =>
    COMPARED.has(id) ? [{ id, value, u, unit }] : [],
  );
  return { site, area, ratedPowerKw: rated_power_kw, likeness, values };
}
