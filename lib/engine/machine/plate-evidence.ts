import { AT } from '../circuit/parameters';
import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import * as N from '../generated/nameplate';
import type { KnownPlate, Plate } from '../motor';
import { typicalPowerFactor } from '../nameplate/current';
import { PLATE } from '../nameplate/findings';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { copied } from '../room';
import type { Evidence } from './fit';
import type { CompletedPlate } from './model';
import { logarithm, type Observation, observation, withDoubt } from './observation';
import { resistanceDoubt } from './resistance-doubt';
import { testEvidence } from './test-evidence';
import { typicalLosses } from './typical-losses';

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
const SATURATION = 1.8;
const SATURATION_DOUBT = 0.5;

/** No cage motor comes above it at rated load (common practice). */
const HIGHEST_POWER_FACTOR = 0.95;

/** What the plate, tests written on it, and what is typical of such motors say of the machine's parameters. */
export function plateEvidence(
  scope: MotorScope,
  plate: KnownPlate,
  completed: CompletedPlate,
  prefix: string,
): { evidence: Evidence; findings: Finding[] } {
  const findings: Finding[] = [];
  const base = { powerKw: completed.ratedPower.value, currentA: baseCurrent(completed) };
  const loss = apply(scope, N.rated_total_loss, { rated_power: completed.ratedPower, efficiency: completed.efficiency });
  const typical = typicalReactances(completed);
  const shares = typicalLosses(scope, completed, loss.value, prefix);
  const assumed = (name: string, value: number, u: number, label: string, source: string, id: string): Quantity<'1'> =>
    leaf(scope, {
      value,
      unit: '1',
      label: `${prefix}${label}`,
      origin: 'assumed',
      source,
      doubts: [{ id: `${prefix}${id}`, label: `${prefix}${name}`, u }],
    });
  const rise = plate.temperatureRiseClass;
  const observations: Observation[] = [
    observation(
      completed.origins.efficiency === 'metered'
        ? 'tested_efficiency'
        : completed.efficiencyKnown
          ? 'stamped_efficiency'
          : 'assumed_efficiency',
      completed.efficiencyKnown,
      { of: 'rated-loss' },
      logarithm(scope, loss, base.powerKw, `${prefix}rated total loss`),
    ),
    observation(
      completed.origins.speed === 'stamped' ? 'stamped_speed' : 'typical_slip',
      completed.origins.speed === 'stamped',
      { of: 'parameter', index: AT.slip },
      logarithm(scope, completed.ratedSlip, 1, `${prefix}rated slip`),
    ),
    observation('typical_core_loss', false, { of: 'parameter', index: AT.core }, shares.core),
    observation('typical_friction', false, { of: 'parameter', index: AT.friction }, shares.friction),
    observation('typical_stray_loss', false, { of: 'parameter', index: AT.stray }, shares.stray),
    observation(
      'typical_rise',
      rise !== undefined,
      { of: 'parameter', index: AT.rise },
      assumed(
        'temperature rise',
        Math.log(RISE_USED * RISE[rise ?? 'B']),
        RISE_DOUBT,
        'logarithm of the winding’s rise at rated load',
        rise
          ? `class of temperature rise ${rise}, nine tenths used (common practice)`
          : 'rise of class B assumed (common practice)',
        'rise',
      ),
    ),
    observation(
      'typical_saturation',
      false,
      { of: 'parameter', index: AT.saturation },
      assumed(
        'saturation',
        SATURATION,
        SATURATION_DOUBT,
        'exponent of the magnetising current',
        'common practice: 10 % more voltage brings 15 to 25 % more magnetising current',
        'typical:saturation',
      ),
    ),
    leakageObservation(scope, plate, typical.leakage, prefix),
  ];
  // A stamped power factor says more: beside it the typical value would only pull the rated point off its stamps.
  if (completed.origins.powerFactor !== 'stamped')
    observations.push(
      observation(
        'typical_magnetising_current',
        false,
        { of: 'parameter', index: AT.magnetising },
        assumed(
          'magnetising current',
          Math.log(typical.magnetising),
          0.25,
          'logarithm of the typical magnetising current, per unit of rated power',
          'typical power factor by poles and rating, less the leakage (common practice)',
          'typical:magnetising',
        ),
      ),
    );
  if (completed.origins.current === 'stamped')
    observations.push(
      observation(
        'stamped_current',
        true,
        { of: 'rated-current' },
        logarithm(scope, completed.ratedCurrent, base.currentA, `${prefix}rated current`),
      ),
    );
  if (completed.origins.powerFactor === 'stamped')
    observations.push(observation('stamped_power_factor', true, { of: 'rated-power-factor' }, completed.powerFactor));
  const byTest = testEvidence(scope, plate, {
    ...base,
    impedanceOhm: completed.ratedVoltage.value / Math.sqrt(3) / base.currentA,
  });
  observations.push(...byTest);
  // What a bench test measured takes the place of the same value written on the plate.
  const written = withoutTested(plate, byTest);
  measured(scope, written, completed, base, loss.value, observations, findings);
  // From the stamped power factor: from an ordinary one the search may not find its way to a poor motor. Amperes may imply one above unity.
  const likely = typicalReactances(completed, Math.min(completed.powerFactor.value, HIGHEST_POWER_FACTOR));
  const start = copied([
    Math.log((loss.value * 0.8) / base.powerKw),
    Math.log(completed.ratedSlip.value),
    Math.log(likely.magnetising),
    Math.log(likely.leakage),
    shares.core.value,
    shares.friction.value,
    shares.stray.value,
    Math.log(RISE_USED * RISE[rise ?? 'B']),
    SATURATION,
  ]);
  return { evidence: { observations, conditions: [], start, rotorShare: rotorShareOf(plate) }, findings };
}

