import { leaf } from '../formula/apply';
import { sum } from '../numbers';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity, scaled } from '../quantity/quantity';
import { assumedStray } from './assumed-stray';
import { circuitFromTests, type FittedCircuit, REACTANCE_RATIO } from './circuit-from-tests';
import { type CircuitPoint, circuitAtShaftPower } from './circuit-point';
import { BENCH } from './findings';
import type { BenchCircuit, LoadSide, Prepared } from './load-side';
import { type BenchScope, METER, read } from './meters';
import { rotorConstant } from './method';
import { propagate, type QuantitiesOf } from './propagate';
import { atTemperature, windingAt } from './resistance';
import { lawQuantities, type ReverseRotation, reverseRotation, strayWatts } from './reverse-rotation';
import { polesOf } from './slip';
import { STANDARD_LOADS } from './standard-loads';
import type { BenchLoad } from './test';
import { usablePoints } from './usable-points';

/** Doubt of the split of leakage between stator and rotor, which no terminal test shows (own judgement). */
const RATIO_DOUBT = 0.1;
/** Doubt of the rotor's temperature in the locked-rotor test, which nobody measures, K (own judgement). */
const ROTOR_DOUBT = 10;
/** Above this share of rated frequency the skin effect of the bars shows in a locked-rotor test (common practice: a quarter is asked for). */
const LOW_FREQUENCY = 0.3;

/** Units of input, output, current, speed, efficiency, power factor, the five losses and their sum. */
const UNITS = ['kW', 'kW', 'A', 'r/min', '1', '1', 'kW', 'kW', 'kW', 'kW', 'kW', 'kW'] as const;
type Solved = QuantitiesOf<typeof UNITS>;
/** Units of r1, x1, r2, x2, xm, the core's resistance, and friction and windage. */
const CIRCUIT_UNITS = ['Ω', 'Ω', 'Ω', 'Ω', 'Ω', 'Ω', 'kW'] as const;

/**
 * Methods F and F1: performance at the standard loads from the circuit of a no-load and a locked-rotor test.
 *
 * Doubts of the readings, of the assumed split of leakage and of the stray-load loss are carried through fit and solution numerically.
 */
export function circuitLoads(scope: BenchScope, prepared: Prepared): LoadSide {
  const { test, plate, method, frequencyHz, reference, noLoad, specified } = prepared;
  const nothing = { tested: [], corrected: [], loads: [] };
  const needed = ['voltageV', 'currentA', 'inputPowerKw', 'frequencyHz'] as const;
  const { points, findings } = usablePoints('locked-rotor', test.sections['locked-rotor'], needed);
  const refuse = (finding: Finding): LoadSide => ({ ...nothing, findings: [...findings, finding] });
  // The point of lowest frequency is nearest to the running rotor.
  const point = [...points].sort((a, b) => (a.frequencyHz ?? 0) - (b.frequencyHz ?? 0))[0];
  if (!point) return refuse(BENCH.make('locked-rotor-missing', {}));
  const poles = polesOf(plate, test.sections.load, frequencyHz);
  if (poles === undefined) return refuse(BENCH.make('poles-unknown', {}));
  const lockedHz = point.frequencyHz ?? frequencyHz;
  if (lockedHz > LOW_FREQUENCY * frequencyHz) {
    findings.push(BENCH.make('locked-rotor-frequency', { frequency: lockedHz, wanted: LOW_FREQUENCY * frequencyHz }));
  }
  const stray = strayLaw(scope, prepared);
  findings.push(...stray.findings);
  const { law } = stray;
  if (!law) return { ...nothing, findings };
  const { copper } = method;
  const locked = windingAt(scope, point, reference, copper) ?? reference;
  const free = noLoad.points.reduce((best, each) =>
    Math.abs(each.voltageRatio.value - 1) < Math.abs(best.voltageRatio.value - 1) ? each : best,
  );
  const ratio = leaf(scope, {
    value: plate.woundRotor ? 1 : REACTANCE_RATIO[plate.designLetter ?? 'B'],
    unit: '1',
    label: 'x1 over x2',
    origin: 'table',
    source: 'IEEE 112 by design letter (from memory)',
    doubts: [{ id: 'bench:reactance-ratio', label: 'split of leakage assumed', u: RATIO_DOUBT }],
  });
  const rotorCelsius = leaf(scope, {
    value: locked.temperature.value,
    unit: 'K',
    label: 'rotor temperature in the locked-rotor test, °C',
    origin: 'assumed',
    source: 'that of the stator winding',
    doubts: [{ id: 'bench:locked-rotor-temperature', label: 'rotor taken as warm as the stator', u: ROTOR_DOUBT }],
  });
  const core = noLoad.separated?.core ?? exact(0, 'kW');
  const friction = noLoad.separated?.frictionWindage ?? exact(0, 'kW');
  const inputs = [
    noLoad.current,
    core,
    friction,
    free.winding.resistance,
    read(scope, METER.voltage, point) ?? exact(0, 'V'),
    read(scope, METER.current, point) ?? exact(0, 'A'),
    read(scope, METER.power, point) ?? exact(0, 'kW'),
    locked.resistance,
    rotorCelsius,
    atTemperature(scope, specified, reference, copper).resistance,
    specified,
    ratio,
    ...law.amounts,
  ];
  const lawFrom = inputs.length - law.amounts.length;
  let reason = '';
  const rotor = rotorConstant(method, plate.rotorConductor);
  const circuitOf = (v: readonly number[]): FittedCircuit | undefined => {
    const at = (i: number) => v[i] ?? 0;
    const outcome = circuitFromTests({
      noLoad: {
        voltageV: plate.ratedVoltageV,
        currentA: at(0),
        powerW: 1000 * (at(1) + at(2)) + 1.5 * at(0) ** 2 * at(3),
      },
      lockedRotor: { voltageV: at(4), currentA: at(5), powerW: 1000 * at(6), frequencyHz: lockedHz },
      frequencyHz,
      r1NoLoad: at(3) / 2,
      r1Locked: at(7) / 2,
      r1: at(9) / 2,
      rotorWarming: (rotor + at(10)) / (rotor + at(8)),
      reactanceRatio: at(11),
      coreW: 1000 * at(1),
      frictionWindageW: 1000 * at(2),
    });
    if (!outcome.ok) reason = outcome.reason;
    return outcome.ok ? outcome.circuit : undefined;
  };
  const circuit = circuitOf(inputs.map((input) => input.value));
  if (!circuit) return refuse(BENCH.make('circuit-not-found', { reason }));
  const elements = propagate(inputs, CIRCUIT_UNITS, (v) => {
    const c = circuitOf(v);
    // A separated core loss is above zero, and with it the conductance.
    return c && [c.r1, c.x1, c.r2, c.x2, c.xm, 1 / c.gfe, c.frictionWindage / 1000];
  });
  const loads = STANDARD_LOADS.flatMap((load) => {
    const shaftW = 1000 * load * plate.ratedPowerKw;
    const solved = propagate(inputs, UNITS, (v) => {
      const c = circuitOf(v);
      const strayOf = c && law.of(c, v.slice(lawFrom), v[0] ?? 0);
      if (!c || !strayOf) return undefined;
      return drivenPoint(c, { voltageV: plate.ratedVoltageV, shaftW, strayOf, synchronous: (120 * frequencyHz) / poles });
    });
    if (!solved) findings.push(BENCH.make('load-beyond-breakdown', { load_pct: 100 * load }));
    return solved ? [asLoad(load, solved)] : [];
  });
  return { ...nothing, loads, circuit: elements && asCircuit(elements), reverse: stray.reverse, findings };
}

