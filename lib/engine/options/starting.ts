import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';

/** 1 lb·ft² in kg·m². */
const POUND_FOOT_SQUARED = 0.04214011;

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
