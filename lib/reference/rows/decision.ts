/** Row schemas of the tables in `reference-data/decision` and of the price list in `reference-data/prices`. */
import { z } from 'zod';
import type { BeltRow, DriveRow, Price, RewindChangeRow, RewindLimitRow } from '@/lib/engine';
import { horsepower, number, numberOrEmpty, percent, text, textOrEmpty, word, wordOrEmpty } from '../cells';

export const rewindChangeRow = z
  .object({
    study: text,
    motors: text,
    practice: text,
    min_points: numberOrEmpty(-20, 20),
    max_points: numberOrEmpty(-20, 20),
    avg_points: numberOrEmpty(-20, 20),
  })
  .transform(
    (r): RewindChangeRow => ({
      study: r.study,
      motors: r.motors,
      practice: r.practice,
      minPoints: r.min_points,
      maxPoints: r.max_points,
      avgPoints: r.avg_points,
    }),
  );

export const rewindLimitRow = z
  .object({
    quantity: word('resistance', 'no-load-loss', 'core-loss', 'efficiency'),
    largest_rise_pct: number(0, 100),
    source: text,
  })
  .transform((r): RewindLimitRow => ({ quantity: r.quantity, largestRisePct: r.largest_rise_pct, source: r.source }));

export const beltRow = z
  .object({ belt: text, condition: text, low_pct: percent, high_pct: numberOrEmpty(0, 100) })
  .transform((r): BeltRow => ({ belt: r.belt, lowPct: r.low_pct, highPct: r.high_pct, condition: r.condition }));

/** Efficiency of a drive alone at a share of its rated output. */
export const driveRow = z
  .object({ rated_power_hp: horsepower, load_pct: percent, efficiency_pct: percent })
  .transform((r): DriveRow => ({ ratedPowerHp: r.rated_power_hp, loadPct: r.load_pct, efficiencyPct: r.efficiency_pct }));

const ISO_DATE = /^\d{4}-\d{2}-\d{2}$/;

/** A line of the shipped price list. Its source must say that it is invented, so that it cannot pass for a quotation. */
export const inventedPriceRow = z
  .object({
    item: word(
      ...(['motor', 'rewind', 'bearing-job', 'removal-install', 'frame-adapter'] as const),
      ...(['notched-belt', 'synchronous-belt', 'drive', 'capacitor'] as const),
    ),
    rated_power_kw: numberOrEmpty(0.01, 100_000),
    poles: numberOrEmpty(2, 48),
    efficiency_class: textOrEmpty,
    nominal_efficiency_pct: numberOrEmpty(0, 100),
    rated_speed_rpm: numberOrEmpty(1, 100_000),
    frame: textOrEmpty,
    enclosure: wordOrEmpty('open', 'enclosed'),
    price: number(0.01, 1e9),
    currency: z.string().regex(/^[A-Z]{3}$/, { error: 'is no currency code' }),
    date: z.string().regex(ISO_DATE, { error: 'is no ISO date' }),
    lead_time_weeks: numberOrEmpty(0, 520),
    source: z.string().startsWith('invented', { error: "does not begin with the word 'invented'" }),
  })
  .transform(
    (r): Price => ({
      item: r.item,
      ratedPowerKw: r.rated_power_kw,
      poles: r.poles,
      efficiencyClass: r.efficiency_class,
      nominalEfficiencyPct: r.nominal_efficiency_pct,
      ratedSpeedRpm: r.rated_speed_rpm,
      frame: r.frame,
      enclosure: r.enclosure,
      price: r.price,
      date: r.date,
      leadTimeWeeks: r.lead_time_weeks,
      source: r.source,
    }),
  );
