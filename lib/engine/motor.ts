/**
 * The motor as the engine takes it: nameplate, driven load and readings in SI units, each absent value `undefined`.
 * The names are those of the fleet sheet in camel case; the sheet's columns carry the full meaning.
 */

import type { Tested } from './bench/tested';

export type MotorStatus = 'running' | 'failed' | 'spare' | 'retired';
export type EfficiencyClass = 'IE1' | 'IE2' | 'IE3' | 'IE4' | 'standard' | 'energy-efficient' | 'premium';
type MachineKind = 'cage' | 'wound-rotor' | 'synchronous';
export type Enclosure = 'open' | 'enclosed';
export type DesignLetter = 'A' | 'B' | 'C' | 'D' | 'N' | 'H';
export type ThermalClass = 'A' | 'B' | 'F' | 'H';
export type Winding = 'random' | 'form';
export type InsulationSystem = 'thermoplastic' | 'thermosetting';
type Mounting = 'foot' | 'flange' | 'vertical' | 'brake' | 'multi-speed';
type Foundation = 'rigid' | 'flexible';
type BarSource = 'counted' | 'manufacturer' | 'estimated';
export type DrivenMachine =
  | 'pump'
  | 'fan'
  | 'blower'
  | 'compressor'
  | 'conveyor'
  | 'crusher'
  | 'mixer'
  | 'mill'
  | 'hoist'
  | 'machine-tool'
  | 'other';
export type FlowControl = 'none' | 'throttle' | 'damper' | 'bypass' | 'on-off' | 'drive';
export type Coupling = 'direct' | 'v-belt' | 'notched-belt' | 'synchronous-belt' | 'gear';
type ReadingPlace = 'motor' | 'starter' | 'drive-input' | 'drive-output';

/** Optional value: absent is `undefined`, never NaN or zero. */
type Maybe<T> = T | undefined;

/** What is stamped on the motor or known about it and its driven machine. */
export interface Plate {
  readonly ratedPowerKw: number;
  /** The unit in which the rating was written; decides the rounding of shown ratings and the rating ladder. */
  readonly ratedPowerUnit: 'kW' | 'hp';
  readonly status: MotorStatus;
  readonly ratedVoltageV: number;
  readonly ratedCurrentA?: Maybe<number>;
  readonly ratedSpeedRpm?: Maybe<number>;
  readonly ratedFrequencyHz?: Maybe<number>;
  readonly poles?: Maybe<number>;
  readonly nominalEfficiencyPct?: Maybe<number>;
  readonly ratedPowerFactorPct?: Maybe<number>;
  readonly efficiencyClass?: Maybe<EfficiencyClass>;
  readonly machineKind: MachineKind;
  readonly enclosure?: Maybe<Enclosure>;
  readonly designLetter?: Maybe<DesignLetter>;
  readonly codeLetter?: Maybe<string>;
  readonly serviceFactor?: Maybe<number>;
  readonly insulationClass?: Maybe<ThermalClass>;
  readonly temperatureRiseClass?: Maybe<ThermalClass>;
  readonly winding?: Maybe<Winding>;
  readonly insulationSystem?: Maybe<InsulationSystem>;
  readonly mounting?: Maybe<Mounting>;
  readonly hazardousLocation?: Maybe<boolean>;
  readonly foundation?: Maybe<Foundation>;
  readonly altitudeM?: Maybe<number>;
  readonly frame?: Maybe<string>;
  readonly yearBuilt?: Maybe<number>;
  readonly rotorBars?: Maybe<number>;
  readonly statorSlots?: Maybe<number>;
  readonly rotorBarsSource?: Maybe<BarSource>;
  readonly rewindCount?: Maybe<number>;
  readonly lastRewindYear?: Maybe<number>;
  readonly statorResistanceOhm?: Maybe<number>;
  readonly statorResistanceTempC?: Maybe<number>;
  readonly noLoadCurrentA?: Maybe<number>;
  readonly noLoadPowerKw?: Maybe<number>;
  readonly noLoadVoltageV?: Maybe<number>;
  readonly frictionWindageKw?: Maybe<number>;
  readonly drivenMachine?: Maybe<DrivenMachine>;
  readonly loadTorqueExponent?: Maybe<0 | 1 | 2>;
  /** Name of a curve of the settings, `loadCurves`. */
  readonly loadCurve?: Maybe<string>;
  readonly flowControl?: Maybe<FlowControl>;
  readonly coupling?: Maybe<Coupling>;
  readonly driveFed?: Maybe<boolean>;
  readonly drivenSpeedRpm?: Maybe<number>;
  readonly speedRatio?: Maybe<number>;
  readonly peakLoadKw?: Maybe<number>;
  readonly loadInertiaKgm2?: Maybe<number>;
  readonly startsPerHour?: Maybe<number>;
  readonly schedule?: Maybe<string>;
  readonly demandCoincidence?: Maybe<number>;
  readonly quotedPrice?: Maybe<number>;
  readonly quotedRepair?: Maybe<number>;
  readonly unplannedStopCost?: Maybe<number>;
  readonly standby?: Maybe<boolean>;
}

