import Papa from 'papaparse';
import { type MotorResult, motorKey } from '@/lib/engine';
import { fromMinor, toMinor } from '@/lib/platform/money';
import type { Programme } from '../plan/programme';
import { programmeCsv } from '../plan/programme-csv';
import type { WorkedOption } from '../workbook/work-out';
import type { Content } from './content';

/** What a programme comes to, as one of its forms has it, in minor units. */
export interface Sum {
  readonly from: string;
  readonly motors: number;
  readonly cost: bigint;
  readonly worth: bigint;
}

/**
 * The same programme summed in ways that do not rest on one another: from the frozen result of every funded motor, from the items, from the years and the
 * total as they are stated, from the CSV file read again, and from the formulas of the workbook where that was worked out. They must agree to the minor unit.
 * @param workbook by motor and option, see `workedOut`.
 */
export function reconcile(
  content: Pick<Content, 'settings' | 'results' | 'programme'>,
  workbook?: ReadonlyMap<string, WorkedOption>,
): readonly Sum[] {
  const { programme, results, settings } = content;
  const { currency } = settings;
  const items = programme.years.flatMap((year) => year.items);
  const minor = (amount: number | undefined) => toMinor(amount ?? 0, currency);
  const add = (amounts: readonly bigint[]) => amounts.reduce((sum, amount) => sum + amount, 0n);
  const byMotor = fromResults(results, programme, settings);
  const rows = Papa.parse<Record<string, string>>([...programmeCsv(programme)].join(''), {
    header: true,
    skipEmptyLines: true,
  }).data;
  const funded = rows.filter(({ year }) => /^\d+$/.test(year ?? ''));
  const stated = programme.objective === 'net-present-value' ? minor(programme.value) : undefined;
  return [
    {
      from: 'the result of each motor',
      motors: byMotor.length,
      cost: add(byMotor.map(([cost]) => minor(cost))),
      worth: add(byMotor.map(([, worth]) => minor(worth))),
    },
    {
      from: 'the items of the plan',
      motors: items.length,
      cost: add(items.map(({ cost }) => minor(cost))),
      worth: add(items.map((item) => minor(item.net_present_value))),
    },
    {
      from: 'the plan as stated',
      motors: items.length,
      cost: add(programme.years.map(({ spent }) => minor(spent))),
      worth: stated ?? add(items.map((item) => minor(item.net_present_value))),
    },
    {
      from: 'the CSV file',
      motors: funded.length,
      cost: add(funded.map(({ cost }) => minor(Number(cost)))),
      worth: add(funded.map((row) => minor(Number(row.net_present_value)))),
    },
    ...(workbook ? [fromWorkbook(workbook, content)] : []),
  ];
}

/** Whether all sums are the same. */
export function agrees(sums: readonly Sum[]): boolean {
  const [first] = sums;
  return sums.every(({ motors, cost, worth }) => motors === first?.motors && cost === first.cost && worth === first.worth);
}

/** Cost and worth of each funded motor, looked up anew in the frozen results by its place in the years. */
function fromResults(
  results: readonly unknown[],
  programme: Programme,
  settings: Content['settings'],
): readonly (readonly [number, number | undefined])[] {
  const nominal = growthOfCosts(settings);
  const known = new Map((results as readonly MotorResult[]).map((result) => [`${result.site}\n${result.tag}`, result]));
  return programme.years.flatMap(({ items }, at) =>
    items.flatMap(({ site, tag, option: id }) => {
      const option = known.get(`${site}\n${tag}`)?.options.find((each) => each.id === id);
      return option ? [[option.cost * (1 + nominal) ** at, option.net_present_value_by_year[at]] as const] : [];
    }),
  );
}

/** Costs grow with inflation where money is nominal. */
function growthOfCosts({ money_terms, inflation }: Content['settings']): number {
  return money_terms === 'nominal' && typeof inflation === 'number' ? inflation : 0;
}

/** The funded options as the workbook's own formulas have them, each in its year. What the workbook lacks is not counted, so that the numbers differ. */
function fromWorkbook(
  workbook: ReadonlyMap<string, WorkedOption>,
  { programme, settings }: Pick<Content, 'programme' | 'settings'>,
): Sum {
  const growth = growthOfCosts(settings);
  const minor = (amount: number) => toMinor(amount, settings.currency);
  const found = programme.years.flatMap(({ items }, at) =>
    items.flatMap((item) => {
      const option = workbook.get(`${motorKey(item)}\n${item.option}`);
      if (option?.cost === undefined) return [];
      const cost = fromMinor(minor(option.cost), settings.currency) * (1 + growth) ** at;
      return [{ cost: minor(cost), worth: minor(option.values[at] ?? 0) }];
    }),
  );
  return {
    from: 'the workbook, worked out from its formulas',
    motors: found.length,
    cost: found.reduce((sum, { cost }) => sum + cost, 0n),
    worth: found.reduce((sum, { worth }) => sum + worth, 0n),
  };
}
