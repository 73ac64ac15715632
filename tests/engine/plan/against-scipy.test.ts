import { spawnSync } from 'node:child_process';
import { beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { boundOf } from '@/lib/engine/plan/bound';
import type { Choice } from '@/lib/engine/plan/candidate';
import { choose, keeps } from '@/lib/engine/plan/choose';
import { loadSolver, type Solve } from '@/lib/engine/plan/solver';
import { Chance } from '../../simulator/random';

/** Its own statement of the model, solved by SciPy's HiGHS: the relaxation, then whole numbers for at most eight seconds. */
const SCRIPT = `
import json, sys
try:
    import numpy as np
    from scipy.optimize import Bounds, LinearConstraint, linprog, milp
    from scipy.sparse import csr_matrix
except ImportError:
    print(json.dumps(None))
    sys.exit()
m = json.load(sys.stdin)
c = -np.array(m["worth"])
A = csr_matrix((m["amount"], (m["row"], m["column"])), shape=(len(m["limit"]), len(c)))
relaxed = linprog(c, A_ub=A, b_ub=m["limit"], bounds=(0, 1))
whole = milp(c, integrality=np.ones(len(c)), bounds=Bounds(0, 1), constraints=LinearConstraint(A, ub=m["limit"]),
             options={"time_limit": 8, "mip_rel_gap": 1e-4})
print(json.dumps({"relaxed": -relaxed.fun, "whole": -whole.fun if whole.x is not None else None, "most": -whole.mip_dual_bound}))
`;
const answer = z.object({ relaxed: z.number(), whole: z.number().nullable(), most: z.number() }).nullable();

/** An invented fleet: single motors, three options, two years, a third of the money that a first option of each would take, and hours of one year. */
function invented(motors: number, seed: number): Choice {
  const chance = new Chance(seed);
  const groups = Array.from({ length: motors }, (_, g) => {
    const size = 1000 * Math.exp(2 * chance.between(0, 1));
    const columns = Array.from({ length: 3 }, (_, o) => {
      const cost = Math.round(size * chance.between(0.6, 1.6));
      const value = Math.round(cost * chance.between(0.1, 2.2));
      return [0, 1].map((year) => ({
        option: `o${o}`,
        year,
        value: value * (year === 0 ? 1 : 0.93),
        uses: [{ resource: year, amount: cost }, ...(year === 0 ? [{ resource: 2, amount: o === 0 ? 4 : 8 }] : [])],
      }));
    }).flat();
    return { id: `g${g}`, must: false, members: [{ id: `g${g}`, columns }] };
  });
  const whole = groups.reduce((sum, { members }) => sum + (members[0]?.columns[0]?.uses[0]?.amount ?? 0), 0);
  const money = Math.round(whole / 6);
  return {
    groups,
    resources: [
      { name: 'year 0', limit: money },
      { name: 'year 1', limit: money },
      { name: 'hours', limit: motors },
    ],
  };
}

function asked({ groups, resources }: Choice): z.infer<typeof answer> {
  const model = {
    worth: [] as number[],
    row: [] as number[],
    column: [] as number[],
    amount: [] as number[],
    limit: [] as number[],
  };
  const entry = (row: number, amount: number): void => {
    model.row.push(row);
    model.column.push(model.worth.length);
    model.amount.push(amount);
  };
  groups.forEach(({ members }, g) => {
    for (const { value, uses } of members[0]?.columns ?? []) {
      entry(resources.length + g, 1);
      for (const { resource, amount } of uses) entry(resource, amount);
      model.worth.push(value);
    }
  });
  model.limit.push(...resources.map(({ limit }) => limit), ...groups.map(() => 1));
  const ran = spawnSync('python3', ['-c', SCRIPT], { input: JSON.stringify(model), encoding: 'utf8' });
  // The solver writes lines of its own before the answer.
  return ran.status === 0 ? answer.parse(JSON.parse(ran.stdout.trim().split('\n').at(-1) ?? '')) : null;
}

let solve: Solve;
beforeAll(async () => {
  solve = await loadSolver();
});

describe('the plan of a larger fleet', () => {
  it.each([
    [150, 3],
    [600, 4],
  ])('of %i motors lies within a thousandth of the bound, and agrees with SciPy where that is present', (motors, seed) => {
    const choice = invented(motors, seed);
    const outcome = choose(choice, solve);
    if (!outcome || 'lacking' in outcome) throw new Error('nothing was chosen');
    expect(keeps(choice, outcome.chosen)).toBe(true);
    expect(outcome.gap).toBeLessThan(1e-3);
    const other = asked(choice);
    const bound = boundOf(choice, solve)?.value ?? Number.NaN;
    if (other === null) {
      // Without SciPy the bound alone is the judge.
      expect(outcome.value).toBeLessThanOrEqual(bound);
      return;
    }
    expect(Math.abs(bound / other.relaxed - 1)).toBeLessThan(1e-5);
    // Each one's best is no more than what the other proved.
    expect(outcome.value).toBeLessThanOrEqual(other.most * (1 + 1e-6));
    expect(other.whole ?? 0).toBeLessThanOrEqual(outcome.bound * (1 + 1e-6));
    expect(Math.abs(outcome.value / (other.whole ?? outcome.value) - 1)).toBeLessThan(1e-3);
  });
});
