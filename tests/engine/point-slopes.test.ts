import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CIRCUIT_SLOPES, circuitFromRatedPoint, circuitSlopes, OF_CIRCUIT } from '@/lib/engine/circuit/from-rated-point';
import { AT, COUNT } from '@/lib/engine/circuit/parameters';
import { BY, OF_POINT, POINT_COLUMNS, POINT_SLOPES, pointSlopes } from '@/lib/engine/circuit/point-slopes';
import { type Solution, solveAtPower, type Terminals } from '@/lib/engine/circuit/solve';

/** Machines from poor to good, small to large, in the logarithms that describe them. */
const MACHINES = fc
  .record({
    loss: fc.double({ min: 0.03, max: 0.15, noNaN: true }),
    slip: fc.double({ min: 0.006, max: 0.04, noNaN: true }),
    magnetising: fc.double({ min: 0.2, max: 0.6, noNaN: true }),
    leakage: fc.double({ min: 0.1, max: 0.22, noNaN: true }),
    saturation: fc.double({ min: 1, max: 3, noNaN: true }),
    rise: fc.double({ min: 40, max: 100, noNaN: true }),
  })
  .map(({ loss, slip, magnetising, leakage, saturation, rise }) =>
    Float64Array.of(
      Math.log(loss),
      Math.log(slip),
      Math.log(magnetising),
      Math.log(leakage),
      Math.log(0.6),
      Math.log(0.25),
      Math.log(0.3),
      Math.log(rise),
      saturation,
    ),
  );

const PLACES = fc.record({
  load: fc.double({ min: 0, max: 1.2, noNaN: true }),
  voltage: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
  frequency: fc.double({ min: 0.95, max: 1.05, noNaN: true }),
  ambient: fc.double({ min: -10, max: 45, noNaN: true }),
  winding: fc.option(fc.double({ min: 20, max: 150, noNaN: true }), { nil: undefined }),
  hotter: fc.double({ min: -10, max: 10, noNaN: true }),
  negativeSequence: fc.double({ min: 0, max: 0.04, noNaN: true }),
});

const STEP = 1e-5;

/** Central difference of the outcome of a change; `undefined` where one side is no possible point. */
function difference(of: (moved: number) => number | undefined, step: number): number | undefined {
  const above = of(step);
  const below = of(-step);
  return above === undefined || below === undefined ? undefined : (above - below) / (2 * step);
}

function expectClose(found: number | undefined, wanted: number | undefined, what: string): void {
  if (wanted === undefined) return;
  expect(Math.abs((found ?? Number.NaN) - wanted), what).toBeLessThan(1e-5 * (Math.abs(wanted) + 0.01));
}

describe('derivatives at a solved point agree with central differences of the solver', () => {
  it('of a circuit’s values by the parameters of its rated point', () => {
    fc.assert(
      fc.property(MACHINES, (p) => {
        const circuit = circuitFromRatedPoint(p, 0.6);
        fc.pre(circuit !== undefined);
        if (!circuit) return;
        const slopes = new Float64Array(CIRCUIT_SLOPES);
        circuitSlopes(p, 0.6, circuit, slopes);
        for (const of of ['r1', 'x1', 'r2', 'x2', 'gapVoltage', 'core', 'friction', 'current', 'powerFactor', 'rise'] as const)
          for (let k = 0; k < COUNT; k++) {
            const wanted = difference((moved) => {
              const other = Float64Array.from(p);
              other[k] = (other[k] ?? 0) + moved;
              return circuitFromRatedPoint(other, 0.6)?.[of];
            }, STEP);
            expectClose(slopes[OF_CIRCUIT[of] * COUNT + k], wanted, `${of} by ${Object.keys(AT)[k]}`);
          }
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it('of a running point’s values by parameters and by conditions', () => {
    fc.assert(
      fc.property(MACHINES, PLACES, (p, at) => {
        const circuit = circuitFromRatedPoint(p, 0.6);
        const point = circuit && solveAtPower(circuit, at);
        fc.pre(point !== undefined);
        if (!circuit || !point) return;
        const ofCircuit = new Float64Array(CIRCUIT_SLOPES);
        circuitSlopes(p, 0.6, circuit, ofCircuit);
        const slopes = new Float64Array(POINT_SLOPES);
        pointSlopes(circuit, ofCircuit, at, point, slopes);
        const solve = (other: Float64Array, terminals: Terminals): Solution | undefined => {
          const moved = circuitFromRatedPoint(other, 0.6);
          return moved && solveAtPower(moved, terminals);
        };
        for (const of of Object.keys(OF_POINT) as (keyof typeof OF_POINT)[]) {
          const row = OF_POINT[of] * POINT_COLUMNS;
          for (let k = 0; k < COUNT; k++) {
            const wanted = difference((moved) => {
              const other = Float64Array.from(p);
              other[k] = (other[k] ?? 0) + moved;
              return solve(other, at)?.[of];
            }, STEP);
            expectClose(slopes[row + k], wanted, `${of} by ${Object.keys(AT)[k]}`);
          }
          const by = (change: (moved: number) => Terminals, step: number) =>
            difference((moved) => solve(p, change(moved))?.[of], step);
          expectClose(
            slopes[row + BY.load],
            by((moved) => ({ ...at, load: at.load + moved }), STEP),
            `${of} by load`,
          );
          expectClose(
            slopes[row + BY.voltage],
            by((moved) => ({ ...at, voltage: at.voltage + moved }), STEP),
            `${of} by voltage`,
          );
          expectClose(
            slopes[row + BY.hotter],
            by((moved) => ({ ...at, hotter: at.hotter + moved }), 1e-3),
            `${of} by heat`,
          );
          const winding = at.winding;
          const warmer = (moved: number): Terminals =>
            winding === undefined ? { ...at, ambient: at.ambient + moved } : { ...at, winding: winding + moved };
          expectClose(slopes[row + BY.temperature], by(warmer, 1e-3), `${of} by temperature`);
        }
      }),
      { seed: 12, numRuns: 60 },
    );
  });
});
