import { csvRow } from '../fleet/csv-cell';
import type { MoneyPage } from './money-loader';

const COLUMNS = ['about', 'option', 'figure', 'at', 'value', 'u', 'unit'] as const;
type Cell = string | number | undefined;

const cents = (amount: number) => Math.round(100 * amount) / 100;

/**
 * The money page of a motor as CSV, one figure a line: options, cash flow by year, marginal prices, rates and life-cycle costs, what each dearer option adds, what each lever does, break-evens, what would turn the decision and
 * other measures. `at` is a year, or the place of a lever; `u` the standard uncertainty.
 */
export function* moneyCsv(page: MoneyPage): Generator<string> {
  const { currency } = page.study.settings;
  const row = (...cells: readonly Cell[]) => csvRow(COLUMNS.map((_, at) => cells[at]));
  yield csvRow(COLUMNS);
  for (const { option, decided } of page.options) {
    const of = (
      figure: string,
      found: { readonly value: number; readonly u?: number; readonly unit?: string } | undefined,
      unit?: string,
    ) => (found ? [row('option', option.id, figure, undefined, found.value, found.u, unit ?? found.unit)] : []);
    yield* of('cost', { value: option.cost }, currency);
    yield* of('energy saved', option.energy_saved);
    yield* of('demand saved', option.demand_saved);
    yield* of('money saved', option.money_saved, `${currency}/a`);
    yield* of('emissions saved', option.emissions_saved);
    yield* of('simple payback', option.simple_payback);
    yield* of('net present value', option.net_present_value);
    yield row('option', option.id, 'decided', undefined, decided ? 'yes' : 'no');
    for (const [year, flow] of option.cash_flow.entries())
      yield row('cash flow', option.id, 'cash flow', year, flow, undefined, currency);
  }
  for (const [figure, value, unit] of [
    ['marginal price of energy', page.margin.energyPerKwh, `${currency}/kWh`],
    ['average price of energy', page.margin.averagePerKwh, `${currency}/kWh`],
    ['marginal price of demand', page.margin.demandPerKwMonth, `${currency}/(kW month)`],
  ] as const)
    if (value !== undefined) yield row('site', undefined, figure, undefined, value, undefined, unit);
  for (const { id, internalRate, modifiedRate, adjustedRate, lifeCycleCost } of page.worth.options) {
    for (const [figure, stated] of [
      ['internal rate of return', internalRate],
      ['modified rate of return', modifiedRate],
      ['adjusted rate of return', adjustedRate],
    ] as const)
      yield row('option', id, figure, undefined, stated.kind === 'value' ? stated.value : stated.text, undefined, '1/a');
    if (lifeCycleCost !== undefined)
      yield row('option', id, 'life-cycle cost', undefined, cents(lifeCycleCost), undefined, currency);
  }
  if (page.worth.baseline)
    for (const [line, value] of Object.entries(page.worth.baseline))
      yield row(
        'baseline',
        undefined,
        `life-cycle cost, ${line.replace('valueLeft', 'value left')}`,
        undefined,
        cents(value),
        undefined,
        currency,
      );
  for (const { from, to, extraCost, netPresentValue } of page.worth.steps.increments) {
    yield row('step', to, 'extra cost', from ?? 'baseline', cents(extraCost), undefined, currency);
    yield row('step', to, 'net present value added', from ?? 'baseline', cents(netPresentValue), undefined, currency);
  }
  for (const { year, value, u } of page.soFar) yield row('so far', page.chosen.id, 'discounted sum', year, value, u, currency);
  for (const bar of page.tornado.bars) {
    yield row('lever', page.chosen.id, bar.id, bar.low, bar.atLow, undefined, currency);
    yield row('lever', page.chosen.id, bar.id, bar.high, bar.atHigh, undefined, currency);
  }
  for (const even of [...page.breakEvens, page.paybackAt])
    yield row(
      'break-even',
      page.chosen.id,
      `${even.lever}, ${even.goal}`,
      undefined,
      even.found.kind === 'at' ? even.found.value : even.found.kind,
    );
  for (const { lever, factor, option } of page.turnings.turnings) yield row('turns to', option, lever, undefined, factor);
  for (const { id, energySaved, moneySaved, cost, payback } of page.measures.measures) {
    for (const [name, screened, unit] of [
      ['energy saved', energySaved, 'kWh/a'],
      ['money saved', moneySaved, `${currency}/a`],
      ['simple payback', payback, 'a'],
    ] as const)
      if (screened)
        for (const end of ['low', 'likely', 'high'] as const) yield row('measure', id, name, end, screened[end], undefined, unit);
    if (cost) yield row('measure', id, 'cost', undefined, cost.value, cost.u, currency);
  }
}
