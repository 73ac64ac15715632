import type { SimulatedMotor } from './fleet';
import { atShaftPower } from './operate';
import { type Cells, text } from './plate';
import type { Chance } from './random';
import { read } from './readings';

/** The usual mistakes of sheets, each named for its true cause. */
export const MISTAKES = [
  'current-transformer-reversed',
  'current-transformer-missing',
  'power-in-horsepower',
  'power-in-watts',
  'phase-voltage-for-line',
  'current-of-one-conductor',
  'current-times-root-three',
  'current-over-root-three',
  'amps-of-other-plate-voltage',
  'speed-digits-swapped',
  'speed-above-synchronous',
  'driven-speed-for-motor',
  'wrong-pole-count',
  'plate-of-another-motor',
  'motor-uncoupled',
] as const;
export type Mistake = (typeof MISTAKES)[number];

/** A motor whose sheet holds one mistake. */
export interface Corrupted {
  readonly mistake: Mistake;
  readonly motor: SimulatedMotor;
  readonly cells: Cells;
  /** Something in the row contradicts: another way to the load that now differs by a quarter of rating, or a value that cannot be. */
  readonly leavesTrace: boolean;
}

const number = (cells: Cells, name: string): number | undefined => (cells[name] === undefined ? undefined : Number(cells[name]));
const decimalsOf = (cell: string): number => cell.split('.')[1]?.length ?? 0;

/** The named cells times a factor, with the decimals that they had. */
function multiplied(cells: Cells, names: readonly string[], factor: number): Cells {
  return {
    ...cells,
    ...Object.fromEntries(
      names.flatMap((name) => {
        const cell = cells[name];
        return cell === undefined ? [] : [[name, text(Number(cell) * factor, Math.max(decimalsOf(cell), 1))]];
      }),
    ),
  };
}

const VOLTS = ['voltage_v', 'voltage_ab_v', 'voltage_bc_v', 'voltage_ca_v'];
const AMPS = ['current_a', 'current_a_a', 'current_b_a', 'current_c_a'];
/** Cells that describe the motor and would be another's if the plate were. */
const PLATE = [
  'rated_power_hp',
  'rated_power_kw',
  'rated_current_a',
  'rated_speed_rpm',
  'poles',
  'nominal_efficiency_pct',
  'rated_power_factor_pct',
  'efficiency_class',
  'design_letter',
  'code_letter',
  'frame',
  'year_built',
  'enclosure',
  'service_factor',
];

/** A quarter of rating between two ways to the load is more than any of them may be wrong by. */
const APART = 0.25;
/** Where a load or a current cannot be: nobody runs a motor so for long. */
const MOST = 1.5;

const readsPower = (m: SimulatedMotor) => m.set === 'all' || m.set === 'power-volts-amps' || m.set === 'power-only';
const readsAmps = (m: SimulatedMotor) => m.set === 'all' || m.set === 'power-volts-amps' || m.set === 'amps-volts';
const readsSpeed = (m: SimulatedMotor) => m.set === 'all' || m.set === 'speed-volts';
const synchronous = (m: SimulatedMotor) => (120 * m.rating.frequency) / m.rating.poles;

/** A power that now stands for another input: seen by a second way, or impossible by itself. */
function powerTrace(m: SimulatedMotor, kilowatts: number): boolean {
  const apparent = (Math.sqrt(3) * m.at.lineVolts[0] * m.at.amps[0]) / 1000;
  const { machine } = m.built;
  const light = (machine.core.watts + machine.friction.watts) / 1000;
  const rated = (machine.ratedPower + machine.ratedLoss) / 1000;
  if (kilowatts < 0.8 * light || kilowatts > MOST * rated) return true;
  if (m.set === 'power-only') return false;
  return kilowatts > 1.03 * apparent || Math.abs(kilowatts - m.at.input / 1000) / rated > APART;
}

function currentTrace(m: SimulatedMotor, factor: number): boolean {
  const { machine } = m.built;
  const amps = m.at.amps[0] * factor;
  if (amps > MOST * machine.ratedAmps || amps < 0.75 * machine.magnetisingAmps) return true;
  if (m.set === 'amps-volts') return false;
  // With power the current tells a second load; against it stands a power factor that no motor has, or another load.
  const powerFactor = m.at.input / (Math.sqrt(3) * m.at.lineVolts[0] * amps);
  return powerFactor > 0.97 || Math.abs(factor - 1) > 0.4;
}

