import type { CircuitTests, FittedCircuit, TerminalTest } from '@/lib/engine/bench/circuit-from-tests';

const reactive = (test: TerminalTest): number => Math.sqrt(3 * (test.voltageV * test.currentA) ** 2 - test.powerW ** 2);

/** How a textbook simplifies. */
export interface TextbookConvention {
  /** No-load reactance from the reactive power, or the whole impedance taken for it. */
  readonly noLoad: 'reactance' | 'impedance';
  /** Where the magnetising branch is kept in the locked-rotor test. */
  readonly magnetisingIn: 'neither' | 'resistance' | 'both';
}

/**
 * Circuit as textbooks find it: core loss counted with friction and windage, so that the no-load impedance is r1 + j(x1 + xm).
 *
 * Units: Ω, W. Serves where the no-load run stands at one voltage and core loss cannot be told from friction. With both kept, x2 is the
 * smaller root of k²x2² + (X_L(1 − k) − X_0(1 + k)) x2 + X_0 X_L = 0, k = x1/x2, which Fitzgerald, Kingsley and Umans derive.
 * Source: A. E. Fitzgerald and others, Electric Machinery, example 6.5; C. I. Hubert, Electric Machines, example 5.16.
 */
export function textbookCircuit(tests: CircuitTests, convention: TextbookConvention): FittedCircuit {
  const { noLoad, lockedRotor: locked, reactanceRatio: k } = tests;
  const squares = 3 * locked.currentA ** 2;
  const rLocked = locked.powerW / squares;
  const xLocked = ((reactive(locked) / squares) * tests.frequencyHz) / locked.frequencyHz;
  const x0 =
    convention.noLoad === 'impedance'
      ? noLoad.voltageV / Math.sqrt(3) / noLoad.currentA
      : reactive(noLoad) / (3 * noLoad.currentA ** 2);
  const x2 = convention.magnetisingIn === 'both' ? smallerRoot(k, xLocked, x0) : xLocked / (1 + k);
  const x1 = k * x2;
  const xm = x0 - x1;
  const bare = rLocked - tests.r1Locked;
  const r2 = (convention.magnetisingIn === 'neither' ? bare : bare * ((x2 + xm) / xm) ** 2) * tests.rotorWarming;
  const rotational = noLoad.powerW - 3 * noLoad.currentA ** 2 * tests.r1NoLoad;
  return { r1: tests.r1, x1, r2, x2, xm, gfe: 0, frictionWindage: rotational };
}

function smallerRoot(k: number, xLocked: number, x0: number): number {
  const b = xLocked * (1 - k) - x0 * (1 + k);
  const discriminant = b * b - 4 * k * k * x0 * xLocked;
  return (2 * x0 * xLocked) / (-b + Math.sqrt(discriminant));
}
