import { leaf } from '../formula/apply';
import { sum } from '../numbers';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity, scaled } from '../quantity/quantity';
import { assumedStray } from './assumed-stray';
import { type CircuitOutcome, circuitFromTests, type FittedCircuit, REACTANCE_RATIO } from './circuit-from-tests';
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
import type { BenchLoad, BenchPoint } from './test';
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
  const { test, plate, frequencyHz } = prepared;
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
  const { law, reverse, findings: said } = strayLaw(scope, prepared);
  findings.push(...said);
  if (!law) return { ...nothing, findings };
  const start: Start = { amounts: circuitAmounts(scope, prepared, point), circuitOf: circuitFit(prepared, lockedHz), law };
  const fitted = start.circuitOf(start.amounts.map((amount) => amount.value));
  if (!fitted.ok) return refuse(BENCH.make('circuit-not-found', { reason: fitted.reason }));
  const loads = STANDARD_LOADS.flatMap((load) => {
    const shaftW = 1000 * load * plate.ratedPowerKw;
    const solved = solvedAt(start, { voltageV: plate.ratedVoltageV, shaftW, synchronous: (120 * frequencyHz) / poles });
    if (!solved) findings.push(BENCH.make('load-beyond-breakdown', { load_pct: 100 * load }));
    return solved ? [asLoad(load, solved)] : [];
  });
  return { ...nothing, loads, circuit: circuitFound(start), reverse, findings };
}

/** A circuit from the values of {@link circuitAmounts}, in their order; what follows them is not looked at. */
type CircuitFit = (values: readonly number[]) => CircuitOutcome;

/** What every solution starts from: the amounts that the circuit follows from, how it does, and those of the stray-load loss. */
interface Start {
  readonly amounts: readonly Quantity[];
  readonly circuitOf: CircuitFit;
  readonly law: StrayLaw;
}

/** The amounts that the circuit follows from: readings of both tests, resistances, temperatures and the assumed split of leakage. */
function circuitAmounts(scope: BenchScope, prepared: Prepared, point: BenchPoint): readonly Quantity[] {
  const { plate, method, reference, noLoad, specified } = prepared;
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
  return [
    noLoad.current,
    noLoad.separated?.core ?? exact(0, 'kW'),
    noLoad.separated?.frictionWindage ?? exact(0, 'kW'),
    free.winding.resistance,
    read(scope, METER.voltage, point) ?? exact(0, 'V'),
    read(scope, METER.current, point) ?? exact(0, 'A'),
    read(scope, METER.power, point) ?? exact(0, 'kW'),
    locked.resistance,
    rotorCelsius,
    atTemperature(scope, specified, reference, copper).resistance,
    specified,
    ratio,
  ];
}

/** How the circuit follows from the values of {@link circuitAmounts}; resistances there are between two terminals. */
function circuitFit({ plate, method, frequencyHz }: Prepared, lockedHz: number): CircuitFit {
  const rotor = rotorConstant(method, plate.rotorConductor);
  return (values) => {
    const [noLoadA = 0, coreKw = 0, frictionKw = 0, noLoadOhm = 0, ...others] = values;
    const [lockedV = 0, lockedA = 0, lockedKw = 0, lockedOhm = 0, lockedRotorC = 0, specifiedOhm = 0, specifiedC = 0, ratio = 0] =
      others;
    return circuitFromTests({
      noLoad: {
        voltageV: plate.ratedVoltageV,
        currentA: noLoadA,
        powerW: 1000 * (coreKw + frictionKw) + 1.5 * noLoadA ** 2 * noLoadOhm,
      },
      lockedRotor: { voltageV: lockedV, currentA: lockedA, powerW: 1000 * lockedKw, frequencyHz: lockedHz },
      frequencyHz,
      r1NoLoad: noLoadOhm / 2,
      r1Locked: lockedOhm / 2,
      r1: specifiedOhm / 2,
      rotorWarming: (rotor + specifiedC) / (rotor + lockedRotorC),
      reactanceRatio: ratio,
      coreW: 1000 * coreKw,
      frictionWindageW: 1000 * frictionKw,
    });
  };
}

/** The circuit with its doubts; `undefined` where a test moved within them has none. */
function circuitFound({ amounts, circuitOf, law }: Start): BenchCircuit | undefined {
  const elements = propagate([...amounts, ...law.amounts], CIRCUIT_UNITS, (values) => {
    const fitted = circuitOf(values);
    if (!fitted.ok) return undefined;
    const c = fitted.circuit;
    // A separated core loss is above zero, and with it the conductance.
    return [c.r1, c.x1, c.r2, c.x2, c.xm, 1 / c.gfe, c.frictionWindage / 1000];
  });
  return elements && asCircuit(elements);
}

/** The circuit at an output with the doubts of both; `undefined` where it does not reach the output. */
function solvedAt({ amounts, circuitOf, law }: Start, driven: Omit<Driven, 'strayOf'>): Solved | undefined {
  return propagate([...amounts, ...law.amounts], UNITS, (values) => {
    const fitted = circuitOf(values);
    if (!fitted.ok) return undefined;
    const strayOf = law.of(fitted.circuit, values.slice(amounts.length), values[0] ?? 0);
    return strayOf && drivenPoint(fitted.circuit, { ...driven, strayOf });
  });
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
