import type { BenchResult } from '@/lib/engine';
import { csvRow } from '../fleet/csv-cell';

const LOSSES = ['stator', 'rotor', 'core', 'friction_windage', 'stray', 'total'] as const;
const FIGURES = [
  ['input_power', 'kw'],
  ['shaft_power', 'kw'],
  ['efficiency', ''],
  ['power_factor', ''],
  ['current', 'a'],
  ['speed', 'rpm'],
] as const;

/** The standard loads of tests as a table: one row a test and load, each figure with its standard uncertainty beside it. */
export function benchCsv(results: readonly BenchResult[]): string {
  const named = [
    ...FIGURES.map(([key, unit]) => (unit === '' ? key : `${key}_${unit}`)),
    ...LOSSES.map((loss) => `loss_${loss}_kw`),
  ];
  const head = ['tag', 'test', 'method', 'accepted', 'load_fraction', ...named.flatMap((name) => [name, `u_${name}`])];
  const rows = results.flatMap((result) =>
    result.points.map((point) => {
      const figures = [...FIGURES.map(([key]) => point[key]), ...LOSSES.map((loss) => point.losses[loss])];
      const cells = figures.flatMap((figure) => [figure.value, figure.u]);
      return csvRow([result.tag, result.test, result.method, result.accepted, point.load_fraction, ...cells]);
    }),
  );
  return [csvRow(head), ...rows].join('');
}
