import { COVERAGE_FACTOR, formatNumber } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';
import { linear, logarithmic, logarithmicTicks, ticks } from './scale';
import { ValueMarks } from './value-marks';

const WIDTH = 640;
const HEIGHT = 296;
const LEFT = 84;
const RIGHT = 16;
const TOP = 30;
const BOTTOM = 54;

/** One point of a line; `u` is a standard uncertainty. */
interface LinePoint {
  readonly at: number;
  readonly value: number;
  readonly u?: number;
}

interface Props {
  readonly sentence: string;
  readonly points: readonly LinePoint[];
  readonly across: string;
  readonly up: string;
  /** Digits after the sign on the axis across. */
  readonly digits?: number;
  /** True where the values across lie closer the smaller they are, as ratings do: equal ratios are then equally long, and every point has its dot. */
  readonly byRatio?: boolean;
  /** A place on the axis across with its words. */
  readonly mark?: { readonly at: number; readonly words: string } | undefined;
}

/** A line over zero with its 95 % band where there is one, and one place marked. */
export function ChartLine({ sentence, points, across, up, digits = 0, byRatio = false, mark }: Props) {
  const spread = (point: LinePoint) => COVERAGE_FACTOR * (point.u ?? 0);
  const low = Math.min(0, ...points.map((point) => point.value - spread(point)));
  const high = Math.max(0, ...points.map((point) => point.value + spread(point)));
  const first = points[0]?.at ?? 0;
  const last = points[points.length - 1]?.at ?? 1;
  const x = (byRatio ? logarithmic : linear)([first, last], [LEFT, WIDTH - RIGHT]);
  const y = linear([low, high], [HEIGHT - BOTTOM, TOP]);
  const path = (value: (point: LinePoint) => number) =>
    points.map((point) => `${x(point.at).toFixed(1)},${y(value(point)).toFixed(1)}`);
  const band = [...path((point) => point.value + spread(point)), ...path((point) => point.value - spread(point)).reverse()];
  const doubtful = points.some((point) => point.u !== undefined);
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: [across, up, ...(doubtful ? ['± (95 %)'] : [])],
        rows: points.map((point) => [
          formatNumber(point.at, digits),
          formatNumber(point.value, 0),
          ...(doubtful ? [formatNumber(spread(point), 0)] : []),
        ]),
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={sentence} className={styles.chart}>
        <text x={2} y={14} className={styles.soft}>
          {up}
        </text>
        <ValueMarks
          marks={ticks(low, high, 5)}
          y={y}
          left={LEFT}
          right={WIDTH - RIGHT}
          words={(tick) => formatNumber(tick, 0)}
          axis
        />
        {(byRatio ? logarithmicTicks(first, last) : ticks(first, last, 5)).map((tick) => (
          <g key={tick}>
            {byRatio && <line x1={x(tick)} x2={x(tick)} y1={TOP} y2={HEIGHT - BOTTOM} className={styles.grid} />}
            <text x={x(tick)} y={HEIGHT - BOTTOM + 22} textAnchor="middle" className={styles.soft}>
              {formatNumber(tick, tick !== 0 && tick < 1 ? Math.max(1, digits) : digits)}
            </text>
          </g>
        ))}
        <text x={WIDTH - RIGHT} y={HEIGHT - 4} textAnchor="end" className={styles.soft}>
          {across}
        </text>
        {doubtful && <path d={`M${band.join('L')}Z`} className={styles.band} />}
        <path d={`M${path((point) => point.value).join('L')}`} className={styles.curve} />
        {byRatio &&
          points.map((point) => <circle key={point.at} cx={x(point.at)} cy={y(point.value)} r={3} className={styles.dot} />)}
        {mark && mark.at >= first && mark.at <= last && (
          <g>
            <line x1={x(mark.at)} x2={x(mark.at)} y1={TOP} y2={HEIGHT - BOTTOM} className={styles.drop} />
            <text
              x={x(mark.at) + (x(mark.at) > WIDTH / 2 ? -6 : 6)}
              y={TOP + 14}
              textAnchor={x(mark.at) > WIDTH / 2 ? 'end' : 'start'}
              className={styles.label}
            >
              {mark.words}
            </text>
          </g>
        )}
      </svg>
    </ChartFrame>
  );
}