function speedTrace(m: SimulatedMotor, rpm: number): boolean {
  const slip = 1 - rpm / synchronous(m);
  const load = slip / m.built.machine.ratedSlip;
  if (slip <= 0 || load > 1.8) return true;
  return m.set === 'all' && Math.abs(load - m.at.slip / m.built.machine.ratedSlip) > APART;
}

/** Two digits of a number changed places, so that it differs by at least so much; undefined where none does. */
export function swappedDigits(chance: Chance, value: number, least: number): number | undefined {
  const digits = String(Math.round(value));
  const found: number[] = [];
  for (let i = 0; i + 1 < digits.length; i++) {
    const swapped = Number(digits.slice(0, i) + digits.charAt(i + 1) + digits.charAt(i) + digits.slice(i + 2));
    if (Math.abs(swapped - value) >= least) found.push(swapped);
  }
  return found.length === 0 ? undefined : chance.pick(found);
}

type Outcome = { readonly cells: Cells; readonly leavesTrace: boolean };
type Plant = (chance: Chance, m: SimulatedMotor, other: SimulatedMotor) => Outcome | undefined;

/** A two-element meter with one element at fault; the two read V·I·cos(φ ± 30°). */
function twoElements(m: SimulatedMotor, which: 'reversed' | 'missing', chance: Chance): Outcome | undefined {
  const reading = number(m.cells, 'input_power_kw');
  if (!readsPower(m) || reading === undefined) return undefined;
  const mean = (values: readonly number[]) => values.reduce((total, value) => total + value, 0) / values.length;
  const apparent = Math.sqrt(3) * mean(m.at.lineVolts) * mean(m.at.amps);
  const angle = Math.acos(Math.min(1, m.at.input / apparent));
  const elements = [Math.cos(angle + Math.PI / 6), Math.cos(angle - Math.PI / 6)].map(
    (share) => share / Math.sqrt(3) / Math.cos(angle),
  );
  const [low = 0, high = 0] = elements;
  const first = chance.happens(0.5);
  const share = which === 'missing' ? (first ? low : high) : first ? high - low : low - high;
  const kilowatts = reading * share;
  return { cells: { ...m.cells, input_power_kw: text(kilowatts, 2) }, leavesTrace: powerTrace(m, kilowatts) };
}

const powerTimes = (m: SimulatedMotor, factor: number): Outcome | undefined => {
  const reading = number(m.cells, 'input_power_kw');
  if (!readsPower(m) || reading === undefined) return undefined;
  return { cells: multiplied(m.cells, ['input_power_kw'], factor), leavesTrace: powerTrace(m, reading * factor) };
};
const ampsTimes = (m: SimulatedMotor, factor: number): Outcome | undefined =>
  readsAmps(m) ? { cells: multiplied(m.cells, AMPS, factor), leavesTrace: currentTrace(m, factor) } : undefined;
const withSpeed = (m: SimulatedMotor, rpm: number | undefined): Outcome | undefined =>
  rpm === undefined || !readsSpeed(m)
    ? undefined
    : { cells: { ...m.cells, shaft_speed_rpm: text(rpm, 0) }, leavesTrace: speedTrace(m, rpm) };

