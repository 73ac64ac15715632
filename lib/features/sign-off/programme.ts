import type { MotorResult, OptionResult, Settings } from '@/lib/engine';
import { fromMinor, toMinor } from '@/lib/platform/money';
import type { Programme, ProgrammeItem } from './content';

/** A motor's result, and whether it has failed: such a motor is exempt from trust and comes first. */
export interface Candidate {
  readonly result: MotorResult;
  readonly failed: boolean;
}

/**
 * The programme that follows the ranking: what must be done whatever the energy says first, then motor by motor in the order of rank, each in the first
 * year whose budget still holds it. It is a rule anybody can follow by hand, and makes no claim to be the best use of the money: no
 * bound is given. Sums are in minor units, so that they agree to the cent. Prices are those of the day of the study in every year.
 */
export function programmeByRank(fleet: readonly Candidate[], settings: Settings): Programme {
  const { currency, budget, asOf } = settings;
  const room = budget.map((amount) => toMinor(amount, currency));
  const items: ProgrammeItem[][] = budget.map(() => []);
  const leftOut: Programme['left_out'][number][] = [];
  const urgent = ({ failed, result }: Candidate) => (failed || result.decision.action === 'repair' ? 0 : 1);
  const order = [...fleet].sort((a, b) => urgent(a) - urgent(b) || a.result.rank - b.result.rank);
  for (const candidate of order) {
    const { site, tag, decision, options } = candidate.result;
    const option = options.find(({ id }) => id === decision.option);
    const out = reasonToLeaveOut(candidate, option);
    const cost = option === undefined ? 0n : toMinor(option.cost, currency);
    const at = out === undefined ? room.findIndex((left) => left >= cost) : -1;
    const left = room[at];
    if (option === undefined || left === undefined) {
      leftOut.push({ site, tag, because: out ?? NO_ROOM });
      continue;
    }
    room[at] = left - cost;
    items[at]?.push(itemOf(candidate.result, option, at));
  }
  const first = Number(asOf.slice(0, 4));
  const value = items.flat().reduce((sum, item) => sum + toMinor(item.net_present_value, currency), 0n);
  return {
    method: 'by-rank',
    objective: settings.objective,
    value: fromMinor(value, currency),
    years: budget.map((amount, at) => ({
      year: first + at,
      budget: amount,
      spent: fromMinor(toMinor(amount, currency) - (room[at] ?? 0n), currency),
      items: items[at] ?? [],
    })),
    left_out: leftOut,
  };
}

const NO_ROOM = { code: 'no-room', text: 'No year’s budget has room for it after the motors of better rank.' };

function reasonToLeaveOut(
  { result, failed }: Candidate,
  option: OptionResult | undefined,
): Programme['left_out'][number]['because'] | undefined {
  const { decision, trust } = result;
  if (decision.action === 'keep' || option === undefined) {
    const [reason] = decision.because;
    return { code: 'keep', text: reason ? `It is kept: ${reason.text}` : 'It is kept.' };
  }
  if (decision.timing === 'at-failure')
    return { code: 'at-failure', text: 'It is changed once it fails; that takes no yearly budget.' };
  if (trust.level === 'not-usable' && !failed && decision.action !== 'repair') {
    return { code: 'not-usable', text: 'Its readings may not be used; it has to be measured again first.' };
  }
  return undefined;
}

function itemOf({ site, tag, rank }: MotorResult, option: OptionResult, at: number): ProgrammeItem {
  return {
    site,
    tag,
    rank,
    option: option.id,
    action: option.action,
    rated_power_kw: option.rated_power_kw,
    ...(option.efficiency_class !== undefined && { efficiency_class: option.efficiency_class }),
    cost: option.cost,
    net_present_value: option.net_present_value_by_year[at] ?? 0,
    cash_flow: [...option.cash_flow],
    ...(option.probability_within_policy !== undefined && { probability_within_policy: option.probability_within_policy }),
  };
}
