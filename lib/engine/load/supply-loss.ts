import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as L from '../generated/load';
import * as N from '../generated/nameplate';
import type { MachineModel } from '../machine/fit';
import type { CompletedPlate } from '../machine/model';
import type { Plate, Reading } from '../motor';
import { exact, type Quantity } from '../quantity/quantity';

/** Losses that a supply other than a sine adds in the motor; each absent where nothing is known of its cause. */
export interface SupplyLoss {
  /** By the waveform of a drive. */
  readonly drive?: Quantity<'kW'> | undefined;
  /** By the distortion of a mains voltage. */
  readonly harmonics?: Quantity<'kW'> | undefined;
}

/**
 * Extra loss behind a drive over rated loss on a sine: 15 % up to 90 kW, 25 % above, at any load, with a third of it as standard uncertainty.
 * IEC 61800-9-2 takes these for the reference motor, and IEC TS 60034-25 gives a range about them (both from memory: shown, no basis for a
 * claim of compliance). Modern drives that switch fast lie at the lower end (common practice).
 */
const BEHIND_DRIVE = { uptoKw: 90, below: 0.15, above: 0.25, doubt: 1 / 3 } as const;

/** The lowest harmonic of a six-pulse load, to which all distortion is put; it brings the most loss for its voltage. */
const ORDER = 5;

/** Rotor resistance at six times line frequency over that at slip frequency: √6 of deep bars (textbooks, from memory). */
const SKIN = Math.sqrt(6);

/** The loss by distortion is known to half of itself: spectrum, leakage and bars are not known (common practice). */
const SPREAD = 0.5;

/**
 * What drive and distortion add to the losses of a motor at a reading.
 *
 * Units: kW. Valid for: cage and wound-rotor motors; a synchronous motor has none here.
 * Source: see the constants; harmonic current by the leakage of the circuit, as textbooks have it.
 */
export function supplyLoss(
  scope: MotorScope,
  plate: Plate,
  machine: { readonly plate: CompletedPlate; readonly model: MachineModel },
  reading: Reading,
  driveFed: boolean,
): SupplyLoss {
  if (plate.machineKind === 'synchronous') return {};
  const { ratedPower, efficiency } = machine.plate;
  if (driveFed) {
    const share = ratedPower.value <= BEHIND_DRIVE.uptoKw ? BEHIND_DRIVE.below : BEHIND_DRIVE.above;
    return {
      drive: apply(scope, L.drive_waveform_loss, {
        share: leaf(scope, {
          value: share,
          unit: '1',
          label: 'extra loss behind a drive over rated loss',
          origin: 'assumed',
          source: 'IEC 61800-9-2 and IEC TS 60034-25, from memory: shown, no basis for a claim of compliance',
          doubts: [{ id: 'supply:drive', label: 'extra loss by the waveform of the drive', u: share * BEHIND_DRIVE.doubt }],
        }),
        rated_loss: apply(scope, N.rated_total_loss, { rated_power: ratedPower, efficiency }),
      }),
    };
  }
  const thd = reading.thdVoltagePct;
  if (thd === undefined || !(thd > 0)) return {};
  const { circuit } = machine.model;
  return {
    harmonics: apply(scope, L.harmonic_loss, {
      distortion: exact(thd / 100, '1'),
      order: exact(ORDER, '1'),
      leakage: exact(circuit.x1 + circuit.x2, '1'),
      stator_resistance: exact(circuit.r1, '1'),
      rotor_resistance: exact(circuit.r2 * SKIN, '1'),
      spread: leaf(scope, {
        value: 1,
        unit: '1',
        label: 'loss by distortion over that of the fifth harmonic alone',
        origin: 'assumed',
        source: 'common practice: the spectrum is not known',
        doubts: [{ id: 'supply:harmonics', label: 'extra loss by harmonic distortion', u: SPREAD }],
      }),
      rated_power: ratedPower,
    }),
  };
}

/** The one that there is: behind a drive, the distortion of the mains stays with the drive. */
export function extraLoss({ drive, harmonics }: SupplyLoss): Quantity<'kW'> | undefined {
  return drive ?? harmonics;
}
