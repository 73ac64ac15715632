import { KILOWATTS_PER_HORSEPOWER, POUND_FOOT_SQUARED } from '../formula/constants';

/**
 * Largest load inertia that a medium polyphase cage motor is required to start without injury.
 *
 * Wk² = A hp^0.95 / (n/1000)^2.4 − 0.0685 hp^1.5 / (n/1000)^1.8, in lb·ft²; A is 24 up to 1800 r/min and 27 at 3600 r/min.
 * Units: kW, r/min (synchronous), kg·m² at the motor shaft. Valid for: 60 Hz design A and B motors of 1 to 500 hp; taken at 50 Hz as well.
 * Source: NEMA MG 1 12.54 (from memory).
 */
export function largestInertia(ratedPowerKw: number, synchronousSpeedRpm: number): number {
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  const speed = synchronousSpeedRpm / 1000;
  const factor = speed > 1.8 ? 27 : 24;
  return POUND_FOOT_SQUARED * ((factor * hp ** 0.95) / speed ** 2.4 - (0.0685 * hp ** 1.5) / speed ** 1.8);
}

/** Torques that a motor must give at least, over its rated torque. */
export interface LeastTorques {
  readonly locked: number;
  /** Least torque between standstill and the speed of the breakdown torque. */
  readonly pullUp: number;
  readonly breakdown: number;
}

/** What is to be brought up to speed. */
interface RunUp {
  readonly torques: LeastTorques;
  /** Torque to break the load away, and its torque at full speed, over the motor's rated torque. */
  readonly breakaway: number;
  readonly running: number;
  /** Torque of the load at a share of synchronous speed over that at full speed. */
  readonly shape: (speed: number) => number;
  /** Terminal voltage during the start over rated voltage. */
  readonly voltage: number;
}

/** Share of synchronous speed up to which pull-up torque is counted on, where breakdown torque stands, and where the run-up ends (common practice). */
const PULL_UP_TO = 0.8;
const BREAKDOWN_AT = 0.9;
const RUN_UP_TO = 0.95;
const STEPS = 95;

/**
 * Least torque left to accelerate over the whole run-up, and where it stands; the motor gives no more than the standard's minimums demand.
 *
 * Units: torques over rated torque, speeds over synchronous speed. `mean` is the harmonic mean of the torque left, which sets the run-up time;
 * 0 where the motor would stall. Torque goes with the square of the voltage.
 * Source: definitions of locked-rotor, pull-up and breakdown torque in NEMA MG 1 section 1; speeds by common practice.
 */
export function accelerating(given: RunUp): { readonly least: number; readonly at: number; readonly mean: number } {
  let least = Number.POSITIVE_INFINITY;
  let at = 0;
  let sum = 0;
  for (let step = 0; step <= STEPS; step++) {
    const speed = (RUN_UP_TO * step) / STEPS;
    const load = step === 0 ? given.breakaway : given.running * given.shape(speed);
    const left = motorTorque(given.torques, speed) * given.voltage ** 2 - load;
    if (left < least) [least, at] = [left, speed];
    // The instant of breaking away takes no time: the torque at the first step stands for it.
    if (step > 0) sum += 1 / left;
  }
  return { least, at, mean: least > 0 ? STEPS / sum : 0 };
}

function motorTorque({ locked, pullUp, breakdown }: LeastTorques, speed: number): number {
  if (speed === 0) return locked;
  if (speed <= PULL_UP_TO) return Math.min(locked, pullUp);
  const along = Math.min(1, (speed - PULL_UP_TO) / (BREAKDOWN_AT - PULL_UP_TO));
  return pullUp + along * (breakdown - pullUp);
}

/**
 * Seconds to bring an inertia to speed: J Δω / T. The rotor's own inertia, which is not on the sheet, comes on top.
 * Units: kg·m², r/min (synchronous), kW, torque over rated torque. `undefined` where no torque is left.
 * Source: Newton's second law for rotation; agrees with t = WK² Δn / (308 T) in customary units.
 */
export function runUpTime(given: {
  readonly inertiaKgm2: number;
  readonly synchronousSpeedRpm: number;
  readonly ratedPowerKw: number;
  readonly mean: number;
}): number | undefined {
  if (!(given.mean > 0)) return undefined;
  const omega = (given.synchronousSpeedRpm * Math.PI) / 30;
  return (given.inertiaKgm2 * RUN_UP_TO * omega * omega) / (1000 * given.ratedPowerKw * given.mean);
}
