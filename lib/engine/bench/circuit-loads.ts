import { leaf } from '../formula/apply';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import { exact } from '../quantity/quantity';
import { assumedStray } from './assumed-stray';
import { circuitFromTests, type FittedCircuit, REACTANCE_RATIO } from './circuit-from-tests';
import { type CircuitPoint, circuitAtShaftPower } from './circuit-point';
import { BENCH } from './findings';
import type { LoadSide, Prepared } from './load-side';
import { type BenchScope, METER, read } from './meters';
import { rotorConstant } from './method';
import { propagate, type QuantitiesOf } from './propagate';
import { atTemperature, windingAt } from './resistance';
import { type ReverseRotation, reverseRotation } from './reverse-rotation';
import { polesOf } from './slip';
import { STANDARD_LOADS } from './standard-loads';
import type { BenchLoad } from './test';
import { usablePoints } from './usable-points';

/** Doubt of the split of leakage between stator and rotor, which no terminal test shows (own judgement). */
const RATIO_DOUBT = 0.1;
/** Above this share of rated frequency the skin effect of the bars shows in a locked-rotor test (common practice: a quarter is asked for). */
const LOW_FREQUENCY = 0.3;

/** Units of input, output, current, speed, efficiency, power factor, the five losses and their sum. */
const UNITS = ['kW', 'kW', 'A', 'r/min', '1', '1', 'kW', 'kW', 'kW', 'kW', 'kW', 'kW'] as const;
type Solved = QuantitiesOf<typeof UNITS>;

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
    locked.temperature,
    atTemperature(scope, specified, reference, copper).resistance,
    specified,
    ratio,
    law.amount,
  ];
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
  const loads = STANDARD_LOADS.flatMap((load) => {
    const shaftW = 1000 * load * plate.ratedPowerKw;
    const solved = propagate(inputs, UNITS, (v) => {
      const c = circuitOf(v);
      const at = { voltageV: plate.ratedVoltageV, ratedW: 1000 * plate.ratedPowerKw, noLoadCurrent: v[0] ?? 0 };
      const strayOf = c && strayFunction(c, law.kind, v[12] ?? 0, at);
      if (!c || !strayOf) return undefined;
      return drivenPoint(c, { voltageV: plate.ratedVoltageV, shaftW, strayOf, synchronous: (120 * frequencyHz) / poles });
    });
    if (!solved) findings.push(BENCH.make('load-not-tested', { load_pct: 100 * load }));
    return solved ? [asLoad(load, solved)] : [];
  });
  return { ...nothing, loads, circuit, reverse: stray.reverse, findings };
}

/** Stray-load loss: so much for each square ampere of rotor current by reverse rotation, or an assumed amount at rated load. */
interface StrayLaw {
  readonly kind: 'per-square' | 'at-rated';
  readonly amount: Quantity<'W/A²'> | Quantity<'W'>;
}

function strayLaw(scope: BenchScope, prepared: Prepared): { law?: StrayLaw; reverse?: ReverseRotation; findings: Finding[] } {
  const { method, plate, test, reference } = prepared;
  if (method.stray === 'reverse-rotation') {
    const { found, findings } = reverseRotation(scope, test.sections, reference, method.copper);
    return found ? { law: { kind: 'per-square', amount: found.slope }, reverse: found, findings } : { findings };
  }
  const assumed = assumedStray(scope, method, plate.ratedPowerKw, prepared.assumedStray);
  if (!assumed) return { findings: [] };
  const { share } = assumed;
  const watts = 1000 * plate.ratedPowerKw;
  const amount: Quantity<'W'> = {
    unit: 'W',
    value: watts * share.value,
    parts: { at: share.parts.at, by: share.parts.by.map((part) => watts * part) },
  };
  const finding = BENCH.make('stray-loss-assumed', { stray_pct: 100 * share.value, words: 'output' });
  return { law: { kind: 'at-rated', amount }, findings: [finding] };
}

/**
 * Stray-load loss of a running point in W. By reverse rotation it follows I² − I₀² of the line, as in that test; an assumed amount at rated
 * load follows the square of the rotor current.
 */
function strayFunction(
  c: FittedCircuit,
  law: StrayLaw['kind'],
  amount: number,
  at: { readonly voltageV: number; readonly ratedW: number; readonly noLoadCurrent: number },
): ((point: CircuitPoint) => number) | undefined {
  if (law === 'per-square') return (point) => amount * Math.max(0, point.current ** 2 - at.noLoadCurrent ** 2);
  const rated = circuitAtShaftPower(c, at.voltageV, at.ratedW, () => amount);
  return rated && ((point) => (amount * point.rotorCurrentSquared) / rated.rotorCurrentSquared);
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
  const total = losses.reduce((sum, loss) => sum + loss, 0);
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
