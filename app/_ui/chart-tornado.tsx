import { formatNumber } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';
import { linear, ticks } from './scale';

const WIDTH = 640;
const LEFT = 210;
const RIGHT = 16;
/** Room for two lines of letters that a phone shows larger. */
const ROW = 48;
const THICK = 18;

/** What one input does to a figure when it alone is moved; absent where the figure cannot be given there. */
export interface SwingRow {
  readonly label: string;
  readonly low: string;
  readonly high: string;
  readonly atLow: number | undefined;
  readonly atHigh: number | undefined;
}

/** Swings of a figure about its base, widest first: from the base to the figure at the low end of an input, hatched, and at the high end, full. */
export function ChartTornado({
  sentence,
  base,
  rows,
  unit,
}: {
  readonly sentence: string;
  readonly base: number;
  readonly rows: readonly SwingRow[];
  readonly unit: string;
}) {
  const ends = rows.flatMap(({ atLow, atHigh }) => [atLow, atHigh].filter((end) => end !== undefined));
  const low = Math.min(0, base, ...ends);
  const high = Math.max(0, base, ...ends);
  const x = linear([low, high], [LEFT, WIDTH - RIGHT]);
  const bottom = rows.length * ROW + 6;
  const words = (value: number | undefined) => (value === undefined ? 'cannot be told' : formatNumber(value, 0));
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: ['Moved alone', 'From', `${unit} there`, 'To', `${unit} at that end`],
        rows: rows.map((row) => [row.label, row.low, words(row.atLow), row.high, words(row.atHigh)]),
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${bottom + 48}`} role="img" aria-label={sentence} className={styles.chart}>
        <defs>
          <pattern id="swing-less" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0,3 h6" className={styles.hatch} />
          </pattern>
        </defs>
        {ticks(low, high, 4).map((tick) => (
          <g key={tick}>
            <line x1={x(tick)} x2={x(tick)} y1={2} y2={bottom} className={tick === 0 ? styles.axis : styles.grid} />
            <text x={x(tick)} y={bottom + 20} textAnchor="middle" className={styles.soft}>
              {formatNumber(tick, 0)}
            </text>
          </g>
        ))}
        <text x={WIDTH - RIGHT} y={bottom + 44} textAnchor="end" className={styles.soft}>
          {unit}
        </text>
        {rows.map((row, index) => {
          const y = index * ROW + ROW / 2;
          const bar = (end: number | undefined, className: string | undefined) => (
            <rect
              x={Math.min(x(end ?? base), x(base))}
              y={y - THICK / 2}
              width={Math.abs(x(end ?? base) - x(base))}
              height={THICK}
              className={className}
            />
          );
          return (
            <g key={row.label}>
              <text x={LEFT - 10} y={y - 3} textAnchor="end" className={styles.label}>
                {row.label}
              </text>
              <text x={LEFT - 10} y={y + 17} textAnchor="end" className={styles.soft}>
                {row.low} to {row.high}
              </text>
              {bar(row.atLow, styles.less)}
              {bar(row.atHigh, styles.bar)}
            </g>
          );
        })}
        <line x1={x(base)} x2={x(base)} y1={2} y2={bottom} className={styles.cross} />
      </svg>
    </ChartFrame>
  );
}