/** What the stray-load loss of a running point follows from: numbers with doubts, and the function that they make. */
interface StrayLaw {
  readonly amounts: readonly Quantity[];
  /** In W, at a solved point of the circuit; `undefined` where the circuit never reaches rated load. */
  readonly of: (
    c: FittedCircuit,
    amounts: readonly number[],
    noLoadCurrent: number,
  ) => ((point: CircuitPoint) => number) | undefined;
}

/**
 * By reverse rotation the loss follows the rotor's part of the line current, √(I² − I₀²), which is what the test current stands for; an
 * assumed amount at rated load follows the square of the rotor current.
 */
function strayLaw(scope: BenchScope, prepared: Prepared): { law?: StrayLaw; reverse?: ReverseRotation; findings: Finding[] } {
  const { method, plate, test, reference } = prepared;
  if (method.stray === 'reverse-rotation') {
    const { found, findings } = reverseRotation(scope, test.sections, reference, method.copper);
    if (!found) return { findings };
    const law: StrayLaw = {
      amounts: lawQuantities(found),
      of: (_, amounts, free) => (point) =>
        strayWatts(Math.sqrt(Math.max(0, point.current ** 2 - free ** 2)), found.referenceA, amounts),
    };
    return { law, reverse: found, findings };
  }
  const assumed = assumedStray(scope, method, plate.ratedPowerKw, prepared.assumedStray);
  if (!assumed) return { findings: [] };
  const { share } = assumed;
  const ratedW = 1000 * plate.ratedPowerKw;
  const law: StrayLaw = {
    amounts: [scaled(share, ratedW)],
    of: (c, [amount = 0]) => {
      const rated = circuitAtShaftPower(c, plate.ratedVoltageV, ratedW, () => amount);
      return rated && ((point) => (amount * point.rotorCurrentSquared) / rated.rotorCurrentSquared);
    },
  };
  return { law, findings: [BENCH.make('stray-loss-assumed', { stray_pct: 100 * share.value, words: 'output' })] };
}

interface Driven {
  readonly voltageV: number;
  readonly shaftW: number;
  readonly strayOf: (point: CircuitPoint) => number;
  readonly synchronous: number;
}

/** Outputs in the order of {@link UNITS}. */
function drivenPoint(c: FittedCircuit, { voltageV, shaftW, strayOf, synchronous }: Driven): readonly number[] | undefined {
  const point = circuitAtShaftPower(c, voltageV, shaftW, strayOf);
  if (!point) return undefined;
  const losses = [point.statorW, point.rotorW, point.coreW, c.frictionWindage, point.strayW];
  const total = sum(losses);
  const input = shaftW + total;
  return [
    input / 1000,
    shaftW / 1000,
    point.current,
    synchronous * (1 - point.slip),
    shaftW / input,
    input / (Math.sqrt(3) * voltageV * point.current),
    ...losses.map((loss) => loss / 1000),
    total / 1000,
  ];
}

function asCircuit([r1, x1, r2, x2, xm, rfe, frictionWindage]: QuantitiesOf<typeof CIRCUIT_UNITS>): BenchCircuit {
  return { r1, x1, r2, x2, xm, rfe, frictionWindage };
}

function asLoad(loadFraction: number, solved: Solved): BenchLoad {
  const [inputPower, shaftPower, current, speed, efficiency, powerFactor, stator, rotor, core, frictionWindage, stray, total] =
    solved;
  return {
    loadFraction,
    inputPower,
    shaftPower,
    efficiency,
    powerFactor,
    current,
    speed,
    losses: { stator, rotor, core, frictionWindage, stray, total },
  };
}