/** Base current: that of a motor without losses and reactive current, A. */
export function baseCurrent(completed: CompletedPlate): number {
  return (completed.ratedPower.value * 1000) / (Math.sqrt(3) * completed.ratedVoltage.value);
}

/** The rotor's part of the leakage by design: IEEE 112-2017 (from memory). */
function rotorShareOf(plate: Plate): number {
  switch (plate.designLetter) {
    case 'A':
    case 'D':
      return 0.5;
    case 'C':
      return 0.7;
    default:
      return 0.6;
  }
}

/** Reactances of an ordinary motor of this rating, or of one with the given power factor, per unit of rated shaft power. */
function typicalReactances(
  completed: CompletedPlate,
  pf = typicalPowerFactor(completed.poles, completed.ratedPower.value),
): { magnetising: number; leakage: number } {
  const apparent = 1 / (completed.efficiency.value * pf);
  const leakage = TYPICAL_LEAKAGE / apparent;
  const reactive = apparent * Math.sqrt(1 - pf * pf);
  return { leakage, magnetising: Math.max(0.15, (reactive - leakage * apparent * apparent * 0.8) / 0.95) };
}

/** Leakage: from the code letter's locked-rotor apparent power, else typical. */
function leakageObservation(scope: MotorScope, plate: Plate, typical: number, prefix: string): Observation {
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

/** The plate without the test values that a bench test measured anew. */
function withoutTested(plate: Plate, byTest: readonly Observation[]): Plate {
  if (byTest.length === 0) return plate;
  const has = (name: string): boolean => byTest.some((each) => each.name === `tested_${name}`);
  return {
    ...plate,
    ...(has('resistance') && { statorResistanceOhm: undefined }),
    ...((has('friction') || has('constant')) && { frictionWindageKw: undefined, noLoadPowerKw: undefined }),
    ...(has('no_load_current') && { noLoadCurrentA: undefined }),
  };
}

/** What tests of this very motor say: winding resistance, friction and windage, an uncoupled run. */
function measured(
  scope: MotorScope,
  plate: Plate,
  completed: CompletedPlate,
  base: { powerKw: number; currentA: number },
  totalLoss: number,
  observations: Observation[],
  findings: Finding[],
): void {
  const rest = totalLoss - completed.ratedSlip.value * completed.ratedPower.value;
  if (plate.statorResistanceOhm !== undefined) {
    const temperature = plate.statorResistanceTempC ?? 25;
    const zBase = completed.ratedVoltage.value / Math.sqrt(3) / base.currentA;
    const perPhase = plate.statorResistanceOhm / 2;
    const statorLoss = (3 * perPhase * 1.2 * completed.ratedCurrent.value ** 2) / 1000;
    if (statorLoss > 0.95 * rest || statorLoss < 0.08 * rest)
      findings.push(PLATE.make('resistance-contradicts-plate', { stator_loss: statorLoss, rest }));
    else {
      observations.push(
        observation(
          'measured_resistance',
          true,
          { of: 'resistance', temperature },
          leaf(scope, {
            value: Math.log(perPhase / zBase),
            unit: '1',
            label: 'logarithm of the stator resistance, per unit of rated power',
            origin: 'metered',
            source: `resistance between terminals, as entered, at ${temperature} °C`,
            doubts: [
              { id: 'test:resistance', label: 'measurement of the resistance and its temperature', u: resistanceDoubt(plate) },
            ],
          }),
        ),
      );
    }
  }
  const friction = plate.frictionWindageKw;
  if (friction !== undefined && friction >= totalLoss * 0.5)
    findings.push(PLATE.make('plate-value-impossible', { column: 'friction_windage_kw', value: friction }));
  else if (friction !== undefined)
    observations.push(
      observation(
        'measured_friction',
        true,
        { of: 'friction' },
        leaf(scope, {
          value: Math.log(friction / base.powerKw),
          unit: '1',
          label: 'logarithm of the friction and windage, per unit of rated power',
          origin: 'metered',
          source: 'test, as entered',
          doubts: [{ id: 'test:friction', label: 'test of friction and windage', u: 0.1 }],
        }),
      ),
    );
  freeRun(scope, plate, completed, base, rest, observations, findings);
}

function freeRun(
  scope: MotorScope,
  plate: Plate,
  completed: CompletedPlate,
  base: { powerKw: number; currentA: number },
  rest: number,
  observations: Observation[],
  findings: Finding[],
): void {
  const voltage = (plate.noLoadVoltageV ?? plate.ratedVoltageV) / plate.ratedVoltageV;
  const assumed = plate.noLoadVoltageV === undefined;
  if (voltage < 0.3 || voltage > 1.25) return;
  const current = plate.noLoadCurrentA;
  const share = current === undefined ? undefined : current / completed.ratedCurrent.value / voltage;
  if (current !== undefined && share !== undefined && share > 0.1 && share < 0.9) {
    const value = leaf(scope, {
      value: Math.log(current / base.currentA),
      unit: '1',
      label: 'logarithm of the no-load current, per unit of rated power',
      origin: 'metered',
      source: 'uncoupled test',
      doubts: [{ id: 'test:no-load-current', label: 'reading of the no-load current', u: 0.015 }],
    });
    observations.push(
      observation(
        'no_load_current',
        true,
        { of: 'free-current', voltage },
        assumed ? withDoubt(scope, value, 'test:no-load-voltage', 'voltage of the uncoupled test', 0.05) : value,
      ),
    );
  }
  if (current !== undefined && share !== undefined && !(share > 0.1 && share < 0.9))
    findings.push(PLATE.make('plate-value-impossible', { column: 'no_load_current_a', value: current }));
  const input = plate.noLoadPowerKw;
  if (input === undefined) return;
  const stator = current === undefined ? 0 : 0.4 * rest * (current / completed.ratedCurrent.value) ** 2;
  if (input - stator < 0.08 * rest || input > 1.05 * rest) {
    findings.push(PLATE.make('no-load-contradicts-plate', { no_load_loss: input - stator, rest }));
    return;
  }
  const value = leaf(scope, {
    value: Math.log(input / base.powerKw),
    unit: '1',
    label: 'logarithm of the no-load input, per unit of rated power',
    origin: 'metered',
    source: 'uncoupled test',
    doubts: [{ id: 'test:no-load-power', label: 'reading of the no-load power', u: 0.03 }],
  });
  observations.push(
    observation(
      'no_load_power',
      true,
      { of: 'free-input', voltage },
      assumed ? withDoubt(scope, value, 'test:no-load-voltage', 'voltage of the uncoupled test', 0.06) : value,
    ),
  );
}
