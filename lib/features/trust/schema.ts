import { z } from 'zod';
import type { TrustLevel } from '@/lib/engine';

/** Readings that a person may be sent for, in the order of a round: on the way in, at the panel, at the shaft, standing still. */
export const WANTED = [
  'plate',
  'insulation-class',
  'foundation',
  'ambient',
  'bearing-temperature',
  'vibration',
  'voltages',
  'currents',
  'power',
  'power-factor',
  'frequency',
  'harmonics',
  'drive-output',
  'winding-temperature',
  'speed',
  'driven-speed',
  'spectrum',
  'resistance',
  'insulation',
  'polarization',
  'no-load',
] as const;
export type Wanted = (typeof WANTED)[number];

/** At which load a reading is wanted; `stopped` and `any` need none. */
export const LOADS_WANTED = ['any', 'usual', 'half', 'three-quarters', 'stopped'] as const;
export type LoadWanted = (typeof LOADS_WANTED)[number];

/** What a finding asks for. Without `readings` it is settled at the desk: a unit, a date, a word in the sheet. */
export interface Ask {
  readonly readings: readonly Wanted[];
  readonly load: LoadWanted;
}

/** One thing that may not be used, or that keeps a motor from being sound. */
export interface Doubt {
  readonly severity: 'note' | 'warning' | 'disqualifies';
  readonly text: string;
  /** The indicator without a verdict, by its title; absent where it is about load and losses. */
  readonly indicator?: string;
  readonly readings: readonly Wanted[];
  readonly load: LoadWanted;
  /** What is settled without a visit. */
  readonly desk?: string;
}

/** A motor of which something may not be used. */
export interface TrustItem {
  readonly motorId: string | undefined;
  readonly site: string;
  readonly tag: string;
  readonly area: string | undefined;
  readonly description: string | undefined;
  readonly level: TrustLevel;
  readonly doubts: readonly Doubt[];
  /** All readings wanted, in the order of a round, with the highest load that one of them asks for. */
  readonly wanted: readonly Wanted[];
  readonly load: LoadWanted;
}

/** What may not be used in a study, in natural order. */
export interface TrustList {
  readonly items: readonly TrustItem[];
  readonly areas: readonly string[];
  readonly total: number;
  readonly byLevel: Readonly<Record<TrustLevel, number>>;
}

/** More motors than this are no round of one person; the sheet says which are left out. */
export const LONGEST_ROUND = 100;

const ids = z.array(z.string().regex(/^[0-9a-f-]{36}$/));

/** The motors of a round from its address: `m`, once for each. Others than ids are passed over. */
export function roundMotors(asked: string | readonly string[] | undefined): readonly string[] {
  const given = asked === undefined ? [] : typeof asked === 'string' ? [asked] : asked;
  return [...new Set(given)].filter((each) => ids.safeParse([each]).success);
}

/** Address of the form for a motor's reading, with the round that it is a stop of, in the order of the sheet. */
export function readingAddress(study: string, motor: string, round: readonly string[]): string {
  const stops = new URLSearchParams(round.map((id) => ['m', id]));
  return `/${study}/motor/${motor}/reading?${stops}`;
}

/** Where one stands on a round: the place of the motor from 1, of how many, and the motor after it. */
export interface RoundStop {
  readonly at: number;
  readonly of: number;
  readonly next: { readonly id: string; readonly tag: string } | undefined;
}
