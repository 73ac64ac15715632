import type { TorquePlace, TorqueSpeed } from '@/lib/engine';
import { COVERAGE_FACTOR, formatFigure, formatNumber } from '@/lib/platform/format';
import styles from './chart.module.css';
import { ChartFrame } from './chart-frame';
import { linear, ticks } from './scale';
import { ValueMarks } from './value-marks';

const WIDTH = 640;
const HEIGHT = 330;
const LEFT = 44;
const RIGHT = 16;
const TOP = 34;
const BOTTOM = 54;

/** Every so many points of the curve stand in the table. */
const TABLE_STEP = 8;

/** Torque of the motor and of its load over speed: dashed where it is rough, and a cross where they meet. */
export function ChartTorqueSpeed({ sentence, curve }: { readonly sentence: string; readonly curve: TorqueSpeed }) {
  const { rough, running, load, breakdown, point, synchronousSpeed, ratedTorqueNm } = curve;
  const starting = rough[0]?.torque ?? 0;
  const high = Math.max(breakdown.torque, starting, 1) * 1.08;
  const x = linear([0, synchronousSpeed], [LEFT, WIDTH - RIGHT]);
  const y = linear([0, high], [HEIGHT - BOTTOM, TOP]);
  const path = (places: readonly TorquePlace[]) =>
    `M${places.map(({ speed, torque }) => `${x(speed).toFixed(1)},${y(Math.max(0, torque)).toFixed(1)}`).join('L')}`;
  const percent = (torque: number) => `${formatNumber(100 * torque, 0)}\u202f%`;
  // Beside the words on the start; a load of the same torque at every speed has those on the running point further on.
  const named = synchronousSpeed * (curve.exponent === 0 ? 0.3 : 0.62);
  const early = breakdown.speed < synchronousSpeed / 2;
  return (
    <ChartFrame sentence={sentence} table={tableOf(curve)}>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={sentence} className={styles.chart}>
        <text x={2} y={14} className={styles.soft}>
          torque, % of rated ({formatNumber(ratedTorqueNm, ratedTorqueNm < 100 ? 1 : 0)} N·m)
        </text>
        <ValueMarks
          marks={ticks(0, high, 5)}
          y={y}
          left={LEFT}
          right={WIDTH - RIGHT}
          words={(mark) => formatNumber(100 * mark, 0)}
          axis
        />
        {ticks(0, synchronousSpeed, 5).map((mark) => (
          <text key={mark} x={x(mark)} y={HEIGHT - BOTTOM + 22} textAnchor="middle" className={styles.soft}>
            {formatNumber(mark, 0)}
          </text>
        ))}
        <text x={WIDTH - RIGHT} y={HEIGHT - 4} textAnchor="end" className={styles.soft}>
          speed, r/min
        </text>
        <path d={path(rough)} className={styles.rough} />
        <path d={path(running)} className={styles.curve} />
        <path d={path(load)} className={styles.load} />
        <line
          x1={x(point.speed)}
          x2={x(point.speed)}
          y1={y(Math.max(0, point.torque - COVERAGE_FACTOR * point.torqueU))}
          y2={y(point.torque + COVERAGE_FACTOR * point.torqueU)}
          className={styles.cross}
        />
        <circle cx={x(point.speed)} cy={y(point.torque)} r="4" className={styles.dot} />
        <text x={x(0) + 8} y={y(starting) - 8} className={styles.label}>
          rough: real cages start higher
        </text>
        <text
          x={x(breakdown.speed) + (early ? 8 : -8)}
          y={y(breakdown.torque) - 8}
          textAnchor={early ? 'start' : 'end'}
          className={styles.label}
        >
          breakdown {formatFigure(breakdown.figure, { percent: true }).text}
        </text>
        <text x={x(point.speed) - 12} y={y(point.torque) - 12} textAnchor="end" className={styles.label}>
          runs at {percent(point.torque)}, {formatNumber(point.speed, 0)} r/min
        </text>
        <text x={x(named)} y={y(loadAt(load, named)) - 8} className={styles.label}>
          load
        </text>
      </svg>
    </ChartFrame>
  );
}

/** The curve in numbers. */
function tableOf({ rough, running, point, ratedTorqueNm, exponent }: TorqueSpeed) {
  return {
    head: ['Speed, r/min', 'Torque, % of rated', 'Torque, N·m', 'Load’s torque, % of rated', 'Remark'],
    rows: [...rough.map((place) => ({ ...place, note: 'rough' })), ...running.slice(1).map((place) => ({ ...place, note: '' }))]
      .filter((_, index, all) => index % TABLE_STEP === 0 || index === all.length - 1)
      .map(({ speed, torque, note }) => [
        formatNumber(speed, 0),
        formatNumber(100 * torque, 0),
        formatNumber(torque * ratedTorqueNm, 0),
        formatNumber(100 * point.torque * (speed / point.speed) ** exponent, 0),
        note,
      ]),
  };
}

function loadAt(load: readonly TorquePlace[], speed: number): number {
  return load.find((place) => place.speed >= speed)?.torque ?? 0;
}
