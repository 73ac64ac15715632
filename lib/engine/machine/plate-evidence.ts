import { AT } from '../circuit/parameters';
import type { MotorScope } from '../context';
import { apply } from '../formula/apply';
import * as N from '../generated/nameplate';
import type { KnownPlate, Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { copied } from '../room';
import type { Evidence } from './fit';
import type { CompletedPlate } from './model';
import { logarithm, type Observation, observation } from './observation';
import { testEvidence } from './test-evidence';
import {
  leakageObservation,
  logTypicalRise,
  magnetisingObservation,
  riseObservation,
  SATURATION,
  saturationObservation,
  typicalReactances,
} from './typical-evidence';
import { type TypicalLosses, typicalLosses } from './typical-losses';
import { WRITTEN_TESTS, withoutTested } from './written-tests';

/** No cage motor comes above it at rated load (common practice). */
const HIGHEST_POWER_FACTOR = 0.95;

/** What the plate, tests written on it, and what is typical of such motors say of the machine's parameters. */
export function plateEvidence(
  scope: MotorScope,
  plate: KnownPlate,
  completed: CompletedPlate,
  prefix: string,
): { evidence: Evidence; findings: Finding[] } {
  const { origins, ratedCurrent } = completed;
  const currentA = baseCurrent(completed);
  const bases = {
    powerKw: completed.ratedPower.value,
    currentA,
    impedanceOhm: completed.ratedVoltage.value / Math.sqrt(3) / currentA,
  };
  const loss = apply(scope, N.rated_total_loss, { rated_power: completed.ratedPower, efficiency: completed.efficiency });
  const typical = typicalReactances(completed);
  const shares = typicalLosses(scope, completed, loss.value, prefix);
  const observations: Observation[] = [
    lossObservation(scope, completed, loss, prefix),
    slipObservation(scope, completed, prefix),
    observation('typical_core_loss', false, { of: 'parameter', index: AT.core }, shares.core),
    observation('typical_friction', false, { of: 'parameter', index: AT.friction }, shares.friction),
    observation('typical_stray_loss', false, { of: 'parameter', index: AT.stray }, shares.stray),
    riseObservation(scope, plate, prefix),
    saturationObservation(scope, prefix),
    leakageObservation(scope, plate, typical.leakage, prefix),
  ];
  // A stamped power factor says more: beside it the typical value would only pull the rated point off its stamps.
  if (origins.powerFactor !== 'stamped') observations.push(magnetisingObservation(scope, typical.magnetising, prefix));
  if (origins.current === 'stamped') {
    const value = logarithm(scope, ratedCurrent, currentA, `${prefix}rated current`);
    observations.push(observation('stamped_current', true, { of: 'rated-current' }, value));
  }
  if (origins.powerFactor === 'stamped')
    observations.push(observation('stamped_power_factor', true, { of: 'rated-power-factor' }, completed.powerFactor));
  const byTest = testEvidence(scope, plate, bases);
  observations.push(...byTest);
  // What a bench test measured takes the place of the same value written on the plate.
  const written = withoutTested(plate, byTest);
  const findings: Finding[] = [];
  for (const test of WRITTEN_TESTS) {
    const said = test(scope, written, completed, bases, loss.value);
    if (said === undefined) continue;
    if ('target' in said) observations.push(said);
    else findings.push(said);
  }
  const start = searchStart(plate, completed, loss.value, shares);
  return { evidence: { observations, conditions: [], start, rotorShare: rotorShareOf(plate) }, findings };
}

/** Base current: that of a motor without losses and reactive current, A. */
export function baseCurrent(completed: CompletedPlate): number {
  return (completed.ratedPower.value * 1000) / (Math.sqrt(3) * completed.ratedVoltage.value);
}

/** Total loss at rated load, as tested, stamped or assumed. */
function lossObservation(scope: MotorScope, completed: CompletedPlate, loss: Quantity<'kW'>, prefix: string): Observation {
  const { origins, efficiencyKnown } = completed;
  return observation(
    origins.efficiency === 'metered' ? 'tested_efficiency' : efficiencyKnown ? 'stamped_efficiency' : 'assumed_efficiency',
    efficiencyKnown,
    { of: 'rated-loss' },
    logarithm(scope, loss, completed.ratedPower.value, `${prefix}rated total loss`),
  );
}

/** Rated slip, by the stamped speed or as typical. */
function slipObservation(scope: MotorScope, { origins, ratedSlip }: CompletedPlate, prefix: string): Observation {
  const stamped = origins.speed === 'stamped';
  return observation(
    stamped ? 'stamped_speed' : 'typical_slip',
    stamped,
    { of: 'parameter', index: AT.slip },
    logarithm(scope, ratedSlip, 1, `${prefix}rated slip`),
  );
}

/** Where the search for the parameters starts: at the stamps, and for what they leave open at an ordinary motor. */
function searchStart(plate: Plate, completed: CompletedPlate, totalLossKw: number, shares: TypicalLosses): Float64Array {
  // From the stamped power factor: from an ordinary one the search may not find its way to a poor motor. Amperes may imply one above unity.
  const likely = typicalReactances(completed, Math.min(completed.powerFactor.value, HIGHEST_POWER_FACTOR));
  return copied([
    Math.log((totalLossKw * 0.8) / completed.ratedPower.value),
    Math.log(completed.ratedSlip.value),
    Math.log(likely.magnetising),
    Math.log(likely.leakage),
    shares.core.value,
    shares.friction.value,
    shares.stray.value,
    logTypicalRise(plate),
    SATURATION,
  ]);
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
