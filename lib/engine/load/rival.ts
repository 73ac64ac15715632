import type { MotorScope } from '../context';
import type { PlateMachine } from '../machine/build';
import type { Plate } from '../motor';
import { Sources, standardUncertainty } from '../quantity/quantity';
import { type Alone, isUsable, possibleOnly } from './alone';
import { mended } from './diagnose';
import { type JointFit, PRIOR_LOAD } from './joint';
import { MISTAKES, POWER_MISTAKES, type PowerMistake } from './mistakes';

/** A mistake of the power meter with which the readings fit no worse than as they stand. */
export interface Rival {
  readonly row: number;
  readonly mistake: PowerMistake;
  /** Load (fraction of rating) had the mistake been made. */
  readonly load: number;
}

/** Sensors are put on anew for each motor, the unit of a meter is set once: a third as often, in log-odds (common practice). */
const SELDOM: Readonly<Record<PowerMistake, number>> = {
  'power-sensor-reversed': 0,
  'power-sensor-missing': 0,
  'power-in-horsepower': Math.log(3),
};

/**
 * Whether power and a second way to the load confirm one another, or would agree as well had a usual mistake of the power meter been made.
 *
 * A power factor below 1/√3 is one that a two-element meter shows of any motor with a sensor turned round (V I sin φ); then volts and amperes
 * speak against it only as far as the magnetising current is known. The score is that of {@link mended}: half the misfit and what the
 * mistake's freedom costs. How rare mistakes are does not count, since rarity confirms nothing. Returns the likeliest rival, or `undefined`. Valid for readings with power and amperes or speed.
 * Source: two-wattmeter method, any textbook of electrical measurement; Bayes' rule with equal odds (common practice).
 */
export function rivalOf(
  scope: MotorScope,
  plate: Plate,
  fromPlate: PlateMachine,
  asRead: readonly Alone[],
  fit: JointFit | undefined,
): Rival | undefined {
  if (!fit) return undefined;
  const quiet: MotorScope = { ...scope, sources: new Sources(), trace: undefined };
  // What the plate misfits by itself no reading repairs: a mistake that costs more than the rest has lost already.
  const plateAlone = fromPlate.fit.chiSquared / 2;
  let least = fit.fit.chiSquared / 2;
  let found: Rival | undefined;
  asRead.forEach((each, place) => {
    const { inputPower, current, speed } = possibleOnly(each);
    const { reading } = each;
    if (!isUsable(each) || !inputPower || !(current || speed)) return;
    for (const code of POWER_MISTAKES)
      for (const proposal of MISTAKES.find((mistake) => mistake.code === code)?.propose(reading, plate, quiet) ?? []) {
        const ratio = (proposal.reading.inputPowerKw ?? 0) / (reading.inputPowerKw ?? 1);
        const cost = proposal.cost + SELDOM[code];
        if (plateAlone + cost >= least || !worthTrying(each, ratio, cost)) continue;
        const other = mended(quiet, plate, fromPlate, asRead, place, proposal);
        if (!other || other.score + cost > least) continue;
        least = other.score + cost;
        found = { row: reading.row, mistake: code, load: other.load };
      }
  });
  return found;
}

/** Loads nearer to one another than this (fraction of rating) lead to the same decisions (common practice). */
const MATTERS = 0.05;

/** How far behind, in log-odds, a proposal may be by rule of thumb and still be tried. */
const MARGIN = 1;

/**
 * Whether a power `ratio` times as large would mean another load, and may fit: by a rule of thumb that spares most fits, from what each other
 * way to the load says alone, with an even doubt, and from the load before anything is read.
 */
function worthTrying(each: Alone, ratio: number, cost: number): boolean {
  const power = each.estimates.find(({ method }) => method === 'input-power')?.loadFraction.value;
  if (power === undefined || power * Math.abs(ratio - 1) < MATTERS) return false;
  let gain = MARGIN - cost;
  const speak = (value: number, u: number): void => {
    gain += ((value - power) ** 2 - (value - power * ratio) ** 2) / (2 * u * u);
  };
  speak(PRIOR_LOAD.value, PRIOR_LOAD.u);
  for (const { method, loadFraction } of each.estimates)
    if (method === 'current' || method === 'slip') speak(loadFraction.value, standardUncertainty(loadFraction));
  return gain > 0;
}
