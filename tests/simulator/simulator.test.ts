import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { given, readCases } from '../engine/cases/published';
import { WORLDS, type WorldName } from './beliefs';
import { type Complex, complex, conjugate, parallel, size, times } from './complex';
import { drawRating, rowsOf, sheetText, simulateFleet } from './fleet';
import { drawMachine, efficientLoss, fromRatedPoint, type TrueMachine } from './machine';
import { atShaftPower, atSlip, type Conditions, supplyOf, unbalanceOf } from './operate';
import { solvePerPhase } from './per-phase';
import { nominalNotAbove } from './plate';
import { Chance } from './random';

const SQRT3 = Math.sqrt(3);
const fleet = simulateFleet({ seed: 11, motors: 400 });
/** Machines without the work of putting them to work. */
const drawn = (seed: number, motors: number, world: WorldName = 'usual') =>
  Array.from({ length: motors }, (_, i) => {
    const chance = new Chance(seed * 10_007 + i);
    const rating = drawRating(chance);
    return { rating, built: drawMachine(chance, rating, WORLDS[world]) };
  });
const sum = (losses: Readonly<Record<string, number>>): number => Object.values(losses).reduce((total, loss) => total + loss, 0);
const quiet = (machine: TrueMachine): Conditions => ({
  supply: supplyOf(machine.lineVolts, 0, 0, machine.frequency),
  ambient: 25,
  warmth: 1,
});
const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

describe('complex numbers of the simulator', () => {
  it('multiply, divide and stand side by side as worked by hand', () => {
    expect(times(complex(1, 2), complex(3, -1))).toEqual({ re: 5, im: 5 });
    expect(size(complex(3, 4))).toBe(5);
    const halves: Complex = parallel(complex(2, 2), complex(2, 2));
    expect(halves.re).toBeCloseTo(1, 12);
    expect(times(complex(1, 2), conjugate(complex(1, 2)))).toEqual({ re: 5, im: 0 });
  });

  it('a circuit without a branch across, or without load, draws what Ohm says', () => {
    const open = solvePerPhase({ r1: 1, x1: 0, r2: 1, x2: 0 }, 100, 0);
    expect(open.input).toBe(0);
    expect(solvePerPhase({ r1: 1, x1: 0, r2: 1, x2: 0 }, 100, 1).input).toBeCloseTo(3 * (100 * 50), 9);
  });
});

