import { IMPOSSIBLE_DUTY } from '../decide/limits';
import type { Evaluation } from '../evaluate';
import type { Plate } from '../motor';
import type { Basis, PlanKind } from '../options/flow-counts';
import type { CostAndSaving, Option } from '../options/option';
import type { PriceGrowth } from '../options/running-prices';
import type { Worth, Worths } from '../options/worth';
import type { Finding } from '../quantity/finding';
import { covariance, EXACT, scaleParts } from '../quantity/quantity';
import type { Action, Timing, TrustLevel } from '../result';

/** A year's running in currency: all of it, the part that is energy, the part that is demand; or an outlay. */
type Amount = readonly [total: number, energy: number, demand: number] | number;

/** What one unit of each basis is worth at the study's prices. */
type Amounts = { readonly [B in Basis]?: Amount };

/** An option as far as prices, hours, costs and the discount rate move it. */
export interface MovableOption {
  readonly id: string;
  readonly action: Action;
  readonly timing: Timing;
  readonly ratedPowerKw: number;
  readonly efficiencyClass?: string | undefined;
  /** In currency. */
  readonly cost: number;
  /** Currency a year; absent where no saving could be told. */
  readonly moneySaved?: number | undefined;
  /** Absent where no value could be given. */
  readonly flow?: MovableFlow | undefined;
  /** Those that a decision looks at. */
  readonly findings: readonly Pick<Finding, 'code' | 'severity' | 'evidence'>[];
}

export interface MovableFlow extends MovablePayback {
  readonly kind: PlanKind;
  /** What this option's machine takes and costs, beside what the motor's options share. */
  readonly amounts: Amounts;
  /** Saved against the motor as it is, for rebates by the kilowatt-hour. */
  readonly savedKwh: number;
  /** Of the payback beyond a repair, where the condition calls for one. */
  readonly beyondRepair?: MovablePayback | undefined;
}

/** What a payback counts. */
export interface MovablePayback {
  /** Before rebates; in currency. */
  readonly netCost: number;
  /** The saving, and the part of it that is energy; in currency a year. */
  readonly firstYear: number;
  readonly energyPart: number;
  /** Variances and covariances of the energy part e, of the rest of the saving r and of the net cost c. */
  readonly doubts: readonly [ee: number, er: number, rr: number, cc: number, ec: number, rc: number];
}

/** One motor's options and what its decision rests on, as plain data without tables or circuits. */
export interface MovableMotor {
  readonly site: string;
  readonly tag: string;
  readonly trust: TrustLevel;
  readonly callsForRepair: readonly ('rewind' | 'bearing-job')[];
  readonly mustAct: boolean;
  readonly plate: Pick<Plate, 'status' | 'ratedPowerUnit'>;
  readonly readings: { readonly length: number };
  /** Hours a year of its duty; absent when they are not known. */
  readonly hours?: number | undefined;
  readonly growth?: PriceGrowth | undefined;
  /** What all its options share. */
  readonly amounts: Amounts;
  readonly options: readonly MovableOption[];
}

/** Worth the same for every option of a motor. */
const SHARED: ReadonlySet<string> = new Set<Basis>([
  'old',
  'oldRepaired',
  'same',
  'repairNow',
  'rebateSame',
  'repairAtFailure',
  'repairLater',
  'workNow',
  'workAtFailure',
  'workLater',
  'sameInstalled',
  'sameAgain',
  'purchaseSame',
  'oldWorth',
  'stop',
]);

/**
 * Takes from an evaluation what its ranking at other prices, hours, costs and rates needs (see `rerank`).
 * Units: currency, currency a year, kWh a year. The doubts are those of the evaluation (GUM 5.2.2).
 */
export function movableOf(evaluation: Evaluation): MovableMotor {
  const { motor, options, condition, duty, trust } = evaluation;
  const valued = options.find((option) => option.workings !== undefined);
  return {
    site: motor.site,
    tag: motor.tag,
    trust: trust.level,
    callsForRepair: condition.callsForRepair,
    mustAct: condition.mustAct,
    plate: { status: motor.plate.status, ratedPowerUnit: motor.plate.ratedPowerUnit },
    readings: { length: motor.readings.length },
    hours: duty?.points.reduce((sum, point) => sum + point.hours.value, 0),
    growth: valued?.workings?.growth,
    amounts: sharedBy(options),
    options: options.map(movableOption),
  };
}

function sharedBy(options: readonly Option[]): Amounts {
  const all: { [B in Basis]?: Amount } = {};
  for (const { workings } of options) if (workings) Object.assign(all, amountsOf(workings.worths, true));
  return all;
}

function amountsOf(worths: Worths, shared: boolean): Amounts {
  const amounts: { [name: string]: Amount } = {};
  for (const [basis, worth] of Object.entries(worths))
    if (worth && SHARED.has(basis) === shared) amounts[basis] = amountOf(worth);
  return amounts;
}

function amountOf({ quantity, energy, demand }: Worth): Amount {
  return energy === undefined ? quantity.value : [quantity.value, energy, demand ?? 0];
}

function movableOption(option: Option): MovableOption {
  return {
    id: option.id,
    action: option.action,
    timing: option.timing,
    ratedPowerKw: option.ratedPowerKw,
    efficiencyClass: option.efficiencyClass,
    cost: option.figures.cost.value,
    moneySaved: option.figures.money_saved?.value,
    flow: flowOf(option),
    findings: option
      .findings()
      .flatMap(({ code, severity, evidence }) =>
        code === 'check-before' || code === IMPOSSIBLE_DUTY || severity === 'disqualifies' ? [{ code, severity, evidence }] : [],
      ),
  };
}

function flowOf({ workings, figures }: Option): MovableFlow | undefined {
  if (!workings) return undefined;
  const { kind, worths, netCost, firstYear, energyPart, beyondRepair } = workings;
  const { old, option } = worths;
  const price = old?.energy !== undefined && old.kwh ? old.energy / old.kwh : 0;
  const rebate = worths.rebate?.quantity.value ?? 0;
  return {
    kind,
    amounts: amountsOf(worths, false),
    savedKwh: (old?.kwh ?? 0) - (option?.kwh ?? 0),
    ...movablePayback({ netCost, firstYear, energySaved: figures.energy_saved, energyPart }, price, rebate),
    beyondRepair: beyondRepair && movablePayback(beyondRepair, price, rebate),
  };
}

/** Cost and saving of a payback with the doubts that a move scales. `price` is that of a kilowatt-hour; the rebate is reckoned anew at each move. */
function movablePayback(
  {
    netCost,
    firstYear,
    energySaved,
    energyPart,
  }: Omit<CostAndSaving, 'energySaved'> & { readonly energySaved: CostAndSaving['energySaved'] | undefined },
  price: number,
  rebate: number,
): MovablePayback {
  const energy = { parts: energySaved ? scaleParts(energySaved.parts, price) : EXACT };
  const ee = covariance(energy, energy);
  const es = covariance(energy, firstYear);
  const ec = covariance(energy, netCost);
  return {
    netCost: netCost.value + rebate,
    firstYear: firstYear.value,
    energyPart,
    // The rest of the saving is the saving less its energy.
    doubts: [
      short(ee),
      short(es - ee),
      short(covariance(firstYear, firstYear) - 2 * es + ee),
      short(covariance(netCost, netCost)),
      short(ec),
      short(covariance(firstYear, netCost) - ec),
    ],
  };
}

/** Nine figures of a variance are more than anyone needs, and half as long to send. */
function short(variance: number): number {
  return variance === 0 ? 0 : Number(variance.toPrecision(9));
}
