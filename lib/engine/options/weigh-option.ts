import type { MotorScope } from '../context';
import { apply, leaf, solved } from '../formula/apply';
import * as $ from '../generated/money';
import * as O from '../generated/options';
import { fitsMoney, fromMoney, toMoney } from '../money/money';
import { paybackTime } from '../money/payback';
import { rateOfReturn } from '../money/rate-of-return';
import { withRelief } from '../money/tax-relief';
import { once } from '../once';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity, scaleParts } from '../quantity/quantity';
import type { Action, Timing } from '../result';
import { ofYear, priceIndex } from '../tariff/tariff';
import { OPTIONS } from './findings';
import type { PlanKind } from './flow-counts';
import { type FlowPlan, flowPlan } from './flow-plan';
import { paybackYears } from './moving-money';
import type { BeyondRepair, CostAndSaving, Option, OptionFigures } from './option';
import { shortRating } from './ratings';
import type { RunningYear } from './running';
import type { PriceGrowth } from './running-prices';
import { energySavedByYear, probabilityWithin, ratioDoubt, type ValuedFlow, valueFlow, type Worths } from './value';

/** One option before it is valued. */
export interface Candidate {
  readonly action: Action;
  readonly timing: Timing;
  readonly kind: PlanKind;
  readonly ratedPowerKw: number;
  readonly efficiencyClass?: string | undefined;
  readonly nominalEfficiencyPct?: number | undefined;
  /** What is to be spent for it: the installed cost, or at failure what it costs beyond the repair. */
  readonly cost: Quantity<'currency'>;
  /** What the payback counts: the cost less rebates, and less the repair that is spared. */
  readonly netCost: Quantity<'currency'>;
  /** A year as it would otherwise be, and with the option. */
  readonly before: RunningYear | undefined;
  readonly after: RunningYear | undefined;
  /** The repair that the condition calls for and that the option spares, and a year after it. */
  readonly sparedRepair?: { readonly installed: Quantity<'currency'>; readonly year: RunningYear | undefined } | undefined;
  readonly worths: Worths;
  readonly growth: PriceGrowth;
  /** False when a price is missing without which the flow has no value. */
  readonly valued: boolean;
  /** True when the condition raises the risk of a stop whose cost is not known. */
  readonly stopCostUnknown: boolean;
  /** What is said of the load that it is weighed at. */
  readonly screening: readonly Finding[];
  /** The rest of what is to be said of it before it is valued. */
  readonly findings: () => readonly Finding[];
}

/**
 * Weighs one option: yearly savings, payback, value, rate of return, and findings where a figure cannot be given.
 * Returns `undefined` when its cost is too large to be kept exactly.
 */
export function weighOption(scope: MotorScope, candidate: Candidate): Option | undefined {
  const { settings } = scope;
  if (!fitsMoney(candidate.cost.value) || !fitsMoney(candidate.netCost.value)) return undefined;
  const own: Finding[] = [];
  const yearly = yearlyFigures(scope, candidate);
  const { money } = yearly;
  const plan = flowPlan(settings, candidate.growth, candidate.kind);
  const flow = money && candidate.valued ? valueFlow(scope, plan, candidate.worths) : undefined;
  if (money && candidate.valued && !flow) own.push(OPTIONS.make('amount-too-large', {}));
  const firstYear = money && firstYearSaving(scope, candidate, money);
  const payback = flow && firstYear ? simplePayback(scope, candidate, firstYear) : undefined;
  const beyondRepair = flow && candidate.sparedRepair && besideRepair(scope, candidate, candidate.sparedRepair);
  if (flow && money && firstYear && !payback)
    own.push(
      OPTIONS.make('no-saving', {
        action: candidate.action,
        money_saved: firstYear.value,
        energy_saved: yearly.figures.energy_saved?.value ?? 0,
        currency: settings.currency,
      }),
    );
  if (flow && candidate.stopCostUnknown) own.push(OPTIONS.make('stop-cost-unknown', {}));
  const figures: OptionFigures = {
    cost: candidate.cost,
    ...yearly.figures,
    ...(flow && {
      simple_payback: payback,
      discounted_payback: payback && discountedPayback(scope, candidate, flow, payback, own),
      net_present_value: flow.netPresentValue,
      failure_cost_change: candidate.stopCostUnknown ? undefined : flow.failureCostChange,
    }),
  };
  const energy = yearly.figures.energy_saved?.value ?? 0;
  return {
    id: `${candidate.action}-${candidate.timing}${ratingWords(candidate)}`,
    action: candidate.action,
    timing: candidate.timing,
    ratedPowerKw: candidate.ratedPowerKw,
    efficiencyClass: candidate.efficiencyClass,
    nominalEfficiencyPct: candidate.nominalEfficiencyPct,
    figures,
    internalRateOfReturn: flow && internalRate(flow, payback !== undefined, own),
    savingsToInvestment: flow && savingsRatio(flow, payback !== undefined, own),
    savingsToInvestmentDoubt:
      flow && flow.outlay > LEAST_OUTLAY ? () => ratioDoubt(scope, plan, candidate.worths, flow) : undefined,
    emissionsByYear: flow && emissionsByYear(scope, candidate, plan),
    marginalPrice: money && energy !== 0 ? money.value / energy : undefined,
    probabilityWithinPolicy:
      flow && firstYear && probabilityWithin(firstYear, candidate.netCost, settings.policy.maxSimplePaybackYears),
    beyondRepair: beyondRepair && policyFigures(beyondRepair, settings.policy.maxSimplePaybackYears),
    workings:
      flow && firstYear
        ? {
            kind: candidate.kind,
            plan,
            growth: candidate.growth,
            worths: candidate.worths,
            netCost: candidate.netCost,
            firstYear,
            beyondRepair,
            energyPart: (candidate.before?.cost?.energy ?? 0) - (candidate.after?.cost?.energy ?? 0),
          }
        : undefined,
    lines: flow?.lines,
    cashFlow: flow?.cashFlow ?? [],
    netPresentValueByYear: byYear(candidate, flow),
    screening: candidate.screening,
    findings: once(() => [...candidate.screening, ...candidate.findings(), ...own]),
  };
}

