/**
 * Per-phase equivalent circuit of a star-connected machine, Ω at the frequency of the no-load test; conductance in S; friction and windage
 * in W for three phases. Resistances are at the temperature asked for.
 */
export interface FittedCircuit {
  readonly r1: number;
  readonly x1: number;
  readonly r2: number;
  readonly x2: number;
  readonly xm: number;
  /** Conductance of the core-loss branch, parallel to xm; zero where core loss is counted with friction and windage. */
  readonly gfe: number;
  readonly frictionWindage: number;
}

/** Line-to-line voltage, line current, power of three phases in W. */
export interface TerminalTest {
  readonly voltageV: number;
  readonly currentA: number;
  readonly powerW: number;
}

/** Readings that lead to a circuit. */
export interface CircuitTests {
  readonly noLoad: TerminalTest;
  readonly lockedRotor: TerminalTest & { readonly frequencyHz: number };
  readonly frequencyHz: number;
  /** Stator resistance for each phase of the star: in the no-load test, in the locked-rotor test, and at the temperature asked for. */
  readonly r1NoLoad: number;
  readonly r1Locked: number;
  readonly r1: number;
  /** Rotor resistance at the temperature asked for over that in the locked-rotor test. */
  readonly rotorWarming: number;
  /** x1 over x2. */
  readonly reactanceRatio: number;
  /** Core loss at the no-load voltage, and friction and windage, W. */
  readonly coreW: number;
  readonly frictionWindageW: number;
}

/** x1 over x2 by design letter, where it is not known otherwise (IEEE 112-2017 clause 5.9, from memory). */
export const REACTANCE_RATIO = { A: 1, B: 0.67, C: 0.43, D: 1, N: 0.67, H: 0.43 } as const;

export type CircuitOutcome =
  | { readonly ok: true; readonly circuit: FittedCircuit }
  | { readonly ok: false; readonly reason: string };

const STEPS = 200;
const SETTLED = 1e-12;

const reactive = (test: TerminalTest): number => Math.sqrt(3 * (test.voltageV * test.currentA) ** 2 - test.powerW ** 2);

/** Why readings cannot belong to a three-phase machine, if so. */
function impossible(tests: CircuitTests): string | undefined {
  for (const [name, test] of [
    ['no-load', tests.noLoad],
    ['locked-rotor', tests.lockedRotor],
  ] as const) {
    if (!(test.voltageV > 0 && test.currentA > 0 && test.powerW > 0))
      return `the ${name} test has a reading that is not positive`;
    if (!(reactive(test) > 0)) return `the power of the ${name} test is more than its volt-amperes`;
  }
  return undefined;
}

/**
 * Circuit from a no-load and a locked-rotor test by the iteration of IEEE 112 methods F and F1.
 *
 * Units: Ω, S, W. Valid for: polyphase induction machines; the locked-rotor test best at a quarter of rated frequency and rated current.
 * With Q reactive powers, m = 3 and V the phase voltage:
 * xm = m V₀² / (Q₀ − m I₀² x1) / (1 + x1/xm)²;
 * x1L = Q_L / (m I_L² (1 + x1/x2 + x1/xm)) · (x1/x2 + x1/xm), x1 = x1L f/f_L, x2 = x1/(x1/x2);
 * gfe = P_core / (m V₀²) · (1 + x1/xm)²;
 * r2L = (P_L/(m I_L²) − r1L)(1 + x2/xm)² − (x2/x1)² x1L² gfe.
 * Errors: readings that no machine can have, and an iteration that does not settle, give the reason instead of a circuit.
 * Source: IEEE 112-2017 clause 5.9 (from memory).
 */
export function circuitFromTests(tests: CircuitTests): CircuitOutcome {
  const wrong = impossible(tests);
  if (wrong !== undefined) return { ok: false, reason: wrong };
  const { noLoad, lockedRotor: locked, reactanceRatio: k } = tests;
  const v0 = noLoad.voltageV ** 2; // m V² of the phase is the square of the line voltage
  const q0 = reactive(noLoad);
  const ql = reactive(locked);
  const i0 = 3 * noLoad.currentA ** 2;
  const il = 3 * locked.currentA ** 2;
  let xm = v0 / q0;
  let x1 = 0;
  let x1Locked = 0;
  let settled = false;
  for (let step = 0; step < STEPS && !settled; step++) {
    const ratio = x1 / xm;
    x1Locked = (ql / (il * (1 + k + ratio))) * (k + ratio);
    const nextX1 = (x1Locked * tests.frequencyHz) / locked.frequencyHz;
    const room = q0 - i0 * nextX1;
    if (!(room > 0))
      return { ok: false, reason: 'the leakage of the locked-rotor test leaves nothing for the magnetising branch' };
    const nextXm = v0 / room / (1 + nextX1 / xm) ** 2;
    settled = Math.abs(nextX1 - x1) <= SETTLED * nextX1 && Math.abs(nextXm - xm) <= SETTLED * nextXm;
    x1 = nextX1;
    xm = nextXm;
  }
  if (!settled) return { ok: false, reason: `the iteration has not settled after ${STEPS} steps` };
  const x2 = x1 / k;
  const gfe = (tests.coreW / v0) * (1 + x1 / xm) ** 2;
  const r2Locked = (locked.powerW / il - tests.r1Locked) * (1 + x2 / xm) ** 2 - (x2 / x1) ** 2 * x1Locked ** 2 * gfe;
  if (!(r2Locked > 0)) return { ok: false, reason: 'the stator takes more than the power of the locked-rotor test' };
  const r2 = r2Locked * tests.rotorWarming;
  return { ok: true, circuit: { r1: tests.r1, x1, r2, x2, xm, gfe, frictionWindage: tests.frictionWindageW } };
}