const PLANTS: Readonly<Record<Mistake, Plant>> = {
  'current-transformer-reversed': (chance, m) => twoElements(m, 'reversed', chance),
  'current-transformer-missing': (chance, m) => twoElements(m, 'missing', chance),
  'power-in-horsepower': (_, m) => powerTimes(m, 1 / 0.7457),
  'power-in-watts': (_, m) => powerTimes(m, 1000),
  'phase-voltage-for-line': (_, m) =>
    m.set === 'power-only' ? undefined : { cells: multiplied(m.cells, VOLTS, 1 / Math.sqrt(3)), leavesTrace: true },
  'current-of-one-conductor': (_, m) => ampsTimes(m, 0.5),
  'current-times-root-three': (_, m) => ampsTimes(m, Math.sqrt(3)),
  'current-over-root-three': (_, m) => ampsTimes(m, 1 / Math.sqrt(3)),
  'amps-of-other-plate-voltage': (chance, m) => {
    if (number(m.cells, 'rated_current_a') === undefined || ![208, 230, 460].includes(m.rating.lineVolts)) return undefined;
    const factor = m.rating.lineVolts === 460 ? 2 : 0.5;
    // Volts and amperes of the plate then make twice or half the power that is stamped beside them.
    return {
      cells: multiplied(m.cells, ['rated_current_a'], chance.happens(0.9) ? factor : 1 / Math.sqrt(3)),
      leavesTrace: true,
    };
  },
  'speed-digits-swapped': (chance, m) => {
    const rpm = number(m.cells, 'shaft_speed_rpm');
    const least = Math.max(4, 0.2 * m.built.machine.ratedSlip * synchronous(m));
    return rpm === undefined ? undefined : withSpeed(m, swappedDigits(chance, rpm, least));
  },
  'speed-above-synchronous': (chance, m) => withSpeed(m, synchronous(m) + Math.round(chance.between(4, 30))),
  'driven-speed-for-motor': (chance, m) => withSpeed(m, m.at.rpm * chance.pick([0.45, 0.55, 0.62, 0.71, 0.8])),
  'wrong-pole-count': (chance, m) => {
    const wrong = chance.pick([2, 4, 6, 8].filter((poles) => poles !== m.rating.poles));
    const contradicted = m.cells.rated_speed_rpm !== undefined || m.cells.shaft_speed_rpm !== undefined;
    return { cells: { ...m.cells, poles: text(wrong, 0) }, leavesTrace: contradicted };
  },
  'plate-of-another-motor': (_, m, other) => {
    const ratio = m.rating.watts / other.rating.watts;
    if (other.rating.frequency !== m.rating.frequency || (ratio > 0.7 && ratio < 1.5)) return undefined;
    const own = Object.entries(m.cells).filter(([name]) => !PLATE.includes(name));
    const theirs = Object.entries(other.cells).filter(([name]) => PLATE.includes(name));
    // The amperes are stamped for this voltage, as if both motors hung on one bar.
    const amps = number(other.cells, 'rated_current_a');
    const plate = { ...Object.fromEntries(own), ...Object.fromEntries(theirs) };
    const cells =
      amps === undefined ? plate : { ...plate, rated_current_a: text((amps * other.rating.lineVolts) / m.rating.lineVolts, 1) };
    const load = m.loadFraction * ratio;
    const { machine } = other.built;
    const slip = 1 - m.at.rpm / ((120 * other.rating.frequency) / other.rating.poles);
    const bySlip = slip / machine.ratedSlip;
    const impossible = readsPower(m) || readsAmps(m) ? load > MOST || load < 0.03 : false;
    const speedImpossible = readsSpeed(m) && (slip <= 0 || bySlip > 1.8);
    return { cells, leavesTrace: impossible || speedImpossible || (m.set === 'all' && Math.abs(bySlip - load) > APART) };
  },
  'motor-uncoupled': (chance, m) => {
    const light = atShaftPower(m.built.machine, m.conditions, 0);
    const readings = read(chance, m.set, light, m.conditions.supply, m.instruments, 1);
    const kept = Object.entries(m.cells).filter(([name]) => !VOLTS.includes(name) && !AMPS.includes(name));
    // The power of a motor that turns nothing is below that of a coupled one; its speed or current alone might be those of a light load.
    return { cells: { ...Object.fromEntries(kept), ...readings }, leavesTrace: readsPower(m) };
  },
};

/** Plants a mistake in the sheet of a motor; undefined where the sheet has nothing that could be so mistaken. */
export function corrupt(chance: Chance, mistake: Mistake, motor: SimulatedMotor, other: SimulatedMotor): Corrupted | undefined {
  const outcome = PLANTS[mistake](chance, motor, other);
  return outcome && { mistake, motor, ...outcome };
}

/** So many of each mistake, planted in the motors of a fleet in turn; what cannot be planted in one is tried in the next. */
export function corruptFleet(chance: Chance, fleet: readonly SimulatedMotor[], each: number): Corrupted[] {
  const all: Corrupted[] = [];
  for (const mistake of MISTAKES) {
    let planted = 0;
    for (let i = 0; i < 50 * each && planted < each; i++) {
      const [motor, other] = [chance.pick(fleet), chance.pick(fleet)];
      const corrupted = motor === other ? undefined : corrupt(chance, mistake, motor, other);
      if (corrupted === undefined) continue;
      planted++;
      all.push({ ...corrupted, cells: { ...corrupted.cells, tag: `X-${all.length + 1}` } });
    }
  }
  return all;
}
