import type { Losses } from '@/lib/engine';
import { formatFigure, formatPercent } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';

const PARTS = [
  { key: 'stator', label: 'stator', fill: 'var(--loss-stator)', pattern: 'M0,4 h8' },
  { key: 'rotor', label: 'rotor', fill: 'var(--loss-rotor)', pattern: 'M4,0 v8' },
  { key: 'core', label: 'core', fill: 'var(--loss-core)', pattern: 'M0,8 L8,0' },
  { key: 'friction_windage', label: 'friction and windage', fill: 'var(--loss-friction-windage)', pattern: 'M0,0 L8,8' },
  { key: 'stray', label: 'stray-load', fill: 'var(--loss-stray)', pattern: 'M2,2 h1 M6,6 h1' },
] as const;

const WIDTH = 640;
const BAR = 34;
/** Between two labels: room for letters that a phone shows larger. */
const STEP = 27;

/** The five losses as one bar, each part named directly; labels below step down so that narrow parts stay readable. */
export function ChartLossStack({ sentence, losses }: { readonly sentence: string; readonly losses: Losses }) {
  const total = losses.total.value;
  let at = 0;
  const parts = PARTS.map((part) => {
    const width = Math.max(0, (losses[part.key].value / total) * WIDTH);
    const placed = { ...part, x: at, width };
    at += width;
    return placed;
  });
  const height = BAR + PARTS.length * STEP + 10;
  return (
    <ChartFrame
      sentence={sentence}
      table={{
        head: ['Loss', 'kW', 'Share of the total'],
        rows: PARTS.map(({ key, label }) => [label, formatFigure(losses[key]).text, formatPercent(losses[key].value / total)]),
      }}
    >
      <svg
        viewBox={`0 0 ${WIDTH} ${height}`}
        role="img"
        className={styles.chart}
        aria-label={PARTS.map(({ key, label }) => `${label} ${formatFigure(losses[key]).text}`).join('; ')}
      >
        <defs>
          {PARTS.map(({ key, pattern }) => (
            <pattern key={key} id={`loss-${key}`} width="8" height="8" patternUnits="userSpaceOnUse">
              <path d={pattern} stroke="var(--page)" strokeWidth="1" opacity="0.55" />
            </pattern>
          ))}
        </defs>
        {parts.map(({ key, fill, x, width }, index) => (
          <g key={key}>
            <rect x={x} y={0} width={Math.max(width - 2, 0.5)} height={BAR} fill={fill} />
            <rect x={x} y={0} width={Math.max(width - 2, 0.5)} height={BAR} fill={`url(#loss-${key})`} />
            <path d={`M${x + 1},${BAR} V${BAR + STEP * (index + 1) - 5}`} fill="none" stroke={fill} strokeWidth="1.5" />
          </g>
        ))}
        {parts.map(({ key, label, x }, index) => {
          // Labels of parts far to the right run to the left of their line, so that none is cut.
          const turned = x > WIDTH * 0.42;
          return (
            <text
              key={key}
              x={turned ? x - 4 : x + 5}
              y={BAR + STEP * (index + 1)}
              textAnchor={turned ? 'end' : 'start'}
              className={`${styles.label} ${styles.over}`}
            >
              {label} {formatFigure(losses[key]).text}
            </text>
          );
        })}
      </svg>
    </ChartFrame>
  );
}
