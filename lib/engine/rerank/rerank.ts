import { type Decision, decide } from '../decide/decide';
import type { Choice } from '../decide/limits';
import { MOST_HOURS_PER_YEAR } from '../formula/constants';
import { fitsMoney } from '../money/money';
import type { PlanKind } from '../options/flow-counts';
import { type FlowPlan, flowPlan } from '../options/flow-plan';
import { chanceWithin, paybackYears, rebatePaid } from '../options/moving-money';
import type { BeyondRepair } from '../options/option';
import type { PriceGrowth } from '../options/running-prices';
import { compareByPlace, compareWorth } from '../rank';
import type { Settings } from '../settings';
import type { MovableFlow, MovableMotor, MovableOption, MovablePayback } from './movable';

/** What is moved for the whole fleet: factors on what the study states, and the discount rate itself. */
export interface Moves {
  /** On prices of energy, flat or by tariff. */
  readonly energyPrice: number;
  /** On the hours a year of every step; no motor runs longer than a leap year. */
  readonly hours: number;
  /** On everything bought: motors, repairs, installation. */
  readonly cost: number;
  /** Fraction a year, in the terms of the study. */
  readonly discountRate: number;
}

/** One motor as it comes out, with what its chosen option earns. */
export interface Reranked {
  /** Place of the motor among those given. */
  readonly index: number;
  readonly rank: number;
  readonly decision: Decision;
  readonly option: MovableOption | undefined;
  readonly cost: number;
  readonly moneySaved?: number | undefined;
  readonly payback?: number | undefined;
  readonly odds?: number | undefined;
  readonly value?: number | undefined;
}

/** A fleet made ready to be ranked again and again. */
export interface Rerankable {
  readonly motors: readonly MovableMotor[];
  readonly settings: Settings;
  /** Where each motor stands in the natural order of site and tag. */
  readonly places: readonly number[];
  /** What each option of each motor is worth by the terms of its plan; absent where it has no value. */
  readonly worths: readonly (readonly (TermWorths | undefined)[])[];
}

/** What an option is worth by each term of its plan, in their order: as it stands, and the parts that go with energy and with costs. */
interface TermWorths {
  readonly growth: PriceGrowth;
  readonly kind: PlanKind;
  readonly stated: Float64Array;
  readonly energy: Float64Array;
  readonly bought: Float64Array;
  readonly demand: Float64Array;
}

/** Sorts by place once, and lays out what each option is worth, so that a move costs sums of products alone. */
export function rerankable(motors: readonly MovableMotor[], settings: Settings): Rerankable {
  const order = motors.map((_, index) => index).sort((i, j) => byPlace(motors[i], motors[j]));
  const places = new Array<number>(motors.length).fill(0);
  order.forEach((index, place) => {
    places[index] = place;
  });
  // Motors that share a way of growing share one object for it, by which plans are remembered.
  const known = new Map<string, PriceGrowth>();
  const worths = motors.map((motor) => {
    if (!motor.growth) return [];
    const key = JSON.stringify(motor.growth);
    const growth = known.get(key) ?? motor.growth;
    known.set(key, growth);
    return motor.options.map(({ flow }) => flow && termWorths(flow, motor, growth, settings));
  });
  return { motors, settings, places, worths };
}

function termWorths(flow: MovableFlow, motor: MovableMotor, growth: PriceGrowth, settings: Settings): TermWorths {
  const { terms } = flowPlan(settings, growth, flow.kind);
  const laid = () => new Float64Array(terms.length);
  const [stated, energy, bought, demand] = [laid(), laid(), laid(), laid()];
  terms.forEach(({ basis }, index) => {
    // Rebates are reckoned at each move, since their caps are no factor.
    const amount = basis === 'rebate' || basis === 'rebateSame' ? undefined : (flow.amounts[basis] ?? motor.amounts[basis]);
    if (amount === undefined) return;
    if (typeof amount === 'object') [stated[index], energy[index], demand[index]] = amount;
    else {
      stated[index] = amount;
      // A stop costs what it costs; everything else that is not running is bought.
      bought[index] = basis === 'stop' ? 0 : amount;
    }
  });
  return { growth, kind: flow.kind, stated, energy, bought, demand };
}

