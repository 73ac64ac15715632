import { FigureText } from '@/app/_ui/figure';
import { ScrollRegion } from '@/app/_ui/scroll-region';
import type { BenchResult } from '@/lib/engine';
import type { ShownFigure } from '@/lib/platform/format';
import { formatNumber } from '@/lib/platform/format';
import styles from '../bench.module.css';

type LoadColumn = BenchResult['columns']['load'][number];
type NoLoadColumn = BenchResult['columns']['no_load'][number];

interface Line<C> {
  readonly label: string;
  readonly unit: string;
  readonly of: (column: C) => ShownFigure | undefined;
  readonly percent?: boolean;
}

interface Group<C> {
  readonly title: string;
  readonly lines: readonly Line<C>[];
}

const LOAD: readonly Group<LoadColumn>[] = [
  {
    title: 'As measured',
    lines: [
      { label: 'Voltage', unit: 'V', of: (c) => c.voltage },
      { label: 'Current', unit: 'A', of: (c) => c.current },
      { label: 'Input power', unit: 'kW', of: (c) => c.input_power },
      { label: 'Torque, corrected', unit: 'N·m', of: (c) => c.torque },
      { label: 'Speed', unit: 'r/min', of: (c) => c.speed },
      { label: 'Winding', unit: '°C', of: (c) => c.winding_temp },
      { label: 'Resistance between terminals', unit: 'Ω', of: (c) => c.resistance },
    ],
  },
  {
    title: 'At the temperature of the test',
    lines: [
      { label: 'Slip', unit: '%', of: (c) => c.slip, percent: true },
      { label: 'Stator loss', unit: 'kW', of: (c) => c.stator },
      { label: 'Core loss', unit: 'kW', of: (c) => c.core },
      { label: 'Air-gap power', unit: 'kW', of: (c) => c.gap_power },
      { label: 'Rotor loss', unit: 'kW', of: (c) => c.rotor },
      { label: 'Friction and windage', unit: 'kW', of: (c) => c.friction_windage },
      { label: 'Shaft power by torque', unit: 'kW', of: (c) => c.shaft_power_by_torque },
      { label: 'Loss not explained', unit: 'W', of: (c) => c.residual_loss },
      { label: 'Torque squared', unit: '(N·m)²', of: (c) => c.torque_squared },
    ],
  },
  {
    title: 'At the specified temperature',
    lines: [
      { label: 'Winding', unit: '°C', of: (c) => c.corrected?.winding_temp },
      { label: 'Slip', unit: '%', of: (c) => c.corrected?.slip, percent: true },
      { label: 'Stator loss', unit: 'kW', of: (c) => c.corrected?.losses.stator },
      { label: 'Rotor loss', unit: 'kW', of: (c) => c.corrected?.losses.rotor },
      { label: 'Stray-load loss', unit: 'kW', of: (c) => c.corrected?.losses.stray },
      { label: 'Total loss', unit: 'kW', of: (c) => c.corrected?.losses.total },
      { label: 'Input power', unit: 'kW', of: (c) => c.corrected?.input_power },
      { label: 'Shaft power', unit: 'kW', of: (c) => c.corrected?.shaft_power },
      { label: 'Efficiency', unit: '%', of: (c) => c.corrected?.efficiency, percent: true },
      { label: 'Power factor', unit: '%', of: (c) => c.corrected?.power_factor, percent: true },
    ],
  },
];

const NO_LOAD: readonly Line<NoLoadColumn>[] = [
  { label: 'Voltage', unit: 'V', of: (c) => c.voltage },
  { label: 'Current', unit: 'A', of: (c) => c.current },
  { label: 'Input power', unit: 'kW', of: (c) => c.input_power },
  { label: 'Winding', unit: '°C', of: (c) => c.winding_temp },
  { label: 'Resistance between terminals', unit: 'Ω', of: (c) => c.resistance },
  { label: 'Stator loss', unit: 'kW', of: (c) => c.stator },
  { label: 'Core loss with friction', unit: 'kW', of: (c) => c.constant_loss },
];

/** Every column of the load computation: one column a load point, as a test engineer's sheet has it. */
export function LoadColumns({ columns }: { readonly columns: readonly LoadColumn[] }) {
  return (
    <Columns
      label="Load test"
      columns={columns}
      groups={LOAD}
      note={(column) => (column.on_line === false ? 'not on the line' : '')}
    />
  );
}

/** The no-load computation: one line a point, since it has more points than columns. */
export function NoLoadColumns({ columns }: { readonly columns: readonly NoLoadColumn[] }) {
  return (
    <ScrollRegion label="No-load run">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">
              Voltage<span className={styles.unit}>% of rated</span>
            </th>
            {NO_LOAD.map((line) => (
              <th key={line.label} scope="col">
                {line.label}
                <span className={styles.unit}>{line.unit}</span>
              </th>
            ))}
            <th scope="col" className={styles.words}>
              Serves
            </th>
          </tr>
        </thead>
        <tbody>
          {columns.map((column) => (
            <tr key={column.row}>
              <th scope="row">{column.row}</th>
              <td>{formatNumber(100 * Math.sqrt(column.voltage_ratio_squared), 0)}</td>
              {NO_LOAD.map((line) => (
                <td key={line.label}>
                  <FigureText name={line.label} figure={line.of(column)} unitInHead />
                </td>
              ))}
              <td className={styles.words}>{column.leads_extrapolation ? 'line to zero voltage' : 'core loss'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}

interface Props<C> {
  readonly label: string;
  readonly columns: readonly C[];
  readonly groups: readonly Group<C>[];
  readonly note: (column: C) => string;
}

function Columns<C extends { readonly row: number }>({ label, columns, groups, note }: Props<C>) {
  return (
    <ScrollRegion label={label}>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Row</th>
            {columns.map((column) => (
              <th key={column.row} scope="col">
                {column.row}
                <span className={styles.unit}>{note(column)}</span>
              </th>
            ))}
          </tr>
        </thead>
        {groups.map((group) => (
          <tbody key={group.title}>
            <tr className={styles.group}>
              <th scope="rowgroup" colSpan={columns.length + 1}>
                {group.title}
              </th>
            </tr>
            {group.lines
              .filter((line) => columns.some((column) => line.of(column) !== undefined))
              .map((line) => (
                <tr key={line.label}>
                  <th scope="row">
                    {line.label}, {line.unit}
                  </th>
                  {columns.map((column) => (
                    <td key={column.row}>
                      <FigureText name={line.label} figure={line.of(column)} percent={line.percent} unitInHead />
                    </td>
                  ))}
                </tr>
              ))}
          </tbody>
        ))}
      </table>
    </ScrollRegion>
  );
}
