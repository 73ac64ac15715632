import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as N from '../generated/nameplate';
import type { Motor, Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import { exact, type Origin, type Quantity } from '../quantity/quantity';
import { PLATE } from './findings';

/** Poles and synchronous speed of a motor. */
export interface PoleCount {
  readonly poles: number;
  readonly origin: Origin;
  readonly synchronousSpeed: Quantity<'r/min'>;
  readonly findings: readonly Finding[];
}

/** Largest even pole count whose synchronous speed is not below the given speed. */
function polesFromSpeed(speedRpm: number, frequencyHz: number): number {
  return Math.max(2, 2 * Math.floor((60 * frequencyHz * 1.0005) / speedRpm));
}

/**
 * Poles as stated, or from the rated speed; a speed that belongs to another count is believed before the count, since
 * pole pairs are often written for poles. `shaftSpeedRpm` is a measured speed, used when the plate says neither.
 */
export function completePoles(
  scope: MotorScope,
  plate: Plate,
  frequency: Quantity<'Hz'>,
  shaftSpeedRpm: number | undefined,
): PoleCount {
  const findings: Finding[] = [];
  const speed = plate.ratedSpeedRpm;
  const fromSpeed =
    speed !== undefined && speed > 0 && speed <= 60 * frequency.value * 1.0005
      ? polesFromSpeed(speed, frequency.value)
      : undefined;
  let poles = plate.poles;
  let origin: Origin = 'stamped';
  if (poles !== undefined && (poles < 2 || poles % 2 !== 0 || poles > 60)) poles = undefined;
  if (poles !== undefined && fromSpeed !== undefined && speed !== undefined && fromSpeed !== poles) {
    const slip = 1 - (speed * poles) / (120 * frequency.value);
    const design = plate.designLetter === 'D' ? 0.25 : 0.15;
    if (slip < -0.0005 || slip > design) {
      findings.push(PLATE.make('poles-contradict-speed', { stated: poles, from_speed: fromSpeed, rated_speed: speed }));
      poles = undefined;
    }
  }
  if (poles === undefined && fromSpeed !== undefined) {
    poles = fromSpeed;
    origin = 'derived';
  } else if (poles === undefined && shaftSpeedRpm !== undefined && shaftSpeedRpm > 100 && shaftSpeedRpm <= 60 * frequency.value) {
    poles = polesFromSpeed(shaftSpeedRpm, frequency.value);
    origin = 'derived';
  } else if (poles === undefined) {
    poles = 4;
    origin = 'assumed';
    findings.push(PLATE.make('poles-assumed', { poles }));
  }
  const count = leaf(scope, {
    value: poles,
    unit: 'pole',
    label: 'number of poles',
    origin,
    source: origin === 'stamped' ? 'nameplate' : 'from speed and frequency',
  });
  return { poles, origin, findings, synchronousSpeed: apply(scope, N.synchronous_speed, { frequency, poles: count }) };
}

/** Rated speed and slip of a motor. */
export interface RatedSlip {
  readonly speed: Quantity<'r/min'>;
  readonly slip: Quantity<'1'>;
  readonly origin: Origin;
  readonly findings: readonly Finding[];
}

/**
 * Rated speed and slip: stamped, or from the typical share of the rotor in the total loss.
 *
 * A stamped speed has a tolerance of 20 % of the slip (NEMA MG 1 12.46, IEC 60034-1), taken as 2.5 deviations, and its own rounding
 * ({@link roundingOf}). A speed whose slip does not fit the efficiency is reported and not used.
 */
export function completeSlip(
  scope: MotorScope,
  plate: Plate,
  given: { synchronousSpeed: Quantity<'r/min'>; efficiency: Quantity<'1'>; ratedPower: Quantity<'kW'>; prefix: string },
): RatedSlip {
  const { prefix, synchronousSpeed } = given;
  const findings: Finding[] = [];
  const stamped = plate.ratedSpeedRpm;
  if (stamped !== undefined && plate.machineKind !== 'synchronous') {
    const slipRpm = synchronousSpeed.value - stamped;
    const loss = given.ratedPower.value * (1 / given.efficiency.value - 1);
    const rotorShare = ((slipRpm / stamped) * given.ratedPower.value) / loss;
    if (slipRpm <= synchronousSpeed.value * 0.0008 || slipRpm > synchronousSpeed.value * 0.3) {
      findings.push(PLATE.make('rated-speed-impossible', { rated_speed: stamped, synchronous_speed: synchronousSpeed.value }));
    } else if (rotorShare > 0.65 && plate.designLetter !== 'D' && plate.machineKind === 'cage') {
      findings.push(PLATE.make('slip-contradicts-efficiency', { rotor_share: rotorShare, rated_speed: stamped }));
    } else {
      const speed = leaf(scope, {
        value: stamped,
        unit: 'r/min',
        label: `${prefix}rated speed`,
        origin: 'stamped',
        source: 'nameplate, rated speed',
        doubts: [
          { id: `${prefix}stamp:slip`, label: `${prefix}tolerance of the stamped slip`, u: (0.2 * slipRpm) / 2.5 },
          {
            id: `${prefix}stamp:speed-rounding`,
            label: `${prefix}rounding of the stamped speed`,
            u: Math.min(roundingOf(stamped), slipRpm / 3) / Math.sqrt(3),
            rectangular: true,
          },
        ],
      });
      return {
        speed,
        slip: apply(scope, N.slip_fraction, { synchronous_speed: synchronousSpeed, shaft_speed: speed }),
        origin: 'stamped',
        findings,
      };
    }
  }
  return { ...typicalSlip(scope, given), origin: 'derived', findings };
}

/**
 * Half-width, r/min, of the rectangular rounding of a stamped speed: of one to 5 r/min where it is a multiple of five, else to one.
 *
 * A multiple of ten may have been rounded to ten: two in five of them are, when a quarter of makers round so. Then 3.7 r/min stands for the
 * variance of both, 0.4 · 5² / 3 + 0.6 · 2.5² / 3 (r/min)². Common practice.
 */
export function roundingOf(stampedRpm: number): number {
  if (stampedRpm % 10 === 0) return 3.7;
  return stampedRpm % 5 === 0 ? 2.5 : 0.5;
}

/** Rated speed and slip from the typical share of the rotor in the total loss. */
export function typicalSlip(
  scope: MotorScope,
  given: { synchronousSpeed: Quantity<'r/min'>; efficiency: Quantity<'1'>; ratedPower: Quantity<'kW'>; prefix: string },
): { speed: Quantity<'r/min'>; slip: Quantity<'1'> } {
  const { prefix, synchronousSpeed } = given;
  const share = leaf(scope, {
    value: 0.2,
    unit: '1',
    label: `${prefix}typical share of rotor loss`,
    origin: 'table',
    source: 'table of loss shares: 15 to 25 % of the total',
    doubts: [{ id: `${prefix}share:rotor`, label: `${prefix}share of rotor loss`, u: 0.05 }],
  });
  const total = apply(scope, N.rated_total_loss, { rated_power: given.ratedPower, efficiency: given.efficiency });
  const slip = apply(scope, N.slip_from_rotor_share, { rotor_share: share, total_loss: total, rated_power: given.ratedPower });
  return { slip, speed: apply(scope, N.speed_from_slip, { synchronous_speed: synchronousSpeed, slip }) };
}

/** Rated frequency: stamped, else the study's. */
export function ratedFrequency(scope: MotorScope, plate: Motor['plate']): Quantity<'Hz'> {
  const stamped = plate.ratedFrequencyHz;
  if (stamped === undefined) return exact(scope.settings.frequencyHz, 'Hz');
  return leaf(scope, { value: stamped, unit: 'Hz', label: 'rated frequency', origin: 'stamped', source: 'nameplate' });
}
