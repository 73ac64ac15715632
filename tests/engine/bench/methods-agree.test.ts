import { describe, expect, it } from 'vitest';
import { type BenchContext, evaluateBench } from '@/lib/engine/bench/evaluate';
import { type BenchPlate, type BenchPoint, type BenchTest, USUAL_INSTRUMENTS } from '@/lib/engine/bench/test';
import { standardUncertainty } from '@/lib/engine/quantity/quantity';
import { loadTables } from '@/lib/reference/load';

/** An invented machine as an exact circuit in Ω per phase of the star; solved here by complex division, not by the engine. */
const M = {
  r1: 0.24,
  x1: 0.5,
  r2: 0.165,
  x2: 0.75,
  xm: 22,
  rfe: 900,
  frictionW: 150,
  straySlope: 0.0275,
  kw: 18.65,
  volts: 460,
  poles: 4,
};
const SYNCHRONOUS = 1800;
const W = (2 * Math.PI * SYNCHRONOUS) / 60;

interface Complex {
  readonly re: number;
  readonly im: number;
}
const over = (z: Complex): Complex => ({ re: z.re / (z.re ** 2 + z.im ** 2), im: -z.im / (z.re ** 2 + z.im ** 2) });

function solve(slip: number, volts: number, frequency = 1) {
  const branch: Complex = slip === 0 ? { re: 0, im: 0 } : over({ re: M.r2 / slip, im: M.x2 * frequency });
  const y = { re: 1 / M.rfe + branch.re, im: branch.im - 1 / (M.xm * frequency) };
  const gap = over(y);
  const z = { re: M.r1 + gap.re, im: M.x1 * frequency + gap.im };
  const current = volts / Math.sqrt(3) / Math.hypot(z.re, z.im);
  const gapSquared = current ** 2 * (gap.re ** 2 + gap.im ** 2);
  const gapW = 3 * gapSquared * branch.re;
  const speed = SYNCHRONOUS * (1 - slip);
  // Stray-load loss brakes the shaft with the square of its torque.
  const developed = gapW * (1 - slip) - M.frictionW;
  let torque = developed / W;
  for (let i = 0; i < 50; i++) torque = (developed - M.straySlope * torque ** 2) / (W * (1 - slip));
  return { current, inputW: 3 * current ** 2 * z.re, speed, torque, shaftW: torque * W * (1 - slip) };
}

function slipFor(shaftW: number): number {
  let [low, high] = [1e-6, 0.1];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (solve(middle, M.volts).shaftW < shaftW) low = middle;
    else high = middle;
  }
  return high;
}

const CELSIUS = 85;
const AIR = 25;
let row = 1;
const electrical = (s: ReturnType<typeof solve>, volts: number): BenchPoint => {
  row += 1;
  return { row, voltageV: volts, currentA: s.current, inputPowerKw: s.inputW / 1000, frequencyHz: 60, windingTempC: CELSIUS };
};
const load = [1.5, 1.25, 1, 0.75, 0.5, 0.25].map((x) => {
  const s = solve(slipFor(1000 * x * M.kw), M.volts);
  return { ...electrical(s, M.volts), speedRpm: s.speed, torqueNm: s.torque };
});
const noLoad = [1.25, 1.1, 1, 0.9, 0.8, 0.6, 0.5, 0.4, 0.3, 0.2].map((ratio) => {
  const volts = ratio * M.volts;
  const s = solve(0, volts);
  // Friction is carried by a slip too small to matter; its power comes on top.
  const point = electrical(s, volts);
  return { ...point, inputPowerKw: (point.inputPowerKw ?? 0) + M.frictionW / 1000 };
});
const locked = { ...electrical(solve(1, 38, 0.25), 38), frequencyHz: 15 };
const cold = { row: 100, resistanceOhm: (2 * M.r1 * (234.5 + 25)) / (234.5 + CELSIUS), windingTempC: 25 };
/**
 * Rotor out: part of the stray-load loss shows at line frequency; backwards: the rest. Both go with the square of the test current, which
 * stands for I² − I₀² under load.
 */
