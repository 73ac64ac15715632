import { LIMIT_IDS, type Rebate, type Settings } from '@/lib/engine';
import { nearestWord } from '../fleet/nearest';
import { noWishes, type PlanWishesFile } from '../plan/wishes';
import { repeatedKey, repeatedWords } from './repeated-key';
import { explainIssue, type SettingsProblem } from './settings-problem';
import { partialSettingsSchema, type SettingsFile, settingsFileSchema } from './settings-schema';
import { type SettingsWarning, warningsOf } from './settings-warnings';
import { plain, tariffFromFile, tariffToFile } from './tariff-schema';

export type { SettingsProblem } from './settings-problem';
export type { SettingsWarning } from './settings-warnings';

type SettingsOutcome =
  | {
      readonly ok: true;
      readonly settings: Settings;
      /** Path of the price list relative to the settings file; absent when none is named. */
      readonly pricesFile?: string;
      /** What is wanted of the plan. */
      readonly plan: PlanWishesFile;
      /** Whether the file itself says what is wanted of the plan. */
      readonly plansNamed: boolean;
      readonly warnings: readonly SettingsWarning[];
    }
  | { readonly ok: false; readonly problem: SettingsProblem };

/** Every key with its default. `as_of` is a fixed day: whoever runs a study today states today. */
const DEFAULTS: SettingsFile = {
  schema: 1,
  currency: 'USD',
  frequency_hz: 60,
  standards: 'nema',
  as_of: '2026-01-01',
  energy_price_per_kwh: 0.11,
  demand_price_per_kw_month: 9.5,
  demand_coincidence: 0.8,
  discount_rate: 0.08,
  energy_price_escalation: 0,
  horizon_years: 15,
  tax_rate: 0,
  policy: {
    max_simple_payback_years: 3,
    min_probability: 0.8,
    max_reading_age_years: 5,
    at_failure: 'repair',
    spare_capacity_pct: 10,
    resize_below_load_fraction: 0.5,
  },
  budget: [250_000, 250_000, 250_000],
  money_terms: 'real',
  inflation: 0,
  include_failure_cost: false,
  objective: 'net-present-value',
  assumed_load: 0.65,
  repair_shop: 'unknown',
  rebates: [],
  load_curves: {},
  depreciation: null,
  tariffs: {},
  emission_factor_kg_per_kwh: 0.373,
  failure_rate_per_year: 0.05,
  accuracy: { voltage_pct: 0.5, current_pct: 1, power_pct: 1, speed_rpm: 1 },
  limits: {},
  prices: null,
};

/** The settings that hold when a study states none. */
export function defaultSettings(): Settings {
  return fromFile(DEFAULTS);
}

/**
 * Reads a settings file. Keys that are missing take their defaults; an unknown key is a problem, never passed over. `kept` says that a
 * study holds these settings already: then a limit that would be refused today is taken as it is, so that the study can still be opened.
 */
export function readSettings(jsonText: string, { kept = false }: { readonly kept?: boolean } = {}): SettingsOutcome {
  let raw: unknown;
  const text = jsonText.replace(/^\ufeff/, '');
  try {
    raw = JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'it cannot be parsed';
    return problem(
      'not-json',
      '',
      `The settings are not JSON: ${reason}.`,
      'Check quotes, commas and brackets; decimals take a point, as in 0.11.',
    );
  }
  const twice = repeatedKey(text);
  if (twice) {
    const { text: said, remedy } = repeatedWords(twice);
    return problem('repeated-key', twice.path, said, remedy);
  }
  const parsed = partialSettingsSchema.safeParse(raw);
  if (!parsed.success) return { ok: false, problem: explainIssue(parsed.error.issues[0], raw) };
  const { plan = noWishes(), ...given } = parsed.data;
  const refused = kept ? undefined : refusedLimit(given.limits ?? {});
  if (refused) return { ok: false, problem: refused };
  const file = settingsFileSchema.parse({
    ...DEFAULTS,
    ...given,
    policy: { ...DEFAULTS.policy, ...given.policy },
    accuracy: { ...DEFAULTS.accuracy, ...given.accuracy },
  });
  const outcome = {
    ok: true as const,
    settings: fromFile(file),
    plan,
    plansNamed: parsed.data.plan !== undefined,
    warnings: warningsOf(file),
  };
  return file.prices === null ? outcome : { ...outcome, pricesFile: file.prices };
}

/** The settings as a complete settings file, to be written as JSON; reading that gives the same settings. */
export function settingsToJson(settings: Settings, pricesFile?: string): SettingsFile {
  return toFile(settings, pricesFile);
}

/** The first limit that no indicator is judged by, or that is not above zero: every limit is a size or a share of something. */
function refusedLimit(limits: SettingsFile['limits']): SettingsProblem | undefined {
  for (const [id, { value }] of Object.entries(limits)) {
    const key = `limits.${id}`;
    if (!LIMIT_IDS.has(id)) {
      const near = nearestWord(id, LIMIT_IDS);
      // A letter and a number are like many others: of these only the case is guessed.
      const meant = id.length > SHORT || near?.toLowerCase() === id.toLowerCase() ? near : undefined;
      const known = `Known are ${[...LIMIT_IDS].join(', ')}.`;
      return {
        code: 'unknown-key',
        key,
        text: `${key} is no limit that is judged by.`,
        remedy: meant === undefined ? `Remove it. ${known}` : `Did you mean limits.${meant}? ${known}`,
      };
    }
    if (value <= 0)
      return {
        code: 'bad-value',
        key: `${key}.value`,
        text: `${key}.value: ${value} is not above zero, and no limit is.`,
        remedy: `Write the limit as a positive number in its unit, or leave ${key} out to judge by the shipped one.`,
      };
  }
  return undefined;
}

