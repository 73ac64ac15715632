import type { LossSet } from '../machine/model';
import type { DesignLetter, ThermalClass } from '../motor';
import type { Quantity } from '../quantity/quantity';

/** Optional value: absent is `undefined`, never NaN or zero. */
type Maybe<T> = T | undefined;

/** One measured point of a bench test, as the meters showed it. */
export interface BenchPoint {
  /** The sheet's row (header is row 1). */
  readonly row: number;
  /** Mean line-to-line voltage. */
  readonly voltageV?: Maybe<number>;
  /** Mean line current. */
  readonly currentA?: Maybe<number>;
  readonly inputPowerKw?: Maybe<number>;
  /** As the dynamometer showed it. */
  readonly torqueNm?: Maybe<number>;
  readonly speedRpm?: Maybe<number>;
  readonly frequencyHz?: Maybe<number>;
  readonly windingTempC?: Maybe<number>;
  /** Mean terminal to terminal. */
  readonly resistanceOhm?: Maybe<number>;
  readonly ambientC?: Maybe<number>;
}

/** Sections of the bench test sheet, and the points that each holds. */
export interface BenchSections {
  readonly cold: readonly BenchPoint[];
  readonly 'rated-load': readonly BenchPoint[];
  readonly load: readonly BenchPoint[];
  readonly dynamometer: readonly BenchPoint[];
  readonly 'no-load': readonly BenchPoint[];
  readonly 'locked-rotor': readonly BenchPoint[];
  readonly 'rotor-removed': readonly BenchPoint[];
  readonly 'reverse-rotation': readonly BenchPoint[];
}

export const BENCH_SECTIONS = [
  'cold',
  'rated-load',
  'load',
  'dynamometer',
  'no-load',
  'locked-rotor',
  'rotor-removed',
  'reverse-rotation',
] as const satisfies readonly (keyof BenchSections)[];

/** One test of one motor. */
export interface BenchTest {
  readonly tag: string;
  /** Name of the test; empty where the sheet holds one. */
  readonly test: string;
  readonly sections: BenchSections;
}

/** Maximum permissible errors of the instruments: per cent of reading, speed in r/min, temperature in K. */
export interface BenchInstruments {
  readonly voltagePct: number;
  readonly currentPct: number;
  readonly powerPct: number;
  readonly torquePct: number;
  readonly resistancePct: number;
  readonly speedRpm: number;
  readonly temperatureK: number;
}

/** Classes where none is stated: 0.2 % of reading, 1 r/min, 1 °C (contract of the bench test sheet). */
export const USUAL_INSTRUMENTS: BenchInstruments = {
  voltagePct: 0.2,
  currentPct: 0.2,
  powerPct: 0.2,
  torquePct: 0.2,
  resistancePct: 0.2,
  speedRpm: 1,
  temperatureK: 1,
};

/** What the evaluation of a test needs to know of the motor. */
export interface BenchPlate {
  readonly ratedPowerKw: number;
  readonly ratedVoltageV: number;
  readonly ratedFrequencyHz?: Maybe<number>;
  readonly poles?: Maybe<number>;
  readonly ratedSpeedRpm?: Maybe<number>;
  readonly ratedCurrentA?: Maybe<number>;
  /** Resistance between terminals as the book has it, with its temperature. */
  readonly statorResistanceOhm?: Maybe<number>;
  readonly statorResistanceTempC?: Maybe<number>;
  readonly designLetter?: Maybe<DesignLetter>;
  readonly temperatureRiseClass?: Maybe<ThermalClass>;
  readonly nominalEfficiencyPct?: Maybe<number>;
  readonly woundRotor?: Maybe<boolean>;
  /** Aluminium unless copper is stated. */
  readonly rotorConductor?: Maybe<'aluminium' | 'copper'>;
}

/** Performance at one of the standard loads. */
export interface BenchLoad {
  readonly loadFraction: number;
  readonly inputPower: Quantity<'kW'>;
  readonly shaftPower: Quantity<'kW'>;
  readonly efficiency: Quantity<'1'>;
  readonly powerFactor: Quantity<'1'>;
  readonly current: Quantity<'A'>;
  readonly speed: Quantity<'r/min'>;
  readonly losses: LossSet;
}
