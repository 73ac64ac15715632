/**
 * Published tables as the engine takes them: passed in as an argument, never loaded here.
 * `lib/reference` reads them from `reference-data`, checks them and fills this shape.
 */
import type { HypothesisId } from './condition/hypothesis-id';
import type { Enclosure, ThermalClass } from './motor';

/** How a row is known. Rows of status `memory` may be shown, never used to claim compliance. */
export type RowStatus =
  | 'read'
  | 'read-secondary'
  | 'memory'
  | 'practice'
  | 'derived'
  | 'computed'
  | 'disagree'
  | 'gap'
  | 'invented';

/** A table with what its passport says of it. */
export interface Table<Row> {
  readonly id: string;
  readonly title: string;
  readonly edition: string;
  readonly clause: string;
  readonly rows: readonly (Row & { readonly status: RowStatus })[];
}

/** Nominal full-load efficiency by rating, poles and enclosure (US tables) or by rating and poles (IEC, `enclosure` absent). */
export interface EfficiencyRow {
  readonly ratedPowerKw: number;
  readonly ratedPowerHp?: number | undefined;
  readonly frequencyHz: 50 | 60;
  readonly poles: number;
  readonly enclosure?: Enclosure | undefined;
  /** Table's own class word: `premium`, `energy-efficient`, `standard`, `IE1` … `IE4`. */
  readonly efficiencyClass: string;
  readonly nominalEfficiencyPct: number;
}

/** Average efficiency of standard motors at a part load. */
export interface PartLoadRow {
  readonly ratedPowerHp: number;
  readonly poles: number;
  readonly enclosure: Enclosure;
  readonly loadPct: number;
  readonly averageEfficiencyPct: number;
}

