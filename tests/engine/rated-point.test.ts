import { describe, expect, it } from 'vitest';
import { circuitFromRatedPoint } from '@/lib/engine/circuit/from-rated-point';
import { AT, type Circuit, COUNT, RATED_AMBIENT } from '@/lib/engine/circuit/parameters';
import { solveAtPower } from '@/lib/engine/circuit/solve';
import { buildMachine } from '@/lib/engine/machine/build';
import type { Plate } from '@/lib/engine/motor';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { scopeOf } from './support/study';

interface Stamps {
  readonly hp: number;
  readonly poles: number;
  readonly hz: 50 | 60;
  readonly volts: number;
  readonly powerKw: number;
  readonly efficiency: number;
  readonly powerFactor: number;
  readonly rpm: number;
  /** What the other stamps give: P / (√3 U η cos φ). */
  readonly amperes: number;
}

/** Plates whose stamps agree, from 1 to 1000 hp. Invented: efficiency and power factor rise with size, the rotor takes a fifth of the loss. */
const PLATES: readonly Stamps[] = [1, 3, 15, 50, 200, 1000].flatMap((hp) =>
  [2, 4, 6, 8, 12].flatMap((poles) =>
    (
      [
        [50, 400],
        [60, 115],
        [60, 460],
        [50, 3300],
        [60, 6600],
      ] as const
    ).map(([hz, volts]) => {
      const powerKw = hp * 0.7457;
      const efficiency = 1 - 0.16 * powerKw ** -0.25;
      const powerFactor = 0.9 - 0.013 * poles - (hp < 5 ? 0.06 : 0);
      const rpm = ((120 * hz) / poles) * (1 - 0.2 * (1 / efficiency - 1));
      return {
        hp,
        poles,
        hz,
        volts,
        powerKw,
        efficiency,
        powerFactor,
        rpm,
        amperes: (powerKw * 1000) / (Math.sqrt(3) * volts * efficiency * powerFactor),
      };
    }),
  ),
);

function machineOf(stamps: Stamps, more: Partial<Plate> = {}) {
  const scope = scopeOf({ frequencyHz: stamps.hz });
  const plate: Plate = {
    ratedPowerKw: stamps.powerKw,
    ratedPowerUnit: 'hp',
    status: 'running',
    ratedVoltageV: stamps.volts,
    ratedFrequencyHz: stamps.hz,
    poles: stamps.poles,
    ratedSpeedRpm: stamps.rpm,
    nominalEfficiencyPct: 100 * stamps.efficiency,
    machineKind: 'cage',
    ...more,
  };
  const completed = completePlate(scope, plate, '');
  const built = buildMachine(scope, plate, completed.plate, '');
  return {
    built,
    findings: [...completed.findings, ...built.findings],
    rated: solveAtPower(built.machine.model.circuit, { load: 1, voltage: 1, frequency: 1, ambient: RATED_AMBIENT }),
  };
}

describe('the rated point of a plate, 1 to 1000 hp, 2 to 12 poles, 50 and 60 Hz, 115 V to 6.6 kV', () => {
  it('is met to 1e-6 in power, speed and efficiency where no current is stamped', () => {
    for (const stamps of PLATES) {
      const { built, findings, rated } = machineOf(stamps);
      const name = `${stamps.hp} hp, ${stamps.poles} poles, ${stamps.hz} Hz, ${stamps.volts} V`;
      expect(findings, name).toEqual([]);
      expect(Math.abs(1 / (rated?.input ?? Number.NaN) / stamps.efficiency - 1), name).toBeLessThan(1e-6);
      const sync = (120 * stamps.hz) / stamps.poles;
      expect(Math.abs((sync * (1 - (rated?.slip ?? Number.NaN))) / stamps.rpm - 1), name).toBeLessThan(1e-6);
      const { plate } = built.machine;
      expect(Math.abs(plate.ratedSpeed.value / stamps.rpm - 1), name).toBeLessThan(1e-6);
      expect(Math.abs(plate.efficiency.value / stamps.efficiency - 1), name).toBeLessThan(1e-6);
    }
  });

  it('has a circuit that meets all five to 1e-6, current and power factor included, since the stamps agree', () => {
    for (const stamps of PLATES) {
      const name = `${stamps.hp} hp, ${stamps.poles} poles, ${stamps.volts} V`;
      const circuit = withPowerFactor(stamps);
      const rated = solveAtPower(circuit, { load: 1, voltage: 1, frequency: 1, ambient: RATED_AMBIENT });
      const base = (stamps.powerKw * 1000) / (Math.sqrt(3) * stamps.volts);
      expect(Math.abs(((rated?.current ?? Number.NaN) * base) / stamps.amperes - 1), name).toBeLessThan(1e-6);
      expect(Math.abs((rated?.powerFactor ?? Number.NaN) / stamps.powerFactor - 1), name).toBeLessThan(1e-6);
      expect(Math.abs(1 / (rated?.input ?? Number.NaN) / stamps.efficiency - 1), name).toBeLessThan(1e-6);
      expect(
        Math.abs((((120 * stamps.hz) / stamps.poles) * (1 - (rated?.slip ?? Number.NaN))) / stamps.rpm - 1),
        name,
      ).toBeLessThan(1e-6);
    }
  });

  it('keeps agreeing stamps within half their doubt, though what is typical of such motors pulls at them', () => {
    for (const stamps of PLATES) {
      const { built, findings } = machineOf(stamps, {
        ratedCurrentA: stamps.amperes,
        ratedPowerFactorPct: 100 * stamps.powerFactor,
      });
      const name = `${stamps.hp} hp, ${stamps.poles} poles, ${stamps.volts} V`;
      expect(findings, name).toEqual([]);
      const { plate } = built.machine;
      // Stamped amperes are doubtful by 4 %, the power factor by 0.015, the loss by 8 %, the slip by 8 %.
      expect(Math.abs(plate.ratedCurrent.value / stamps.amperes - 1), name).toBeLessThan(0.5 * 0.04);
      expect(Math.abs(plate.powerFactor.value - stamps.powerFactor), name).toBeLessThan(0.5 * 0.015);
      expect(Math.abs((1 / plate.efficiency.value - 1) / (1 / stamps.efficiency - 1) - 1), name).toBeLessThan(0.5 * 0.08);
      expect(built.fit.chiSquared, name).toBeLessThan(3.84);
    }
  });
});

