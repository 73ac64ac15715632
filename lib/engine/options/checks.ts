import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { DrivenMachine, Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import type { ReferenceTables, TorqueRow } from '../tables';
import { OPTIONS } from './findings';
import { largestInertia } from './starting';

/** What is to be checked: a motor in place of another. */
export interface Change {
  readonly tables: ReferenceTables;
  readonly plate: Plate;
  readonly poles: number;
  readonly synchronousSpeedRpm: number;
  readonly newRatedPowerKw: number;
  readonly highestLoadKw: number;
  readonly exponent: number;
}

/** Loads whose starting torque depends on what lies in or on them. */
const HARD_TO_START: ReadonlySet<DrivenMachine> = new Set(['conveyor', 'crusher', 'mill', 'hoist', 'compressor']);
/** Loads that are heavy to bring up to speed. */
const HEAVY: ReadonlySet<DrivenMachine> = new Set(['fan', 'blower']);

/** Torque to break a load away over its running torque: loads with the square of speed, and others (common practice). */
const BREAKAWAY = { square: 0.3, other: 1.5 } as const;
/** Locked-rotor torque left at 90 % voltage during the start (common practice). */
const VOLTAGE_DIP = 0.9 ** 2;

/**
 * What must be confirmed before a motor is put in place of another; each as a finding `check-before`.
 * Source: columns mounting and hazardous_location of the fleet sheet; starting duty as in {@link largestInertia} and the
 * table of locked-rotor torques.
 */
export function checksBefore(change: Change): Finding[] {
  const reasons = [...fitReasons(change.plate)];
  if (change.newRatedPowerKw < change.plate.ratedPowerKw * 0.985) reasons.push(...startingReasons(change));
  return reasons.map(([check, detail]) => OPTIONS.make('check-before', { check, detail }));
}

type Reason = readonly [check: string, detail: string];

function* fitReasons(plate: Plate): Generator<Reason> {
  if (plate.mounting !== undefined && plate.mounting !== 'foot')
    yield ['mounting', `the mounting is ${plate.mounting}, not foot; shaft, flange or brake of the new motor must match`];
  if (plate.hazardousLocation === true)
    yield ['hazardous-location', 'the place is hazardous; the new motor needs the certificate for it'];
  if (plate.machineKind !== 'cage')
    yield ['machine-kind', `the motor is ${plate.machineKind}; why it was chosen must be known before a cage motor replaces it`];
  if (plate.designLetter === 'C' || plate.designLetter === 'D' || plate.designLetter === 'H')
    yield ['starting-torque', `design ${plate.designLetter} starts with more torque than an ordinary premium motor`];
}

function* startingReasons(change: Change): Generator<Reason> {
  const { drivenMachine: driven, loadInertiaKgm2: inertia } = change.plate;
  if (driven === undefined) {
    yield ['driven-machine', 'what the motor drives, and so its starting duty, is not known'];
    return;
  }
  if (HARD_TO_START.has(driven)) yield ['starting-duty', `the starting torque of the ${driven} is not known`];
  const largest = largestInertia(change.newRatedPowerKw, change.synchronousSpeedRpm);
  if (inertia === undefined && HEAVY.has(driven))
    yield ['inertia', `the inertia of the ${driven}, and so its run-up time, is not known`];
  if (inertia !== undefined && inertia > largest)
    yield [
      'inertia',
      `the load inertia of ${inertia} kg·m² exceeds the ${largest.toPrecision(3)} kg·m² that a motor of this rating must be able to start`,
    ];
  const locked = lockedRotorPct(change.tables, change.newRatedPowerKw, change.poles);
  const breakaway = change.exponent === 2 ? BREAKAWAY.square : BREAKAWAY.other;
  const needed = (100 * breakaway * change.highestLoadKw) / change.newRatedPowerKw;
  if (locked !== undefined && needed > locked * VOLTAGE_DIP)
    yield [
      'starting-torque',
      `the load may need ${needed.toFixed(0)} % of rated torque to start, and the smaller motor must give only ${(locked * VOLTAGE_DIP).toFixed(0)} % at 90 % voltage`,
    ];
}

const torques = new WeakMap<ReferenceTables, Map<number, TorqueRow[]>>();

/** Least locked-rotor torque of design A and B at a listed rating within a tenth, in % of rated; `undefined` where the table has none. */
function lockedRotorPct(tables: ReferenceTables, ratedPowerKw: number, poles: number): number | undefined {
  let byPoles = torques.get(tables);
  if (!byPoles) {
    byPoles = new Map();
    for (const row of tables.torqueMinimums.rows) {
      if (row.design !== 'A_B' || row.torque !== 'locked_rotor') continue;
      const list = byPoles.get(row.poles) ?? [];
      list.push(row);
      byPoles.set(row.poles, list);
    }
    torques.set(tables, byPoles);
  }
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  return byPoles.get(poles)?.find((row) => Math.abs(row.ratedPowerHp / hp - 1) < 0.1)?.pctOfRated;
}
