import { COVERAGE_FACTOR, formatFigure, type ShownFigure } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';
import { linear, ticks } from './scale';

/** One way to a figure, with its 95 % interval. */
interface Whisker {
  readonly label: string;
  readonly figure: ShownFigure;
  readonly used: boolean;
  readonly bold?: boolean;
  readonly why?: string;
}

const WIDTH = 640;
const LEFT = 170;
const RIGHT = 200;
const ROW = 32;

/** Several ways to one figure on a shared axis, the joint one last and bold; what was not used is drawn open. */
export function ChartWhiskers({
  sentence,
  rows,
  unit,
}: {
  readonly sentence: string;
  readonly rows: readonly Whisker[];
  readonly unit: string;
}) {
  const spans = rows.map(
    ({ figure }) => [figure.value - COVERAGE_FACTOR * figure.u, figure.value + COVERAGE_FACTOR * figure.u] as const,
  );
  const low = Math.max(0, Math.min(...spans.map(([start]) => start)));
  const high = Math.max(...spans.map(([, end]) => end));
  const margin = (high - low) * 0.06 || 1;
  const x = linear([Math.max(0, low - margin), high + margin], [LEFT, WIDTH - RIGHT]);
  const marks = ticks(Math.max(0, low - margin), high + margin, 5);
  const bottom = rows.length * ROW + 8;
  const described = rows
    .map((row) => `${row.label} ${formatFigure(row.figure).range ?? formatFigure(row.figure).text}`)
    .join('; ');
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: ['Way', 'Value', '95 % interval', 'Used', 'Remark'],
        rows: rows.map((row) => [
          row.label,
          formatFigure(row.figure).text,
          formatFigure(row.figure).range ?? '',
          row.used ? 'yes' : 'no',
          row.why ?? '',
        ]),
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${bottom + 48}`} role="img" aria-label={described} className={styles.chart}>
        {marks.map((mark) => (
          <g key={mark}>
            <line x1={x(mark)} x2={x(mark)} y1={4} y2={bottom} className={styles.grid} />
            <text x={x(mark)} y={bottom + 20} textAnchor="middle" className={styles.soft}>
              {mark}
            </text>
          </g>
        ))}
        <text x={LEFT} y={bottom + 44} className={styles.soft}>
          {unit}
        </text>
        {rows.map((row, index) => {
          const y = index * ROW + ROW / 2 + 2;
          const [start, end] = spans[index] ?? [0, 0];
          const text = formatFigure(row.figure);
          return (
            <g key={row.label} className={row.bold ? styles.bold : undefined}>
              <text x={LEFT - 12} y={y + 5} textAnchor="end" className={row.used ? styles.label : styles.soft}>
                {row.label}
              </text>
              <line
                x1={x(Math.max(start, 0))}
                x2={x(end)}
                y1={y}
                y2={y}
                className={row.used ? styles.whisker : styles.unused}
                strokeWidth={row.bold ? 3 : 1.5}
              />
              <circle cx={x(row.figure.value)} cy={y} r={row.bold ? 5 : 4} className={row.used ? styles.dot : styles.hollow} />
              <text x={WIDTH - RIGHT + 14} y={y + 5} className={styles.label}>
                {/* Uneven limits stand in the table beside their value; here there is room for the range alone. */}
                {text.plusMinus === undefined ? (text.range ?? text.text) : text.text}
                {row.used ? '' : ' (not used)'}
              </text>
            </g>
          );
        })}
      </svg>
    </ChartFrame>
  );
}
