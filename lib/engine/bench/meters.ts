import { leaf, type Scope } from '../formula/apply';
import type { Quantity } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';
import type { BenchInstruments, BenchPoint } from './test';

/** Half-width of a rectangular distribution to its standard deviation (GUM 4.3.7). */
const RECTANGULAR = 1 / Math.sqrt(3);

interface Kind<U extends Unit> {
  readonly field: Exclude<keyof BenchPoint, 'row'>;
  readonly unit: U;
  readonly label: string;
  /** Maximum permissible error in the unit of the reading. */
  readonly error: (instruments: BenchInstruments, value: number) => number;
}

const perCent =
  (key: 'voltagePct' | 'currentPct' | 'powerPct' | 'torquePct' | 'resistancePct') => (i: BenchInstruments, v: number) =>
    (i[key] * Math.abs(v)) / 100;

/** The meters of a test. */
export const METER = {
  voltage: { field: 'voltageV', unit: 'V', label: 'voltage', error: perCent('voltagePct') },
  current: { field: 'currentA', unit: 'A', label: 'current', error: perCent('currentPct') },
  power: { field: 'inputPowerKw', unit: 'kW', label: 'input power', error: perCent('powerPct') },
  torque: { field: 'torqueNm', unit: 'N m', label: 'torque', error: perCent('torquePct') },
  resistance: { field: 'resistanceOhm', unit: 'Ω', label: 'resistance', error: perCent('resistancePct') },
  speed: { field: 'speedRpm', unit: 'r/min', label: 'speed', error: (i) => i.speedRpm },
  winding: { field: 'windingTempC', unit: 'K', label: 'winding temperature', error: (i) => i.temperatureK },
  ambient: { field: 'ambientC', unit: 'K', label: 'ambient temperature', error: (i) => i.temperatureK },
} as const satisfies Record<string, Kind<Unit>>;

/** What a test's quantities are made with. */
export interface BenchScope extends Scope {
  readonly instruments: BenchInstruments;
}

/**
 * A reading as a quantity, or `undefined` where the cell is empty.
 *
 * The class of an instrument does not say whether its error is the same at every point or new at each, so the whole class is counted for
 * either: once for the instrument, shared by all its readings, and once for each reading. That is right for the worse of the two and too
 * cautious by at most a factor of √2. Both rectangular (GUM 4.3.7).
 */
export function read<U extends Unit>(scope: BenchScope, kind: Kind<U>, point: BenchPoint): Quantity<U> | undefined {
  const value = point[kind.field];
  if (value === undefined) return undefined;
  const u = kind.error(scope.instruments, value) * RECTANGULAR;
  return leaf(scope, {
    value,
    unit: kind.unit,
    label: `${kind.label}, row ${point.row}`,
    origin: 'metered',
    source: `bench test, row ${point.row}`,
    doubts: [
      { id: `bench:${kind.label}`, label: `class of the meter: ${kind.label}`, u },
      { id: `bench:${kind.label}:${point.row}`, label: `reading of ${kind.label} in row ${point.row}`, u },
    ],
  });
}
