import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circuitFromRatedPoint } from '@/lib/engine/circuit/from-rated-point';
import { AT, type Circuit, COUNT, RATED_AMBIENT } from '@/lib/engine/circuit/parameters';
import { solveAtPower, type Terminals } from '@/lib/engine/circuit/solve';
import { solveAtSlip } from '@/lib/engine/circuit/solve-at-slip';
import { torqueCurve } from '@/lib/engine/circuit/torque';
import { size } from '../simulator/complex';
import { breakdown, solvePerPhase, thevenin } from '../simulator/per-phase';

const RATED: Terminals = { load: 1, voltage: 1, frequency: 1, ambient: RATED_AMBIENT };

/** A vector of parameters from plain numbers: losses as shares of rated output. */
function parameters(given: {
  stator: number;
  core: number;
  friction: number;
  stray: number;
  slip: number;
  magnetising: number;
  leakage: number;
  saturation: number;
}): Float64Array {
  const p = new Float64Array(COUNT);
  p[AT.otherLoss] = Math.log(given.stator + given.core + given.friction + given.stray);
  p[AT.slip] = Math.log(given.slip);
  p[AT.magnetising] = Math.log(given.magnetising);
  p[AT.leakage] = Math.log(given.leakage);
  p[AT.core] = Math.log(given.core / given.stator);
  p[AT.friction] = Math.log(given.friction / given.stator);
  p[AT.stray] = Math.log(given.stray / given.stator);
  p[AT.rise] = Math.log(70);
  p[AT.saturation] = given.saturation;
  return p;
}

/** Ordinary motors and odd ones: total loss from 4 to 40 % of the output. Invented. */
const ANY = fc.record({
  stator: fc.double({ min: 0.01, max: 0.14, noNaN: true }),
  core: fc.double({ min: 0.005, max: 0.08, noNaN: true }),
  friction: fc.double({ min: 0.002, max: 0.05, noNaN: true }),
  stray: fc.double({ min: 0.002, max: 0.04, noNaN: true }),
  slip: fc.double({ min: 0.004, max: 0.09, noNaN: true }),
  magnetising: fc.double({ min: 0.2, max: 0.9, noNaN: true }),
  leakage: fc.double({ min: 0.08, max: 0.22, noNaN: true }),
  saturation: fc.double({ min: 1, max: 4, noNaN: true }),
});

const ORDINARY = {
  stator: 0.03,
  core: 0.02,
  friction: 0.01,
  stray: 0.013,
  slip: 0.018,
  magnetising: 0.4,
  leakage: 0.18,
  saturation: 1,
};

function circuitOf(given: Parameters<typeof parameters>[0]): Circuit {
  const circuit = circuitFromRatedPoint(parameters(given), 0.6);
  if (!circuit) throw new Error('this motor exists');
  return circuit;
}

describe('limits worked out by hand', () => {
  /** No stator impedance: the air-gap voltage is the terminal voltage. */
  const ideal: Circuit = { ...circuitOf(ORDINARY), r1: 0, x1: 0, gapVoltage: 1, magnetising: 0.3, core: 0.04 };

  it('zero slip: the rotor is open, and magnetising and core current stand at right angles', () => {
    const at = solveAtSlip(ideal, { slip: 0, voltage: 1, frequency: 1 });
    expect(at?.current).toBeCloseTo(Math.hypot(0.3, 0.04), 12);
    expect(at?.rotor).toBe(0);
    expect(at?.stray).toBe(0);
    // Someone must turn it against its friction and windage.
    expect(at?.load).toBeCloseTo(-ideal.friction / (1 - ideal.slip) ** 2, 12);
    expect(at?.input).toBeCloseTo(0.04, 12);
  });

  it('free running: the shaft gives nothing, the input is loss, and the slip just overcomes friction', () => {
    const circuit = circuitOf(ORDINARY);
    const free = solveAtPower(circuit, { ...RATED, load: 0 });
    expect(free?.input).toBeCloseTo(
      [free?.stator, free?.rotor, free?.core, free?.friction, free?.stray].reduce<number>((sum, loss) => sum + (loss ?? 0), 0),
      12,
    );
    expect(free?.slip).toBeGreaterThan(0);
    expect(free?.slip).toBeLessThan(0.05 * circuit.slip);
  });

  it('standstill without magnetising and core branch: voltage over the sum of the impedances', () => {
    const short: Circuit = { ...circuitOf(ORDINARY), magnetising: 1e-12, core: 0 };
    const at = solveAtSlip(short, { slip: 1, voltage: 1, frequency: 1 });
    expect(at?.current).toBeCloseTo(1 / Math.hypot(short.r1 + short.r2, short.x1 + short.x2), 9);
    expect(at?.rotor).toBeCloseTo((at?.current ?? 0) ** 2 * short.r2, 9);
    expect((at?.load ?? 0) + (at?.stray ?? 0)).toBeCloseTo(0, 9);
  });

  it('open circuit: a rotor of endless resistance leaves the current of zero slip at any slip', () => {
    const open: Circuit = { ...circuitOf(ORDINARY), r2: 1e12 };
    const none = solveAtSlip(open, { slip: 0, voltage: 1, frequency: 1 });
    const some = solveAtSlip(open, { slip: 0.5, voltage: 1, frequency: 1 });
    expect(some?.current).toBeCloseTo(none?.current ?? 0, 9);
  });

  it('has no answer at a shaft power beyond breakdown, and none for slips and voltages that are none', () => {
    const circuit = circuitOf(ORDINARY);
    const top = torqueCurve(circuit, { voltage: 1, frequency: 1, winding: RATED_AMBIENT + circuit.rise })?.breakdown;
    const most = { ...RATED, winding: RATED_AMBIENT + circuit.rise };
    expect(solveAtPower(circuit, { ...most, load: 0.97 * (top?.load ?? 0) })).toBeDefined();
    expect(solveAtPower(circuit, { ...most, load: 1.15 * (top?.load ?? 0) })).toBeUndefined();
    expect(solveAtPower(circuit, { ...RATED, load: Number.NaN })).toBeUndefined();
    for (const [slip, voltage, frequency] of [
      [-0.01, 1, 1],
      [1.01, 1, 1],
      [0.1, 0, 1],
      [0.1, 1, 0],
      [Number.NaN, 1, 1],
    ] as const)
      expect(solveAtSlip(circuit, { slip, voltage, frequency })).toBeUndefined();
    expect(torqueCurve(circuit, { voltage: 0, frequency: 1 })).toBeUndefined();
  });

  it('has no circuit where the leakage is too large for the rated torque', () => {
    // Behind a reactance X₂ no more than E²/2X₂ crosses the air gap: 0.6 of 1.2 per unit leaves less than the rating.
    expect(circuitFromRatedPoint(parameters({ ...ORDINARY, leakage: 1.2 }), 0.6)).toBeUndefined();
  });
});

