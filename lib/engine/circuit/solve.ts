import { COPPER } from './copper';
import { negativeSequence } from './negative-sequence';
import { type Circuit, RATED_AMBIENT } from './parameters';

/** What a machine is driven with. */
export interface Terminals {
  /** Shaft power over rated shaft power. */
  readonly load: number;
  /** Terminal voltage over rated voltage (positive sequence). */
  readonly voltage: number;
  /** Supply frequency over rated frequency. */
  readonly frequency: number;
  /** Ambient temperature, °C. */
  readonly ambient: number;
  /** Winding temperature where it was measured, °C; else it follows from ambient and losses. */
  readonly winding?: number | undefined;
  /** Rotor (and stator) hotter than that by so many K. */
  readonly hotter?: number | undefined;
  /** Negative-sequence over rated voltage; 0 for a balanced supply. */
  readonly negativeSequence?: number | undefined;
  /** A solution near this one, from which the search starts; the result is the same without it. */
  readonly near?: Solution | undefined;
}

/** A solved point, per unit of rated shaft power and of the base current; slip as a fraction. */
export interface Solution {
  readonly stator: number;
  readonly rotor: number;
  readonly core: number;
  readonly friction: number;
  readonly stray: number;
  readonly input: number;
  readonly current: number;
  readonly powerFactor: number;
  readonly slip: number;
  readonly winding: number;
  /** Part of stator and rotor loss that the unbalance of the supply causes. */
  readonly unbalance: number;
  /** Air-gap voltage, per unit of rated voltage. */
  readonly gapVoltage: number;
  /** Largest imbalance left in the terminal voltage. */
  readonly residual: number;
}

/** Losses beyond this multiple of the rated ones last for minutes only: the winding does not reach their temperature. */
const HOTTEST = 2;

const STEPS = 60;

/** Near breakdown each step gains little: from this one on twelve digits are enough. */
const LATE = 40;

/**
 * Solves the circuit at a shaft power.
 *
 * Units: per unit as in {@link Circuit}; temperatures in °C. Valid for: standstill excluded; from free running (load 0) up to the
 * breakdown torque; returns `undefined` beyond it or where the voltage does not converge, never a half-solved point.
 * Equations: with the air-gap voltage E given, the load resistance R of the rotor branch follows from the power P_m = I₂²R in closed form
 * (the root on the stable side of breakdown), stray-load loss as a resistance beside it; E from |V| by secant steps and the winding
 * temperature from the losses together. The negative sequence: {@link negativeSequence}.
 * Source: exact per-phase circuit.
 */
export function solveAtPower(c: Circuit, at: Terminals): Solution | undefined {
  const f = at.frequency;
  const x1 = c.x1 * f;
  const x2 = c.x2 * f;
  const ratedLoss = c.stator + c.rotor + c.core + c.friction + c.stray;
  const ratedKelvin = COPPER + RATED_AMBIENT + c.rise;
  const hotter = at.hotter ?? 0;
  const v2 = at.negativeSequence ?? 0;
  const { near } = at;
  let e = near?.gapVoltage ?? c.gapVoltage * at.voltage + 0.04 * (at.voltage - c.gapVoltage * at.voltage) * (1 - at.load);
  const strayResistance = c.stray / c.rotorCurrentSquared;
  let slip = near?.slip ?? c.slip * at.load;
  let winding = at.winding ?? near?.winding ?? at.ambient + c.rise * (0.35 + 0.65 * at.load * at.load);
  let negativeMechanical = 0;
  let lastVoltage = e;
  let lastSize = 0;
  let before = Number.POSITIVE_INFINITY;
  for (let i = 0; i < STEPS; i++) {
    const heat = (COPPER + winding + hotter) / ratedKelvin;
    const r1 = c.r1 * heat;
    const r2 = c.r2 * heat;
    const speed = f * (1 - slip);
    const friction = c.friction * (speed / (1 - c.slip)) ** 2;
    // Stray-load loss goes with the rotor current squared, as if a resistance stood beside the load's: no iteration is needed for it.
    const mechanical = at.load + friction + negativeMechanical;
    const behind = r2 + strayResistance;
    const room = e * e - 2 * behind * mechanical;
    const root = room * room - 4 * (behind * behind + x2 * x2) * mechanical * mechanical;
    if (!(root >= 0) || room <= 0) return undefined;
    const ofLoad = (2 * mechanical) / (room + Math.sqrt(root));
    const conductance = ofLoad / (1 + strayResistance * ofLoad);
    const z = 1 + r2 * conductance;
    slip = (r2 * conductance) / z;
    const denominator = z * z + x2 * x2 * conductance * conductance;
    // I₂ = E / (R + r2 + j x2), written with G = 1/R so that free running (G = 0) is an ordinary case.
    const active = (e * conductance * z) / denominator;
    const reactive = (e * x2 * conductance * conductance) / denominator;
    const rotorSquared = active * active + reactive * reactive;
    const flux = e / (c.gapVoltage * f);
    const core = c.core * flux * flux * f ** 1.5;
    const a1 = active + core / e;
    const q1 = reactive + c.magnetising * flux ** c.saturation;
    const squared = a1 * a1 + q1 * q1;
    const re = e + r1 * a1 + x1 * q1;
    const im = x1 * a1 - r1 * q1;
    const size = Math.sqrt(re * re + im * im);
    let negativeSquared = 0;
    let negativeStator = 0;
    let negativeRotor = 0;
    if (v2 > 0) {
      const met = negativeSequence({ r1, x1, r2, x2 }, slip);
      negativeSquared = (v2 * v2) / met.squared;
      negativeStator = negativeSquared * r1;
      negativeMechanical = negativeSquared * met.rotor * (1 - slip);
      negativeRotor = negativeSquared * met.rotor + negativeMechanical;
    }
    const stray = strayResistance * rotorSquared;
    const stator = squared * r1 + negativeStator;
    const rotor = rotorSquared * r2 + negativeRotor;
    const loss = stator + rotor + core + friction + stray;
    const nextWinding = at.winding ?? at.ambient + c.rise * Math.min(loss / ratedLoss, HOTTEST);
    const step = at.voltage - size;
    // To the last digits: derivatives are taken from differences of such solutions.
    const left = Math.abs(step);
    const settled = (left < 3e-16 || (left < 1e-12 && (left >= before || i >= LATE))) && Math.abs(nextWinding - winding) < 1e-11;
    before = left;
    // Secant steps once two points are there; the slope of terminal against air-gap voltage is near one.
    const slope = i > 0 && Math.abs(e - lastVoltage) > 1e-12 ? (size - lastSize) / (e - lastVoltage) : 1;
    lastVoltage = e;
    lastSize = size;
    e += slope > 0.5 && slope < 2 ? step / slope : step;
    // Copper loss grows with the temperature that it makes: the step allows for that.
    const feedback =
      at.winding === undefined && loss < HOTTEST * ratedLoss ? ((c.rise / ratedLoss) * (stator + rotor)) / (COPPER + winding) : 0;
    winding += (nextWinding - winding) / (1 - Math.min(feedback, 0.8));
    if (!(e > 0.1)) return undefined;
    if (settled) {
      const current = Math.sqrt(squared + negativeSquared);
      const input = at.load + loss;
      return {
        stator,
        rotor,
        core,
        friction,
        stray,
        input,
        current,
        powerFactor: input / (at.voltage * current),
        slip,
        winding,
        unbalance: negativeStator + negativeRotor,
        gapVoltage: e,
        residual: Math.abs(step),
      };
    }
  }
  return undefined;
}
