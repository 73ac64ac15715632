import { COPPER } from './copper';
import { type Circuit, RATED_AMBIENT } from './parameters';

/** What a machine is driven with when its slip is given. */
export interface AtSlip {
  /** Slip as a fraction: 0 at synchronous speed, 1 at standstill. */
  readonly slip: number;
  /** Terminal voltage over rated voltage, balanced. */
  readonly voltage: number;
  /** Supply frequency over rated frequency. */
  readonly frequency: number;
  /** Temperature of winding and rotor, °C; that of the rated point when absent, since starting is over before it settles. */
  readonly winding?: number | undefined;
}

/** A point at a slip, per unit of rated shaft power, of the base current, and of rated shaft torque. */
export interface SlipPoint {
  readonly slip: number;
  /** Shaft power; negative where friction and stray-load loss take more than the rotor gives. */
  readonly load: number;
  /** Shaft torque over that of the rated point. */
  readonly torque: number;
  readonly stator: number;
  readonly rotor: number;
  readonly core: number;
  readonly friction: number;
  readonly stray: number;
  readonly input: number;
  readonly current: number;
  readonly powerFactor: number;
  /** Imbalance left in the terminal voltage. */
  readonly residual: number;
}

const STEPS = 60;
const SETTLED = 1e-13;

/**
 * Solves the circuit at a slip.
 *
 * Units: per unit as in {@link Circuit}. Valid for: slip 0 to 1, balanced supply; `undefined` outside, or where the voltage does not settle.
 * Running values up to breakdown are those of {@link solveAtPower}; beyond it they are rough, since deep bars and saturated leakage paths
 * change the rotor's values with slip and current, and a circuit of the running motor does not know by how much.
 * Equations: all branches in proportion to the air-gap voltage but the magnetising one, so that scaling it by wanted over found terminal
 * voltage settles in a few steps. Shaft torque is air-gap torque less that of friction and windage, in proportion to speed, and of stray-load
 * loss, which is taken as at rated speed: as a power it would brake without bound near standstill.
 * Source: exact per-phase circuit, as {@link solveAtPower}; the treatment of stray-load torque is our own.
 */
export function solveAtSlip(c: Circuit, at: AtSlip): SlipPoint | undefined {
  const { slip, voltage, frequency: f } = at;
  if (!(slip >= 0 && slip <= 1 && voltage > 0 && f > 0)) return undefined;
  const ratedTemperature = RATED_AMBIENT + c.rise;
  const heat = (COPPER + (at.winding ?? ratedTemperature)) / (COPPER + ratedTemperature);
  const r1 = c.r1 * heat;
  const r2 = c.r2 * heat;
  const x1 = c.x1 * f;
  const x2 = c.x2 * f;
  // Admittance of the rotor branch, 1 / (R₂/s + jX₂), without dividing by the slip.
  const size2 = r2 * r2 + slip * slip * x2 * x2;
  const conductance = (slip * r2) / size2;
  const susceptance = (slip * slip * x2) / size2;
  const coreConductance = (c.core * Math.sqrt(f)) / (c.gapVoltage * c.gapVoltage);
  let e = c.gapVoltage * voltage;
  for (let i = 0; i < STEPS; i++) {
    const flux = e / (c.gapVoltage * f);
    const a1 = e * (conductance + coreConductance);
    const q1 = e * susceptance + c.magnetising * flux ** c.saturation;
    const size = Math.hypot(e + r1 * a1 + x1 * q1, x1 * a1 - r1 * q1);
    const residual = Math.abs(voltage - size);
    if (residual < SETTLED * voltage) {
      const rotorSquared = (e * e * slip * slip) / size2;
      const squared = a1 * a1 + q1 * q1;
      const stator = squared * r1;
      const rotor = rotorSquared * r2;
      const core = coreConductance * e * e;
      const speed = f * (1 - slip);
      const friction = c.friction * (speed / (1 - c.slip)) ** 2;
      const stray = (c.stray * rotorSquared) / c.rotorCurrentSquared;
      const gapPower = e * e * conductance;
      const load = gapPower - rotor - friction - stray;
      const input = load + stator + rotor + core + friction + stray;
      const current = Math.sqrt(squared);
      return {
        slip,
        load,
        torque: (gapPower * (1 - c.slip)) / f - (c.friction * speed) / (1 - c.slip) - stray,
        stator,
        rotor,
        core,
        friction,
        stray,
        input,
        current,
        powerFactor: input / (voltage * current),
        residual,
      };
    }
    e *= voltage / size;
  }
  return undefined;
}
