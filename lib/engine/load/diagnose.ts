import type { MotorScope } from '../context';
import { buildMachine, type PlateMachine } from '../machine/build';
import type { KnownPlate, Plate } from '../motor';
import { completePlate } from '../nameplate/complete';
import type { Finding } from '../quantity/finding';
import { Sources } from '../quantity/quantity';
import { type Alone, HIGHEST, isUsable, LOWEST, possibleOnly } from './alone';
import { jointMisfit, speaksOfLoad } from './joint';
import { meterReading } from './metered';
import { MISTAKES, type Mistake, type Proposal } from './mistakes';
import { extraLoss } from './supply-loss';
import { SUSPICION } from './suspicion';

/** Chance that a row holds some mistake before anything is known of it (common practice: one in fifty), shared among the mistakes. */
const PRIOR = 0.02;

/** What the rarity of one mistake costs, in log-odds. */
const RARE = Math.log(MISTAKES.length / PRIOR);

/** Log-odds behind the best so far from which an explanation is not tried, however well it might fit: 1000 to 1. */
const HOPELESS = Math.log(1000);

/** Odds against the next best explanation from which a mistake is named. */
const NAMED_AT = 3;

/** What an unnamed mistake costs, in log-odds: each of two or three values could be anything (common practice). */
const ANYTHING = 12;

/** A mistake that explains what otherwise does not fit. */
export interface Suspicion {
  readonly row: number;
  /** The reading without what the named mistakes touch. */
  readonly without: Mistake['without'];
  /** Whether one mistake is named; of two, neither excuses a value that cannot be. */
  readonly alone: boolean;
  readonly finding: Finding;
}

/**
 * Tries the usual mistakes, once each, on every reading, and names the one that repairs the fit.
 *
 * Each explanation has the log-odds −χ²/2, its prior, and what its freedom costs; to be a mere chance has no prior against it. The best is
 * named when it is three times as likely as the next; else two of the same row are named if together they are three times as likely as the
 * third and no value of the row is left out as impossible already; else nothing is said, since a wrong cause sends people the wrong way.
 * It suggests only: what is doubtful is left out of the estimate, nothing is put in its place.
 * Source: Bayes' rule with Gaussian residuals; the prior is common practice.
 */
export function diagnose(
  scope: MotorScope,
  plate: Plate,
  fromPlate: PlateMachine,
  asRead: readonly Alone[],
): Suspicion | undefined {
  const quiet: MotorScope = { ...scope, sources: new Sources(), trace: undefined };
  const explanations: { row: number; mistake?: Mistake; score: number }[] = [];
  const chance = asRead.some(isImpossible) ? undefined : scoreOf(quiet, fromPlate, asRead);
  if (chance !== undefined) explanations.push({ row: 0, score: chance });
  let lowest = chance ?? Number.POSITIVE_INFINITY;
  asRead.forEach((each, place) => {
    if (each.reading.readingCondition === 'uncoupled') return;
    const { reading } = each;
    if (asRead.some((other, i) => i !== place && isImpossible(other))) return;
    for (const mistake of MISTAKES) {
      // A stamped current that the plate itself refutes is left out already and said so.
      if (mistake.code === 'stamped-current-not-the-motors' && fromPlate.machine.plate.origins.current !== 'stamped') continue;
      let best: number | undefined;
      for (const proposal of mistake.propose(reading, plate, quiet)) {
        if (proposal.cost + RARE > lowest + HOPELESS) continue;
        const score = mended(quiet, plate, fromPlate, asRead, place, proposal)?.score;
        if (score !== undefined && (best === undefined || score + proposal.cost < best)) best = score + proposal.cost;
      }
      if (best === undefined) continue;
      explanations.push({ row: reading.row, mistake, score: best + RARE });
      lowest = Math.min(lowest, best + RARE);
    }
  });
  // Something else, that leaves the rows without any say: what a named mistake has to beat.
  explanations.push({ row: 0, score: fromPlate.fit.chiSquared / 2 + RARE + ANYTHING });
  explanations.sort((a, b) => a.score - b.score);
  const [first, second, third] = explanations;
  if (!first?.mistake) return undefined;
  const { row, mistake } = first;
  const odds = oddsAgainst(second?.score, first.score);
  if (odds >= NAMED_AT)
    return { row, without: mistake.without, alone: true, finding: SUSPICION.make(mistake.code, { row, odds }) };
  if (!second?.mistake || second.row !== row) return undefined;
  // A value that cannot be is left out already and said so; to doubt what the load now rests on as well would leave nothing.
  if (asRead.some((each) => each.reading.row === row && each.failed.length > 0 && isUsable(each))) return undefined;
  const { mistake: other } = second;
  // Two that no reading at hand tells apart are as good a lead as one, if nothing else comes near the two together.
  const together = oddsAgainst(third?.score, first.score) * (1 + 1 / odds);
  if (together < NAMED_AT) return undefined;
  return {
    row,
    alone: false,
    without: (reading) => other.without(mistake.without(reading)),
    finding: SUSPICION.make('one-of-two-mistakes', { row, odds: together, first: mistake.code, second: other.code }),
  };
}

