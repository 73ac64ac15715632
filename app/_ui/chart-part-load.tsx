import type { CurvePoint, Figure } from '@/lib/engine';
import { formatFigure, formatNumber } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';
import { linear, ticks } from './scale';

const WIDTH = 640;
const HEIGHT = 300;
const LEFT = 44;
const BOTTOM = 54;

interface Props {
  readonly sentence: string;
  readonly curve: readonly CurvePoint[];
  readonly load?: Figure | undefined;
  readonly efficiency?: Figure | undefined;
}

/** Efficiency over load with its 95 % band, and the operating point as a cross as wide and high as its interval. */
export function ChartPartLoad({ sentence, curve, load, efficiency }: Props) {
  const lows = curve.map((point) => point.efficiency - 1.96 * point.u);
  const highs = curve.map((point) => point.efficiency + 1.96 * point.u);
  const floor = Math.max(
    0,
    Math.floor(
      Math.min(...curve.filter((point) => point.loadFraction >= 0.2).map((point) => point.efficiency - 1.96 * point.u)) * 20,
    ) / 20,
  );
  const top = Math.min(1, Math.ceil(Math.max(...highs) * 50) / 50);
  const x = linear([0, curve[curve.length - 1]?.loadFraction ?? 1.25], [LEFT, WIDTH - 12]);
  const y = linear([floor, top], [HEIGHT - BOTTOM, 10]);
  const inside = (value: number) => Math.min(Math.max(value, floor), top);
  const path = (values: readonly number[]) =>
    values.map((value, index) => `${x(curve[index]?.loadFraction ?? 0).toFixed(1)},${y(value).toFixed(1)}`);
  const line = `M${path(curve.map((point) => point.efficiency)).join('L')}`;
  const band = `M${[...path(highs), ...path(lows).reverse()].join('L')}Z`;
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: ['Load, % of rating', 'Efficiency, %', '± (95 %)'],
        rows: curve
          .filter((_, index) => index % 4 === 0)
          .map((point) => [
            formatNumber(100 * point.loadFraction, 0),
            formatNumber(100 * point.efficiency, 1),
            formatNumber(196 * point.u, 1),
          ]),
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={sentence} className={styles.chart}>
        {ticks(floor, top, 5).map((mark) => (
          <g key={mark}>
            <line x1={LEFT} x2={WIDTH - 12} y1={y(mark)} y2={y(mark)} className={styles.grid} />
            <text x={LEFT - 6} y={y(mark) + 4} textAnchor="end" className={styles.soft}>
              {formatNumber(100 * mark, 0)}
            </text>
          </g>
        ))}
        {[0, 0.25, 0.5, 0.75, 1, 1.25].map((mark) => (
          <text key={mark} x={x(mark)} y={HEIGHT - BOTTOM + 22} textAnchor="middle" className={styles.soft}>
            {formatNumber(100 * mark, 0)}
          </text>
        ))}
        <text x={WIDTH - 12} y={HEIGHT - 4} textAnchor="end" className={styles.soft}>
          load, % of rating
        </text>
        <text x={2} y={HEIGHT - 4} className={styles.soft}>
          efficiency, %
        </text>
        <clipPath id="part-load-field">
          <rect x={LEFT} y={10} width={WIDTH - 12 - LEFT} height={HEIGHT - BOTTOM - 10} />
        </clipPath>
        <g clipPath="url(#part-load-field)">
          <path d={band} className={styles.band} />
          <path d={line} className={styles.curve} />
        </g>
        {load && efficiency && (
          <g>
            <line
              x1={x(load.value - 1.96 * load.u)}
              x2={x(load.value + 1.96 * load.u)}
              y1={y(inside(efficiency.value))}
              y2={y(inside(efficiency.value))}
              className={styles.cross}
            />
            <line
              x1={x(load.value)}
              x2={x(load.value)}
              y1={y(inside(efficiency.value - 1.96 * efficiency.u))}
              y2={y(inside(efficiency.value + 1.96 * efficiency.u))}
              className={styles.cross}
            />
            <circle cx={x(load.value)} cy={y(inside(efficiency.value))} r="3" className={styles.dot} />
            <line
              x1={x(load.value)}
              x2={x(load.value)}
              y1={y(inside(efficiency.value - 1.96 * efficiency.u))}
              y2={HEIGHT - BOTTOM}
              className={styles.drop}
            />
            {[formatFigure(efficiency, { percent: true }).text, `at ${formatFigure(load, { percent: true }).text} load`].map(
              (words, index) => (
                <text
                  key={words}
                  x={x(load.value) + (load.value > 0.5 ? -8 : 8)}
                  y={HEIGHT - BOTTOM - 34 + 22 * index}
                  textAnchor={load.value > 0.5 ? 'end' : 'start'}
                  className={styles.label}
                >
                  {words}
                </text>
              ),
            )}
          </g>
        )}
      </svg>
    </ChartFrame>
  );
}
