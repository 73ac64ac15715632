/**
 * The machine behind a demo motor: a per-phase equivalent circuit in per unit of its own rated voltage and current, with friction and
 * windage and stray-load loss. It knows the true load; the engine sees only what meters and plate show of it.
 */
export interface TrueMachine {
  readonly ratedPowerKw: number;
  readonly ratedVoltageV: number;
  readonly synchronousRpm: number;
  /** Apparent power that is 1 per unit, kVA. */
  readonly baseKva: number;
  readonly r1: number;
  readonly x1: number;
  readonly r2: number;
  readonly x2: number;
  readonly xm: number;
  readonly rc: number;
  readonly frictionKw: number;
  readonly strayAtRatedKw: number;
}

/** What the machine does at one load and voltage. */
interface TruePoint {
  readonly shaftPowerKw: number;
  readonly inputPowerKw: number;
  readonly currentA: number;
  readonly powerFactor: number;
  readonly speedRpm: number;
  readonly efficiency: number;
}

/** How a machine is made: targets that the circuit meets closely. */
interface Make {
  readonly ratedPowerKw: number;
  readonly ratedVoltageV: number;
  readonly synchronousRpm: number;
  readonly efficiency: number;
  readonly slip: number;
  readonly magnetisingShare: number;
  readonly leakage: number;
  readonly shares: { readonly stator: number; readonly core: number; readonly friction: number; readonly stray: number };
}

/** Builds the circuit; the rotor resistance is found so that the machine gives its rating at its rated slip. */
export function buildTruth(make: Make): TrueMachine {
  const loss = make.ratedPowerKw * (1 / make.efficiency - 1);
  const powerFactor = Math.min(0.93, Math.sqrt(1 - Math.min(0.9, make.magnetisingShare + make.leakage * 0.9) ** 2));
  const baseKva = make.ratedPowerKw / (make.efficiency * powerFactor);
  const x1 = make.leakage / 2;
  const base: TrueMachine = {
    ratedPowerKw: make.ratedPowerKw,
    ratedVoltageV: make.ratedVoltageV,
    synchronousRpm: make.synchronousRpm,
    baseKva,
    r1: (make.shares.stator * loss) / baseKva,
    x1,
    r2: make.slip,
    x2: make.leakage / 2,
    xm: 1 / make.magnetisingShare - x1,
    rc: baseKva / (make.shares.core * loss),
    frictionKw: make.shares.friction * loss,
    strayAtRatedKw: make.shares.stray * loss,
  };
  let low = make.slip * 0.4;
  let high = make.slip * 2.5;
  for (let i = 0; i < 60; i++) {
    const r2 = (low + high) / 2;
    if (atSlip({ ...base, r2 }, make.slip, 1).shaftPowerKw > make.ratedPowerKw) low = r2;
    else high = r2;
  }
  return { ...base, r2: (low + high) / 2 };
}

/** The point at a shaft power (share of rating) and a voltage (share of rated), by bisection on the slip. */
export function truePoint(machine: TrueMachine, loadFraction: number, voltage: number): TruePoint {
  let low = 1e-6;
  let high = 0.2;
  for (let i = 0; i < 60; i++) {
    const slip = (low + high) / 2;
    if (atSlip(machine, slip, voltage).shaftPowerKw < loadFraction * machine.ratedPowerKw) low = slip;
    else high = slip;
  }
  return atSlip(machine, (low + high) / 2, voltage);
}

interface Complex {
  readonly re: number;
  readonly im: number;
}

const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
const inverse = (a: Complex): Complex => {
  const size = a.re * a.re + a.im * a.im;
  return { re: a.re / size, im: -a.im / size };
};
const times = (a: Complex, b: Complex): Complex => ({ re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re });

function atSlip(machine: TrueMachine, slip: number, voltage: number): TruePoint {
  const rotor: Complex = { re: machine.r2 / slip, im: machine.x2 };
  const shunt = add(add(inverse(rotor), inverse({ re: 0, im: machine.xm })), { re: 1 / machine.rc, im: 0 });
  const parallel = inverse(shunt);
  const current = times({ re: voltage, im: 0 }, inverse(add({ re: machine.r1, im: machine.x1 }, parallel)));
  const gapVoltage = times(current, parallel);
  const rotorCurrent = times(gapVoltage, inverse(rotor));
  const i2 = rotorCurrent.re ** 2 + rotorCurrent.im ** 2;
  const gapKw = ((i2 * machine.r2) / slip) * machine.baseKva;
  const stray = machine.strayAtRatedKw * i2 * 1.1;
  const shaftPowerKw = gapKw * (1 - slip) - machine.frictionKw - stray;
  const size = Math.hypot(current.re, current.im);
  const inputPowerKw = voltage * current.re * machine.baseKva;
  return {
    shaftPowerKw,
    inputPowerKw,
    currentA: (size * machine.baseKva * 1000) / (Math.sqrt(3) * machine.ratedVoltageV),
    powerFactor: current.re / size,
    speedRpm: machine.synchronousRpm * (1 - slip),
    efficiency: shaftPowerKw / inputPowerKw,
  };
}
