import { behindDrive } from '../condition/indicators/shared';
import type { MotorScope } from '../context';
import type { Finding } from '../quantity/finding';
import { standardUncertainty } from '../quantity/quantity';
import { fixed } from '../quantity/words';
import { RATED_ALTITUDE_M, RATED_AMBIENT_C, unknownPlace } from './checks';
import { OPTIONS } from './findings';
import { frameNote } from './frame-note';
import type { Present } from './present';
import type { Change } from './replacement';
import type { RunningStep } from './running';

/** What of the duty, the supply and the place heats another rating. */
interface HeatOn {
  readonly highestLoad: number;
  /** Standard uncertainty of the highest load; none where a stated one is the highest. */
  readonly highestLoadU: number;
  readonly rmsLoad: number;
  readonly unbalancePct: number | undefined;
  readonly ambientC: number | undefined;
}

/**
 * Highest and root mean square load of a new motor over its duty, with the voltage unbalance last read and the highest ambient read.
 * Units: shares of its rating, per cent, °C. Time at rest does not count, though the motor cools then: that is on the safe side.
 */
export function heatOn(present: Present, change: Change): HeatOn {
  let unbalancePct: number | undefined;
  for (const reading of present.readings) {
    const volts = reading.voltagesV;
    if (volts && !behindDrive(present.plate, reading)) unbalancePct = deviationPct(volts);
  }
  const running = change.steps.filter((step) => step.hours?.value !== 0);
  const loads = running.map((step) => step.point.loadFraction);
  const highest = loads.reduce<(typeof loads)[number] | undefined>(
    (most, load) => (most && most.value >= load.value ? most : load),
    undefined,
  );
  const stated = present.plate.peakLoadKw === present.highestLoadKw;
  const highestLoadU = highest && !stated ? standardUncertainty(highest) : 0;
  return {
    highestLoad: Math.max(0, highest?.value ?? 0),
    highestLoadU,
    rmsLoad: rmsLoad(running),
    unbalancePct,
    ambientC: highestAmbient(present),
  };
}

/** Highest ambient that was read, °C. */
function highestAmbient({ readings }: Present): number | undefined {
  let highest: number | undefined;
  for (const { ambientC } of readings) if (ambientC !== undefined) highest = Math.max(highest ?? ambientC, ambientC);
  return highest;
}

/** Said once for a motor where a smaller rating is weighed and something of its place is not known. */
export function placeNote(present: Present, ratings: readonly number[]): Finding | undefined {
  const { altitudeM, ratedPowerKw } = present.plate;
  const ambientC = highestAmbient(present);
  if ((altitudeM !== undefined && ambientC !== undefined) || !ratings.some((rating) => rating < ratedPowerKw)) return undefined;
  const assumed = [
    ...(altitudeM === undefined ? [`${fixed(RATED_ALTITUDE_M, 0)} m`] : []),
    ...(ambientC === undefined ? [`${RATED_AMBIENT_C} °C`] : []),
  ];
  return OPTIONS.make('place-unknown', {
    what: unknownPlace(altitudeM, ambientC),
    assumed: `${assumed.join(' and ')} ${assumed.length === 1 ? 'is' : 'are'}`,
  });
}

function deviationPct(volts: readonly [number, number, number]): number | undefined {
  const mean = (volts[0] + volts[1] + volts[2]) / 3;
  return mean > 0 ? (100 * Math.max(...volts.map((volt) => Math.abs(volt - mean)))) / mean : undefined;
}

/** Steady load (fraction of the rated one) that heats as much as the steps do: losses that vary go with the square of the load (common practice). */
export function rmsLoad(steps: readonly Pick<RunningStep, 'hours' | 'point'>[]): number {
  let [sum, time] = [0, 0];
  for (const { hours, point } of steps) {
    const weight = hours?.value ?? 1;
    sum += weight * point.loadFraction.value ** 2;
    time += weight;
  }
  return time > 0 ? Math.sqrt(sum / time) : 0;
}

/** A saving beyond that of the same rating below this share of the energy is as good as none. */
const WORTH_NAMING = 0.005;
/** A change of the power factor below this is not worth a word. */
const LEAST_POWER_FACTOR = 0.02;

/** Share by which a rated current may stand off the stamped one (NEMA MG 1 12.47, from memory). */
const CURRENT_TOLERANCE = 0.1;

/** The stamped current, by which relay and fuses were chosen, unless the other stamps and the readings say that it is another motor's. */
function ratedCurrentOf({ plate, machine }: Present): number {
  const found = machine.plate.ratedCurrent.value;
  const stamped = plate.ratedCurrentA;
  return stamped !== undefined && Math.abs(stamped - found) <= CURRENT_TOLERANCE * found ? stamped : found;
}

/** What else changes with the rating: relay and fuses, frame and shaft height, power factor; and whether it saves anything at all. */
export function resizeNotes(scope: MotorScope, present: Present, change: Change, same: Change | undefined): Finding[] {
  const { plate } = present.machine;
  const next = change.replacement.machine.plate;
  const findings = [OPTIONS.make('starter-to-match', { from_a: ratedCurrentOf(present), to_a: next.ratedCurrent.value })];
  const frame = frameNote(scope, present, change.replacement.ratedPowerKw);
  if (frame) findings.push(frame);
  const from = present.steps[present.peak]?.point.powerFactor.value;
  const to = change.steps[present.peak]?.point.powerFactor.value;
  if (from !== undefined && to !== undefined && Math.abs(to - from) >= LEAST_POWER_FACTOR)
    findings.push(OPTIONS.make('power-factor-moves', { from, to }));
  const beyond = (same?.year?.energy?.value ?? Number.NaN) - (change.year?.energy?.value ?? Number.NaN);
  if (next.ratedPower.value < plate.ratedPower.value && beyond <= WORTH_NAMING * (present.year?.energy?.value ?? 0))
    findings.push(OPTIONS.make('smaller-saves-no-more', { beyond_same_rating: beyond }));
  return findings;
}
