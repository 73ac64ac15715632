import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Basis, flowCounts, type PlanKind } from '@/lib/engine/options/flow-counts';

/**
 * The counts against a full enumeration: every pattern of failing and not failing over a short horizon is played through, step by step,
 * in the baseline's world and in the option's, and weighted with its chance. Nothing of the closed forms is used.
 */

type Policy = 'repair' | 'replace';
type Tally = Map<string, number>;

interface World {
  machine: 'old' | 'oldRepaired' | 'same' | 'option' | 'optionRepaired';
  boughtIn: number;
  /** Whether the quotation for a repair has been used up. */
  quoted: boolean;
  /** The last repair that still holds, by what its work is counted in. */
  repaired?: { readonly work: Basis; readonly year: number } | undefined;
  failures: number;
  changed: boolean;
}

interface Play {
  readonly kind: PlanKind;
  readonly policy: Policy;
  readonly start: number;
  readonly horizon: number;
  readonly rate: number;
}

function add(tally: Tally, basis: Basis, year: number, amount: number): void {
  const key = `${basis} ${year}`;
  tally.set(key, (tally.get(key) ?? 0) + amount);
}

/** `repairNow` is counted in `workNow`, and so on. */
function workOf(basis: Basis): Basis {
  return basis.replace('repair', 'work') as Basis;
}

/** Spending and running of one world under one pattern of failures. */
function play(tally: Tally, given: Play, option: boolean, pattern: readonly boolean[], weight: number): void {
  const { kind, policy, start, horizon, rate } = given;
  const failed = kind === 'change-failed' || kind === 'repair-failed';
  const world: World = { machine: 'old', boughtIn: 0, quoted: false, failures: 0, changed: false };
  const spend = (basis: Basis, year: number) => add(tally, basis, year, weight);
  const change = (year: number) => {
    spend('investment', year);
    world.repaired = undefined;
    add(tally, 'rebate', year, -weight);
    world.machine = 'option';
    world.boughtIn = year;
    world.changed = true;
  };
  const byPolicy = (year: number, repairBasis: Basis) => {
    if (policy === 'repair') {
      const ownBasis = kind === 'change-now' && !world.quoted ? 'repairOptionFirst' : 'repairOption';
      const basis = world.changed ? ownBasis : repairBasis;
      spend(basis, year);
      world.repaired = { work: workOf(basis), year };
      world.machine = world.changed ? 'optionRepaired' : 'oldRepaired';
      world.quoted = true;
    } else {
      // A programme pays for an old motor that goes, never for one of its own kind; and only the first of its kind has to be fitted to the place.
      const first = world.machine === 'old' || world.machine === 'oldRepaired';
      if (first) add(tally, 'rebateSame', year, -weight);
      spend(world.changed ? 'investmentAgain' : first ? 'sameInstalled' : 'sameAgain', year);
      world.machine = world.changed ? 'option' : 'same';
      world.boughtIn = year;
      world.repaired = undefined;
    }
  };
  if (failed && !option) byPolicy(0, 'repairNow');
  if (failed && option) {
    if (kind === 'change-failed') change(0);
    else {
      spend('investment', 0);
      world.repaired = { work: 'workNow', year: 0 };
      world.machine = 'oldRepaired';
    }
  }
  for (let year = 1; year <= horizon; year++) {
    if (option && year - 1 === start && !failed) {
      if (kind === 'change-now') change(start);
      if (kind === 'rewind-now' || kind === 'bearings-now') spend('investment', start);
      // Of a bearing job the quotation is for that alone: a rewind then costs what is listed, which the caller sees to.
      if (kind === 'rewind-now') world.quoted = true;
      if (kind === 'rewind-now') world.repaired = { work: 'workNow', year: start };
      if (kind === 'rewind-now' && world.machine === 'old') world.machine = 'oldRepaired';
    }
    add(tally, world.machine, year, weight);
    if (!pattern[year - 1]) continue;
    world.failures += 1;
    if (option && kind === 'change-at-failure' && world.failures === 1) change(year);
    else byPolicy(year, world.quoted || failed ? 'repairLater' : 'repairAtFailure');
  }
  const leftSince = (year: number) => Math.max(0, 1 - (horizon - year) * rate);
  const left = leftSince(world.boughtIn);
  if (world.repaired) add(tally, world.repaired.work, horizon, -weight * leftSince(world.repaired.year));
  if (world.machine === 'old' || world.machine === 'oldRepaired') add(tally, 'oldWorth', horizon, -weight);
  else add(tally, world.machine === 'same' ? 'purchaseSame' : 'purchaseOption', horizon, -weight * left);
}

