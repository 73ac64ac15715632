import { AT } from '../circuit/parameters';
import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { Plate } from '../motor';
import { typicalPowerFactor } from '../nameplate/current';
import type { CompletedPlate } from './model';
import { type Observation, observation } from './observation';

/** Rise at rated load by class, K over an ambient of 25 °C: IEEE 112 specified temperatures (from memory) less 25 °C. */
const RISE = { A: 50, B: 70, F: 90, H: 105 } as const;

/** Motors keep clear of their class: nine tenths of it, with a sixth as deviation (common practice). */
const RISE_USED = 0.9;
const RISE_DOUBT = 0.17;

/** Running leakage over leakage at standstill, where teeth tips saturate and bars lie deep: 1.25 with 0.2 of doubt (common practice). */
const RUNNING_OVER_LOCKED = 1.25;

/**
 * A typical running leakage reactance, per unit of rated apparent power: a locked-rotor current of about six times the rated one, and the
 * reactance that it implies grown by {@link RUNNING_OVER_LOCKED}.
 */
const TYPICAL_LEAKAGE = 0.2;

/** Magnetising current against air-gap voltage: 10 % more voltage brings 15 to 25 % more of it (common practice). */
export const SATURATION = 1.8;
const SATURATION_DOUBT = 0.5;

/** Of its logarithm (common practice). */
const MAGNETISING_DOUBT = 0.25;

/** Reactances of an ordinary motor of this rating, or of one with the given power factor, per unit of rated shaft power. */
export function typicalReactances(
  completed: CompletedPlate,
  pf = typicalPowerFactor(completed.poles, completed.ratedPower.value),
): { magnetising: number; leakage: number } {
  const apparent = 1 / (completed.efficiency.value * pf);
  const leakage = TYPICAL_LEAKAGE / apparent;
  const reactive = apparent * Math.sqrt(1 - pf * pf);
  return { leakage, magnetising: Math.max(0.15, (reactive - leakage * apparent * apparent * 0.8) / 0.95) };
}

/** Logarithm of the winding's rise at rated load, K: by its class, else by class B. */
export function logTypicalRise({ temperatureRiseClass }: Plate): number {
  return Math.log(RISE_USED * RISE[temperatureRiseClass ?? 'B']);
}

/** The winding's rise at rated load; evidence where its class is stamped. */
export function riseObservation(scope: MotorScope, plate: Plate, prefix: string): Observation {
  const rise = plate.temperatureRiseClass;
  return observation(
    'typical_rise',
    rise !== undefined,
    { of: 'parameter', index: AT.rise },
    leaf(scope, {
      value: logTypicalRise(plate),
      unit: '1',
      label: `${prefix}logarithm of the winding’s rise at rated load`,
      origin: 'assumed',
      source: rise
        ? `class of temperature rise ${rise}, nine tenths used (common practice)`
        : 'rise of class B assumed (common practice)',
      doubts: [{ id: `${prefix}rise`, label: `${prefix}temperature rise`, u: RISE_DOUBT }],
    }),
  );
}

/** How much faster than the voltage the magnetising current grows. */
export function saturationObservation(scope: MotorScope, prefix: string): Observation {
  return observation(
    'typical_saturation',
    false,
    { of: 'parameter', index: AT.saturation },
    leaf(scope, {
      value: SATURATION,
      unit: '1',
      label: `${prefix}exponent of the magnetising current`,
      origin: 'assumed',
      source: 'common practice: 10 % more voltage brings 15 to 25 % more magnetising current',
      doubts: [{ id: `${prefix}typical:saturation`, label: `${prefix}saturation`, u: SATURATION_DOUBT }],
    }),
  );
}

/** Magnetising current; `typical` per unit of rated shaft power. */
export function magnetisingObservation(scope: MotorScope, typical: number, prefix: string): Observation {
  return observation(
    'typical_magnetising_current',
    false,
    { of: 'parameter', index: AT.magnetising },
    leaf(scope, {
      value: Math.log(typical),
      unit: '1',
      label: `${prefix}logarithm of the typical magnetising current, per unit of rated power`,
      origin: 'assumed',
      source: 'typical power factor by poles and rating, less the leakage (common practice)',
      doubts: [{ id: `${prefix}typical:magnetising`, label: `${prefix}magnetising current`, u: MAGNETISING_DOUBT }],
    }),
  );
}

/** Leakage: from the code letter's locked-rotor apparent power, else `typical`, per unit of rated shaft power. */
export function leakageObservation(scope: MotorScope, plate: Plate, typical: number, prefix: string): Observation {
  const letter = plate.codeLetter?.trim().toUpperCase();
  const row = scope.tables.codeLetters.rows.find((each) => each.codeLetter === letter);
  // Locked-rotor reactance is nearly all of the impedance: 0.97 of it at a power factor of about 0.25.
  const fromLetter =
    row?.kvaPerHpMax === undefined
      ? undefined
      : (RUNNING_OVER_LOCKED * 0.97 * KILOWATTS_PER_HORSEPOWER) / ((row.kvaPerHpMin + row.kvaPerHpMax) / 2);
  return observation(
    fromLetter === undefined ? 'typical_leakage' : 'code_letter',
    fromLetter !== undefined,
    { of: 'parameter', index: AT.leakage },
    leaf(scope, {
      value: Math.log(fromLetter ?? typical),
      unit: '1',
      label: `${prefix}logarithm of the running leakage reactance, per unit of rated power`,
      origin: fromLetter === undefined ? 'assumed' : 'derived',
      source:
        fromLetter === undefined
          ? 'common practice: locked-rotor current of about six times rated, running leakage a quarter above that at standstill'
          : `code letter ${letter}, running leakage a quarter above that at standstill (common practice)`,
      doubts: [
        { id: `${prefix}typical:leakage`, label: `${prefix}leakage reactance`, u: fromLetter === undefined ? 0.25 : 0.18 },
      ],
    }),
  );
}