describe('the simulated machine', () => {
  it('reproduces a textbook machine with core loss: C. I. Hubert, Electric Machines, 2nd ed. 2002, example 5.2', () => {
    const published = readCases('./circuit.json').find(({ id }) => id === 'C-HUB-5.2');
    if (!published) throw new Error('the case is gone');
    const gapVolts = 240;
    const machine: TrueMachine = {
      ratedPower: 1,
      lineVolts: 460,
      frequency: 60,
      poles: 6,
      hot: { celsius: 80, r1: given(published, 'r1'), r2: given(published, 'r2') },
      x1: given(published, 'x1'),
      x2: given(published, 'x2'),
      gapVolts,
      magnetisingAmps: gapVolts / given(published, 'x_m'),
      kneeShare: 0,
      core: { watts: (3 * gapVolts ** 2) / given(published, 'r_core'), exponent: 2 },
      friction: { watts: given(published, 'stray_friction_windage'), exponent: 0 },
      stray: { watts: 0, rotorAmps: 1 },
      negative: { r2: 1, x2: 1 },
      rise: 55,
      ratedLoss: 1,
      ratedSlip: 0.0125,
      ratedAmps: 1,
      ratedPowerFactor: 1,
      lockedAmps: 1,
    };
    const at = atSlip(machine, quiet(machine), 0.0125, 80);
    const printed = (key: string) => published.expected[key]?.value ?? Number.NaN;
    // The text rounds every impedance to three figures, so its powers hold to a per cent.
    expect(Math.abs(at.amps[0] / printed('i1') - 1)).toBeLessThan(0.005);
    expect(Math.abs(at.input / printed('p_in') - 1)).toBeLessThan(0.005);
    expect(Math.abs(at.losses.core / printed('core') - 1)).toBeLessThan(0.01);
    expect(Math.abs(at.losses.rotor / printed('rotor_cu') - 1)).toBeLessThan(0.01);
    expect(Math.abs(at.efficiency - printed('efficiency'))).toBeLessThan(0.003);
  });

  it('has at rated load, voltage and 25 °C the losses that it was made from', () => {
    const losses = { stator: 900, rotor: 600, core: 550, friction: 250, stray: 400 };
    const machine = fromRatedPoint({
      rating: { hp: 30, watts: 22371, poles: 4, lineVolts: 460, frequency: 60 },
      losses,
      magnetising: 0.35,
      lockedCurrent: 6,
      lockedOverRunning: 0.8,
      statorLeakage: 0.45,
      kneeShare: 0.2,
      coreExponent: 2.1,
      frictionExponent: 2.6,
      negativeResistance: 2.5,
      rise: 65,
    });
    const at = atShaftPower(machine, quiet(machine), 22371);
    for (const name of ['stator', 'rotor', 'core', 'friction', 'stray'] as const) {
      expect(at.losses[name] / losses[name]).toBeCloseTo(1, 6);
    }
    expect(at.slip / (losses.rotor / (22371 + 250 + 400 + 600))).toBeCloseTo(1, 6);
    expect(at.windingCelsius).toBeCloseTo(90, 4);
    expect(machine.magnetisingAmps / machine.ratedAmps).toBeCloseTo(0.35, 6);
  });

  it('loses nothing and makes nothing: input is shaft power and five losses, unbalance included', () => {
    for (const { at, cells } of fleet) {
      expect(Math.abs(at.input - at.shaft - sum(at.losses)) / at.input, cells.tag).toBeLessThan(1e-9);
      expect(Math.min(...Object.values(at.losses)), cells.tag).toBeGreaterThan(0);
    }
  });

  it('carries the load that it was given', () => {
    for (const { at, rating, loadFraction, cells } of fleet) {
      expect(Math.abs(at.shaft / rating.watts - loadFraction), cells.tag).toBeLessThan(1e-8);
    }
  });

  it('draws more power and current and turns slower with more load', () => {
    for (const { built, conditions, rating, cells } of fleet.slice(0, 60)) {
      const points = [0, 0.25, 0.5, 0.75, 1, 1.15].map((load) => atShaftPower(built.machine, conditions, load * rating.watts));
      for (const [i, point] of points.entries()) {
        const before = points[i - 1];
        if (!before) continue;
        expect(point.input, cells.tag).toBeGreaterThan(before.input);
        expect(point.rpm, cells.tag).toBeLessThan(before.rpm);
        expect(point.losses.rotor, cells.tag).toBeGreaterThan(before.losses.rotor);
        expect(Math.max(...point.amps), cells.tag).toBeGreaterThan(Math.max(...before.amps));
      }
    }
  });

  it('takes more magnetising current and core loss at higher voltage, and more slip at lower', () => {
    for (const { built, cells } of fleet.slice(0, 60)) {
      const { machine } = built;
      const at = (ratio: number) =>
        atShaftPower(
          machine,
          { ...quiet(machine), supply: supplyOf(ratio * machine.lineVolts, 0, 0, machine.frequency) },
          0.1 * machine.ratedPower,
        );
      expect(at(1.06).amps[0], cells.tag).toBeGreaterThan(at(1).amps[0]);
      expect(at(1.06).losses.core, cells.tag).toBeGreaterThan(at(1).losses.core);
      expect(at(0.94).slip, cells.tag).toBeGreaterThan(at(1).slip);
    }
  });

  it('turns a small unbalance of voltage into several times the unbalance of current and into loss', () => {
    const ratios: number[] = [];
    for (const { built } of fleet.slice(0, 100)) {
      const { machine } = built;
      const even = atShaftPower(machine, quiet(machine), 0.75 * machine.ratedPower);
      const uneven = atShaftPower(
        machine,
        { ...quiet(machine), supply: supplyOf(machine.lineVolts, 0.02, 1, machine.frequency) },
        0.75 * machine.ratedPower,
      );
      expect(uneven.input).toBeGreaterThan(even.input);
      ratios.push(unbalanceOf(uneven.amps) / unbalanceOf(uneven.lineVolts));
    }
    // NEMA MG 1 14.36: current unbalance at operating speed about 6 to 10 times that of voltage at full load (from memory); more below it.
    expect(median(ratios)).toBeGreaterThan(5);
    expect(median(ratios)).toBeLessThan(12);
  });

  it('runs light near the synchronous speed with its magnetising current, its constant losses and little else', () => {
    for (const { built } of fleet.slice(0, 40)) {
      const { machine } = built;
      const at = atShaftPower(machine, quiet(machine), 0);
      expect(at.slip).toBeLessThan(0.1 * machine.ratedSlip);
      expect(at.amps[0] / machine.magnetisingAmps).toBeGreaterThan(0.98);
      expect(at.input).toBeGreaterThan(0.9 * (machine.core.watts + machine.friction.watts));
    }
  });
});

