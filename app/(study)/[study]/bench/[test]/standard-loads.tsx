import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { BenchPointResult } from '@/lib/engine';
import { formatNumber } from '@/lib/platform/format';
import styles from '../bench.module.css';

const ROWS = [
  ['Efficiency', '%', (p: BenchPointResult) => p.efficiency, true],
  ['Power factor', '%', (p: BenchPointResult) => p.power_factor, true],
  ['Input power', 'kW', (p: BenchPointResult) => p.input_power, false],
  ['Shaft power', 'kW', (p: BenchPointResult) => p.shaft_power, false],
  ['Current', 'A', (p: BenchPointResult) => p.current, false],
  ['Speed', 'r/min', (p: BenchPointResult) => p.speed, false],
  ['Stator loss', 'kW', (p: BenchPointResult) => p.losses.stator, false],
  ['Rotor loss', 'kW', (p: BenchPointResult) => p.losses.rotor, false],
  ['Core loss', 'kW', (p: BenchPointResult) => p.losses.core, false],
  ['Friction and windage', 'kW', (p: BenchPointResult) => p.losses.friction_windage, false],
  ['Stray-load loss', 'kW', (p: BenchPointResult) => p.losses.stray, false],
  ['Total loss', 'kW', (p: BenchPointResult) => p.losses.total, false],
] as const;

/** Performance at the standard loads: one column a load. */
export function StandardLoads({ points }: { readonly points: readonly BenchPointResult[] }) {
  return (
    <ScrollRegion label="Performance at the standard loads">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Load, % of rating (± 95 %)</th>
            {points.map((point) => (
              <th key={point.load_fraction} scope="col">
                {formatNumber(100 * point.load_fraction, 0)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {ROWS.map(([label, unit, of, percent]) => (
            <tr key={label}>
              <th scope="row">
                {label}, {unit}
              </th>
              {points.map((point) => (
                <td key={point.load_fraction}>
                  <FigureText name={label} figure={of(point)} percent={percent} unitInHead />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
