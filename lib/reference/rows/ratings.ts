/** Row schemas of the tables in `reference-data/ratings` and `reference-data/losses`. */
import { z } from 'zod';
import type {
  AssumedStrayRow,
  CodeLetterRow,
  FrameRow,
  HorsepowerStepRow,
  IecFrameRow,
  KilowattStepRow,
  LossShareRow,
  TorqueRow,
} from '@/lib/engine';
import { enclosure, horsepower, kilowatts, number, numberOrEmpty, poles, text, word } from '../cells';

export const horsepowerStepRow = z
  .object({ rated_power_hp: horsepower, rated_power_kw: kilowatts })
  .transform((r): HorsepowerStepRow => ({ ratedPowerHp: r.rated_power_hp, ratedPowerKw: r.rated_power_kw }));

export const kilowattStepRow = z
  .object({ rated_power_kw: kilowatts })
  .transform((r): KilowattStepRow => ({ ratedPowerKw: r.rated_power_kw }));

export const fullLoadCurrentRow = z
  .object({ rated_power_hp: horsepower, current_460v_a: number(0.01, 100_000) })
  .transform((r) => ({ ratedPowerHp: r.rated_power_hp, current460V: r.current_460v_a }));

export const magnetisingRow = z
  .object({ population: text, poles, rated_power_hp: horsepower, current_fraction: number(0, 1.5) })
  .transform((r) => ({
    population: r.population,
    ratedPowerHp: r.rated_power_hp,
    poles: r.poles,
    currentFraction: r.current_fraction,
  }));

export const codeLetterRow = z
  .object({
    code_letter: z.string().regex(/^[A-HJ-NPR-V]$/, { error: 'is no code letter' }),
    kva_per_hp_min: number(0, 100),
    kva_per_hp_max: numberOrEmpty(0, 100),
  })
  .transform((r): CodeLetterRow => ({ codeLetter: r.code_letter, kvaPerHpMin: r.kva_per_hp_min, kvaPerHpMax: r.kva_per_hp_max }));

export const torqueRow = z
  .object({
    design: word('A_B', 'C'),
    torque: word('locked_rotor', 'pull_up', 'breakdown'),
    poles,
    rated_power_hp: horsepower,
    torque_pct: number(1, 1000),
  })
  .transform(
    (r): TorqueRow => ({
      design: r.design,
      torque: r.torque,
      ratedPowerHp: r.rated_power_hp,
      poles: r.poles,
      pctOfRated: r.torque_pct,
    }),
  );

export const torqueRangeRow = z
  .object({
    design: word('A', 'B', 'C', 'D', 'E', 'N', 'H'),
    locked_rotor_torque_pct_min: number(1, 1000),
    breakdown_torque_pct_min: number(1, 1000),
  })
  .transform((r) => ({
    design: r.design,
    lockedRotorPctMin: r.locked_rotor_torque_pct_min,
    breakdownPctMin: r.breakdown_torque_pct_min,
  }));

export const frameRow = z
  .object({
    series: word('T', 'U'),
    enclosure,
    poles,
    rated_power_hp: horsepower,
    frame: z.string().regex(/^\d{3}[A-Z]{0,3}$/, { error: 'is no frame designation' }),
  })
  .transform(
    (r): FrameRow => ({
      ratedPowerHp: r.rated_power_hp,
      poles: r.poles,
      enclosure: r.enclosure,
      series: r.series,
      frame: r.frame,
    }),
  );

export const iecFrameRow = z
  .object({
    poles,
    rated_power_kw: kilowatts,
    frame: z.string().regex(/^\d{2,3}[SML]$/, { error: 'is no frame designation' }),
    shaft_diameter_mm: number(1, 500),
    shaft_length_mm: number(1, 500),
  })
  .transform(
    (r): IecFrameRow => ({
      poles: r.poles,
      ratedPowerKw: r.rated_power_kw,
      frame: r.frame,
      shaftDiameterMm: r.shaft_diameter_mm,
      shaftLengthMm: r.shaft_length_mm,
    }),
  );

export const toleranceRow = z
  .object({
    standard: text,
    clause: text,
    quantity: text,
    applies_to: text,
    basis: text,
    lower: numberOrEmpty(-1000, 1000),
    upper: numberOrEmpty(-1000, 1000),
  })
  .transform((r) => ({
    standard: r.standard,
    clause: r.clause,
    quantity: r.quantity,
    appliesTo: r.applies_to,
    basis: r.basis,
    lower: r.lower,
    upper: r.upper,
  }));

export const lockedRotorCurrentRow = z
  .object({
    rated_power_hp: horsepower,
    locked_rotor_current_230v_a: number(0.01, 1_000_000),
    locked_rotor_current_460v_a: number(0.01, 1_000_000),
    kva_per_hp: number(0, 100),
  })
  .transform((r) => ({
    ratedPowerHp: r.rated_power_hp,
    current230V: r.locked_rotor_current_230v_a,
    current460V: r.locked_rotor_current_460v_a,
    kvaPerHp: r.kva_per_hp,
  }));

export const assumedStrayRow = z
  .object({
    standard: word('ieee-112', 'iec-60034-2', 'iec-60034-2-1'),
    rated_power_hp_min: numberOrEmpty(0, 100_000),
    rated_power_hp_max: numberOrEmpty(0, 100_000),
    rated_power_kw_min: numberOrEmpty(0, 100_000),
    rated_power_kw_max: numberOrEmpty(0, 100_000),
    basis: word('input', 'output'),
    share: numberOrEmpty(0, 0.1),
    share_at_1_kw: numberOrEmpty(0, 0.1),
    fall_per_decade: numberOrEmpty(0, 0.1),
  })
  .transform(
    (r): AssumedStrayRow => ({
      standard: r.standard,
      ratedPowerHpMin: r.rated_power_hp_min,
      ratedPowerHpMax: r.rated_power_hp_max,
      ratedPowerKwMin: r.rated_power_kw_min,
      ratedPowerKwMax: r.rated_power_kw_max,
      basis: r.basis,
      share: r.share,
      shareAt1Kw: r.share_at_1_kw,
      fallPerDecade: r.fall_per_decade,
    }),
  );

export const lossShareRow = z
  .object({
    motor: text,
    rated_power_kw: numberOrEmpty(0.01, 100_000),
    poles: numberOrEmpty(2, 48),
    component: word('stator', 'rotor', 'core', 'friction-windage', 'stray'),
    min_pct: numberOrEmpty(0, 100),
    max_pct: numberOrEmpty(0, 100),
    typical_pct: numberOrEmpty(0, 100),
  })
  .transform(
    (r): LossShareRow => ({
      motor: r.motor,
      ratedPowerKw: r.rated_power_kw,
      poles: r.poles,
      component: r.component,
      minPct: r.min_pct,
      maxPct: r.max_pct,
      typicalPct: r.typical_pct,
    }),
  );