const ratedCurrent = load[2]?.currentA ?? 1;
const PER_SQUARE =
  (M.straySlope * solve(slipFor(1000 * M.kw), M.volts).torque ** 2) / (ratedCurrent ** 2 - solve(0, M.volts).current ** 2);
const direct = [30, 22, 14].map((amperes) => {
  const stator = 3 * amperes ** 2 * M.r1;
  const at = { currentA: amperes, windingTempC: CELSIUS };
  row += 2;
  const total = PER_SQUARE * amperes ** 2;
  return {
    out: { row, ...at, inputPowerKw: (stator + 0.3 * total) / 1000 },
    back: {
      row: row + 1,
      ...at,
      inputPowerKw: (stator + 0.3 * total + 200) / 1000,
      speedRpm: 1800,
      torqueNm: (M.frictionW + 0.7 * total + 200) / W,
    },
  };
});
const test: BenchTest = {
  tag: 'INVENTED-2',
  test: 'circuit',
  sections: {
    cold: [cold],
    'rated-load': [{ row: 101, windingTempC: CELSIUS, ambientC: AIR }],
    load,
    dynamometer: [],
    'no-load': noLoad,
    'locked-rotor': [locked],
    'rotor-removed': direct.map(({ out }) => out),
    'reverse-rotation': [...direct.map(({ back }) => back), { row: 102, speedRpm: 1800, torqueNm: M.frictionW / W }],
  },
};
const plate: BenchPlate = { ratedPowerKw: M.kw, ratedVoltageV: M.volts, ratedFrequencyHz: 60, poles: M.poles, designLetter: 'B' };
const { tables } = loadTables();
const run = (method: BenchContext['method']) =>
  evaluateBench(test, { plate, method, instruments: USUAL_INSTRUMENTS, assumedStray: tables.assumedStray });

describe('methods on one invented machine', () => {
  const methods = ['ieee-112-b', 'ieee-112-e', 'ieee-112-e1', 'ieee-112-f', 'ieee-112-f1', 'iec-2-1-1b', 'iec-2-1-1c'] as const;
  const rated = new Map(
    methods.map((method) => [method, run(method).load?.loads.find((each) => each.loadFraction === 1)] as const),
  );
  const truth = M.kw / (solve(slipFor(1000 * M.kw), M.volts).inputW / 1000);

  it.each(methods)('%s is accepted and holds the true efficiency within its interval', (method) => {
    expect(run(method).findings.filter((finding) => finding.severity === 'disqualifies')).toEqual([]);
    const efficiency = rated.get(method)?.efficiency;
    expect(efficiency).toBeDefined();
    if (efficiency)
      expect(Math.abs(efficiency.value - truth), `${efficiency.value} against ${truth}`).toBeLessThanOrEqual(
        1.96 * standardUncertainty(efficiency),
      );
  });

  it('every two agree within their intervals', () => {
    for (const a of rated.values()) {
      for (const b of rated.values()) {
        if (!a || !b) throw new Error('a method gave nothing at rated load');
        const doubt = Math.hypot(standardUncertainty(a.efficiency), standardUncertainty(b.efficiency));
        expect(Math.abs(a.efficiency.value - b.efficiency.value)).toBeLessThanOrEqual(1.96 * doubt);
      }
    }
  });

  it('a circuit found from tests gives current and speed of the machine at rated load', () => {
    const found = rated.get('ieee-112-f');
    expect(found?.current.value ?? 0).toBeCloseTo(load[2]?.currentA ?? 0, 0);
    expect(Math.abs((found?.speed.value ?? 0) - (load[2]?.speedRpm ?? 0))).toBeLessThan(2);
  });

  it('the less is measured, the wider the interval', () => {
    const u = (method: (typeof methods)[number]) =>
      standardUncertainty(rated.get(method)?.efficiency ?? { parts: { at: [], by: [] } });
    expect(u('ieee-112-b')).toBeLessThan(u('ieee-112-e1'));
    expect(u('ieee-112-e')).toBeLessThan(u('ieee-112-e1'));
    expect(u('ieee-112-f')).toBeLessThan(u('ieee-112-f1'));
  });
});
