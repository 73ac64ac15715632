/**
 * Every table of `reference-data`: where it stands, which columns identify a row, which hold its figures, and how a row is read.
 * A new table is one entry here; the loader needs no change.
 */
import type { z } from 'zod';
import type { Price, ReferenceTables, Table } from '@/lib/engine';
import * as condition from './rows/condition';
import * as decision from './rows/decision';
import * as efficiency from './rows/efficiency';
import * as ratings from './rows/ratings';

/** One table: its file below `reference-data` and the schema of its rows. */
export interface Entry<Row> {
  readonly file: string;
  /** Columns that together name a row: no two rows may share them. */
  readonly key: readonly string[];
  /** Columns that are empty in a row of status `gap`; one of them at least is filled in any other row. */
  readonly figures: readonly string[];
  readonly row: z.ZodType<Row>;
}

/** Row type of a table of the engine. */
type RowOf<T> = T extends Table<infer Row> ? Row : never;

/** Catalogue of the tables that the program computes with, under the engine's names. */
export const catalog: { readonly [Name in keyof ReferenceTables]: Entry<RowOf<ReferenceTables[Name]>> } = {
  usPremium: {
    file: 'efficiency/us-premium.csv',
    key: ['enclosure', 'poles', 'rated_power_hp'],
    figures: ['nominal_efficiency_pct'],
    row: efficiency.usEfficiencyRow,
  },
  usEnergyEfficient: {
    file: 'efficiency/us-energy-efficient.csv',
    key: ['enclosure', 'poles', 'rated_power_hp'],
    figures: ['nominal_efficiency_pct'],
    row: efficiency.usEfficiencyRow,
  },
  usStandardPartLoad: {
    file: 'efficiency/us-standard-part-load.csv',
    key: ['enclosure', 'poles', 'rated_power_hp', 'load_pct'],
    figures: ['average_efficiency_pct'],
    row: efficiency.partLoadRow,
  },
  usOldDesign: {
    file: 'efficiency/us-old-design.csv',
    key: ['rated_power_hp_min'],
    figures: ['nominal_efficiency_pct'],
    row: efficiency.oldDesignRow,
  },
  iec50Hz: {
    file: 'efficiency/iec-50hz.csv',
    key: ['efficiency_class', 'poles', 'rated_power_kw'],
    figures: ['nominal_efficiency_pct'],
    row: efficiency.iecEfficiencyRow,
  },
  iec60Hz: {
    file: 'efficiency/iec-60hz.csv',
    key: ['efficiency_class', 'poles', 'rated_power_kw'],
    figures: ['nominal_efficiency_pct'],
    row: efficiency.iecEfficiencyRow,
  },
  nominalToMinimum: {
    file: 'efficiency/nominal-to-minimum.csv',
    key: ['nominal_efficiency_pct'],
    figures: ['minimum_efficiency_pct'],
    row: efficiency.nominalToMinimumRow,
  },
  horsepowerSteps: {
    file: 'ratings/horsepower-steps.csv',
    key: ['rated_power_hp'],
    figures: ['rated_power_kw'],
    row: ratings.horsepowerStepRow,
  },
  kilowattSteps: {
    file: 'ratings/kilowatt-steps.csv',
    key: ['rated_power_kw'],
    figures: ['rated_power_kw'],
    row: ratings.kilowattStepRow,
  },
  lossShares: {
    file: 'losses/loss-shares.csv',
    key: ['motor', 'component'],
    figures: ['min_pct', 'max_pct', 'typical_pct'],
    row: ratings.lossShareRow,
  },
  assumedStray: {
    file: 'losses/assumed-stray-load.csv',
    key: ['standard', 'rated_power_hp_min', 'rated_power_kw_min'],
    figures: ['share', 'share_at_1_kw'],
    row: ratings.assumedStrayRow,
  },
  codeLetters: {
    file: 'ratings/code-letters.csv',
    key: ['code_letter'],
    figures: ['kva_per_hp_min', 'kva_per_hp_max'],
    row: ratings.codeLetterRow,
  },
  torqueMinimums: {
    file: 'ratings/torque-minimums.csv',
    key: ['design', 'torque', 'poles', 'rated_power_hp'],
    figures: ['torque_pct'],
    row: ratings.torqueRow,
  },
  frames: {
    file: 'ratings/frames.csv',
    key: ['series', 'enclosure', 'poles', 'rated_power_hp'],
    figures: ['frame'],
    row: ratings.frameRow,
  },
  iecFrames: {
    file: 'ratings/iec-frames.csv',
    key: ['poles', 'rated_power_kw'],
    figures: ['frame', 'shaft_diameter_mm', 'shaft_length_mm'],
    row: ratings.iecFrameRow,
  },
  limits: {
    file: 'condition/limits.csv',
    key: ['id'],
    figures: ['value', 'words'],
    row: condition.limitRow,
  },
  vibrationZones: {
    file: 'condition/vibration-zones.csv',
    key: ['group', 'support'],
    figures: ['zone_ab_mm_s', 'zone_bc_mm_s', 'zone_cd_mm_s'],
    row: condition.vibrationZoneRow,
  },
  unbalanceDerating: {
    file: 'condition/unbalance-derating.csv',
    key: ['unbalance_pct'],
    figures: ['derating_factor'],
    row: condition.unbalanceDeratingRow,
  },
  classTemperatures: {
    file: 'condition/class-temperatures.csv',
    key: ['thermal_class'],
    figures: ['max_temp_c', 'rise_k'],
    row: condition.classTemperatureRow,
  },
  rewindChange: {
    file: 'decision/rewind-change.csv',
    key: ['study', 'motors', 'practice'],
    figures: ['min_points', 'max_points', 'avg_points'],
    row: decision.rewindChangeRow,
  },
  rewindLimits: {
    file: 'decision/rewind-limits.csv',
    key: ['quantity'],
    figures: ['largest_rise_pct'],
    row: decision.rewindLimitRow,
  },
  faultEvidence: {
    file: 'condition/fault-evidence.csv',
    key: ['hypothesis', 'indicator'],
    figures: ['ratio_beyond', 'ratio_near', 'ratio_within'],
    row: condition.faultEvidenceRow,
  },
  faultBaseRates: {
    file: 'condition/fault-base-rates.csv',
    key: ['hypothesis'],
    figures: ['failure_share_pct', 'prevalence_pct'],
    row: condition.faultBaseRateRow,
  },
  starts: {
    file: 'condition/starts.csv',
    key: ['poles', 'rated_power_hp'],
    figures: ['starts_per_hour_max', 'starts_inertia_lbft2_per_h', 'rest_s'],
    row: condition.startsRow,
  },
  belts: {
    file: 'decision/belts.csv',
    key: ['belt', 'condition'],
    figures: ['low_pct', 'high_pct'],
    row: decision.beltRow,
  },
  drives: {
    file: 'decision/drives.csv',
    key: ['rated_power_hp', 'load_pct'],
    figures: ['efficiency_pct'],
    row: decision.driveRow,
  },
};