/** Letters of the ids in the table of limits, at most. */
const SHORT = 3;

function problem(code: SettingsProblem['code'], key: string, text: string, remedy: string): SettingsOutcome {
  return { ok: false, problem: { code, key, text, remedy } };
}

function fromFile(file: SettingsFile): Settings {
  const { policy, accuracy } = file;
  return {
    schema: file.schema,
    currency: file.currency,
    frequencyHz: file.frequency_hz,
    standards: file.standards,
    asOf: file.as_of,
    energyPricePerKwh: file.energy_price_per_kwh,
    demandPricePerKwMonth: file.demand_price_per_kw_month,
    demandCoincidence: file.demand_coincidence,
    discountRate: file.discount_rate,
    energyPriceEscalation: file.energy_price_escalation,
    horizonYears: file.horizon_years,
    taxRate: file.tax_rate,
    policy: {
      maxSimplePaybackYears: policy.max_simple_payback_years,
      minProbability: policy.min_probability,
      maxReadingAgeYears: policy.max_reading_age_years,
      atFailure: policy.at_failure,
      spareCapacityPct: policy.spare_capacity_pct,
      resizeBelowLoadFraction: policy.resize_below_load_fraction,
    },
    budget: [...file.budget],
    moneyTerms: file.money_terms,
    inflation: file.inflation,
    includeFailureCost: file.include_failure_cost,
    objective: file.objective,
    assumedLoad: file.assumed_load,
    repairShop: file.repair_shop,
    rebates: file.rebates.map(
      ({ action, per_kw, per_kwh, per_motor, cap, cap_share }): Rebate => ({
        action,
        perKw: per_kw ?? 0,
        ...(per_kwh !== undefined && { perKwh: per_kwh }),
        ...(per_motor !== undefined && { perMotor: per_motor }),
        ...(cap !== undefined && { cap }),
        ...(cap_share !== undefined && { capShare: cap_share }),
      }),
    ),
    loadCurves: Object.fromEntries(
      Object.entries(file.load_curves).map(([name, points]) => [
        name,
        points.map(({ speed_pct, torque_pct }) => ({ speedPct: speed_pct, torquePct: torque_pct })),
      ]),
    ),
    emissionFactorKgPerKwh: file.emission_factor_kg_per_kwh,
    tariffs: Object.fromEntries(Object.entries(file.tariffs).map(([site, tariff]) => [site, tariffFromFile(tariff)])),
    depreciation: file.depreciation,
    failureRatePerYear: file.failure_rate_per_year,
    accuracy: {
      voltagePct: accuracy.voltage_pct,
      currentPct: accuracy.current_pct,
      powerPct: accuracy.power_pct,
      speedRpm: accuracy.speed_rpm,
    },
    limits: file.limits,
  };
}

function toFile(settings: Settings, pricesFile: string | undefined): SettingsFile {
  const { policy, accuracy } = settings;
  return {
    schema: settings.schema,
    currency: settings.currency,
    frequency_hz: settings.frequencyHz,
    standards: settings.standards,
    as_of: settings.asOf,
    energy_price_per_kwh: settings.energyPricePerKwh,
    demand_price_per_kw_month: settings.demandPricePerKwMonth,
    demand_coincidence: settings.demandCoincidence,
    discount_rate: settings.discountRate,
    energy_price_escalation: plain(settings.energyPriceEscalation),
    horizon_years: settings.horizonYears,
    tax_rate: settings.taxRate,
    policy: {
      max_simple_payback_years: policy.maxSimplePaybackYears,
      min_probability: policy.minProbability,
      max_reading_age_years: policy.maxReadingAgeYears,
      at_failure: policy.atFailure,
      spare_capacity_pct: policy.spareCapacityPct,
      resize_below_load_fraction: policy.resizeBelowLoadFraction,
    },
    budget: [...settings.budget],
    money_terms: settings.moneyTerms,
    inflation: settings.inflation,
    include_failure_cost: settings.includeFailureCost,
    objective: settings.objective,
    assumed_load: settings.assumedLoad,
    repair_shop: settings.repairShop,
    rebates: settings.rebates.map(({ action, perKw, perKwh, perMotor, cap, capShare }) => ({
      action,
      per_kw: perKw,
      ...(perKwh !== undefined && { per_kwh: perKwh }),
      ...(perMotor !== undefined && { per_motor: perMotor }),
      ...(cap !== undefined && { cap }),
      ...(capShare !== undefined && { cap_share: capShare }),
    })),
    load_curves: Object.fromEntries(
      Object.entries(settings.loadCurves).map(([name, points]) => [
        name,
        points.map(({ speedPct, torquePct }) => ({ speed_pct: speedPct, torque_pct: torquePct })),
      ]),
    ),
    depreciation: depreciationToFile(settings.depreciation),
    tariffs: Object.fromEntries(Object.entries(settings.tariffs).map(([site, tariff]) => [site, tariffToFile(tariff)])),
    emission_factor_kg_per_kwh: plain(settings.emissionFactorKgPerKwh),
    failure_rate_per_year: settings.failureRatePerYear,
    accuracy: {
      voltage_pct: accuracy.voltagePct,
      current_pct: accuracy.currentPct,
      power_pct: accuracy.powerPct,
      speed_rpm: accuracy.speedRpm,
    },
    limits: { ...settings.limits },
    prices: pricesFile ?? null,
  };
}

function depreciationToFile(given: Settings['depreciation']): SettingsFile['depreciation'] {
  if (given === null || given.method === 'straight-line') return given && { method: 'straight-line', years: given.years };
  const { method, years, factor } = given;
  return { method, years, ...(factor !== undefined && { factor }) };
}
