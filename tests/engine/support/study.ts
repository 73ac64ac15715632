import type { MotorScope, StudyContext } from '@/lib/engine';
import type { Motor, Plate, Reading } from '@/lib/engine/motor';
import { Sources } from '@/lib/engine/quantity/quantity';
import type { Settings } from '@/lib/engine/settings';
import { loadTables } from '@/lib/reference/load';

const reference = loadTables();

/** Settings of the tests: the contract's defaults. */
export const SETTINGS: Settings = {
  schema: 1,
  currency: 'USD',
  frequencyHz: 60,
  standards: 'nema',
  asOf: '2026-01-01',
  energyPricePerKwh: 0.11,
  demandPricePerKwMonth: 9.5,
  demandCoincidence: 0.8,
  discountRate: 0.08,
  energyPriceEscalation: 0,
  horizonYears: 15,
  taxRate: 0,
  policy: {
    maxSimplePaybackYears: 3,
    minProbability: 0.8,
    maxReadingAgeYears: 5,
    atFailure: 'repair',
    spareCapacityPct: 10,
    resizeBelowLoadFraction: 0.5,
  },
  budget: [250000, 250000, 250000],
  moneyTerms: 'real',
  inflation: 0,
  includeFailureCost: false,
  objective: 'net-present-value',
  assumedLoad: 0.65,
  repairShop: 'unknown',
  rebates: [],
  emissionFactorKgPerKwh: 0.373,
  tariffs: {},
  depreciation: null,
  failureRatePerYear: 0.05,
  accuracy: { voltagePct: 0.5, currentPct: 1, powerPct: 1, speedRpm: 1 },
  loadCurves: {},
  limits: {},
};

/** A study with the shipped tables; settings may be changed. */
export function study(changes: Partial<Settings> = {}): StudyContext {
  return { settings: { ...SETTINGS, ...changes }, tables: reference.tables, prices: reference.prices };
}

/** A scope for trying single steps. */
export function scopeOf(changes: Partial<Settings> = {}): MotorScope {
  return { ...study(changes), sources: new Sources(), trace: new Map() };
}

/** A 50 hp, 4-pole motor of 1985 as its plate might read. Invented. */
export const PLATE: Plate = {
  ratedPowerKw: 50 * 0.7457,
  ratedPowerUnit: 'hp',
  status: 'running',
  ratedVoltageV: 460,
  ratedCurrentA: 61,
  ratedSpeedRpm: 1765,
  nominalEfficiencyPct: 91.7,
  ratedPowerFactorPct: 83.5,
  machineKind: 'cage',
  enclosure: 'enclosed',
  designLetter: 'B',
  frame: '326T',
  yearBuilt: 1985,
};

/** A set of readings that belongs to about 60 % load of {@link PLATE}. Invented. */
export const READING: Reading = {
  row: 2,
  takenAt: '2025-06-01T10:00',
  readingsAt: 'motor',
  readingCondition: 'coupled',
  voltageV: 462,
  currentA: 40.6,
  inputPowerKw: 24.4,
  shaftSpeedRpm: 1779.4,
};

/** A motor made of the above, changed as a test needs. */
export function motorOf(
  changes: { plate?: Partial<Plate>; reading?: Partial<Reading>; readings?: readonly Reading[]; motor?: Partial<Motor> } = {},
): Motor {
  return {
    site: 'North',
    tag: 'P-1',
    plate: { ...PLATE, ...changes.plate },
    hoursPerYear: 6000,
    readings: changes.readings ?? [{ ...READING, ...changes.reading }],
    ...changes.motor,
  };
}
