/** Row schemas of the tables in `reference-data/condition`. */
import { z } from 'zod';
import type {
  ClassTemperatureRow,
  FaultBaseRateRow,
  FaultEvidenceRow,
  HypothesisId,
  LimitRow,
  StartsRow,
  UnbalanceDeratingRow,
  VibrationZoneRow,
} from '@/lib/engine';
import { number, numberOrEmpty, text, textOrEmpty, word, wordOrEmpty } from '../cells';

/** Either a value or a formula in words: a limit with neither says nothing. */
export const limitRow = z
  .object({
    id: text,
    section: text,
    quantity: text,
    applies_to: text,
    test: word('>=', '<=', '>', '<', '=', 'between'),
    value: numberOrEmpty(-1e6, 1e6),
    value_high: numberOrEmpty(-1e6, 1e6),
    words: textOrEmpty,
    unit: text,
    source: text,
  })
  .refine((r) => r.value !== undefined || r.words !== undefined, {
    error: 'is empty, where a number must stand unless the column words carries a formula',
    path: ['value'],
  })
  .transform(
    (r): LimitRow => ({
      id: r.id,
      section: r.section,
      quantity: r.quantity,
      appliesTo: r.applies_to,
      test: r.test,
      value: r.value,
      valueHigh: r.value_high,
      words: r.words,
      unit: r.unit,
      source: r.source,
    }),
  );

const velocity = number(0.01, 100);

export const vibrationZoneRow = z
  .object({
    group: word('1', '2').transform((value): 1 | 2 => (value === '1' ? 1 : 2)),
    support: word('rigid', 'flexible'),
    zone_ab_mm_s: velocity,
    zone_bc_mm_s: velocity,
    zone_cd_mm_s: velocity,
  })
  .transform(
    (r): VibrationZoneRow => ({
      group: r.group,
      support: r.support,
      ab: r.zone_ab_mm_s,
      bc: r.zone_bc_mm_s,
      cd: r.zone_cd_mm_s,
    }),
  );

export const unbalanceDeratingRow = z
  .object({ unbalance_pct: number(0, 100), derating_factor: number(0, 1) })
  .transform((r): UnbalanceDeratingRow => ({ unbalancePct: r.unbalance_pct, deratingFactor: r.derating_factor }));

export const classTemperatureRow = z
  .object({ thermal_class: word('A', 'B', 'F', 'H'), max_temp_c: number(0, 500), rise_k: number(0, 500) })
  .transform((r): ClassTemperatureRow => ({ thermalClass: r.thermal_class, maxTempC: r.max_temp_c, riseK: r.rise_k }));

export const failureRateRow = z
  .object({ motor_class: text, failures_per_year: number(0, 1) })
  .transform((r) => ({ motorClass: r.motor_class, failuresPerYear: r.failures_per_year }));

/** Factor that carries an insulation resistance from the winding temperature to 40 °C. */
export const temperatureFactorRow = z
  .object({
    winding_temp_c: number(-60, 300),
    factor_thermoplastic: number(0.001, 1000),
    factor_thermosetting: number(0.001, 1000),
  })
  .transform((r) => ({
    windingTempC: r.winding_temp_c,
    thermoplastic: r.factor_thermoplastic,
    thermosetting: r.factor_thermosetting,
  }));

const ratio = number(0.001, 1000);
/** The words of the results file; a word that the engine does not know would not compile. */
const HYPOTHESES = [
  'supply',
  'overload-ventilation',
  'moisture-dirt',
  'stator-winding',
  'rotor-cage',
  'eccentricity',
  'bearing',
  'misalignment-soft-foot',
  'belt-drive',
  'driven-machine',
  'instrument-data',
] as const satisfies readonly HypothesisId[];
const hypothesis = word(...HYPOTHESES);

/** Evidence must point one way: beyond says at least as much for the fault as near, and within nothing for it. */
export const faultEvidenceRow = z
  .object({
    hypothesis,
    indicator: text,
    evidence_group: text,
    applies_when: wordOrEmpty('belted', 'pulsating'),
    ratio_beyond: ratio,
    ratio_near: ratio,
    ratio_within: ratio,
    meaning: text,
    source: text,
  })
  .refine((r) => r.ratio_beyond >= r.ratio_near && r.ratio_near >= 1 && r.ratio_within <= 1, {
    error: 'is out of order: beyond must weigh at least as much as near, near at least one, within at most one',
    path: ['ratio_near'],
  })
  .transform(
    (r): FaultEvidenceRow => ({
      hypothesis: r.hypothesis,
      indicator: r.indicator,
      group: r.evidence_group,
      when: r.applies_when,
      beyond: r.ratio_beyond,
      near: r.ratio_near,
      within: r.ratio_within,
      meaning: r.meaning,
      source: r.source,
    }),
  );

/** One of the two figures, never both: they are of different things. */
export const faultBaseRateRow = z
  .object({
    hypothesis,
    failure_share_pct: numberOrEmpty(0, 100),
    prevalence_pct: numberOrEmpty(0, 50),
    source: text,
  })
  .refine((r) => (r.failure_share_pct === undefined) !== (r.prevalence_pct === undefined), {
    error: 'must be filled where prevalence_pct is empty, and empty where it is filled',
    path: ['failure_share_pct'],
  })
  .transform(
    (r): FaultBaseRateRow => ({
      hypothesis: r.hypothesis,
      failureSharePct: r.failure_share_pct,
      prevalencePct: r.prevalence_pct,
      source: r.source,
    }),
  );

export const startsRow = z
  .object({
    poles: number(2, 60),
    rated_power_hp: number(0.1, 10000),
    starts_per_hour_max: number(0.1, 1000),
    starts_inertia_lbft2_per_h: number(0.1, 1e6),
    rest_s: number(0, 1e5),
  })
  .transform(
    (r): StartsRow => ({
      poles: r.poles,
      ratedPowerHp: r.rated_power_hp,
      startsPerHour: r.starts_per_hour_max,
      startsInertia: r.starts_inertia_lbft2_per_h,
      restS: r.rest_s,
    }),
  );
