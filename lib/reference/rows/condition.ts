/** Row schemas of the tables in `reference-data/condition`. */
import { z } from 'zod';
import type { ClassTemperatureRow, FailureRateRow, LimitRow, UnbalanceDeratingRow, VibrationZoneRow } from '@/lib/engine';
import { number, numberOrEmpty, text, textOrEmpty, word } from '../cells';

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
  .transform((r): FailureRateRow => ({ motorClass: r.motor_class, failuresPerYear: r.failures_per_year }));

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