describe('the rated point', () => {
  it('has the losses and the slip that were asked for, to 1e-9', () => {
    let solved = 0;
    fc.assert(
      fc.property(ANY, (given) => {
        const circuit = circuitFromRatedPoint(parameters(given), 0.6);
        const at = circuit && solveAtPower(circuit, RATED);
        if (!at) return;
        solved += 1;
        for (const name of ['stator', 'core', 'friction', 'stray', 'slip'] as const)
          expect(Math.abs(at[name] / given[name] - 1)).toBeLessThan(1e-9);
        // Slip times what crosses the air gap.
        expect(at.rotor).toBeCloseTo((given.slip / (1 - given.slip)) * (1 + given.friction + given.stray), 9);
      }),
      { seed: 5, numRuns: 400 },
    );
    expect(solved).toBeGreaterThan(300);
  });
});

/** Solutions over all that a site may show: load, voltage, frequency, temperature, unbalance. */
const PLACES = fc.record({
  load: fc.double({ min: 0, max: 1.3, noNaN: true }),
  voltage: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
  frequency: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
  ambient: fc.double({ min: -10, max: 50, noNaN: true }),
  negativeSequence: fc.double({ min: 0, max: 0.05, noNaN: true }),
});

describe('energy balance', () => {
  it('closes to 1e-9 at any point, and what the terminals draw is what is counted', () => {
    let solved = 0;
    fc.assert(
      fc.property(ANY, PLACES, (given, place) => {
        const circuit = circuitFromRatedPoint(parameters(given), 0.6);
        const at = circuit && solveAtPower(circuit, place);
        if (!circuit || !at) return;
        solved += 1;
        const heat = (234.5 + at.winding) / (234.5 + RATED_AMBIENT + circuit.rise);
        const flux = Math.sqrt(at.core / (circuit.core * place.frequency ** 1.5));
        const gap = flux * circuit.gapVoltage * place.frequency;
        // The same point by complex impedances that know nothing of the solver: the shunt branches as they stand at this flux.
        const f = place.frequency;
        const balanced = solvePerPhase(
          {
            r1: circuit.r1 * heat,
            x1: circuit.x1 * f,
            r2: circuit.r2 * heat,
            x2: circuit.x2 * f,
            xm: gap / (circuit.magnetising * flux ** circuit.saturation),
            rCore: (gap * gap) / at.core,
          },
          place.voltage,
          at.slip,
        );
        // Three phases of the test's circuit against one whole of ours.
        const backward = place.negativeSequence > 0 ? at.unbalance : 0;
        const forward = place.negativeSequence > 0 ? backwardInput(circuit, heat, f, at.slip, place.negativeSequence) : 0;
        expect(Math.abs(balanced.input / 3 + forward - at.input)).toBeLessThan(1e-9 * at.input);
        expect(Math.abs(balanced.statorCopper / 3 + balanced.rotorCopper / 3 + backward - at.stator - at.rotor)).toBeLessThan(
          1e-9,
        );
        expect(Math.abs(at.input - place.load - at.stator - at.rotor - at.core - at.friction - at.stray)).toBeLessThan(1e-9);
        if (backward === 0) expect(Math.abs(size(balanced.stator) - at.current)).toBeLessThan(1e-9);
      }),
      { seed: 7, numRuns: 600 },
    );
    expect(solved).toBeGreaterThan(400);
  });
});

