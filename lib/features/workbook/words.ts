import type { Basis, PlanLine } from '@/lib/engine';

/** What a flow is counted in, for the reader of the workbook. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  old: 'a year of the present motor',
  oldRepaired: 'a year of the present motor after a repair',
  same: 'a year of a premium motor of the same rating',
  option: 'a year of the motor of the option',
  optionRepaired: 'a year of the motor of the option after a repair',
  investment: 'installed cost of the option',
  investmentAgain: 'installed cost of the next motor of the option',
  rebate: 'rebate',
  rebateSame: 'rebate of a premium motor of the same rating',
  repairNow: 'repair now',
  repairAtFailure: 'repair at failure',
  repairLater: 'later repair',
  repairOptionFirst: 'first repair of the motor of the option',
  repairOption: 'later repair of the motor of the option',
  workNow: 'work of the repair now, without fitting',
  workAtFailure: 'work of the repair at failure, without fitting',
  workLater: 'work of a later repair, without fitting',
  workOptionFirst: 'work of the first repair of the motor of the option, without fitting',
  workOption: 'work of a later repair of the motor of the option, without fitting',
  sameInstalled: 'installed cost of a premium motor of the same rating',
  sameAgain: 'installed cost of the next premium motor of the same rating',
  purchaseOption: 'purchase price of the motor of the option',
  purchaseSame: 'purchase price of a premium motor of the same rating',
  oldWorth: 'value of the present motor at the horizon',
  stop: 'one unplanned stop',
};

/** Lines of a cash flow that are counted in one piece. */
export const LINE_WORDS: Readonly<Record<PlanLine, string>> = {
  running: 'running',
  avoided_repair: 'repairs and replacements spared',
  residual: 'value left at the horizon',
  investment: 'investment',
  rebate: 'rebate',
  failure: 'expected stops',
  tax: 'tax',
};