/** Cost and saving against the motor after the repair, in place of against the motor as it is. */
function besideRepair(
  scope: MotorScope,
  candidate: Candidate,
  { installed, year: before }: NonNullable<Candidate['sparedRepair']>,
): CostAndSaving | undefined {
  const { after } = candidate;
  if (!before?.cost || !before.energy || !after?.cost || !after.energy) return undefined;
  const saving = apply(scope, $.money_saved, { before: before.cost.total, after: after.cost.total });
  return {
    netCost: apply(scope, $.net_cost, { outlay: candidate.netCost, relief: installed }),
    firstYear: firstYearSaving(scope, { ...candidate, before }, saving),
    energySaved: apply(scope, O.energy_saved, { before: before.energy, after: after.energy }),
    energyPart: before.cost.energy - after.cost.energy,
  };
}

function policyFigures({ netCost, firstYear }: CostAndSaving, limit: number): BeyondRepair {
  return {
    payback: paybackYears(netCost.value, firstYear.value),
    probability: probabilityWithin(firstYear, netCost, limit),
  };
}

/** By the factor of each year, where the settings state one for each. */
function emissionsByYear({ settings }: MotorScope, { worths }: Candidate, plan: FlowPlan): number[] | undefined {
  const factor = settings.emissionFactorKgPerKwh;
  if (typeof factor === 'number') return undefined;
  const [, ...saved] = energySavedByYear(plan, worths, settings.horizonYears);
  return saved.map((kwh, year) => kwh * ofYear(factor, year));
}

/** The rating in an option's id, where it tells options apart. */
function ratingWords(candidate: Candidate): string {
  if (candidate.action !== 'replace' && candidate.action !== 'resize') return '';
  return `-${shortRating(candidate.ratedPowerKw)}-${candidate.efficiencyClass ?? 'premium'}`;
}

function yearlyFigures(
  scope: MotorScope,
  { before, after }: Candidate,
): { money: Quantity<'currency/a'> | undefined; figures: Partial<OptionFigures> } {
  if (!before || !after) return { money: undefined, figures: {} };
  const demand_saved = apply(scope, O.demand_saved, { before: before.demand, after: after.demand });
  if (!before.energy || !after.energy || !before.cost || !after.cost) return { money: undefined, figures: { demand_saved } };
  const energy_saved = apply(scope, O.energy_saved, { before: before.energy, after: after.energy });
  const money = apply(scope, $.money_saved, { before: before.cost.total, after: after.cost.total });
  const factor = leaf(scope, {
    value: ofYear(scope.settings.emissionFactorKgPerKwh, 0),
    unit: 'kg/kWh',
    label: 'emission factor of the supply',
    origin: 'setting',
    source: 'setting emission_factor_kg_per_kwh',
  });
  return {
    money,
    figures: {
      energy_saved,
      demand_saved,
      money_saved: money,
      emissions_saved: apply(scope, O.emissions_saved, { energy_saved, emission_factor: factor }),
    },
  };
}

/** The saving that the payback counts: that of the first year, in which a ratchet may still hold the old peak; at failure that of any year. */
function firstYearSaving(scope: MotorScope, candidate: Candidate, saving: Quantity<'currency/a'>): Quantity<'currency/a'> {
  const late = 1 - candidate.growth.firstYearDemandShare;
  const demand_before = candidate.before?.cost?.demandCost;
  const demand_after = candidate.after?.cost?.demandCost;
  if (late <= 0 || candidate.timing === 'at-failure' || !demand_before || !demand_after) return saving;
  return apply(scope, $.first_year_saving, { saving, demand_before, demand_after, late: exact(late, '1') });
}

/** Absent without a saving; zero when nothing more is spent than would be anyway. */
function simplePayback(scope: MotorScope, candidate: Candidate, saving: Quantity<'currency/a'>): Quantity<'a'> | undefined {
  if (saving.value <= 0) return undefined;
  if (candidate.netCost.value <= 0)
    return leaf(scope, {
      value: 0,
      unit: 'a',
      label: 'simple payback: nothing more is spent than would be anyway',
      origin: 'derived',
      source: 'convention of the results: zero when the extra cost is not positive and the saving is',
    });
  return apply(scope, $.simple_payback, { net_cost: candidate.netCost, saving });
}

