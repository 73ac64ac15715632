import { limitOf } from '../condition/limit';
import type { Evaluation } from '../evaluate';
import { leaf } from '../formula/apply';
import type { OperatingPoint } from '../machine/model';
import { assumedAmbient, heatOf, operatingPoint } from '../machine/operate';
import { NORMAL_FACTOR } from '../quantity/coverage';
import { exact, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Unit } from '../quantity/unit';

/** Within these limits a reading is no surprise: 95 % at either end of the loads. */
export interface ExpectedRange {
  readonly low: number;
  readonly high: number;
  readonly unit: string;
}

/** What the meters should show at a motor between two loads. Absent where nothing can be said beforehand. */
interface ExpectedReadings {
  readonly voltage?: ExpectedRange;
  readonly current?: ExpectedRange;
  readonly inputPower?: ExpectedRange;
  readonly powerFactor?: ExpectedRange;
  readonly speed?: ExpectedRange;
  readonly frequency?: ExpectedRange;
  /** No motor under load turns as fast as this, r/min. */
  readonly synchronousSpeed?: number;
}

/** A public supply keeps its frequency within so many per cent for nearly all of the year (EN 50160, from memory). */
const MAINS_PCT = 1;
/** Standard uncertainty of a voltage that is not known yet, as a share of the rated one (common practice). */
const VOLTAGE = 0.03;
/** Loads are tried at so many equal steps: some readings have their extreme between the ends. */
const STEPS = 4;

/**
 * What a meter should show between two loads, so that a reading can be questioned while one still stands before the motor.
 *
 * Units: loads as fractions of rating; V, A, kW, %, r/min, Hz. Valid for: cage and wound-rotor motors across the line; of a synchronous motor
 * power alone, whose field sets current and whose speed is the supply's; of a drive-fed motor nothing, since the drive sets all. The
 * voltage may lie within the limit of the study around the rated one. Doubts: those of the fitted circuit, the voltage, the temperature.
 * Source: the exact per-phase circuit, as every other figure; the limits of voltage as the indicator has them.
 */
export function expectedReadings(evaluation: Evaluation, [from, to]: readonly [number, number]): ExpectedReadings {
  const { machine, motor } = evaluation;
  if (motor.plate.driveFed === true) return {};
  const scope = { ...evaluation.scope, trace: undefined };
  const voltageRatio = leaf(scope, {
    value: 1,
    unit: '1',
    label: 'voltage ratio',
    origin: 'assumed',
    source: 'rated voltage',
    doubts: [{ id: 'expected:voltage', label: 'voltage of the next reading', u: VOLTAGE }],
  });
  const conditions = { voltageRatio, ambient: assumedAmbient(scope), heat: heatOf(scope, 0, false) };
  const points = Array.from({ length: STEPS + 1 }, (_, step) => from + ((to - from) * step) / STEPS).flatMap((load) => {
    const point = operatingPoint(scope, machine, exact(load, '1'), conditions);
    return point ? [point] : [];
  });
  const range = (read: (point: OperatingPoint) => Quantity, scale = 1, unit?: Unit): ExpectedRange | undefined => {
    const found = points.map(read);
    const [first] = found;
    if (!first) return undefined;
    const low = Math.min(...found.map((each) => each.value - NORMAL_FACTOR * standardUncertainty(each)));
    const high = Math.max(...found.map((each) => each.value + NORMAL_FACTOR * standardUncertainty(each)));
    return { low: scale * low, high: scale * high, unit: unit ?? first.unit };
  };
  const around = (value: number, pct: number, unit: Unit): ExpectedRange => ({
    low: value * (1 - pct / 100),
    high: value * (1 + pct / 100),
    unit,
  });
  const { plate } = machine;
  const supply = {
    voltage: around(plate.ratedVoltage.value, limitOf(scope, 'C5').value, 'V'),
    frequency: around(plate.ratedFrequency.value, MAINS_PCT, 'Hz'),
  };
  const inputPower = range((point) => point.inputPower);
  if (motor.plate.machineKind === 'synchronous') return { ...supply, ...(inputPower && { inputPower }) };
  const current = range((point) => point.current);
  const powerFactor = range((point) => point.powerFactor, 100, '%');
  const speed = range((point) => point.speed);
  const synchronousSpeed = plate.synchronousSpeed.value;
  return {
    ...supply,
    ...(inputPower && { inputPower }),
    ...(current && { current }),
    ...(powerFactor && { powerFactor: { ...powerFactor, high: Math.min(powerFactor.high, 100) } }),
    ...(speed && { speed: { ...speed, high: Math.min(speed.high, synchronousSpeed) } }),
    synchronousSpeed,
  };
}
