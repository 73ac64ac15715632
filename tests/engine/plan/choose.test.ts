import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { boundOf } from '@/lib/engine/plan/bound';
import { type Choice, type Column, type Group, yearsOf } from '@/lib/engine/plan/candidate';
import { choose, keeps, type Outcome } from '@/lib/engine/plan/choose';
import { loadSolver, type Solve } from '@/lib/engine/plan/solver';

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

/** The best choice by trying all of them: written without any of the solver's parts but the check of the limits. */
function enumerate(choice: Choice): number | undefined {
  let best: number | undefined;
  const take = (at: number, chosen: Map<string, Column>, value: number): void => {
    const group = choice.groups[at];
    if (!group) {
      if (keeps(choice, chosen) && (best === undefined || value > best)) best = value;
      return;
    }
    take(at + 1, chosen, value);
    const ways: Column[][] = group.members.length === 1 ? (group.members[0]?.columns ?? []).map((column) => [column]) : [];
    if (group.members.length > 1)
      for (const year of yearsOf(group)) {
        let partial: Column[][] = [[]];
        for (const { columns } of group.members)
          partial = partial.flatMap((head) => columns.filter((each) => each.year === year).map((each) => [...head, each]));
        ways.push(...partial);
      }
    for (const way of ways) {
      const next = new Map(chosen);
      group.members.forEach(({ id }, m) => {
        const column = way[m];
        if (column) next.set(id, column);
      });
      take(at + 1, next, value + way.reduce((sum, each) => sum + each.value, 0));
    }
  };
  take(0, new Map(), 0);
  return best;
}

const column = (years: number) =>
  fc.record({
    year: fc.integer({ min: 0, max: years - 1 }),
    value: fc.integer({ min: -20, max: 200 }),
    cost: fc.integer({ min: 1, max: 90 }),
    hours: fc.integer({ min: 0, max: 12 }),
  });