/** How many times as likely as another explanation one is, by their scores; capped where the difference is beyond all doubt. */
function oddsAgainst(other: number | undefined, score: number): number {
  return other === undefined ? 1e6 : Math.exp(Math.min(50, other - score));
}

/** True where a value cannot be, so that mere chance explains nothing. */
export function isImpossible(each: Alone): boolean {
  return each.disqualified || each.failed.length > 0 || each.findings.some(({ code }) => REFUSED.has(code));
}

/** Findings of values that were refused: something is wrong with the row, whatever the rest says. */
const REFUSED: ReadonlySet<string> = new Set([
  'speed-above-synchronous',
  'speed-not-the-motors',
  'voltage-far-from-plate',
  'voltage-phase-for-line',
]);

/** Half the misfit with one reading, or the plate, as a proposal has it, and that reading’s load; `undefined` when that is not possible either. */
export function mended(
  scope: MotorScope,
  plate: Plate,
  fromPlate: PlateMachine,
  asRead: readonly Alone[],
  place: number,
  { plate: otherPlate, reading }: Proposal,
): { readonly score: number; readonly load: number } | undefined {
  const machine = otherPlate ? machineOfPlate(scope, otherPlate) : fromPlate;
  const free = reading.readingCondition === 'uncoupled';
  const metered = meterReading(scope, otherPlate ?? plate, machine.machine, { ...reading, readingCondition: 'coupled' });
  if (!speaksOfLoad(metered)) return undefined;
  // A motor that runs free behind a drive takes at least what the waveform adds: no input below that is explained so.
  const extra = extraLoss(metered.supplyLoss);
  if (free && extra && reading.inputPowerKw !== undefined && reading.inputPowerKw <= extra.value) return undefined;
  if (metered.findings.some(({ code, severity }) => severity === 'disqualifies' || REFUSED.has(code))) return undefined;
  const others = asRead.filter((each, i) => i !== place && isUsable(each)).map(possibleOnly);
  const found = jointMisfit(scope, machine, [...others, metered], free ? others.length : -1);
  const load = found?.loads.at(-1);
  if (!found || load === undefined || (!free && !(load > LOWEST && load < HIGHEST))) return undefined;
  return { score: found.chiSquared / 2, load };
}

function machineOfPlate(scope: MotorScope, plate: KnownPlate): PlateMachine {
  return buildMachine(scope, plate, completePlate(scope, plate, '').plate, '');
}

/** Half the misfit of all as read, the prior of the load included. */
function scoreOf(scope: MotorScope, fromPlate: PlateMachine, all: readonly Alone[]): number | undefined {
  const usable = all.filter(isUsable);
  const found = usable.length > 0 ? jointMisfit(scope, fromPlate, usable.map(possibleOnly)) : undefined;
  return found && found.chiSquared / 2;
}
