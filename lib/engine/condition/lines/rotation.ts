import type { MotorScope } from '../../context';
import { apply } from '../../formula/apply';
import * as L from '../../generated/lines';
import type { Metered } from '../../load/metered';
import type { Machine, OperatingPoint } from '../../machine/model';
import { exact } from '../../quantity/quantity';
import type { Rotation } from './line';

/** A reading as far as speed and frequency go. */
export interface Turning {
  readonly metered: Metered;
  readonly point?: OperatingPoint | undefined;
}

/**
 * Supply and shaft frequency of one reading: by the measured speed, else by the speed estimated from the load. Undefined where neither
 * is known, and behind a drive whose output frequency was not read.
 */
export function rotationOf(
  scope: MotorScope,
  machine: Machine,
  { metered, point }: Turning,
): (Rotation & { readonly measured: boolean }) | undefined {
  const speed = metered.speed ?? point?.speed;
  if (!speed || !metered.onLine) return undefined;
  const { poles } = machine.plate;
  return {
    poles,
    measured: metered.speed !== undefined,
    shaft: apply(scope, L.shaft_frequency, { speed }),
    supply: apply(scope, L.supply_frequency, { synchronous_speed: metered.synchronousSpeed, poles: exact(poles, 'pole') }),
  };
}