/**
 * Discounted payback: by the cash flow without the value left. At a failure to come, and against a policy that replaces, whose cash flow is not
 * against a repair, by the extra cost over a repair and the saving from then on. Its doubt is taken in proportion to that of the simple payback.
 */
function discountedPayback(
  scope: MotorScope,
  candidate: Candidate,
  flow: ValuedFlow,
  payback: Quantity<'a'>,
  findings: Finding[],
): Quantity<'a'> | undefined {
  const { settings } = scope;
  const flows =
    candidate.kind === 'change-at-failure' || (candidate.kind === 'change-failed' && settings.policy.atFailure === 'replace')
      ? fromFailure(scope, candidate, payback)
      : flow.cashFlow.map((amount, year) => fromMoney(amount) - fromMoney(flow.lines.residual[year] ?? amount));
  const found = paybackTime(flows, settings.discountRate);
  if (!found) {
    findings.push(
      OPTIONS.make('never-paid-back', {
        years: settings.horizonYears,
        discount_rate: settings.discountRate,
        kind: candidate.kind,
        net_present_value: flow.netPresentValue.value,
      }),
    );
    return undefined;
  }
  const spent = -(flows[0] ?? 0);
  const weight = found.slope > 0 && payback.value > 0 ? spent / found.slope / payback.value : 0;
  const quantity: Quantity<'a'> = { unit: 'a', value: found.years, parts: scaleParts(payback.parts, weight) };
  return solved(
    scope,
    quantity,
    {
      label: 'discounted payback',
      tex: '\\sum_{t=0}^{n} \\frac{F_t}{(1+d)^t} = 0',
      residual: 0,
      source: 'ASTM E917; straight interpolation within the year. Doubt in proportion to that of the simple payback',
    },
    { simple_payback: payback },
  );
}

function fromFailure(scope: MotorScope, candidate: Candidate, payback: Quantity<'a'>): number[] {
  const { settings } = scope;
  const cost = Math.max(candidate.netCost.value, 0);
  const saving = payback.value > 0 ? cost / payback.value : 0;
  const flows = [-cost];
  for (let year = 1; year <= settings.horizonYears; year++)
    flows.push(saving * (1 - settings.taxRate) * priceIndex(candidate.growth.escalation, year - 1));
  return withRelief(settings, flows);
}

function internalRate(flow: ValuedFlow, saves: boolean, findings: Finding[]): number | undefined {
  const flows = flow.cashFlow.map(fromMoney);
  const found = rateOfReturn(flows);
  if (found.kind === 'one') return found.rate;
  if (found.kind === 'several')
    findings.push(
      OPTIONS.make('several-rates-of-return', {
        rates: found.rates.map((rate) => `${(100 * rate).toFixed(1)} %`).join(', '),
      }),
    );
  else if (found.kind === 'loan') findings.push(OPTIONS.make('rate-of-a-loan', { rate: found.rate }));
  else if (saves)
    findings.push(OPTIONS.make('no-rate-of-return', { most_spent: Math.max(0, ...flows.map((amount) => -amount)) }));
  return undefined;
}

/** Outlays below half a hundredth of the currency are none. */
const LEAST_OUTLAY = 0.005;

function savingsRatio(flow: ValuedFlow, saves: boolean, findings: Finding[]): number | undefined {
  if (flow.outlay > LEAST_OUTLAY) return flow.savings / flow.outlay;
  if (saves) findings.push(OPTIONS.make('no-extra-cost', { spent: flow.spent > LEAST_OUTLAY ? flow.spent : 0 }));
  return undefined;
}

/** Options at failure take no budget; a failed motor cannot wait, so it has the value of the first year alone. */
function byYear(candidate: Candidate, flow: ValuedFlow | undefined): ValuedFlow['byYear'] {
  if (!flow || candidate.timing === 'at-failure') return [];
  const waits = candidate.kind !== 'change-failed' && candidate.kind !== 'repair-failed';
  return waits ? flow.byYear : flow.byYear.slice(0, 1);
}

const ZERO = toMoney(0);

/** To keep the motor as it is: the baseline, worth zero. */
export function keepOption(scope: MotorScope, ratedPowerKw: number, years: number, findings: readonly Finding[]): Option {
  const { settings } = scope;
  const none = exact(0, 'currency');
  return {
    id: 'keep',
    action: 'keep',
    timing: 'now',
    ratedPowerKw,
    figures: {
      cost: none,
      energy_saved: exact(0, 'kWh/a'),
      demand_saved: exact(0, 'kW'),
      money_saved: exact(0, 'currency/a'),
      emissions_saved: exact(0, 'kg/a'),
      net_present_value: none,
      failure_cost_change: none,
    },
    cashFlow: new Array<Option['cashFlow'][number]>(settings.horizonYears + 1).fill(ZERO),
    netPresentValueByYear: new Array<Option['cashFlow'][number]>(years).fill(ZERO),
    screening: [],
    findings: () => findings,
  };
}
