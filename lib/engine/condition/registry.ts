import type { Indicator } from './indicator';
import { bearingEnvelope } from './indicators/bearing-envelope';
import { bearingTemperature } from './indicators/bearing-temperature';
import { beltSlip } from './indicators/belt-slip';
import { currentUnbalance } from './indicators/current-unbalance';
import { eccentricitySideband } from './indicators/eccentricity-sideband';
import { frequencyDeviation } from './indicators/frequency-deviation';
import { insulationLife } from './indicators/insulation-life';
import { insulationResistance } from './indicators/insulation-resistance';
import { overload } from './indicators/overload';
import { polarizationIndex } from './indicators/polarization-index';
import { rotorSideband } from './indicators/rotor-sideband';
import { startsPerHour } from './indicators/starts';
import { testedEfficiency } from './indicators/tested-efficiency';
import { vibration } from './indicators/vibration';
import { vibrationAxial, vibrationOnce, vibrationTwice, vibrationTwiceLine } from './indicators/vibration-parts';
import { voltageDeviation } from './indicators/voltage-deviation';
import { voltageDistortion } from './indicators/voltage-distortion';
import { voltageUnbalance } from './indicators/voltage-unbalance';
import { windingResistanceUnbalance } from './indicators/winding-resistance-unbalance';
import { windingTemperature } from './indicators/winding-temperature';

/** Every condition indicator, in the order in which they are shown: supply, winding, load, mechanical, rotor, drive train. A new one is one line here. */
export const INDICATORS: readonly Indicator[] = [
  voltageUnbalance,
  voltageDeviation,
  frequencyDeviation,
  voltageDistortion,
  currentUnbalance,
  windingResistanceUnbalance,
  insulationResistance,
  polarizationIndex,
  windingTemperature,
  insulationLife,
  overload,
  testedEfficiency,
  startsPerHour,
  vibration,
  vibrationAxial,
  vibrationOnce,
  vibrationTwice,
  vibrationTwiceLine,
  bearingEnvelope,
  bearingTemperature,
  rotorSideband,
  eccentricitySideband,
  beltSlip,
];

/** Ids of the limits that a study may set. */
export const LIMIT_IDS: ReadonlySet<string> = new Set(INDICATORS.flatMap((indicator) => indicator.limits));

/** Title of each indicator, by id. */
export const INDICATOR_TITLES: ReadonlyMap<string, string> = new Map(INDICATORS.map(({ id, title }) => [id, title]));