export interface NominalToMinimumRow {
  readonly nominalEfficiencyPct: number;
  readonly minimumEfficiencyPct: number;
}
export interface HorsepowerStepRow {
  readonly ratedPowerHp: number;
  readonly ratedPowerKw: number;
}
export interface KilowattStepRow {
  readonly ratedPowerKw: number;
}
export interface OldDesignRow {
  readonly ratedPowerHpMin: number;
  readonly ratedPowerHpMax?: number | undefined;
  readonly nominalEfficiencyPct: number;
}
export interface LossShareRow {
  readonly motor: string;
  readonly ratedPowerKw?: number | undefined;
  readonly poles?: number | undefined;
  readonly component: 'stator' | 'rotor' | 'core' | 'friction-windage' | 'stray';
  readonly minPct?: number | undefined;
  readonly maxPct?: number | undefined;
  readonly typicalPct?: number | undefined;
}
/** Stray-load loss that a test method assumes: a fixed share, or one that falls with the logarithm of the rating. */
export interface AssumedStrayRow {
  readonly standard: 'ieee-112' | 'iec-60034-2' | 'iec-60034-2-1';
  readonly ratedPowerHpMin?: number | undefined;
  readonly ratedPowerHpMax?: number | undefined;
  readonly ratedPowerKwMin?: number | undefined;
  readonly ratedPowerKwMax?: number | undefined;
  readonly basis: 'input' | 'output';
  readonly share?: number | undefined;
  readonly shareAt1Kw?: number | undefined;
  readonly fallPerDecade?: number | undefined;
}
/** Largest change that a rewind may bring, per cent; of efficiency the largest fall in percentage points. */
export interface RewindLimitRow {
  readonly quantity: 'resistance' | 'no-load-loss' | 'core-loss' | 'efficiency';
  readonly largestRisePct: number;
  readonly source: string;
}
export interface CodeLetterRow {
  readonly codeLetter: string;
  readonly kvaPerHpMin: number;
  readonly kvaPerHpMax?: number | undefined;
}
export interface TorqueRow {
  readonly design: 'A_B' | 'C';
  readonly torque: 'locked_rotor' | 'pull_up' | 'breakdown';
  readonly ratedPowerHp: number;
  readonly poles: number;
  readonly pctOfRated: number;
}
export interface FrameRow {
  readonly ratedPowerHp: number;
  readonly poles: number;
  readonly enclosure: Enclosure;
  readonly series: 'T' | 'U';
  readonly frame: string;
}
/** Frame and shaft end of an enclosed foot-mounted motor whose frame is the height of its shaft in millimetres. */
export interface IecFrameRow {
  readonly poles: number;
  readonly ratedPowerKw: number;
  readonly frame: string;
  readonly shaftDiameterMm: number;
  readonly shaftLengthMm: number;
}
/** A single-number limit. `value` absent where the limit is a formula given in words. */
export interface LimitRow {
  readonly id: string;
  readonly section: string;
  readonly quantity: string;
  readonly appliesTo: string;
  readonly test: string;
  readonly value?: number | undefined;
  readonly valueHigh?: number | undefined;
  readonly words?: string | undefined;
  readonly unit: string;
  readonly source: string;
}
export interface VibrationZoneRow {
  readonly group: 1 | 2;
  readonly support: 'rigid' | 'flexible';
  readonly ab: number;
  readonly bc: number;
  readonly cd: number;
}
export interface UnbalanceDeratingRow {
  readonly unbalancePct: number;
  readonly deratingFactor: number;
}
export interface ClassTemperatureRow {
  readonly thermalClass: ThermalClass;
  readonly maxTempC: number;
  readonly riseK: number;
}
export interface RewindChangeRow {
  readonly study: string;
  readonly motors: string;
  readonly practice: string;
  readonly minPoints?: number | undefined;
  readonly maxPoints?: number | undefined;
  readonly avgPoints?: number | undefined;
}
/** When a row of evidence applies: always, to belted motors, or to loads whose torque pulsates. */
export type EvidenceWhen = 'belted' | 'pulsating';
/** How many times likelier each band of an indicator is with a fault than in a sound motor. */
export interface FaultEvidenceRow {
  readonly hypothesis: HypothesisId;
  readonly indicator: string;
  readonly group: string;
  readonly when?: EvidenceWhen | undefined;
  readonly beyond: number;
  readonly near: number;
  readonly within: number;
  readonly meaning: string;
  readonly source: string;
}
/** How common a fault is: its share of all failures, or the share of motors that have it at any time. */
export interface FaultBaseRateRow {
  readonly hypothesis: HypothesisId;
  readonly failureSharePct?: number | undefined;
  readonly prevalencePct?: number | undefined;
  readonly source: string;
}
/** Permitted starts; `startsInertia` in lb ft² an hour, as printed. */
export interface StartsRow {
  readonly poles: number;
  readonly ratedPowerHp: number;
  readonly startsPerHour: number;
  readonly startsInertia: number;
  readonly restS: number;
}
export interface BeltRow {
  readonly belt: string;
  readonly lowPct: number;
  readonly highPct?: number | undefined;
  readonly condition: string;
}
export interface DriveRow {
  readonly ratedPowerHp: number;
  readonly loadPct: number;
  readonly efficiencyPct: number;
}

/** Every table that the engine uses, by name. */
export interface ReferenceTables {
  readonly usPremium: Table<EfficiencyRow>;
  readonly usEnergyEfficient: Table<EfficiencyRow>;
  readonly usStandardPartLoad: Table<PartLoadRow>;
  readonly usOldDesign: Table<OldDesignRow>;
  readonly iec50Hz: Table<EfficiencyRow>;
  readonly iec60Hz: Table<EfficiencyRow>;
  readonly nominalToMinimum: Table<NominalToMinimumRow>;
  readonly horsepowerSteps: Table<HorsepowerStepRow>;
  readonly kilowattSteps: Table<KilowattStepRow>;
  readonly lossShares: Table<LossShareRow>;
  readonly assumedStray: Table<AssumedStrayRow>;
  readonly codeLetters: Table<CodeLetterRow>;
  readonly torqueMinimums: Table<TorqueRow>;
  readonly frames: Table<FrameRow>;
  readonly iecFrames: Table<IecFrameRow>;
  readonly limits: Table<LimitRow>;
  readonly vibrationZones: Table<VibrationZoneRow>;
  readonly unbalanceDerating: Table<UnbalanceDeratingRow>;
  readonly classTemperatures: Table<ClassTemperatureRow>;
  readonly rewindChange: Table<RewindChangeRow>;
  readonly rewindLimits: Table<RewindLimitRow>;
  readonly faultEvidence: Table<FaultEvidenceRow>;
  readonly faultBaseRates: Table<FaultBaseRateRow>;
  readonly starts: Table<StartsRow>;
  readonly belts: Table<BeltRow>;
  readonly drives: Table<DriveRow>;
}