/** Present value of an option: its terms' worths as moved, each times what the plan makes of it (see `presentSum`). */
function valueAt({ terms }: FlowPlan, worths: TermWorths, scale: Scale, rebates: Rebates): number {
  const { stated, energy, bought, demand } = worths;
  let value = 0;
  let index = 0;
  for (const term of terms) {
    const worth =
      term.basis === 'rebate'
        ? rebates.own
        : term.basis === 'rebateSame'
          ? rebates.same
          : (stated[index] ?? 0) + (scale.energy - 1) * (energy[index] ?? 0) + (scale.cost - 1) * (bought[index] ?? 0);
    value += term.presentValue * worth;
    if (term.delay) value += term.delay.presentValue * (demand[index] ?? 0);
    index += 1;
  }
  return value;
}

function byPlace(a: MovableMotor | undefined, b: MovableMotor | undefined): number {
  return a && b ? compareByPlace(a, b) : 0;
}

/** What changes nothing. */
export function neutralMoves(settings: Settings): Moves {
  return { energyPrice: 1, hours: 1, cost: 1, discountRate: settings.discountRate };
}

/**
 * Decides and ranks the fleet at other prices, hours, costs and another rate, by the same cash-flow plans, formulas and order of decision
 * as an evaluation; without a move the ranking is that of the evaluation. The load, the tariff's demand and reactive charges and the
 * failure rate stay; so does the share of reactive energy that more hours would take.
 *
 * Units: as {@link Moves}. Valid for: factors above zero, rates above −1. Source: linearity of the cash flow in each of the factors.
 */
export function rerank({ motors, settings, places, worths }: Rerankable, moves: Moves): Reranked[] {
  const at: Settings = { ...settings, discountRate: moves.discountRate };
  const found = motors.map((motor, index) => rerankMotor(motor, index, worths[index] ?? [], at, moves));
  const place = ({ index }: Draft) => places[index] ?? 0;
  found.sort((a, b) => compareWorth(a.decision.ranking, b.decision.ranking) || place(a) - place(b));
  return found.map(({ index, decision, chosen }, rank) => ({
    index,
    rank: rank + 1,
    decision,
    option: chosen?.option,
    cost: chosen?.cost ?? 0,
    moneySaved: chosen?.moneySaved,
    payback: chosen?.payback,
    odds: chosen?.probabilityWithinPolicy,
    value: chosen?.value,
  }));
}

interface Draft {
  readonly index: number;
  readonly decision: Decision;
  readonly chosen: Moved | undefined;
}

/** An option as moved. One object for each: fifty thousand are made in a move, and collecting them would cost as much as the arithmetic. */
class Moved implements Choice {
  constructor(
    readonly option: MovableOption,
    readonly cost: number,
    readonly moneySaved: number | undefined,
    readonly value?: number,
    readonly payback?: number,
    readonly probabilityWithinPolicy?: number,
    readonly beyondRepair?: BeyondRepair,
  ) {}

  get id() {
    return this.option.id;
  }
  get action() {
    return this.option.action;
  }
  get timing() {
    return this.option.timing;
  }
  get ratedPowerKw() {
    return this.option.ratedPowerKw;
  }
  get screening() {
    return this.option.findings;
  }
  findings(): MovableOption['findings'] {
    return this.option.findings;
  }
  /** As a decision reads them, which it does of few options. */
  get figures(): Choice['figures'] {
    return { net_present_value: boxed(this.value), simple_payback: boxed(this.payback), money_saved: boxed(this.moneySaved) };
  }
}

function boxed(value: number | undefined): { readonly value: number } | undefined {
  return value === undefined ? undefined : { value };
}

