import chart from '@/app/_ui/chart.module.css';
import { ChartFrame } from '@/app/_ui/chart-frame';
import { linear, ticks } from '@/app/_ui/scale';
import { ValueMarks } from '@/app/_ui/value-marks';
import type { RegressionLine } from '@/lib/engine';
import { COVERAGE_FACTOR, formatNumber } from '@/lib/platform/format';
import styles from './bench.module.css';

const WIDTH = 560;
const HEIGHT = 322;
const LEFT = 58;
const RIGHT = 14;
const TOP = 14;
const BOTTOM = 78;

interface Props {
  readonly line: RegressionLine;
  readonly kind: 'no-load' | 'stray';
  readonly correlation?: number | undefined;
}

/** Digits after the decimal sign that tell neighbouring marks apart. */
function places(marks: readonly number[]): number {
  const step = Math.abs((marks[1] ?? 1) - (marks[0] ?? 0));
  return step > 0 ? Math.max(0, -Math.floor(Math.log10(step))) : 0;
}

function sentenceOf({ line, kind, correlation }: Props): string {
  if (kind === 'no-load')
    return `Friction and windage ${formatNumber(1000 * line.intercept, 0)} W: the line through the low voltages (filled), at zero voltage.`;
  const left = line.points.find((point) => !point.used);
  const r = correlation === undefined ? '' : `, correlation ${formatNumber(correlation, 3)}`;
  return `Stray-load loss ${formatNumber(line.slope, 5)} W for each (N·m)²${r}${left ? `; row ${left.row} left out` : ''}.`;
}

/** One of the two regressions of a test: points with their intervals, the line, its 95 % band, and the point left out. */
export function RegressionChart(props: Props) {
  const { line, kind } = props;
  const sentence = sentenceOf(props);
  const xs = line.points.map((point) => point.x);
  const lows = [
    0,
    ...line.points.map((point) => point.y - COVERAGE_FACTOR * point.u),
    ...line.band.map((b) => b.y - COVERAGE_FACTOR * b.u),
  ];
  const highs = [
    ...line.points.map((point) => point.y + COVERAGE_FACTOR * point.u),
    ...line.band.map((b) => b.y + COVERAGE_FACTOR * b.u),
  ];
  const [low, high] = [Math.min(...lows), Math.max(...highs)];
  const x = linear([0, Math.max(...xs) * 1.03], [LEFT, WIDTH - RIGHT]);
  const y = linear([low, high], [HEIGHT - BOTTOM, TOP]);
  const at = (px: number, py: number) => `${x(px).toFixed(1)},${y(py).toFixed(1)}`;
  const upper = line.band.map((b) => at(b.x, b.y + COVERAGE_FACTOR * b.u));
  const lower = line.band.map((b) => at(b.x, b.y - COVERAGE_FACTOR * b.u)).reverse();
  const yMarks = ticks(low, high, 5);
  const xMarks = ticks(0, Math.max(...xs), 4);
  const xName = kind === 'no-load' ? '(voltage over rated)²' : 'torque squared, (N·m)²';
  const yName = kind === 'no-load' ? 'no-load power less stator loss, kW' : 'loss not explained, W';
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: ['Row', xName, yName, '± (95 %)', 'Counts'],
        rows: line.points.map((point) => [
          String(point.row),
          formatNumber(point.x, kind === 'no-load' ? 4 : 0),
          formatNumber(point.y, kind === 'no-load' ? 4 : 1),
          formatNumber(COVERAGE_FACTOR * point.u, kind === 'no-load' ? 4 : 1),
          point.used ? 'yes' : 'no',
        ]),
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={sentence} className={`${chart.chart} ${styles.chart}`}>
        <ValueMarks marks={yMarks} y={y} left={LEFT} right={WIDTH - RIGHT} words={(mark) => formatNumber(mark, places(yMarks))} />
        {xMarks.map((mark) => (
          <text key={mark} x={x(mark)} y={HEIGHT - BOTTOM + 20} textAnchor="middle" className={chart.soft}>
            {formatNumber(mark, places(xMarks))}
          </text>
        ))}
        <text x={WIDTH - RIGHT} y={HEIGHT - 32} textAnchor="end" className={chart.soft}>
          {xName}
        </text>
        <text x={2} y={HEIGHT - 6} className={chart.soft}>
          {yName}
        </text>
        <path d={`M${[...upper, ...lower].join('L')}Z`} className={chart.band} />
        <path d={`M${line.band.map((b) => at(b.x, b.y)).join('L')}`} className={chart.curve} />
        {line.points.map((point) => (
          <Point key={point.row} point={point} kind={kind} x={x} y={y} far={point.x > 0.7 * Math.max(...xs)} />
        ))}
      </svg>
    </ChartFrame>
  );
}

interface PointProps {
  readonly point: RegressionLine['points'][number];
  readonly kind: Props['kind'];
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
  /** So far to the right that words have room on its left only. */
  readonly far: boolean;
}

/** A point with its interval; one that does not count is hollow, or crossed out and named. */
function Point({ point, kind, x, y, far }: PointProps) {
  return (
    <g>
      <line
        x1={x(point.x)}
        x2={x(point.x)}
        y1={y(point.y - COVERAGE_FACTOR * point.u)}
        y2={y(point.y + COVERAGE_FACTOR * point.u)}
        className={point.used ? chart.whisker : chart.unused}
      />
      {point.used || kind === 'no-load' ? (
        <circle cx={x(point.x)} cy={y(point.y)} r="4" className={point.used ? chart.dot : chart.hollow} />
      ) : (
        <path d={`M${x(point.x) - 5},${y(point.y) - 5}l10,10m0,-10l-10,10`} className={styles.leftOut} />
      )}
      {!point.used && kind === 'stray' && (
        <text x={x(point.x) + (far ? -9 : 9)} y={y(point.y) + 4} textAnchor={far ? 'end' : 'start'} className={chart.label}>
          row {point.row}, left out
        </text>
      )}
    </g>
  );
}
