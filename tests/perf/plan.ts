import type { Choice } from '@/lib/engine/plan/candidate';
import { choose } from '@/lib/engine/plan/choose';
import { loadSolver } from '@/lib/engine/plan/solver';
import { Chance } from '../simulator/random';

/**
 * `npx tsx tests/perf/plan.ts [motors] [options] [years]`: time and proven gap of one plan over an invented fleet; prints, judges nothing.
 */
const [motors = 3000, options = 4, years = 5] = process.argv.slice(2).map(Number);
const chance = new Chance(17);
const groups: Choice['groups'] = Array.from({ length: motors }, (_, g) => {
  const size = 1000 * Math.exp(2.5 * chance.between(0, 1));
  const columns = Array.from({ length: options }, (_, o) => {
    const cost = size * chance.between(0.6, 1.6);
    const value = cost * chance.between(-0.3, 2.2);
    return Array.from({ length: years }, (_, year) => ({
      option: `o${o}`,
      year,
      value: value * 0.93 ** year,
      uses: [{ resource: year, amount: Math.round(100 * cost) / 100 }],
    }));
  }).flat();
  return {
    id: `g${g}`,
    must: g % 300 === 0,
    members: [{ id: `g${g}`, columns: columns.filter(({ value }) => value > 0 || g % 300 === 0) }],
  };
});
const whole = groups.reduce((sum, { members }) => sum + (members[0]?.columns[0]?.uses[0]?.amount ?? 0), 0);
const resources = Array.from({ length: years }, (_, y) => ({ name: String(y), limit: Math.round((0.4 * whole) / years) }));
const solve = await loadSolver();
const from = process.cpuUsage();
const start = performance.now();
const outcome = choose({ groups, resources }, solve);
const seconds = (performance.now() - start) / 1000;
const { user } = process.cpuUsage(from);
console.log(
  `${motors} motors, ${options} options, ${years} years: ${seconds.toFixed(2)} s, processor ${(user / 1e6).toFixed(2)} s`,
);
if (outcome && 'chosen' in outcome)
  console.log(
    `value ${outcome.value.toFixed(0)}, bound ${outcome.bound.toFixed(0)}, gap ${(100 * outcome.gap).toFixed(4)} %, chosen ${outcome.chosen.size}`,
  );
else console.log(outcome);
