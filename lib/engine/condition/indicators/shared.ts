import type { MotorScope } from '../../context';
import { apply, leaf } from '../../formula/apply';
import * as C from '../../generated/condition';
import type { Plate, Reading } from '../../motor';
import { exact, type Quantity } from '../../quantity/quantity';
import type { Unit } from '../../quantity/unit';
import { rounded } from '../../quantity/words';

/** Maximum permissible errors of condition instruments, rectangular (common practice where the sheet has no column for them). */
export const INSTRUMENT = {
  /** Contact thermometer or detector, in K. */
  temperatureK: 2,
  /** Frequency, in Hz; distortion, in points of per cent. */
  frequencyHz: 0.01,
  distortionPoints: 0.3,
  /** Speed, in r/min. */
  speedRpm: 1,
  /** Enveloped acceleration, per cent of reading. */
  envelopePct: 10,
  /** Level of a line in a spectrum, in dB. */
  levelDb: 1,
  /** Vibration velocity, per cent of reading. */
  vibrationPct: 5,
  /** Insulation tester, per cent of reading. */
  insulationPct: 5,
  /** Between the three readings of one meter, whose gain error is common and cancels: per cent of reading. */
  voltageBetweenPhasesPct: 0.1,
  currentBetweenPhasesPct: 0.3,
  resistanceBetweenPairsPct: 0.15,
} as const;

/** A condition reading as a quantity. `error` is the maximum permissible error in the unit of the value; it counts as rectangular. */
export function read<U extends Unit>(
  scope: MotorScope,
  given: { value: number; unit: U; label: string; row: number; error: number; id: string },
): Quantity<U> {
  return leaf(scope, {
    value: given.value,
    unit: given.unit,
    label: given.label,
    origin: 'metered',
    source: `reading in row ${given.row}`,
    doubts: [
      {
        id: `row ${given.row}:${given.id}`,
        label: `${given.label}: error of the meter`,
        u: given.error / Math.sqrt(3),
      },
    ],
  });
}

/** So many per cent of a value, without sign. */
export function share(value: number, pct: number): number {
  return (Math.abs(value) * pct) / 100;
}

/**
 * Unbalance of three values in per cent: largest deviation from the mean over the mean (NEMA MG 1 14.36). Which of the three deviates
 * most is a branch, chosen here; the rest is the formula. The meter's gain cancels; `errorPct` is what differs between two readings of it.
 */
export function unbalance(
  scope: MotorScope,
  values: readonly [number, number, number],
  given: { label: string; row: number; errorPct: number; id: string },
): Quantity<'%'> {
  const mean = (values[0] + values[1] + values[2]) / 3;
  const of = (index: 0 | 1 | 2) =>
    read(scope, {
      value: values[index],
      unit: '1',
      label: `${given.label} ${index + 1}`,
      row: given.row,
      error: share(values[index], given.errorPct),
      id: `${given.id}-${index + 1}`,
    });
  const away = (index: 0 | 1 | 2) => Math.abs(values[index] - mean);
  const farthest = away(0) >= away(1) && away(0) >= away(2) ? 0 : away(1) >= away(2) ? 1 : 2;
  const [second, third] = farthest === 0 ? ([1, 2] as const) : farthest === 1 ? ([0, 2] as const) : ([0, 1] as const);
  return apply(scope, C.deviation_from_mean, {
    farthest: of(farthest),
    second: of(second),
    third: of(third),
    sign: exact(values[farthest] >= mean ? 1 : -1, '1'),
  });
}

/** True when the meter stood on the supply side of a drive, so that it did not see what the motor gets. */
export function behindDrive(plate: Plate, reading: Reading): boolean {
  return reading.readingsAt === 'drive-input' || (plate.driveFed === true && reading.readingsAt === 'starter');
}

/** Limits are few beside the readings that are held against them: their words are kept. */
const kept = new Map<number, string>();
const KEPT = 1000;

/** Number with four significant digits, for limits in words. */
export function words(value: number): string {
  let found = kept.get(value);
  if (found === undefined) {
    found = rounded(value, 4);
    if (kept.size >= KEPT) kept.clear();
    kept.set(value, found);
  }
  return found;
}