function enumerated(given: Play): Tally {
  const tally: Tally = new Map();
  for (let bits = 0; bits < 2 ** given.horizon; bits++) {
    const pattern = Array.from({ length: given.horizon }, (_, year) => (bits & (1 << year)) !== 0);
    const chance = pattern.reduce((product, fails) => product * (fails ? given.rate : 1 - given.rate), 1);
    play(tally, given, false, pattern, chance);
    play(tally, given, true, pattern, -chance);
  }
  return tally;
}

function counted(given: Play): Tally {
  const tally: Tally = new Map();
  for (const term of flowCounts({ ...given, failureRate: given.rate })) {
    if (term.basis === 'stop') continue;
    term.counts.forEach((count, year) => {
      add(tally, term.basis, year, count);
    });
  }
  return tally;
}

function expectSame(given: Play): void {
  const ours = counted(given);
  const theirs = enumerated(given);
  for (const key of new Set([...ours.keys(), ...theirs.keys()]))
    expect(ours.get(key) ?? 0, `${given.kind} ${given.policy} from ${given.start}: ${key}`).toBeCloseTo(theirs.get(key) ?? 0, 10);
}

const NOW: readonly PlanKind[] = ['change-now', 'rewind-now', 'bearings-now'];
const OTHER: readonly PlanKind[] = ['change-at-failure', 'change-failed', 'repair-failed'];

describe('expected flows of an option against the baseline', () => {
  for (const policy of ['repair', 'replace'] as const) {
    it.each([...NOW, ...OTHER])(`%s, policy ${policy}: agrees with every pattern of failures played through`, (kind) => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 6 }),
          fc.double({ min: 0.01, max: 0.6, noNaN: true }),
          fc.integer({ min: 0, max: 5 }),
          (horizon, rate, wanted) => {
            const start = NOW.includes(kind) ? Math.min(wanted, horizon - 1) : 0;
            expectSame({ kind, policy, start, horizon, rate });
          },
        ),
        { numRuns: 25 },
      );
    });
  }

  it('without failures nothing happens at failure, and a replacement now earns the old motor’s energy throughout', () => {
    for (const policy of ['repair', 'replace'] as const) {
      const later = flowCounts({ kind: 'change-at-failure', failureRate: 0, start: 0, horizon: 10, policy });
      for (const term of later) expect(term.counts.every((count) => count === 0)).toBe(true);
      const now = flowCounts({ kind: 'change-now', failureRate: 0, start: 0, horizon: 10, policy });
      const old = now.find((term) => term.basis === 'old');
      expect(old?.counts).toEqual([0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1]);
    }
  });

  it('counts the stops that a doubled rate adds until the first failure, year by year as a chain of states does', () => {
    const [rate, horizon] = [0.07, 8];
    const stops = flowCounts({ kind: 'change-now', failureRate: rate, start: 0, horizon, policy: 'repair' }).find(
      (term) => term.basis === 'stop',
    );
    let untouched = 1;
    for (let year = 1; year <= horizon; year++) {
      const expected = untouched * 2 * rate + (1 - untouched) * rate;
      expect(stops?.counts[year]).toBeCloseTo(expected - rate, 12);
      untouched *= 1 - 2 * rate;
    }
  });
});
