import type { Origin, Quantity } from '../quantity/quantity';
import type { MachineModel } from './fit';

/** A completed nameplate: each value with its origin, stamped or found otherwise. */
export interface CompletedPlate {
  readonly ratedPower: Quantity<'kW'>;
  readonly ratedVoltage: Quantity<'V'>;
  readonly ratedFrequency: Quantity<'Hz'>;
  readonly poles: number;
  readonly synchronousSpeed: Quantity<'r/min'>;
  readonly ratedSpeed: Quantity<'r/min'>;
  readonly ratedSlip: Quantity<'1'>;
  readonly efficiency: Quantity<'1'>;
  readonly powerFactor: Quantity<'1'>;
  readonly ratedCurrent: Quantity<'A'>;
  readonly magnetisingShare: Quantity<'1'>;
  readonly origins: {
    readonly poles: Origin;
    readonly speed: Origin;
    readonly efficiency: Origin;
    readonly powerFactor: Origin;
    readonly current: Origin;
    readonly magnetisingShare: Origin;
  };
  /** True when the efficiency is stamped or follows from a known class. */
  readonly efficiencyKnown: boolean;
}

/** The five losses at one operating point, and their sum. */
export interface LossSet {
  readonly stator: Quantity<'kW'>;
  readonly rotor: Quantity<'kW'>;
  readonly core: Quantity<'kW'>;
  readonly frictionWindage: Quantity<'kW'>;
  readonly stray: Quantity<'kW'>;
  readonly total: Quantity<'kW'>;
}

/** A machine as later steps use it: its plate as completed, the circuit fitted to all that is known, and its losses at the rated point. */
export interface Machine {
  readonly plate: CompletedPlate;
  readonly model: MachineModel;
  readonly rated: LossSet;
  /** Rise of the winding at rated load, K. */
  readonly ratedRise: Quantity<'K'>;
}

/** One consistent point: shaft power, losses and input at a load. */
export interface OperatingPoint {
  readonly loadFraction: Quantity<'1'>;
  readonly shaftPower: Quantity<'kW'>;
  readonly inputPower: Quantity<'kW'>;
  readonly efficiency: Quantity<'1'>;
  readonly slip: Quantity<'1'>;
  readonly speed: Quantity<'r/min'>;
  readonly losses: LossSet;
  /** Part of stator and rotor loss that an unbalanced supply causes; absent where the three voltages were not read. */
  readonly unbalanceLoss?: Quantity<'kW'> | undefined;
  /** Part of the stray-load loss that the waveform of a drive or the distortion of the mains adds. */
  readonly extraLoss?: Quantity<'kW'> | undefined;
  readonly current: Quantity<'A'>;
  readonly powerFactor: Quantity<'1'>;
  /** In °C. */
  readonly windingTemperature: Quantity<'K'>;
}

/** The duty in force: load fraction of the existing motor and hours a year at each step. */
export interface DutyPoint {
  readonly loadFraction: Quantity<'1'>;
  readonly hours: Quantity<'h/a'>;
}
