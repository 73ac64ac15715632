import { COPPER } from '../circuit/copper';
import { NORMAL_FACTOR } from '../quantity/coverage';
import type { Figure } from '../result';
import type { RewindLimitRow, Table } from '../tables';
import type { BenchResult } from './result';

/** One quantity before and after. */
export interface TestChange {
  readonly id: 'resistance' | 'no-load-loss' | 'core-loss' | 'friction-windage' | 'stray' | 'efficiency';
  readonly title: string;
  readonly before: Figure;
  readonly after: Figure;
  /** After less before, in the unit of the figures; of resistance both at 25 °C. */
  readonly change: Figure;
  /** The same as a percentage of the value before; of efficiency the change in percentage points. */
  readonly percent: Figure;
  /** Larger than the 95 % interval of both tests together. */
  readonly significant: boolean;
  /** Largest rise allowed (of efficiency the largest fall), per cent or points; absent where none is published. */
  readonly limit?: number;
  readonly limitSource?: string;
  readonly limitStatus?: string;
  /** Beyond the limit surely, perhaps, or not. */
  readonly verdict: 'kept' | 'open' | 'beyond' | 'no-limit';
}

/** Two tests of one motor side by side. */
export interface TestComparison {
  readonly changes: readonly TestChange[];
  /** Whether the repair kept the motor's efficiency, in one sentence. */
  readonly verdict: 'kept' | 'open' | 'lost';
  readonly sentence: string;
}

/** Temperature to which the resistances of both tests are brought, °C. */
const COLD = 25;

interface Row {
  readonly id: TestChange['id'];
  readonly title: string;
  readonly of: (result: BenchResult) => Figure | undefined;
  readonly limit?: RewindLimitRow['quantity'];
  /** True where less is worse, as for efficiency. */
  readonly falling?: boolean;
}

const ROWS: readonly Row[] = [
  { id: 'resistance', title: 'Stator resistance at 25 °C', of: coldResistance, limit: 'resistance' },
  { id: 'no-load-loss', title: 'No-load loss at rated voltage', of: (r) => r.constant_loss, limit: 'no-load-loss' },
  { id: 'core-loss', title: 'Core loss', of: (r) => r.core_loss, limit: 'core-loss' },
  { id: 'friction-windage', title: 'Friction and windage', of: (r) => r.friction_windage },
  { id: 'stray', title: 'Stray-load loss at rated load', of: (r) => r.measured.stray_at_rated_load },
  { id: 'efficiency', title: 'Efficiency at rated load', of: ratedEfficiency, limit: 'efficiency', falling: true },
];

function coldResistance({ measured }: BenchResult): Figure | undefined {
  const { stator_resistance: r, stator_resistance_temp: t } = measured;
  if (!r || !t) return undefined;
  const factor = (COPPER + COLD) / (COPPER + t.value);
  return { value: r.value * factor, u: Math.hypot(r.u * factor, (r.value * factor * t.u) / (COPPER + t.value)), unit: r.unit };
}

function ratedEfficiency(result: BenchResult): Figure | undefined {
  return result.accepted ? result.points.find((point) => point.load_fraction === 1)?.efficiency : undefined;
}

/**
 * A motor's test before and after a rewind.
 *
 * Units: those of the figures. The two tests are taken as independent of each other, so that the doubt of a difference is the root of both
 * squares: right for two shops, cautious for one bench. A change beyond its limit counts only when it is so by more than the interval.
 * Source: limits of the table of rewind limits, some of them common practice; ANSI/EASA AR100 from memory.
 */
export function compareTests(before: BenchResult, after: BenchResult, limits: Table<RewindLimitRow>): TestComparison {
  const sameMethod = before.method === after.method;
  const changes = ROWS.flatMap((row): TestChange[] => {
    // Efficiencies by different methods are not comparable: the standards say so.
    if (row.id === 'efficiency' && !sameMethod) return [];
    const a = row.of(before);
    const b = row.of(after);
    return a && b && a.value > 0 ? [changeOf(row, a, b, limits)] : [];
  });
  return { changes, ...overall(changes, sameMethod) };
}

function changeOf(row: Row, before: Figure, after: Figure, limits: Table<RewindLimitRow>): TestChange {
  const change: Figure = { value: after.value - before.value, u: Math.hypot(before.u, after.u), unit: before.unit };
  const points = row.id === 'efficiency';
  const percent: Figure = points
    ? { value: 100 * change.value, u: 100 * change.u, unit: 'points' }
    : {
        value: (100 * change.value) / before.value,
        u: 100 * Math.hypot(after.u / before.value, (after.value * before.u) / before.value ** 2),
        unit: '%',
      };
  const limit = row.limit === undefined ? undefined : limits.rows.find((each) => each.quantity === row.limit);
  const worse = row.falling === true ? -percent.value : percent.value;
  const doubt = NORMAL_FACTOR * percent.u;
  const verdict =
    limit === undefined
      ? 'no-limit'
      : worse - doubt > limit.largestRisePct
        ? 'beyond'
        : worse + doubt <= limit.largestRisePct
          ? 'kept'
          : 'open';
  return {
    id: row.id,
    title: row.title,
    before,
    after,
    change,
    percent,
    significant: Math.abs(change.value) > NORMAL_FACTOR * change.u,
    verdict,
    ...(limit && { limit: limit.largestRisePct, limitSource: limit.source, limitStatus: limit.status }),
  };
}

function overall(changes: readonly TestChange[], sameMethod: boolean): Pick<TestComparison, 'verdict' | 'sentence'> {
  const beyond = changes.filter((change) => change.verdict === 'beyond');
  const open = changes.filter((change) => change.verdict === 'open');
  const judged = changes.filter((change) => change.verdict !== 'no-limit');
  const name = (list: readonly TestChange[]) => list.map((change) => change.title.toLowerCase()).join(', ');
  if (beyond.length > 0)
    return { verdict: 'lost', sentence: `The repair did not keep the motor as it was: beyond the limit are ${name(beyond)}.` };
  const method = sameMethod ? '' : ' The efficiencies are by different methods and are not compared.';
  if (judged.length === 0)
    return { verdict: 'open', sentence: `The two tests have nothing in common that could be judged.${method}` };
  if (open.length > 0) {
    return {
      verdict: 'open',
      sentence: `Whether the repair kept the motor’s efficiency is open: within their doubt are ${name(open)}.${method}`,
    };
  }
  return { verdict: 'kept', sentence: `The repair kept the motor as it was: ${name(judged)} within the limits.${method}` };
}