/** The plate with the bench test that counts, whose measured values take the place of stamps and of what is typical. */
export interface KnownPlate extends Plate {
  readonly tested?: Maybe<Tested>;
}

/** One step of a duty: a fraction of the reference load and the hours spent there in a year. */
export interface DutyStep {
  readonly fraction: number;
  readonly hoursPerYear: number;
}

/** One set of readings, as the meters showed them. */
export interface Reading {
  /** The sheet's row (header is row 1), or the stored reading's number. */
  readonly row: number;
  readonly takenAt?: Maybe<string>;
  readonly readingsAt: ReadingPlace;
  readonly readingCondition: 'coupled' | 'uncoupled';
  readonly takenBy?: Maybe<string>;
  readonly instrument?: Maybe<string>;
  /** Line-to-line voltages ab, bc, ca when all three were read. */
  readonly voltagesV?: Maybe<readonly [number, number, number]>;
  /** Mean line-to-line voltage: of the three, or as read. */
  readonly voltageV?: Maybe<number>;
  readonly currentsA?: Maybe<readonly [number, number, number]>;
  readonly currentA?: Maybe<number>;
  readonly inputPowerKw?: Maybe<number>;
  /** Lagging positive, leading negative. */
  readonly powerFactorPct?: Maybe<number>;
  readonly frequencyHz?: Maybe<number>;
  readonly shaftSpeedRpm?: Maybe<number>;
  readonly ambientC?: Maybe<number>;
  readonly windingTempC?: Maybe<number>;
  readonly windingTempMethod?: Maybe<'resistance' | 'embedded' | 'surface'>;
  readonly thdVoltagePct?: Maybe<number>;
  readonly thdCurrentPct?: Maybe<number>;
  /** Maximum permissible errors, taken as rectangular; per cent of reading, speed in r/min. */
  readonly voltageAccuracyPct?: Maybe<number>;
  readonly currentAccuracyPct?: Maybe<number>;
  readonly powerAccuracyPct?: Maybe<number>;
  readonly speedAccuracyRpm?: Maybe<number>;
  readonly vibrationMmS?: Maybe<number>;
  readonly vibrationAxialMmS?: Maybe<number>;
  readonly vibration1xMmS?: Maybe<number>;
  readonly vibration2xMmS?: Maybe<number>;
  readonly vibration2xlineMmS?: Maybe<number>;
  readonly bearingEnvelopeG?: Maybe<number>;
  readonly insulationResistanceMohm?: Maybe<number>;
  readonly insulationTempC?: Maybe<number>;
  readonly insulationTestVoltageV?: Maybe<number>;
  readonly polarizationIndex?: Maybe<number>;
  /** Terminal-to-terminal resistances ab, bc, ca of one test. */
  readonly resistancesOhm?: Maybe<readonly [number, number, number]>;
  readonly resistanceAt?: Maybe<'motor' | 'starter'>;
  readonly rotorSidebandDb?: Maybe<number>;
  readonly rotorSidebandSides?: Maybe<'both' | 'one'>;
  readonly eccentricitySidebandDb?: Maybe<number>;
  readonly observedLinesHz?: Maybe<readonly number[]>;
  readonly spectrumResolutionHz?: Maybe<number>;
  readonly bearingTempC?: Maybe<number>;
  readonly note?: Maybe<string>;
  /** Duty carried by this row; its fractions refer to this reading's shaft load, or to rated power if nothing was read. */
  readonly duty?: Maybe<readonly DutyStep[]>;
}

/** Rolling-element bearing: number of elements, their and the pitch diameter, contact angle. */
export interface BearingGeometry {
  readonly balls: number;
  readonly ballMm: number;
  readonly pitchMm: number;
  readonly angleDeg: number;
}

/** Dimensions from which the lines of belt, gear and bearings in a spectrum follow. */
export interface LineGeometry {
  readonly beltLengthMm?: Maybe<number>;
  readonly motorSheaveMm?: Maybe<number>;
  readonly drivenSheaveMm?: Maybe<number>;
  /** Teeth of pinion and wheel. */
  readonly gearTeeth?: Maybe<readonly [number, number]>;
  readonly bearingDe?: Maybe<BearingGeometry>;
  readonly bearingNde?: Maybe<BearingGeometry>;
}

/** One motor with all that is known of it: the argument of {@link evaluateMotor}. */
export interface Motor {
  readonly site: string;
  readonly tag: string;
  readonly area?: Maybe<string>;
  readonly description?: Maybe<string>;
  readonly plate: Plate;
  /** Hours a year at the latest usable reading's load; a duty replaces it. */
  readonly hoursPerYear?: Maybe<number>;
  /** Duty of a row without readings: its fractions refer to rated power. The duty of the highest row is in force. */
  readonly plateDuty?: Maybe<{ readonly row: number; readonly steps: readonly DutyStep[] }>;
  readonly lineGeometry?: Maybe<LineGeometry>;
  /** The newest bench test that counts: accepted, not withdrawn, of the present winding. */
  readonly tested?: Maybe<Tested>;
  /** Oldest first; undated ones before dated ones. */
  readonly readings: readonly Reading[];
}
