import { pathToFileURL } from 'node:url';
import type { Choice } from '@/lib/engine/plan/candidate';
import { choose } from '@/lib/engine/plan/choose';
import { loadSolver } from '@/lib/engine/plan/solver';
import { Chance } from '../simulator/random';
import type { Measure } from './engine';

/** An invented fleet with budgets of two fifths of what a first option of each would cost; every 300th motor must be seen to. */
function inventedChoice(motors: number, options: number, years: number): Choice {
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
  return { groups, resources };
}

/** Time and proven gap of one plan. */
export async function planTimes(motors = 3000, options = 4, years = 5): Promise<Measure[]> {
  const choice = inventedChoice(motors, options, years);
  const solve = await loadSolver();
  const from = process.cpuUsage();
  const start = performance.now();
  const outcome = choose(choice, solve);
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(from);
  const what = `${motors} motors, ${options} options, ${years} years`;
  return [
    { what, value: seconds, unit: 's', bar: '10 s' },
    { what: `${what}: processor`, value: (user + system) / 1e6, unit: 's' },
    ...(outcome && 'chosen' in outcome ? [{ what: `${what}: gap`, value: 100 * outcome.gap, unit: '%', bar: '0.1 %' }] : []),
  ];
}

// `npm run perf -- plan [motors] [options] [years]`; prints, judges nothing.
if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href)
  for (const { what, value, unit } of await planTimes(...process.argv.slice(2).map(Number)))
    console.log(what, value.toPrecision(3), unit);