function rerankMotor(
  motor: MovableMotor,
  index: number,
  worths: readonly (TermWorths | undefined)[],
  settings: Settings,
  moves: Moves,
): Draft {
  // A duty that is already longer than a year is left as it is stated.
  const most = motor.hours === undefined || motor.hours <= 0 ? moves.hours : Math.max(1, MOST_HOURS_PER_YEAR / motor.hours);
  const hours = Math.min(moves.hours, most);
  const scale: Scale = { energy: moves.energyPrice * hours, hours, cost: moves.cost };
  const replacement = motor.options.find(({ action, flow }) => action === 'replace' && flow !== undefined);
  const same = replacement?.flow ? rebateAt(replacement, replacement.flow, settings, scale) : 0;
  const options = motor.options.map((option, at) => movedOption(option, worths[at], settings, scale, same));
  const { trust, callsForRepair, mustAct } = motor;
  const decision = decide({ options, trust, callsForRepair, mustAct, motor, settings });
  return { index, decision, chosen: options.find((option) => option.id === decision.option) };
}

/** What programmes pay for the option's motor, and for a premium motor of the present rating. */
interface Rebates {
  readonly own: number;
  readonly same: number;
}

interface Scale {
  /** On the cost of energy: price times hours. */
  readonly energy: number;
  readonly hours: number;
  readonly cost: number;
}

function movedOption(
  option: MovableOption,
  worths: TermWorths | undefined,
  settings: Settings,
  scale: Scale,
  rebateOfSame: number,
): Moved {
  const { flow } = option;
  const more = (scale.energy - 1) * (flow?.energyPart ?? 0);
  const moneySaved = option.moneySaved === undefined ? undefined : option.moneySaved + more;
  const cost = scale.cost * option.cost;
  if (!flow || !worths)
    return option.action === 'keep' ? new Moved(option, cost, moneySaved, 0) : new Moved(option, cost, moneySaved);
  const rebate = rebateAt(option, flow, settings, scale);
  const netCost = scale.cost * flow.netCost - rebate;
  const value = valueAt(flowPlan(settings, worths.growth, worths.kind), worths, scale, { own: rebate, same: rebateOfSame });
  if (!fitsMoney(value) || !fitsMoney(netCost)) return new Moved(option, cost, moneySaved);
  const limit = settings.policy.maxSimplePaybackYears;
  const { payback, probability } = movedPayback(flow, rebate, scale, limit);
  const beyondRepair = flow.beyondRepair && movedPayback(flow.beyondRepair, rebate, scale, limit);
  return new Moved(option, cost, moneySaved, value, payback, probability, beyondRepair);
}

/** Payback and the chance that it keeps the limit, as moved. */
function movedPayback(paid: MovablePayback, rebate: number, scale: Scale, limit: number): BeyondRepair {
  const netCost = scale.cost * paid.netCost - rebate;
  const firstYear = paid.firstYear + (scale.energy - 1) * paid.energyPart;
  return {
    payback: paybackYears(netCost, firstYear),
    probability: chanceWithin(firstYear, netCost, limit, (free) => spreadOf(paid, scale, free ? undefined : limit)),
  };
}

function rebateAt(option: MovableOption, flow: MovableFlow, settings: Settings, scale: Scale): number {
  const { investment } = flow.amounts;
  if (settings.rebates.length === 0 || typeof investment !== 'number') return 0;
  if (option.action !== 'replace' && option.action !== 'resize') return 0;
  return rebatePaid(settings.rebates, option.action, {
    ratedPowerKw: option.ratedPowerKw,
    installedCost: scale.cost * investment,
    savedKwh: scale.hours * flow.savedKwh,
  });
}

/** Standard uncertainty of so many years' saving less the cost, or of a year's saving alone (GUM 5.2.2). */
function spreadOf({ doubts }: MovablePayback, { energy, cost }: Scale, years: number | undefined): number {
  const [ee, er, rr, cc, ec, rc] = doubts;
  const saving = energy * energy * ee + 2 * energy * er + rr;
  const variance =
    years === undefined ? saving : years * years * saving + cost * cost * cc - 2 * years * cost * (energy * ec + rc);
  return Math.sqrt(Math.max(0, variance));
}