/** Small random instances: singles and bundles, things that must be done, money by year and hours in the first year. */
const CHOICES = fc
  .record({
    budgets: fc.array(fc.integer({ min: 20, max: 220 }), { minLength: 1, maxLength: 3 }),
    hours: fc.integer({ min: 5, max: 60 }),
    groups: fc.array(
      fc.record({
        must: fc.boolean(),
        members: fc.array(fc.array(column(3), { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 2 }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
  })
  .map(({ budgets, hours, groups }): Choice => {
    const resources = [...budgets.map((limit, y) => ({ name: `year ${y}`, limit })), { name: 'hours', limit: hours }];
    return {
      resources,
      groups: groups.map(
        ({ must, members }, g): Group => ({
          id: `g${g}`,
          // A few must be done, or hardly any instance could be met.
          must: must && g === 0,
          members: members.map((columns, m) => ({
            id: `g${g}m${m}`,
            columns: columns
              .filter(({ year }) => year < budgets.length)
              .map(({ year, value, cost, hours: taken }, c) => ({
                option: `o${c}`,
                year,
                value,
                uses: [
                  { resource: year, amount: cost },
                  ...(year === 0 && taken > 0 ? [{ resource: budgets.length, amount: taken }] : []),
                ],
              })),
          })),
        }),
      ),
    };
  });

const found = (outcome: ReturnType<typeof choose>): Outcome | undefined => (outcome && 'chosen' in outcome ? outcome : undefined);

describe('the choice within limits', () => {
  it('is worth what trying every choice finds, keeps every limit, and never passes its bound', () => {
    fc.assert(
      fc.property(CHOICES, (choice) => {
        const best = enumerate(choice);
        const outcome = choose(choice, solve);
        if (best === undefined) {
          expect(found(outcome)).toBeUndefined();
          return;
        }
        const done = found(outcome);
        if (!done) throw new Error('nothing was chosen where something can be');
        expect(keeps(choice, done.chosen)).toBe(true);
        expect(done.value).toBeGreaterThanOrEqual(best - 2e-4 * Math.max(1, Math.abs(done.bound)) - 1e-9);
        expect(done.value).toBeLessThanOrEqual(best + 1e-9);
        expect(done.bound).toBeGreaterThanOrEqual(best - 1e-6 * Math.max(1, Math.abs(best)));
      }),
      { seed: 7, numRuns: 120 },
    );
  });

  it('a larger budget never lowers the optimum, and the order of the groups does not matter', () => {
    fc.assert(
      fc.property(CHOICES, fc.integer({ min: 1, max: 80 }), (choice, more) => {
        const before = enumerate(choice);
        fc.pre(before !== undefined);
        const richer = { ...choice, resources: choice.resources.map((each) => ({ ...each, limit: each.limit + more })) };
        const after = found(choose(richer, solve));
        const turned = found(choose({ ...choice, groups: [...choice.groups].reverse() }, solve));
        const own = found(choose(choice, solve));
        if (!after || !turned || !own) throw new Error('nothing was chosen');
        expect(after.value).toBeGreaterThanOrEqual(own.value - 2e-4 * Math.max(1, own.bound));
        expect(Math.abs(turned.value - own.value)).toBeLessThanOrEqual(2e-4 * Math.max(1, own.bound));
      }),
      { seed: 8, numRuns: 40 },
    );
  });

  it('the bound is that of the relaxation, as a linear program over all columns gives it', () => {
    fc.assert(
      fc.property(CHOICES, (choice) => {
        const singles: Choice = {
          ...choice,
          groups: choice.groups.map((group) => ({ ...group, must: false, members: group.members.slice(0, 1) })),
        };
        const bound = boundOf(singles, solve);
        const names = singles.groups.flatMap((group, g) =>
          (group.members[0]?.columns ?? []).map((each, c) => ({ each, name: `x${g}_${c}`, g })),
        );
        fc.pre(names.length > 0);
        const rows = singles.groups.flatMap((_, g) => {
          const own = names.filter((entry) => entry.g === g).map(({ name }) => `+ ${name}`);
          return own.length > 0 ? [` g${g}: ${own.join(' ')} <= 1`] : [];
        });
        const limits = singles.resources.flatMap(({ limit }, r) => {
          const own = names.flatMap(({ each, name }) =>
            each.uses.filter(({ resource }) => resource === r).map(({ amount }) => `+ ${amount} ${name}`),
          );
          return own.length > 0 ? [` r${r}: ${own.join(' ')} <= ${limit}`] : [];
        });
        const worth = names.map(({ each, name }) => `${each.value < 0 ? '-' : '+'} ${Math.abs(each.value)} ${name}`).join(' ');
        const relaxed = solve(`Maximize\n obj: ${worth}\nSubject To\n${[...rows, ...limits].join('\n')}\nEnd\n`);
        expect(Math.abs((bound?.value ?? Number.NaN) - relaxed.objective)).toBeLessThan(1e-4 * Math.max(1, relaxed.objective));
      }),
      { seed: 9, numRuns: 60 },
    );
  });

  it('names what is too small for what must be done, by how much, and what cannot be done at all', () => {
    const must = (id: string, amount: number): Group => ({
      id,
      must: true,
      members: [{ id, columns: [{ option: 'o', year: 0, value: 1, uses: [{ resource: 0, amount }] }] }],
    });
    const choice = { resources: [{ name: '2026', limit: 100 }], groups: [must('a', 70), must('b', 55)] };
    expect(choose(choice, solve)).toEqual({ lacking: [{ resource: '2026', by: 25 }], stuck: [] });
    const empty: Group = { id: 'c', must: true, members: [{ id: 'c', columns: [] }] };
    expect(choose({ ...choice, groups: [empty] }, solve)).toEqual({ lacking: [], stuck: ['c'] });
  });

  it('may be cancelled between solves', () => {
    const choice: Choice = {
      resources: [{ name: '2026', limit: 10 }],
      groups: [
        {
          id: 'a',
          must: false,
          members: [{ id: 'a', columns: [{ option: 'o', year: 0, value: 5, uses: [{ resource: 0, amount: 5 }] }] }],
        },
      ],
    };
    expect(choose(choice, solve, { cancelled: () => true })).toBeUndefined();
    expect(found(choose(choice, solve))?.value).toBe(5);
  });
});