describe('the simulated fleet', () => {
  it('comes out the same from the same seed, another from another, and its first motors whatever its size', () => {
    expect(sheetText(simulateFleet({ seed: 3, motors: 30 }).map(({ cells }) => cells))).toBe(
      sheetText(
        simulateFleet({ seed: 3, motors: 60 })
          .slice(0, 30)
          .map(({ cells }) => cells),
      ),
    );
    expect(sheetText(simulateFleet({ seed: 4, motors: 30 }).map(({ cells }) => cells))).not.toBe(
      sheetText(simulateFleet({ seed: 3, motors: 30 }).map(({ cells }) => cells)),
    );
  });

  it('reads some motors before, at other loads, with the same plate and instruments', () => {
    const before = simulateFleet({ seed: 14, motors: 80, readBefore: 1 });
    for (const { earlier, cells } of before) {
      expect(earlier.length).toBeGreaterThan(0);
      for (const row of earlier) {
        expect(row.rated_voltage_v).toBe(cells.rated_voltage_v);
        expect(row.rated_current_a).toBe(cells.rated_current_a);
        expect(row.taken_at).not.toBe(cells.taken_at);
      }
    }
    expect(rowsOf(before).length).toBe(before.reduce((count, { earlier }) => count + 1 + earlier.length, 0));
    expect(before.map(({ cells }) => cells)).toEqual(
      simulateFleet({ seed: 14, motors: 80, readBefore: 1 }).map(({ cells }) => cells),
    );
  });

  it('has rougher and calmer worlds, whose motors differ more and less from their design', () => {
    const spreadOf = (world: WorldName) => {
      const logs = drawn(15, 800, world)
        .filter(({ built }) => built.rewound === 0)
        .map(({ built }) => Math.log(built.machine.ratedLoss / built.machine.ratedPower / (1 / built.designEfficiency - 1)));
      return Math.sqrt(logs.reduce((total, value) => total + value * value, 0) / logs.length);
    };
    expect(spreadOf('calm')).toBeLessThan(spreadOf('usual'));
    expect(spreadOf('usual')).toBeLessThan(spreadOf('rough'));
  });

  it('stamps efficiency and power factor on nearly every plate where papers are kept', () => {
    const cells = simulateFleet({ seed: 16, motors: 300, world: 'stamped' }).map((motor) => motor.cells);
    for (const stamp of ['nominal_efficiency_pct', 'rated_power_factor_pct'])
      expect(cells.filter((row) => row[stamp] !== undefined).length / cells.length, stamp).toBeGreaterThan(0.9);
    expect(cells.every((row) => row.power_accuracy_pct === undefined || row.power_accuracy_pct === '3')).toBe(true);
  });

  it.each([
    ['usual', '9644c63af0b5a85a'],
    ['calm', 'dd39f8e70785701b'],
    ['rough', 'eac8982ff95aa5da'],
  ] as const)('leaves the %s world as it was when another was added (pinned)', (world, pinned) => {
    const text = sheetText(rowsOf(simulateFleet({ seed: 8, motors: 60, world, readBefore: 0.3 })));
    expect(createHash('sha256').update(text).digest('hex').slice(0, 16)).toBe(pinned);
  });

  it('keeps within the world it describes: loads, voltages, unbalance, meters', () => {
    for (const { loadFraction, voltageRatio, unbalance, instruments } of fleet) {
      expect(loadFraction).toBeGreaterThanOrEqual(0.2);
      expect(loadFraction).toBeLessThanOrEqual(1.15);
      expect(Math.abs(voltageRatio - 1)).toBeLessThanOrEqual(0.06);
      expect(unbalance).toBeLessThan(0.0305);
      expect(Math.abs(instruments.gain.power - 1)).toBeLessThanOrEqual(instruments.accuracy.power / 100);
      expect(Math.abs(instruments.rpmOffset)).toBeLessThanOrEqual(instruments.accuracy.rpm);
    }
  });

  it('draws rated currents like those of NEC table 430.250, 460 V, which is on the safe side (read in three copies)', () => {
    const table: Readonly<Record<number, number>> = { 10: 14, 20: 27, 30: 40, 50: 65, 75: 96, 100: 124, 150: 180, 200: 240 };
    const ratios = drawn(12, 1500).flatMap(({ rating, built }) => {
      const listed = table[rating.hp];
      return listed === undefined || rating.frequency !== 60 || rating.poles > 4 || rating.lineVolts !== 460
        ? []
        : [built.machine.ratedAmps / listed];
    });
    expect(ratios.length).toBeGreaterThan(100);
    expect(median(ratios)).toBeGreaterThan(0.85);
    expect(median(ratios)).toBeLessThan(1);
    expect(ratios.filter((ratio) => ratio > 0.75 && ratio < 1.15).length / ratios.length).toBeGreaterThan(0.95);
  });

  it('has breakdown torques as NEMA design B motors: 175 to 300 % and somewhat above (handbook table, read in two copies)', () => {
    const tops = fleet.slice(0, 80).map(({ built: { machine } }) => {
      const rated = atSlip(machine, quiet(machine), machine.ratedSlip, machine.hot.celsius);
      const torque = (slip: number) => atSlip(machine, quiet(machine), slip, machine.hot.celsius).shaft / (1 - slip);
      return Math.max(...Array.from({ length: 60 }, (_, i) => torque(0.008 * (i + 1)))) / (rated.shaft / (1 - rated.slip));
    });
    expect(Math.min(...tops)).toBeGreaterThan(1.6);
    expect(median(tops)).toBeGreaterThan(2);
    expect(median(tops)).toBeLessThan(3.2);
  });

  it('spreads losses about the design as NEMA MG 1 12.58.2 allows: hardly one new motor in fifty beyond 20 % more than nominal', () => {
    const many = drawn(13, 1500).filter(({ built }) => built.rewound === 0);
    const beyond = many.filter(
      ({ built }) => built.machine.ratedLoss / built.machine.ratedPower > 1.2 * (1 / built.designEfficiency - 1),
    );
    expect(beyond.length / many.length).toBeLessThan(0.02);
  });

  it('stamps the ladder value not above the design, as NEMA MG 1 12.58.2 says', () => {
    expect(nominalNotAbove(93.59)).toBe(93);
    expect(nominalNotAbove(93.6)).toBe(93.6);
    expect(nominalNotAbove(91.05)).toBe(91);
  });

  it('reads the law of energy-efficient motors between its ratings', () => {
    expect(efficientLoss(50, 4)).toBeCloseTo(100 / 93 - 1, 12);
    expect(efficientLoss(35, 4)).toBeGreaterThan(efficientLoss(40, 4));
    expect(efficientLoss(2000, 4)).toBeCloseTo(100 / 96.2 - 1, 12);
  });

  it('draws evenly and normally', () => {
    const chance = new Chance(5);
    const normal = Array.from({ length: 20000 }, () => chance.normal());
    const mean = normal.reduce((total, value) => total + value, 0) / normal.length;
    const variance = normal.reduce((total, value) => total + (value - mean) ** 2, 0) / normal.length;
    expect(Math.abs(mean)).toBeLessThan(0.03);
    expect(Math.abs(variance - 1)).toBeLessThan(0.04);
    expect(normal.filter((value) => Math.abs(value) < 1.96).length / normal.length).toBeCloseTo(0.95, 2);
  });

  it('phases of the supply stand 120 degrees apart: three line voltages are √3 times the phase and even', () => {
    const [m] = fleet;
    if (!m) throw new Error('no fleet');
    const at = atShaftPower(m.built.machine, quiet(m.built.machine), 0.5 * m.rating.watts);
    for (const volts of at.lineVolts) expect(volts).toBeCloseTo(m.rating.lineVolts, 8);
    expect(SQRT3 * at.lineVolts[0] * at.amps[0]).toBeGreaterThan(at.input);
  });
});
