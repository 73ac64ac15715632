import type { Origin, Quantity } from '../quantity/quantity';

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

/** A machine as later steps use it: its completed plate and its losses at rated load and voltage. */
export interface Machine {
  readonly plate: CompletedPlate;
  readonly rated: LossSet;
  /** Temperature of the rated losses, and the rise at rated load, in °C and K. */
  readonly referenceTemperature: Quantity<'K'>;
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
}

/** The duty in force: load fraction of the existing motor and hours a year at each step. */
export interface DutyPoint {
  readonly loadFraction: Quantity<'1'>;
  readonly hours: Quantity<'h/a'>;
}