/** The circuit of a plate with ordinary losses whose magnetising current is found so that the power factor is the stamped one. */
function withPowerFactor(stamps: Stamps): Circuit {
  const loss = 1 / stamps.efficiency - 1;
  const slip = 1 - stamps.rpm / ((120 * stamps.hz) / stamps.poles);
  const p = new Float64Array(COUNT);
  p[AT.slip] = Math.log(slip);
  p[AT.leakage] = Math.log(0.17 * stamps.efficiency * stamps.powerFactor);
  p[AT.core] = Math.log(0.6);
  p[AT.friction] = Math.log(0.3);
  p[AT.stray] = Math.log(0.45);
  p[AT.rise] = Math.log(63);
  p[AT.saturation] = 1.8;
  // Stator loss S and the rotor's s/(1 − s)·(1 + 0.3 S + 0.45 S) are the total together with the three shares of S.
  const ratio = slip / (1 - slip);
  const stator = (loss - ratio) / (2.35 + 0.75 * ratio);
  p[AT.otherLoss] = Math.log(2.35 * stator);
  let [low, high] = [0.02, 2.5];
  let found: Circuit | undefined;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    p[AT.magnetising] = Math.log(middle);
    found = circuitFromRatedPoint(p, 0.6);
    if (!found || found.powerFactor < stamps.powerFactor) high = middle;
    else low = middle;
  }
  if (!found) throw new Error('an ordinary plate has a circuit');
  return found;
}

describe('an unbalanced supply', () => {
  /** The 100 hp, four-pole motor of 94.4 % on which US DOE Motor Systems Tip Sheet 7 reports tests. */
  const circuit = machineOf({
    hp: 100,
    poles: 4,
    hz: 60,
    volts: 460,
    powerKw: 74.57,
    efficiency: 0.944,
    powerFactor: 0.86,
    rpm: 1780,
    amperes: 115,
  }).built.machine.model.circuit;
  const at = (load: number, negativeSequence: number) => {
    const point = solveAtPower(circuit, { load, voltage: 1, frequency: 1, ambient: RATED_AMBIENT, negativeSequence });
    if (!point) throw new Error('a mild unbalance has a solution');
    return { ...point, loss: point.input - load };
  };
  const extra = (load: number, u: number) => at(load, u).loss / at(load, 0).loss - 1;

  it('adds loss with the square of the unbalance, and nothing without', () => {
    expect(at(1, 0).unbalance).toBe(0);
    expect(at(1, 0.02).unbalance / at(1, 0.01).unbalance).toBeCloseTo(4, 1);
    for (const load of [0.5, 0.75, 1]) expect(extra(load, 0.05)).toBeGreaterThan(extra(load, 0.025));
  });

  it('draws a backward current of its voltage over the leakage, as a circuit without magnetising branch does', () => {
    const turned = 0.025 / Math.hypot(circuit.r1, circuit.x1 + circuit.x2) / circuit.current;
    const ours = Math.sqrt(at(1, 0.025).current ** 2 - at(1, 0).current ** 2) / circuit.current;
    expect(ours / turned).toBeCloseTo(1, 1);
    // Published: the current is 6 to 10 times as unbalanced as the voltage (US DOE tip sheet 7). Ours is 5 times: running leakage is a quarter
    // above that which a field at nearly twice line frequency meets.
    expect(ours / 0.025).toBeGreaterThan(4.5);
    expect(ours / 0.025).toBeLessThan(10);
  });

  it('heats less on the whole than the hottest winding is published to heat: 2 U² per cent (NEMA MG 1, in US DOE tip sheet 7)', () => {
    for (const u of [1, 2.5, 5]) {
      expect(extra(1, u / 100)).toBeGreaterThan(0);
      expect(extra(1, u / 100)).toBeLessThan((2 * u * u) / 100);
    }
  });

  it('does not reproduce the tested motor of tip sheet 7, which lost 1.4 points at 2.5 %: ours is a lower bound', () => {
    // 94.4 to 93.0 % is 1/0.930 − 1/0.944 = 1.6 % of the output; ours is below a tenth of a point.
    const lost = 100 * (1 / at(1, 0).input - 1 / at(1, 0.025).input);
    expect(lost).toBeGreaterThan(0.05);
    expect(lost).toBeLessThan(94.4 - 93);
  });

  it('would derate less than the published curve, which therefore stays the measure of a permissible load', () => {
    // NEMA MG 1 figure 14-1 by secondary reading: 0.95 at 2 %, 0.89 at 3 %, 0.76 at 5 %.
    for (const [u, published] of [
      [0.02, 0.95],
      [0.03, 0.89],
      [0.05, 0.76],
    ] as const) {
      let [low, high] = [0.5, 1];
      for (let i = 0; i < 50; i++) {
        const middle = (low + high) / 2;
        if (at(middle, u).loss < at(1, 0).loss) low = middle;
        else high = middle;
      }
      expect(low).toBeLessThan(1);
      expect(low).toBeGreaterThan(published);
    }
  });
});
