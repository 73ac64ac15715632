import type { Indicator } from './indicator';
import { bearingTemperature } from './indicators/bearing-temperature';
import { currentUnbalance } from './indicators/current-unbalance';
import { eccentricitySideband } from './indicators/eccentricity-sideband';
import { insulationResistance } from './indicators/insulation-resistance';
import { overload } from './indicators/overload';
import { polarizationIndex } from './indicators/polarization-index';
import { rotorSideband } from './indicators/rotor-sideband';
import { vibration } from './indicators/vibration';
import { voltageDeviation } from './indicators/voltage-deviation';
import { voltageUnbalance } from './indicators/voltage-unbalance';
import { windingResistanceUnbalance } from './indicators/winding-resistance-unbalance';
import { windingTemperature } from './indicators/winding-temperature';

/** Every condition indicator, in the order in which they are shown: supply, winding, load, mechanical, rotor. A new one is one line here. */
export const INDICATORS: readonly Indicator[] = [
  voltageUnbalance,
  voltageDeviation,
  currentUnbalance,
  windingResistanceUnbalance,
  insulationResistance,
  polarizationIndex,
  windingTemperature,
  overload,
  vibration,
  bearingTemperature,
  rotorSideband,
  eccentricitySideband,
];

/** Ids of the limits that a study may set. */
export const LIMIT_IDS: ReadonlySet<string> = new Set(INDICATORS.flatMap((indicator) => indicator.limits));
