import type { Sum } from '@/lib/engine';
import type { MovableMotor, Moves, Settings } from '@/lib/engine/client';

/** One motor of the ranking; amounts in units of the study's currency. */
export interface RankedMotor {
  readonly motorId: string | undefined;
  readonly rank: number;
  readonly site: string;
  readonly tag: string;
  readonly area: string | undefined;
  readonly trust: 'sound' | 'provisional' | 'not-usable';
  readonly action: string;
  readonly timing: string;
  /** Id of the decided option, as derivations name it. */
  readonly option: string;
  /** Rating and class of the motor to be bought; absent where none is. */
  readonly bought: { readonly ratedPowerKw: number; readonly efficiencyClass: string | undefined } | undefined;
  readonly cost: number | undefined;
  readonly moneySaved: number | undefined;
  readonly moneySavedU: number | undefined;
  readonly payback: number | undefined;
  readonly paybackU: number | undefined;
  readonly value: number | undefined;
  readonly valueU: number | undefined;
  /** Chance that the payback stays within policy. */
  readonly odds: number | undefined;
  readonly because: readonly string[];
}

/** What one kind of decision comes to over the fleet. */
export interface DecisionSum {
  readonly action: string;
  readonly timing: string;
  /** Motors so decided, those that are not usable too. */
  readonly count: number;
  /** Those of them whose figures may be used: the sums are theirs alone. */
  readonly usable: number;
  readonly cost: number;
  readonly saved: number;
  readonly value: number;
}

export interface RankingSum {
  readonly total: number;
  readonly notUsable: number;
  /** Motors in service with usable figures of which no saving can be told, since nobody said for how long in a year they run. */
  readonly hoursUnknown: number;
  /** Replacements now with usable figures whose payback keeps the policy's limit with the odds it asks for. */
  readonly withinPolicy: number;
  readonly groups: readonly DecisionSum[];
  /** What the replacements now with usable figures save in a year, and how sure that is: a meter that read several motors counts once. */
  readonly savedNow: Sum;
}

/** What a fleet's ranking at other prices needs, as it is sent to the browser. */
export interface MovablePack {
  /** Without tariffs: their prices are in the motors already. */
  readonly settings: Settings;
  readonly motors: readonly {
    readonly id: string | null;
    readonly area: string | null;
    readonly motor: MovableMotor;
  }[];
}

/** One thing that can be moved for the whole fleet: its name in an address, its ends and its step. Rates in per cent, the others as factors. */
interface FleetLever {
  readonly id: keyof Moves;
  readonly name: string;
  readonly label: string;
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

export const FLEET_LEVERS: readonly FleetLever[] = [
  { id: 'energyPrice', name: 'price', label: 'Energy price', least: 0.25, most: 4, step: 0.05 },
  { id: 'hours', name: 'hours', label: 'Hours', least: 0.25, most: 4, step: 0.05 },
  { id: 'cost', name: 'cost', label: 'Costs', least: 0.25, most: 4, step: 0.05 },
  { id: 'discountRate', name: 'rate', label: 'Discount rate', least: 0, most: 30, step: 0.5 },
];

/** The moves that an address states; what is missing or no number stays as the study has it, and what lies beyond an end goes to it. */
export function readMoves(text: (name: string) => string | undefined, discountRate: number): Moves {
  const moves = { energyPrice: 1, hours: 1, cost: 1, discountRate };
  for (const { id, name, least, most } of FLEET_LEVERS) {
    const given = text(name);
    const value = given === undefined || given.trim() === '' ? Number.NaN : Number(given);
    if (!Number.isFinite(value)) continue;
    const kept = Math.min(most, Math.max(least, value));
    moves[id] = id === 'discountRate' ? kept / 100 : kept;
  }
  return moves;
}

/** A lever's position as people see it: per cent for the rate, a factor else. */
export function shownMove(moves: Moves, id: keyof Moves): number {
  return id === 'discountRate' ? Number((100 * moves.discountRate).toFixed(6)) : moves[id];
}

/** The moves as an address states them; what stands as the study has it is left out. */
export function writeMoves(moves: Moves, discountRate: number): Record<string, string> {
  const neutral: Moves = { energyPrice: 1, hours: 1, cost: 1, discountRate };
  const stated = FLEET_LEVERS.filter(({ id }) => moves[id] !== neutral[id]);
  return Object.fromEntries(stated.map(({ id, name }) => [name, String(shownMove(moves, id))]));
}
