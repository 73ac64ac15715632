/** Row schemas of the tables in `reference-data/efficiency`: from cells of text to the rows that the engine takes. */
import { z } from 'zod';
import type { EfficiencyRow, NominalToMinimumRow, OldDesignRow, PartLoadRow } from '@/lib/engine';
import { enclosure, frequency, horsepower, kilowatts, number, numberOrEmpty, percent, poles, word } from '../cells';

export const usEfficiencyRow = z
  .object({
    efficiency_class: word('premium', 'energy-efficient'),
    frequency_hz: frequency,
    enclosure,
    poles,
    rated_power_hp: horsepower,
    rated_power_kw: kilowatts,
    nominal_efficiency_pct: percent,
  })
  .transform(
    (r): EfficiencyRow => ({
      ratedPowerKw: r.rated_power_kw,
      ratedPowerHp: r.rated_power_hp,
      frequencyHz: r.frequency_hz,
      poles: r.poles,
      enclosure: r.enclosure,
      efficiencyClass: r.efficiency_class,
      nominalEfficiencyPct: r.nominal_efficiency_pct,
    }),
  );

export const iecEfficiencyRow = z
  .object({
    efficiency_class: word('IE1', 'IE2', 'IE3', 'IE4'),
    frequency_hz: frequency,
    poles,
    rated_power_kw: kilowatts,
    nominal_efficiency_pct: percent,
  })
  .transform(
    (r): EfficiencyRow => ({
      ratedPowerKw: r.rated_power_kw,
      frequencyHz: r.frequency_hz,
      poles: r.poles,
      efficiencyClass: r.efficiency_class,
      nominalEfficiencyPct: r.nominal_efficiency_pct,
    }),
  );

export const partLoadRow = z
  .object({ enclosure, poles, rated_power_hp: horsepower, load_pct: percent, average_efficiency_pct: percent })
  .transform(
    (r): PartLoadRow => ({
      ratedPowerHp: r.rated_power_hp,
      poles: r.poles,
      enclosure: r.enclosure,
      loadPct: r.load_pct,
      averageEfficiencyPct: r.average_efficiency_pct,
    }),
  );

export const oldDesignRow = z
  .object({ rated_power_hp_min: horsepower, rated_power_hp_max: numberOrEmpty(0.01, 100_000), nominal_efficiency_pct: percent })
  .transform(
    (r): OldDesignRow => ({
      ratedPowerHpMin: r.rated_power_hp_min,
      ratedPowerHpMax: r.rated_power_hp_max,
      nominalEfficiencyPct: r.nominal_efficiency_pct,
    }),
  );

export const nominalToMinimumRow = z.object({ nominal_efficiency_pct: percent, minimum_efficiency_pct: percent }).transform(
  (r): NominalToMinimumRow => ({
    nominalEfficiencyPct: r.nominal_efficiency_pct,
    minimumEfficiencyPct: r.minimum_efficiency_pct,
  }),
);

/**
 * Coefficients of the polynomial by which the 50 Hz classes are interpolated:
 * efficiency in % = A·L³ + B·L² + C·L + D with L = log10(rated output in kW).
 */
export const coefficientRow = z
  .object({
    efficiency_class: word('IE1', 'IE2', 'IE3', 'IE4'),
    frequency_hz: frequency,
    poles,
    rated_power_kw_min: kilowatts,
    rated_power_kw_max: kilowatts,
    coefficient_a: number(-1000, 1000),
    coefficient_b: number(-1000, 1000),
    coefficient_c: number(-1000, 1000),
    coefficient_d: number(-1000, 1000),
  })
  .transform((r) => ({
    efficiencyClass: r.efficiency_class,
    frequencyHz: r.frequency_hz,
    poles: r.poles,
    ratedPowerKwMin: r.rated_power_kw_min,
    ratedPowerKwMax: r.rated_power_kw_max,
    a: r.coefficient_a,
    b: r.coefficient_b,
    c: r.coefficient_c,
    d: r.coefficient_d,
  }));

export const smallPolyphaseRow = z
  .object({
    enclosure,
    poles,
    rated_power_hp: horsepower,
    rated_power_kw: kilowatts,
    average_efficiency_pct: percent,
  })
  .transform((r) => ({
    enclosure: r.enclosure,
    poles: r.poles,
    ratedPowerHp: r.rated_power_hp,
    ratedPowerKw: r.rated_power_kw,
    averageEfficiencyPct: r.average_efficiency_pct,
  }));
