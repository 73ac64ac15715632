import { circuitFromRatedPoint } from '../circuit/from-rated-point';
import { type Circuit, COUNT } from '../circuit/parameters';
import { solveAtSlip } from '../circuit/solve-at-slip';
import { type CurveConditions, torqueCurve } from '../circuit/torque';
import type { Evaluation } from '../evaluate';
import type { Machine } from '../machine/model';
import { HEAT } from '../machine/predict';
import { onCurve } from '../options/load-curve';
import { loadLaw } from '../options/load-law';
import { combineParts, type Parts, type Quantity, standardUncertainty } from '../quantity/quantity';
import type { Figure } from '../result';
import { conditionsInUse } from './part-load';

/** A place on a torque curve: speed in r/min, torque over rated torque. */
export interface TorquePlace {
  readonly speed: number;
  readonly torque: number;
}

/** Torque against speed of the motor as it stands, and of what it drives. Torques over rated torque. */
export interface TorqueSpeed {
  /** N·m that a torque of 1 stands for. */
  readonly ratedTorqueNm: number;
  readonly synchronousSpeed: number;
  /**
   * From standstill to breakdown: rough, since real cages start with other values than they run with. It begins at a higher speed where below
   * it the circuit gives no torque at all, which no cage does.
   */
  readonly rough: readonly TorquePlace[];
  /** From breakdown to synchronous speed. */
  readonly running: readonly TorquePlace[];
  /** Its doubt is that of the fitted machine and of the voltage; what saturation does at such currents is not in it. */
  readonly breakdown: TorquePlace & { readonly figure: Figure };
  /** The driven machine by its law, through the operating point. */
  readonly load: readonly TorquePlace[];
  /** Power of the speed with which its torque goes, and whether that was stated or follows from the kind of machine. */
  readonly exponent: number;
  readonly exponentStated: boolean;
  /** The load curve in force, which takes the place of the power. */
  readonly curveName: string | undefined;
  readonly point: TorquePlace & { readonly torqueU: number; readonly speedU: number };
}

/** Why there is no curve. */
export type NoTorqueSpeed = 'no-load-known' | 'drive-fed' | 'synchronous' | 'wound-rotor' | 'not-solved';

export type TorqueSpeedOutcome =
  | { readonly ok: true; readonly value: TorqueSpeed }
  | { readonly ok: false; readonly why: NoTorqueSpeed };

const no = (why: NoTorqueSpeed): TorqueSpeedOutcome => ({ ok: false, why });

/** Points of the load's line. */
const LOAD_STEPS = 40;

/** Step of a parameter, in its logarithm, by which a slope is taken. */
const STEP = 1e-4;

/**
 * The torque curve of the fitted circuit at the voltage, frequency and temperature of the reading in use, with the load's own line.
 *
 * Units: as in {@link TorqueSpeed}. Valid for: cage motors across the line with a usable reading. Behind a drive the supply follows the speed and the curve means
 * nothing; a wound rotor starts on its resistors.
 * Doubt of the breakdown torque: first order, by central differences at the slip of the highest torque, which need not move (the slope by slip
 * vanishes there).
 * Source: exact per-phase circuit, see `solveAtSlip`; law of the load as for options.
 */
export function torqueSpeed(evaluation: Evaluation): TorqueSpeedOutcome {
  const { machine, motor, inUse, point } = evaluation;
  const { machineKind, driveFed } = motor.plate;
  if (machineKind === 'synchronous') return no('synchronous');
  if (driveFed === true || (inUse && inUse.reading.readingsAt !== 'motor' && inUse.reading.readingsAt !== 'starter'))
    return no('drive-fed');
  if (machineKind === 'wound-rotor') return no('wound-rotor');
  if (!inUse || !point) return no('no-load-known');
  const { circuit } = machine.model;
  const { voltageRatio, frequencyRatio = 1 } = conditionsInUse(evaluation);
  const conditions: CurveConditions = {
    voltage: voltageRatio.value,
    frequency: frequencyRatio,
    winding: point.windingTemperature.value + HEAT * (inUse.combination?.heat.value ?? 0),
  };
  const curve = torqueCurve(circuit, conditions);
  if (!curve) return no('not-solved');
  const rated = machine.plate.synchronousSpeed.value;
  const place = ({ slip, torque }: { slip: number; torque: number }): TorquePlace => ({
    speed: rated * frequencyRatio * (1 - slip),
    torque,
  });
  const ratedSpeed = rated * (1 - circuit.slip);
  const ratedTorqueNm = (machine.plate.ratedPower.value * 1000) / ((ratedSpeed * Math.PI) / 30);
  const { exponent, curve: points } = loadLaw(motor.plate, evaluation.scope.settings.loadCurves, ratedSpeed);
  const speed = point.speed.value;
  const torque = (point.loadFraction.value * ratedSpeed) / speed;
  const torqueOnCurve = (rpm: number) => (points ? onCurve(points.points, (100 * rpm) / ratedSpeed).torquePct : 0);
  const atPoint = torqueOnCurve(speed);
  const shape = (ratio: number) => (atPoint > 0 ? torqueOnCurve(speed * ratio) / atPoint : ratio ** exponent.value);
  const figure: Quantity<'1'> = {
    unit: '1',
    value: curve.breakdown.torque,
    parts: breakdownParts(machine, conditions, curve.breakdown.slip, voltageRatio),
  };
  const at = curve.points.findIndex(({ slip }) => slip <= curve.breakdown.slip);
  const from = curve.points.findIndex(({ torque }) => torque > 0);
  return {
    ok: true,
    value: {
      ratedTorqueNm,
      synchronousSpeed: rated * frequencyRatio,
      rough: curve.points.slice(from, at + 1).map(place),
      running: curve.points.slice(at).map(place),
      breakdown: { ...place(curve.breakdown), figure: { value: figure.value, u: standardUncertainty(figure), unit: '1' } },
      load: Array.from({ length: LOAD_STEPS + 1 }, (_, step) => {
        const ratio = ((step / LOAD_STEPS) * rated * frequencyRatio) / speed;
        return { speed: speed * ratio, torque: torque * shape(ratio) };
      }),
      exponent: exponent.value,
      exponentStated: motor.plate.loadTorqueExponent !== undefined,
      curveName: points?.name,
      point: {
        speed,
        torque,
        torqueU: (standardUncertainty(point.loadFraction) * ratedSpeed) / speed,
        speedU: standardUncertainty(point.speed),
      },
    },
  };
}

/** Doubts of the torque at a slip. */
function breakdownParts({ model }: Machine, conditions: CurveConditions, slip: number, voltageRatio: Quantity<'1'>): Parts {
  const torqueOf = (circuit: Circuit | undefined, voltage = conditions.voltage): number | undefined =>
    circuit && solveAtSlip(circuit, { ...conditions, voltage, slip })?.torque;
  const values = Float64Array.from(model.parameters, ({ value }) => value);
  const moved = (k: number, by: number): number | undefined => {
    const other = values.slice(0, COUNT);
    other[k] = (other[k] as number) + by;
    return torqueOf(circuitFromRatedPoint(other, model.rotorShare));
  };
  const slope = (up: number | undefined, down: number | undefined): number =>
    up === undefined || down === undefined ? 0 : (up - down) / (2 * STEP);
  return combineParts([
    ...model.parameters.map(({ parts }, k): [number, Parts] => [slope(moved(k, STEP), moved(k, -STEP)), parts]),
    [
      slope(torqueOf(model.circuit, conditions.voltage + STEP), torqueOf(model.circuit, conditions.voltage - STEP)),
      voltageRatio.parts,
    ],
  ]);
}