/** Catalogue of the tables that serve to read and to check the others; no figure of the program follows from them. */
export const checkCatalog = {
  iecCoefficients: {
    file: 'efficiency/iec-50hz-coefficients.csv',
    key: ['efficiency_class', 'poles', 'rated_power_kw_min'],
    figures: ['coefficient_a', 'coefficient_b', 'coefficient_c', 'coefficient_d'],
    row: efficiency.coefficientRow,
  },
  usSmallPolyphase: {
    file: 'efficiency/us-small-polyphase.csv',
    key: ['enclosure', 'poles', 'rated_power_hp'],
    figures: ['average_efficiency_pct'],
    row: efficiency.smallPolyphaseRow,
  },
  lockedRotorCurrent: {
    file: 'ratings/locked-rotor-current.csv',
    key: ['rated_power_hp'],
    figures: ['locked_rotor_current_230v_a', 'locked_rotor_current_460v_a'],
    row: ratings.lockedRotorCurrentRow,
  },
  insulationTemperatureFactor: {
    file: 'condition/insulation-temperature-factor.csv',
    key: ['winding_temp_c'],
    figures: ['factor_thermoplastic', 'factor_thermosetting'],
    row: condition.temperatureFactorRow,
  },
  tolerances: {
    file: 'ratings/tolerances.csv',
    key: ['standard', 'clause', 'quantity', 'applies_to'],
    figures: ['lower', 'upper', 'remark'],
    row: ratings.toleranceRow,
  },
  fullLoadCurrent: {
    file: 'ratings/full-load-current.csv',
    key: ['rated_power_hp'],
    figures: ['current_460v_a'],
    row: ratings.fullLoadCurrentRow,
  },
  torqueRanges: {
    file: 'ratings/torque-ranges.csv',
    key: ['design'],
    figures: ['locked_rotor_torque_pct_min', 'breakdown_torque_pct_min'],
    row: ratings.torqueRangeRow,
  },
  failureRates: {
    file: 'condition/failure-rates.csv',
    key: ['motor_class'],
    figures: ['failures_per_year'],
    row: condition.failureRateRow,
  },
  magnetising: {
    file: 'ratings/magnetising-current.csv',
    key: ['population', 'poles', 'rated_power_hp'],
    figures: ['current_fraction'],
    row: ratings.magnetisingRow,
  },
} satisfies Record<string, Entry<object>>;

/** The shipped, invented price list. Its rows carry no status: the whole list is invented, and says so in each row's source. */
export const priceEntry: Entry<Price> = {
  file: 'prices/invented-prices.csv',
  key: ['item', 'rated_power_kw', 'poles', 'efficiency_class', 'frame', 'enclosure'],
  figures: ['price'],
  row: decision.inventedPriceRow,
};