/** Power that the backward system draws: its current through R₁ and R₂'/(2 − s), R₂' 1.8 times R₂. */
function backwardInput(circuit: Circuit, heat: number, f: number, slip: number, volts: number): number {
  const rotor = (1.8 * circuit.r2 * heat) / (2 - slip);
  const squared = volts ** 2 / ((circuit.r1 * heat + rotor) ** 2 + ((circuit.x1 + circuit.x2) * f) ** 2);
  return squared * (circuit.r1 * heat + rotor);
}

describe('solving at a slip and at a shaft power', () => {
  it('is the same point; torque but for stray-load loss, which brakes there as at rated speed', () => {
    let solved = 0;
    fc.assert(
      fc.property(ANY, fc.double({ min: 0.05, max: 1.2, noNaN: true }), (given, load) => {
        const circuit = circuitFromRatedPoint(parameters(given), 0.6);
        const winding = 80;
        const at = circuit && solveAtPower(circuit, { ...RATED, load, winding });
        if (!circuit || !at) return;
        const back = solveAtSlip(circuit, { slip: at.slip, voltage: 1, frequency: 1, winding });
        expect(Math.abs((back?.load ?? 0) - load)).toBeLessThan(1e-9);
        expect(Math.abs((back?.current ?? 0) - at.current)).toBeLessThan(1e-9);
        expect(Math.abs((back?.input ?? 0) - at.input)).toBeLessThan(1e-9);
        const torque = (load * (1 - circuit.slip)) / (1 - at.slip);
        const stray = at.stray * ((1 - circuit.slip) / (1 - at.slip) - 1);
        expect(Math.abs((back?.torque ?? 0) - torque - stray)).toBeLessThan(1e-9);
        expect(Math.abs(stray)).toBeLessThan(0.01);
        solved += 1;
      }),
      { seed: 9, numRuns: 300 },
    );
    expect(solved).toBeGreaterThan(200);
  });
});

describe('breakdown torque', () => {
  it('is that of the Thévenin source in closed form, where the magnetising branch is a straight line', () => {
    let solved = 0;
    fc.assert(
      fc.property(ANY, (given) => {
        // Torque of the air gap alone: without friction and stray-load loss the closed form holds to the last digits.
        const whole = circuitFromRatedPoint(parameters({ ...given, saturation: 1 }), 0.6);
        if (!whole) return;
        const circuit: Circuit = { ...whole, friction: 0, stray: 0 };
        const plain = {
          r1: circuit.r1,
          x1: circuit.x1,
          r2: circuit.r2,
          x2: circuit.x2,
          xm: circuit.gapVoltage / circuit.magnetising,
          rCore: circuit.gapVoltage ** 2 / circuit.core,
        };
        const closed = breakdown(thevenin(plain, 1), plain, 3 / (1 - circuit.slip));
        if (closed.slip > 1) return;
        const top = torqueCurve(circuit, { voltage: 1, frequency: 1 })?.breakdown;
        expect(Math.abs((top?.torque ?? 0) / closed.torque - 1)).toBeLessThan(1e-9);
        expect(Math.abs((top?.slip ?? 0) / closed.slip - 1)).toBeLessThan(1e-4);
        solved += 1;
      }),
      { seed: 11, numRuns: 200 },
    );
    expect(solved).toBeGreaterThan(100);
  });

  it('lies on the curve as its highest point; the curve runs from standstill to synchronous speed through rated torque at rated speed', () => {
    const circuit = circuitOf({ ...ORDINARY, saturation: 1.8 });
    const curve = torqueCurve(circuit, { voltage: 1, frequency: 1 });
    expect(curve?.points[0]).toMatchObject({ slip: 1, speed: 0 });
    expect(curve?.points.at(-1)).toMatchObject({ slip: 0, speed: 1 });
    const torques = curve?.points.map(({ torque }) => torque) ?? [];
    expect(Math.max(...torques)).toBe(curve?.breakdown.torque);
    expect(curve?.starting.torque).toBe(torques[0]);
    expect(torques.at(-1)).toBeLessThan(0);
    expect(solveAtSlip(circuit, { slip: circuit.slip, voltage: 1, frequency: 1 })?.torque).toBeCloseTo(1, 9);
    const speeds = curve?.points.map(({ speed }) => speed) ?? [];
    for (let i = 1; i < speeds.length; i++) expect(speeds[i]).toBeGreaterThan(speeds[i - 1] ?? 0);
  });

  it('falls with the square of the voltage, leakage and magnetising branch being straight', () => {
    const circuit: Circuit = { ...circuitOf(ORDINARY), friction: 0, stray: 0 };
    const at = (voltage: number) => torqueCurve(circuit, { voltage, frequency: 1 })?.breakdown.torque ?? 0;
    expect(at(0.9) / at(1)).toBeCloseTo(0.81, 9);
  });
});
