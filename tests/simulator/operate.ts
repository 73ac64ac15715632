import { KNEE } from './beliefs';
import { type Complex, complex, minus, plus, polar, scaled, size, times } from './complex';
import type { TrueMachine } from './machine';
import { solvePerPhase } from './per-phase';

/** The supply at the terminals: phasors of both sequences per phase, and the frequency. */
export interface Supply {
  readonly positive: number;
  readonly negative: Complex;
  readonly frequency: number;
}

/** A motor at work: powers in W, three line voltages and currents. */
export interface AtWork {
  readonly shaft: number;
  readonly input: number;
  readonly efficiency: number;
  readonly losses: Readonly<Record<'stator' | 'rotor' | 'core' | 'friction' | 'stray', number>>;
  readonly slip: number;
  readonly rpm: number;
  readonly lineVolts: readonly [number, number, number];
  readonly amps: readonly [number, number, number];
  readonly windingCelsius: number;
}

export interface Conditions {
  readonly supply: Supply;
  readonly ambient: number;
  /** How far the winding has come to its end temperature, 1 when quite warm. */
  readonly warmth: number;
}

const COPPER = 234.5;
const ALUMINIUM = 225;
const THIRD = (2 * Math.PI) / 3;

/** The machine at one slip and winding temperature; the knee of the magnetising curve is found by going round until the gap voltage stands. */
export function atSlip(machine: TrueMachine, conditions: Conditions, slip: number, celsius: number): AtWork {
  const { supply } = conditions;
  const { hot } = machine;
  const ratio = supply.frequency / machine.frequency;
  const r1 = (hot.r1 * (COPPER + celsius)) / (COPPER + hot.celsius);
  const warmth = (ALUMINIUM + celsius) / (ALUMINIUM + hot.celsius);
  const [r2, x1, x2] = [hot.r2 * warmth, machine.x1 * ratio, machine.x2 * ratio];
  let gapVolts = machine.gapVolts;
  let at = solvePerPhase({ r1, x1, r2, x2 }, supply.positive, slip);
  for (let i = 0; i < 60; i++) {
    const { xm, rCore } = shunt(machine, gapVolts, ratio);
    at = solvePerPhase({ r1, x1, r2, x2, xm, rCore }, supply.positive, slip);
    const next = size(at.gapVoltage);
    if (Math.abs(next - gapVolts) < 1e-13 * gapVolts) break;
    gapVolts = next;
  }
  const { xm } = shunt(machine, gapVolts, ratio);
  const against = solvePerPhase(
    { r1, x1, r2: machine.negative.r2 * warmth, x2: machine.negative.x2 * ratio, xm },
    supply.negative,
    2 - slip,
  );
  const synchronous = (120 * supply.frequency) / machine.poles;
  const rpm = synchronous * (1 - slip);
  const ratedRpm = ((120 * machine.frequency) / machine.poles) * (1 - machine.ratedSlip);
  const friction = machine.friction.watts * (rpm / ratedRpm) ** machine.friction.exponent;
  const stray = machine.stray.watts * (size(at.rotor) / machine.stray.rotorAmps) ** 2;
  // What the backward field takes across the gap drives against the rotation; all of it, and the work done against it, heats the rotor.
  const shaft = (1 - slip) * (at.gap - against.gap) - friction - stray;
  const input = at.input + against.input;
  const losses = {
    stator: at.statorCopper + against.statorCopper,
    rotor: at.rotorCopper + against.rotorCopper,
    core: at.core,
    friction,
    stray,
  };
  return {
    shaft,
    input,
    efficiency: shaft / input,
    losses,
    slip,
    rpm,
    lineVolts: lineVolts(supply),
    amps: phases(at.stator, against.stator),
    windingCelsius: celsius,
  };
}

/** The motor at a shaft power, its winding as warm as its own losses and the room make it. */
export function atShaftPower(machine: TrueMachine, conditions: Conditions, shaft: number): AtWork {
  let celsius = conditions.ambient + 0.6 * machine.rise;
  let at = atSlip(machine, conditions, machine.ratedSlip, celsius);
  for (let round = 0; round < 40; round++) {
    at = atTemperature(machine, conditions, shaft, celsius);
    const next = conditions.ambient + machine.rise * conditions.warmth * ((at.input - at.shaft) / machine.ratedLoss);
    if (Math.abs(next - celsius) < 1e-9) return at;
    celsius = next;
  }
  return at;
}

function atTemperature(machine: TrueMachine, conditions: Conditions, shaft: number, celsius: number): AtWork {
  const miss = (slip: number) => atSlip(machine, conditions, slip, celsius).shaft - shaft;
  let [low, high] = [1e-7, 3 * machine.ratedSlip];
  let [below, above] = [miss(low), miss(high)];
  if (above < 0) throw new Error('the load is beyond what the machine can carry');
  // False position; an end that stays put counts half, so that it moves at last.
  let kept = 0;
  for (let i = 0; i < 80 && high - low > 1e-14; i++) {
    const slip = low + ((high - low) * -below) / (above - below);
    const found = miss(slip);
    if (Math.abs(found) < 1e-10 * machine.ratedPower) return atSlip(machine, conditions, slip, celsius);
    if (found < 0) {
      [low, below] = [slip, found];
      if (kept < 0) above /= 2;
      kept = -1;
    } else {
      [high, above] = [slip, found];
      if (kept > 0) below /= 2;
      kept = 1;
    }
  }
  throw new Error('no slip was found');
}

/** Magnetising reactance and core resistance at a gap voltage. */
function shunt(machine: TrueMachine, gapVolts: number, frequencyRatio: number): { readonly xm: number; readonly rCore: number } {
  const flux = gapVolts / machine.gapVolts / frequencyRatio;
  const amps = machine.magnetisingAmps * ((1 - machine.kneeShare) * flux + machine.kneeShare * flux ** KNEE.power);
  const watts = machine.core.watts * (gapVolts / machine.gapVolts) ** machine.core.exponent;
  return { xm: gapVolts / amps, rCore: (3 * gapVolts ** 2) / watts };
}

/** Sizes of the three phase quantities of two sequences. */
function phases(positive: Complex, negative: Complex): readonly [number, number, number] {
  const of = (turns: number) => size(plus(times(positive, polar(1, -turns * THIRD)), times(negative, polar(1, turns * THIRD))));
  return [of(0), of(1), of(2)];
}

function lineVolts(supply: Supply): readonly [number, number, number] {
  const positive = complex(supply.positive);
  const volts = [0, 1, 2].map((turns) =>
    plus(times(positive, polar(1, -turns * THIRD)), times(supply.negative, polar(1, turns * THIRD))),
  );
  const between = (a: number, b: number) => size(minus(volts[a] ?? positive, volts[b] ?? positive));
  return [between(0, 1), between(1, 2), between(2, 0)];
}

/** NEMA's unbalance of three line voltages: the largest deviation from their mean over the mean. */
export function unbalanceOf(volts: readonly number[]): number {
  const mean = volts.reduce((sum, value) => sum + value, 0) / volts.length;
  return Math.max(...volts.map((value) => Math.abs(value - mean))) / mean;
}

/** A supply of a mean line voltage with a negative sequence of a share and an angle. */
export function supplyOf(meanLineVolts: number, share: number, angle: number, frequency: number): Supply {
  const positive = meanLineVolts / Math.sqrt(3);
  return { positive, negative: scaled(polar(positive, angle), share), frequency };
}
