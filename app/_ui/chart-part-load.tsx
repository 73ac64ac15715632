import type { CurvePoint } from '@/lib/engine';
import { COVERAGE_FACTOR, formatFigure, formatNumber, type ShownFigure } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';
import { linear, ticks } from './scale';
import { ValueMarks } from './value-marks';

const WIDTH = 640;
const LEFT = 44;
const RIGHT = 12;
const PANEL = 220;
const GAP = 40;
const BOTTOM = 54;
const HEIGHT = 2 * PANEL + GAP + BOTTOM;

/** Up to this load the words at the operating point have room on its right, clear of the steep part of the curves. */
const ROOM_RIGHT = 0.7;

/** Below this load the curves fall so steeply that they would set the scale of all else. */
const FROM = 0.2;

interface Props {
  readonly sentence: string;
  readonly curve: readonly CurvePoint[];
  readonly load?: ShownFigure | undefined;
  readonly efficiency?: ShownFigure | undefined;
  readonly powerFactor?: ShownFigure | undefined;
}

interface PanelValue {
  readonly at: number;
  readonly value: number;
  readonly u: number;
}

/** Efficiency over load and below it power factor, each with its 95 % band, and the operating point as a cross as wide and high as its interval. */
export function ChartPartLoad({ sentence, curve, load, efficiency, powerFactor }: Props) {
  const x = linear([0, curve[curve.length - 1]?.loadFraction ?? 1.25], [LEFT, WIDTH - RIGHT]);
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: ['Load, % of rating', 'Efficiency, %', 'Efficiency ± (95 %)', 'Power factor, %', 'Power factor ± (95 %)'],
        rows: curve
          .filter((_, index) => index % 4 === 0)
          .map((point) => [
            formatNumber(100 * point.loadFraction, 0),
            formatNumber(100 * point.efficiency, 1),
            formatNumber(100 * COVERAGE_FACTOR * point.u, 1),
            formatNumber(100 * point.powerFactor, 1),
            formatNumber(100 * COVERAGE_FACTOR * point.powerFactorU, 1),
          ]),
      }}
    >
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={sentence} className={styles.chart}>
        <Panel
          name="efficiency, %"
          top={0}
          x={x}
          values={curve.map(({ loadFraction, efficiency: value, u }) => ({ at: loadFraction, value, u }))}
          load={load}
          figure={efficiency}
        />
        <Panel
          name="power factor, %"
          top={PANEL + GAP}
          x={x}
          values={curve.map(({ loadFraction, powerFactor: value, powerFactorU: u }) => ({ at: loadFraction, value, u }))}
          load={load}
          figure={powerFactor}
        />
        {[0, 0.25, 0.5, 0.75, 1, 1.25].map((mark) => (
          <text key={mark} x={x(mark)} y={HEIGHT - BOTTOM + 22} textAnchor="middle" className={styles.soft}>
            {formatNumber(100 * mark, 0)}
          </text>
        ))}
        <text x={WIDTH - RIGHT} y={HEIGHT - 4} textAnchor="end" className={styles.soft}>
          load, % of rating
        </text>
      </svg>
    </ChartFrame>
  );
}

/** One curve over the load with its scale. */
function Panel({
  name,
  top,
  x,
  values,
  load,
  figure,
}: {
  readonly name: string;
  readonly top: number;
  readonly x: (load: number) => number;
  readonly values: readonly PanelValue[];
  readonly load?: ShownFigure | undefined;
  readonly figure?: ShownFigure | undefined;
}) {
  const head = top + 22;
  const foot = top + PANEL;
  const shown = values.filter(({ at }) => at >= FROM);
  const low = Math.max(0, Math.floor(Math.min(...shown.map(({ value, u }) => value - COVERAGE_FACTOR * u)) * 20) / 20);
  const high = Math.min(1, Math.ceil(Math.max(...values.map(({ value, u }) => value + COVERAGE_FACTOR * u)) * 50) / 50);
  const y = linear([low, high], [foot, head]);
  const path = (of: (each: PanelValue) => number) => values.map((each) => `${x(each.at).toFixed(1)},${y(of(each)).toFixed(1)}`);
  const band = [
    ...path(({ value, u }) => value + COVERAGE_FACTOR * u),
    ...path(({ value, u }) => value - COVERAGE_FACTOR * u).reverse(),
  ].join('L');
  const field = `part-load-${top}`;
  return (
    <g>
      <text x={2} y={top + 12} className={styles.soft}>
        {name}
      </text>
      <ValueMarks
        marks={ticks(low, high, 5)}
        y={y}
        left={LEFT}
        right={WIDTH - RIGHT}
        words={(mark) => formatNumber(100 * mark, 0)}
      />
      <clipPath id={field}>
        <rect x={LEFT} y={head} width={WIDTH - RIGHT - LEFT} height={foot - head} />
      </clipPath>
      <g clipPath={`url(#${field})`}>
        <path d={`M${band}Z`} className={styles.band} />
        <path d={`M${path(({ value }) => value).join('L')}`} className={styles.curve} />
      </g>
      {load && figure && (
        <OperatingPoint load={load} figure={figure} x={x} y={(value) => y(Math.min(Math.max(value, low), high))} foot={foot} />
      )}
    </g>
  );
}

interface PointProps {
  readonly load: ShownFigure;
  readonly figure: ShownFigure;
  readonly x: (load: number) => number;
  /** Height of a value, no further than the curve's field. */
  readonly y: (value: number) => number;
  readonly foot: number;
}

/** Where the motor runs: a cross as wide and high as its interval, what it stands for in words, and a line down to its load. */
function OperatingPoint({ load, figure, x, y, foot }: PointProps) {
  const onLeft = load.value > ROOM_RIGHT;
  return (
    <g>
      <line
        x1={x(Math.max(0, load.value - COVERAGE_FACTOR * load.u))}
        x2={x(load.value + COVERAGE_FACTOR * load.u)}
        y1={y(figure.value)}
        y2={y(figure.value)}
        className={styles.cross}
      />
      <line
        x1={x(load.value)}
        x2={x(load.value)}
        y1={y(figure.value - COVERAGE_FACTOR * figure.u)}
        y2={y(figure.value + COVERAGE_FACTOR * figure.u)}
        className={styles.cross}
      />
      <circle cx={x(load.value)} cy={y(figure.value)} r="3" className={styles.dot} />
      <line x1={x(load.value)} x2={x(load.value)} y1={y(figure.value)} y2={foot} className={styles.drop} />
      {[formatFigure(figure, { percent: true }).text, `at ${formatFigure(load, { percent: true }).text} load`].map(
        (words, index) => (
          <text
            key={words}
            x={x(load.value) + (onLeft ? -8 : 8)}
            y={foot - 34 + 22 * index}
            textAnchor={onLeft ? 'end' : 'start'}
            className={styles.label}
          >
            {words}
          </text>
        ),
      )}
    </g>
  );
}
