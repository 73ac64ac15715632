import { optionWords } from '../decide/limits';
import { type Evaluation, evaluateMotor } from '../evaluate';
import { MOST_HOURS_PER_YEAR } from '../formula/constants';
import type { DutyStep, Motor } from '../motor';
import { fixed } from '../quantity/words';
import { moved, type Question, statedHours } from './lever';

/** What is moved to see where the decision turns: a price, the hours, the cost of what is bought, or the load of every step of the duty. */
const TURNING_LEVERS = ['energy-price', 'hours', 'cost', 'load'] as const;
type TurningLever = (typeof TURNING_LEVERS)[number];

/** The nearest point at which another option is decided. */
interface Turning {
  readonly lever: TurningLever;
  /** Factor on what is stated today. */
  readonly factor: number;
  /** The option that takes over, by id. */
  readonly option: string;
  /** In one sentence, with the number that it means where there is one. */
  readonly text: string;
}

/** The decision's best rival by value, and what would turn the decision. */
export interface Turnings {
  readonly decided: string;
  readonly runnerUp?: { readonly option: string; readonly words: string; readonly value: number } | undefined;
  /** Nearest first; a lever that turns nothing within its range is left out. */
  readonly turnings: readonly Turning[];
}

/** Factors are tried up to this and down to its inverse. */
const FARTHEST = 4;
/** Steps to either end, and halvings between the two that differ. */
const STEPS = 12;
const HALVINGS = 14;
/** Share of its rating beyond which no motor runs for long, whatever its service factor (common practice). */
const MOST_LOAD = 1.5;

/**
 * The runner-up of a decision, and for each lever the nearest factor at which the motor, evaluated again in full, is decided otherwise. For a
 * page, not for a fleet: up to a hundred evaluations.
 * Units: factors. Valid for: factors from 1/4 to 4, hours up to those of a leap year, loads up to half as much again as the rating.
 */
export function turnings(question: Question): Turnings {
  const now = evaluateMotor(question.motor, question.study);
  const decided = now.decision.option;
  const found: Turning[] = [];
  for (const lever of TURNING_LEVERS) {
    const at = (factor: number) => decisionAt(question, now, lever, factor);
    // A duty written out by its steps has no doubt of the reading's own: where that alone decides otherwise, nothing may be said.
    if (at(1)?.option !== decided) continue;
    const most = highestFactor(question, now, lever);
    const nearest = [nearestTurn(at, decided, most), nearestTurn(at, decided, 1 / FARTHEST)]
      .filter((factor) => factor !== undefined)
      .sort((a, b) => Math.abs(Math.log(a)) - Math.abs(Math.log(b)))[0];
    const next = nearest === undefined ? undefined : at(nearest);
    if (nearest !== undefined && next)
      found.push({ lever, factor: nearest, option: next.option, text: sentence(question, lever, nearest, next.words) });
  }
  found.sort((a, b) => Math.abs(Math.log(a.factor)) - Math.abs(Math.log(b.factor)));
  return { decided, runnerUp: runnerUp(now), turnings: found };
}

function runnerUp({ options, decision, motor }: Evaluation): Turnings['runnerUp'] {
  let best: Turnings['runnerUp'];
  for (const option of options) {
    const value = option.figures.net_present_value?.value;
    // A failed motor cannot be kept, so that keeping it is no rival.
    if (option.action === 'keep' && motor.plate.status === 'failed') continue;
    if (option.id === decision.option || value === undefined || (best && value <= best.value)) continue;
    best = { option: option.id, words: timed(option, motor), value };
  }
  return best;
}

function timed(option: Evaluation['options'][number], motor: Motor): string {
  const words = optionWords(option, motor.plate);
  if (option.action === 'keep') return words;
  return `${words}${option.timing === 'at-failure' ? ' at failure' : ' now'}`;
}

function decisionAt(
  question: Question,
  now: Evaluation,
  lever: TurningLever,
  factor: number,
): { option: string; words: string } | undefined {
  const { motor, study } = lever === 'load' ? withLoad(question, now, factor) : moved(question, lever, factor);
  const { decision, options } = evaluateMotor(motor, study);
  const option = options.find((each) => each.id === decision.option);
  return option && { option: option.id, words: timed(option, motor) };
}

/** The duty in force written out in shares of the rating, each multiplied; hours stay. */
function withLoad({ motor, study }: Question, { duty }: Evaluation, factor: number): Question {
  if (!duty) return { motor, study };
  const steps: DutyStep[] = duty.points.map(({ loadFraction, hours }) => ({
    fraction: loadFraction.value * factor,
    hoursPerYear: hours.value,
  }));
  return { motor: { ...motor, plateDuty: { row: Number.MAX_SAFE_INTEGER, steps } }, study };
}

function highestFactor(question: Question, { duty }: Evaluation, lever: TurningLever): number {
  const hours = statedHours(question);
  const highest = Math.max(0, ...(duty?.points ?? []).map(({ loadFraction }) => loadFraction.value));
  const within = (most: number, now: number | undefined): number =>
    now ? Math.max(1, Math.min(FARTHEST, most / now)) : FARTHEST;
  if (lever === 'hours') return within(MOST_HOURS_PER_YEAR, hours);
  return lever === 'load' ? within(MOST_LOAD, highest) : FARTHEST;
}

/** The factor nearest to 1 on the way to an end at which another option is decided, halved to about one part in ten thousand. */
function nearestTurn(at: (factor: number) => { option: string } | undefined, decided: string, end: number): number | undefined {
  const differs = (factor: number) => (at(factor)?.option ?? decided) !== decided;
  let near = 1;
  for (let step = 1; step <= STEPS; step++) {
    const far = end ** (step / STEPS);
    if (!differs(far)) {
      near = far;
      continue;
    }
    let beyond = far;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = Math.sqrt(near * beyond);
      if (differs(middle)) beyond = middle;
      else near = middle;
    }
    return beyond;
  }
  return undefined;
}

function sentence(question: Question, lever: TurningLever, factor: number, words: string): string {
  const { settings } = question.study;
  const change = Math.abs(100 * (factor - 1));
  const percent = `${change < 0.5 ? 'less than 1' : change.toFixed(0)} % ${factor > 1 ? 'more' : 'less'}`;
  const hours = statedHours(question);
  switch (lever) {
    case 'energy-price':
      return Object.hasOwn(settings.tariffs, question.motor.site)
        ? `With energy at ${percent} the decision would turn to ${words}.`
        : `With energy at ${(settings.energyPricePerKwh * factor).toFixed(3)} ${settings.currency} a kWh (${percent}) the decision would turn to ${words}.`;
    case 'hours':
      return `With ${hours === undefined ? percent : `${fixed(hours * factor, 0)} hours a year (${percent})`} the decision would turn to ${words}.`;
    case 'cost':
      return `With everything bought for ${percent} the decision would turn to ${words}.`;
    default:
      return `With ${percent} load at every step of the duty the decision would turn to ${words}.`;
  }
}
