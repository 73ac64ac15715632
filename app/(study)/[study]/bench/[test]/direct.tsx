import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { BenchResult } from '@/lib/engine';
import { formatFigure, formatNumber, withUnit } from '@/lib/platform/format';
import styles from '../bench.module.css';

type Direct = NonNullable<BenchResult['reverse_rotation']>;
type Column = Direct['driven'][number];

const LINES = [
  ['Current', 'A', (c: Column) => c.current],
  ['Input power', 'kW', (c: Column) => c.input_power],
  ['Winding', '°C', (c: Column) => c.winding_temp],
  ['Resistance between terminals', 'Ω', (c: Column) => c.resistance],
  ['Stator loss', 'kW', (c: Column) => c.stator],
  ['Power at the shaft', 'kW', (c: Column) => c.shaft_power],
  ['Stray-load loss', 'W', (c: Column) => c.loss],
] as const;

/** The direct test of stray-load loss: both runs, one line a point, and the two laws in a sentence. */
export function DirectTest({ found }: { readonly found: Direct }) {
  const law = ({ at_reference, exponent }: Direct['fundamental']) =>
    `${formatFigure(at_reference).text}, growing with the current to the power of ${formatFigure(exponent).text}`;
  return (
    <>
      <p>
        At {withUnit(formatNumber(found.reference_current_a, 1), 'A')}: with the rotor out {law(found.fundamental)}; driven
        backwards {law(found.harmonic)}. Without field the shaft takes {formatFigure(found.shaft_power_without_field).text}.
      </p>
      <Run label="Rotor removed" columns={found.rotor_removed} />
      <Run label="Driven against the field" columns={found.driven} />
    </>
  );
}

function Run({ label, columns }: { readonly label: string; readonly columns: readonly Column[] }) {
  const lines = LINES.filter(([, , of]) => columns.some((column) => of(column) !== undefined));
  return (
    <ScrollRegion label={label}>
      <table className={styles.table}>
        <caption className={styles.caption}>{label}</caption>
        <thead>
          <tr>
            <th scope="col">Row</th>
            {lines.map(([name, unit]) => (
              <th key={name} scope="col">
                {name}
                <span className={styles.unit}>{unit}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {columns.map((column) => (
            <tr key={column.row}>
              <th scope="row">{column.row}</th>
              {lines.map(([name, , of]) => (
                <td key={name}>
                  <FigureText name={name} figure={of(column)} unitInHead />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

const ELEMENTS = [
  ['r1', 'Stator resistance'],
  ['x1', 'Stator leakage reactance'],
  ['r2', 'Rotor resistance, referred to the stator'],
  ['x2', 'Rotor leakage reactance, referred to the stator'],
  ['xm', 'Magnetising reactance'],
  ['rfe', 'Resistance of core loss, beside the magnetising reactance'],
] as const;

/** The circuit that methods F and F1 rest on. */
export function CircuitElements({ circuit }: { readonly circuit: NonNullable<BenchResult['circuit']> }) {
  return (
    <ScrollRegion label="Elements of the circuit">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">For each phase of a star, ± 95 %</th>
            <th scope="col">Ω</th>
          </tr>
        </thead>
        <tbody className={styles.wrapping}>
          {ELEMENTS.map(([key, name]) => (
            <tr key={key}>
              <th scope="row">{name}</th>
              <td>
                <FigureText name={name} figure={circuit[key]} unitInHead />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
