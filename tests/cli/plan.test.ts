import { expect, it } from 'vitest';
import { z } from 'zod';
import { scratch, studyCommand } from './run';

const { file } = scratch();

const item = z.object({
  site: z.string(),
  tag: z.string(),
  option: z.string(),
  action: z.string(),
  timing: z.literal('now'),
  rated_power_kw: z.number(),
  cost: z.number(),
  net_present_value: z.number(),
});
const planShape = z.object({
  motors: z.array(
    z.object({
      tag: z.string(),
      options: z.array(z.object({ id: z.string(), cost: z.number(), net_present_value_by_year: z.array(z.number()) })),
    }),
  ),
  plan: z.object({
    objective: z.literal('net-present-value'),
    value: z.number(),
    bound: z.number(),
    gap: z.number(),
    years: z.array(z.object({ year: z.number(), budget: z.number(), spent: z.number(), items: z.array(item) })),
    at_failure: z.array(z.object({ site: z.string(), tag: z.string(), option: z.string(), expected_spend: z.array(z.number()) })),
    left_out: z.array(z.object({ site: z.string(), tag: z.string(), because: z.object({ code: z.string(), text: z.string() }) })),
  }),
});

const rows = Array.from({ length: 12 }, (_, i) => {
  const kw = 24 + i;
  return `P-${i + 1},50,460,1765,${86 + (i % 5)},8000,2025-06-01,462,${kw},${(kw * 1.67).toFixed(1)},1778`;
});
const fleet = file(
  'fleet.csv',
  `tag,rated_power_hp,rated_voltage_v,rated_speed_rpm,nominal_efficiency_pct,hours_per_year,taken_at,voltage_v,input_power_kw,current_a,shaft_speed_rpm\n${rows.join('\n')}\n`,
);
const settings = file('settings.json', JSON.stringify({ schema: 1, as_of: '2026-01-01', budget: [9000, 9000] }));

it('study plan funds options within each year, adds up, and names every motor once', () => {
  const ran = studyCommand('plan', fleet, '--settings', settings);
  expect(ran.code).toBe(0);
  const { motors, plan } = planShape.parse(JSON.parse(ran.out));
  const items = plan.years.flatMap((year) => year.items);
  expect(items.length).toBeGreaterThan(0);
  for (const { spent, budget, items: own } of plan.years) {
    expect(spent).toBeLessThanOrEqual(budget);
    expect(Math.round(100 * own.reduce((sum, { cost }) => sum + cost, 0))).toBe(Math.round(100 * spent));
  }
  expect(Math.round(100 * items.reduce((sum, { net_present_value }) => sum + net_present_value, 0))).toBe(
    Math.round(100 * plan.value),
  );
  expect(plan.bound).toBeGreaterThanOrEqual(plan.value);
  const named = [...items, ...plan.at_failure, ...plan.left_out].map(({ tag }) => tag);
  expect([...named].sort()).toEqual(motors.map(({ tag }) => tag).sort());
  // Cost and worth are those of the motor's own results.
  plan.years.forEach(({ items: own }, y) => {
    for (const { tag, option, cost, net_present_value } of own) {
      const stated = motors.find((motor) => motor.tag === tag)?.options.find(({ id }) => id === option);
      expect([stated?.cost, stated?.net_present_value_by_year[y]]).toEqual([cost, net_present_value]);
    }
  });
  const table = studyCommand('plan', fleet, '--settings', settings, '--format', 'csv').out.trim().split('\n');
  expect(table.length).toBe(1 + motors.length);
});

it('study plan ends with 2 and the year when a failed motor does not fit the budget', () => {
  const broken = file(
    'broken.csv',
    'tag,status,rated_power_hp,rated_voltage_v,rated_speed_rpm,hours_per_year\nP-1,failed,50,460,1765,8000\n',
  );
  const poor = file('poor.json', JSON.stringify({ schema: 1, as_of: '2026-01-01', budget: [1, 9000] }));
  const ran = studyCommand('plan', broken, '--settings', poor);
  expect(ran.code).toBe(2);
  expect(ran.err).toContain('2026');
  expect(ran.out).toBe('');
});

it('study plan takes its wishes from the settings, plans other budgets too, and names a wish that cannot be', () => {
  const wish = (plan: unknown) =>
    file('wish.json', JSON.stringify({ schema: 1, as_of: '2026-01-01', budget: [9000, 9000], plan }));
  const withWishes = z.object({
    settings: z.object({ plan: z.object({ forbid: z.array(z.object({ tag: z.string() })) }) }),
    plan: planShape.shape.plan.extend({
      frontier: z.array(z.object({ multiple: z.number(), value: z.number() })),
      years: z.array(z.object({ items: z.array(z.object({ tag: z.string(), low_case_value: z.number() })) })),
    }),
  });
  const free = planShape.parse(JSON.parse(studyCommand('plan', fleet, '--settings', settings).out)).plan;
  const first = free.years[0]?.items[0]?.tag ?? '';
  const asked = { forbid: [{ tag: first }], frontier: [1, 2], robust: { energy_price: 0.9, hours: 0.95 } };
  const ran = studyCommand('plan', fleet, '--settings', wish(asked));
  expect(ran.err).not.toContain('Error');
  const { plan, settings: echoed } = withWishes.parse(JSON.parse(ran.out));
  expect(echoed.plan.forbid).toEqual([{ tag: first }]);
  expect(plan.left_out.find(({ tag }) => tag === first)?.because.code).toBe('forbidden');
  expect(plan.value).toBeLessThan(free.value);
  const items = plan.years.flatMap((year) => year.items);
  expect(items.length).toBeGreaterThan(0);
  for (const { low_case_value } of items) expect(low_case_value).toBeGreaterThan(0);
  const [one, two] = plan.frontier;
  expect(one?.value).toBe(plan.value);
  expect(two?.value).toBeGreaterThan(plan.value);
  const unknown = studyCommand('plan', fleet, '--settings', wish({ forbid: [{ tag: 'X-1' }] }));
  expect([unknown.code, unknown.err.includes('X-1, which is not in the fleet')]).toEqual([2, true]);
  const misspelt = studyCommand('plan', fleet, '--settings', wish({ pin: [] }));
  expect([misspelt.code, misspelt.err.includes('plan.pins')]).toEqual([2, true]);
});

it('study plan refuses a limit of hours for an area, a site or a year that is not there, and ends with 2', () => {
  const ran = (name: string, limit: object) =>
    studyCommand(
      'plan',
      fleet,
      '--settings',
      file(name, JSON.stringify({ as_of: '2026-01-01', budget: [9000, 9000], plan: { limits: [limit] } })),
    );
  const area = ran('area.json', { area: 'kiln', outage_hours: 8 });
  expect([area.code, area.out]).toEqual([2, '']);
  expect(area.err).toContain('Limit of hours 1 of the plan names area kiln, where no motor stands.');
  expect(area.err).toContain('leave it out to limit all together');
  const year = ran('year.json', { year: 2031, crew_hours: 8 });
  expect([year.code, year.out]).toEqual([2, '']);
  expect(year.err).toContain('give a year of the budget, from 2026 to 2027');
  const below = ran('below.json', { crew_hours: -8 });
  expect(below.err).toContain('plan.limits.0.crew_hours');
  expect(ran('all.json', { crew_hours: 0 }).code).toBe(0);
});
