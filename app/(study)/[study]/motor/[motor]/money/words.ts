import type { SwingRow } from '@/app/_ui/chart-tornado';
import type { FlowSoFar, OptionBreakEven, Tornado } from '@/lib/engine';
import { capitalised, formatNumber, formatPercent, withUnit } from '@/lib/platform/format';

const LEVERS: Readonly<Record<string, string>> = {
  'energy-price': 'Price of energy',
  'demand-price': 'Price of demand',
  hours: 'Hours a year',
  cost: 'Prices of motors',
  'failure-rate': 'Failures a year',
  'discount-rate': 'Discount rate',
};

/** A bar in words: what is moved, and from where to where. */
export function leverRow(bar: Tornado['bars'][number]): SwingRow {
  const end = (at: number) => {
    if (bar.id === 'discount-rate') return formatPercent(at, 1);
    const change = Math.round(100 * (at - 1));
    return change === 0 ? 'as now' : `${change > 0 ? '+' : '−'}${withUnit(String(Math.abs(change)), '%')}`;
  };
  return { label: LEVERS[bar.id] ?? bar.id, low: end(bar.low), high: end(bar.high), atLow: bar.atLow, atHigh: bar.atHigh };
}

/** When the discounted sum turns from below zero for good, in a sentence. */
export function paidBackWords(soFar: readonly FlowSoFar[], horizonYears: number): string {
  const back = soFar.findLastIndex((point) => point.value < 0) + 1;
  if (back === 0) return 'It never lies below zero.';
  if (back >= soFar.length) return `It is not back within ${horizonYears} years.`;
  return back === soFar.length - 1
    ? 'It is back in the last year alone, by what the motor is still worth then.'
    : `It is back by the end of year ${back}.`;
}

/** Where an option is worth nothing more than to keep the motor, in a sentence. */
export function breakEvenWords({ lever, found, stated }: OptionBreakEven, currency: string): string {
  const what =
    { 'energy-price': 'price of energy', hours: 'hours a year', cost: 'prices of motors and repairs' }[lever as string] ?? lever;
  if (found.kind === 'always') return `It is worth it at any ${what}, with all else as it is.`;
  if (found.kind === 'never')
    return `No ${what} make it worth it, with all else as it is.`.replace('price of energy make', 'price of energy makes');
  if (found.kind === 'unknown') return `At which ${what} it stops being worth it cannot be told.`;
  const times = `${formatNumber(found.value, 2)} times the present ${lever === 'cost' ? 'ones' : 'value'}`;
  const unit = lever === 'energy-price' ? `${currency} a kWh` : 'hours a year';
  const at = stated === undefined ? times : withUnit(formatNumber(stated, lever === 'energy-price' ? 3 : 0), unit);
  const name = capitalised(what);
  return `${name}: worth it ${found.rising ? 'above' : 'below'} ${at}.`;
}
