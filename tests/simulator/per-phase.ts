import { type Complex, complex, minus, over, parallel, plus, scaled, size, times } from './complex';

/** Per-phase circuit of an induction machine in ohms, rotor referred to the stator. Branches that a textbook leaves out are absent. */
export interface PerPhase {
  readonly r1: number;
  readonly x1: number;
  readonly r2: number;
  readonly x2: number;
  readonly xm?: number;
  readonly rCore?: number;
}

/** What the circuit draws from its terminals at one slip: phasors per phase, powers of all three phases in W. */
export interface Solution {
  readonly stator: Complex;
  readonly rotor: Complex;
  readonly gapVoltage: Complex;
  readonly input: number;
  readonly reactive: number;
  readonly statorCopper: number;
  readonly rotorCopper: number;
  readonly core: number;
  /** Power across the air gap, and what of it is left as mechanical power. */
  readonly gap: number;
  readonly mechanical: number;
}

/**
 * Solves the T circuit at a slip by its impedances (any text on electrical machines, e.g. A. E. Fitzgerald et al., Electric Machinery,
 * 6th ed. 2003, section 6.4). Nothing is neglected; a slip of zero leaves the rotor open.
 */
export function solvePerPhase(circuit: PerPhase, phaseVolts: number | Complex, slip: number): Solution {
  const volts = typeof phaseVolts === 'number' ? complex(phaseVolts) : phaseVolts;
  const rotorBranch = slip === 0 ? [] : [complex(circuit.r2 / slip, circuit.x2)];
  const branches = [
    ...rotorBranch,
    ...(circuit.xm === undefined ? [] : [complex(0, circuit.xm)]),
    ...(circuit.rCore === undefined ? [] : [complex(circuit.rCore)]),
  ];
  const series = complex(circuit.r1, circuit.x1);
  const stator = branches.length === 0 ? complex(0) : over(volts, plus(series, parallel(...branches)));
  const gapVoltage = minus(volts, times(stator, series));
  const rotor = rotorBranch[0] === undefined ? complex(0) : over(gapVoltage, rotorBranch[0]);
  const apparent = scaled(times(volts, complex(stator.re, -stator.im)), 3);
  const rotorCopper = 3 * size(rotor) ** 2 * circuit.r2;
  const gap = slip === 0 ? 0 : rotorCopper / slip;
  return {
    stator,
    rotor,
    gapVoltage,
    input: apparent.re,
    reactive: apparent.im,
    statorCopper: 3 * size(stator) ** 2 * circuit.r1,
    rotorCopper,
    core: circuit.rCore === undefined ? 0 : (3 * size(gapVoltage) ** 2) / circuit.rCore,
    gap,
    mechanical: gap - rotorCopper,
  };
}

/** The supply as the rotor branch sees it: open voltage behind an impedance. */
export function thevenin(
  circuit: PerPhase,
  phaseVolts: number,
): { readonly volts: number; readonly r: number; readonly x: number } {
  const series = complex(circuit.r1, circuit.x1);
  const shunt = [
    ...(circuit.xm === undefined ? [] : [complex(0, circuit.xm)]),
    ...(circuit.rCore === undefined ? [] : [complex(circuit.rCore)]),
  ];
  if (shunt.length === 0) return { volts: phaseVolts, r: circuit.r1, x: circuit.x1 };
  const branch = parallel(...shunt);
  const inner = parallel(series, ...shunt);
  return { volts: phaseVolts * size(over(branch, plus(series, branch))), r: inner.re, x: inner.im };
}

/** Slip and torque of breakdown in closed form from the open voltage and inner impedance; torque in N·m. */
export function breakdown(
  source: { readonly volts: number; readonly r: number; readonly x: number },
  rotor: { readonly r2: number; readonly x2: number },
  synchronousRadPerS: number,
): { readonly slip: number; readonly torque: number } {
  const root = Math.hypot(source.r, source.x + rotor.x2);
  return { slip: rotor.r2 / root, torque: (3 * source.volts ** 2) / (2 * synchronousRadPerS * (source.r + root)) };
}
