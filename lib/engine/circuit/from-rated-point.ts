import { AT, type Circuit, type Parameters } from './parameters';

/** Secant steps for the air-gap voltage; four or five are the rule. */
const STEPS = 40;

/**
 * The circuit whose rated point has exactly the losses, slip, magnetising current and leakage that the parameters state.
 *
 * Units: per unit of rated shaft power and voltage. `rotorShare` is the rotor's part of the leakage (0.5 for designs A and D, 0.6 for B,
 * 0.7 for C: IEEE 112-2017 table of reactance ratios, from memory).
 * Valid for: motors that can carry their rating; returns `undefined` where the leakage is too large for the rated torque.
 * Equations: air-gap power = (1 + friction + stray)/(1 − s); rotor branch R₂/s + jX₂ on the air-gap voltage E; I₁ = I₂ + Iₘ + I_fe;
 * V = E + I₁(R₁ + jX₁) with |V| = 1, solved for E by secant steps.
 * Source: the exact per-phase circuit of IEEE 112-2017 (methods F, F1) and IEC 60034-2-1.
 */
export function circuitFromRatedPoint(p: Parameters, rotorShare: number): Circuit | undefined {
  const other = Math.exp(p[AT.otherLoss] as number);
  const slip = Math.exp(p[AT.slip] as number);
  const magnetising = Math.exp(p[AT.magnetising] as number);
  const leakage = Math.exp(p[AT.leakage] as number);
  const toCore = Math.exp(p[AT.core] as number);
  const toFriction = Math.exp(p[AT.friction] as number);
  const toStray = Math.exp(p[AT.stray] as number);
  const stator = other / (1 + toCore + toFriction + toStray);
  const core = stator * toCore;
  const friction = stator * toFriction;
  const stray = stator * toStray;
  const gapPower = (1 + friction + stray) / (1 - slip);
  const rotor = slip * gapPower;
  const x2 = leakage * rotorShare;
  const x1 = leakage - x2;
  let e = 0.95;
  let lastVoltage = e;
  let lastSize = 0;
  for (let i = 0; i < STEPS; i++) {
    const active = gapPower / e;
    const half = e / (2 * x2);
    const root = half * half - active * active;
    if (!(root > 0)) return undefined;
    const reactive = (active * active) / (half + Math.sqrt(root));
    const a1 = active + core / e;
    const q1 = reactive + magnetising;
    const squared = a1 * a1 + q1 * q1;
    const r1 = stator / squared;
    const re = e + r1 * a1 + x1 * q1;
    const im = x1 * a1 - r1 * q1;
    const v = Math.sqrt(re * re + im * im);
    const step = 1 - v;
    if (Math.abs(step) < 1e-14 || i === STEPS - 1) {
      if (Math.abs(step) > 1e-9) return undefined;
      const rotorSquared = active * active + reactive * reactive;
      const current = Math.sqrt(squared);
      return {
        r1,
        x1,
        r2: rotor / rotorSquared,
        x2,
        gapVoltage: e,
        magnetising,
        saturation: p[AT.saturation] as number,
        stator,
        rotor,
        core,
        friction,
        stray,
        rotorCurrentSquared: rotorSquared,
        slip,
        current,
        powerFactor: (1 + other + rotor) / current,
        rise: Math.exp(p[AT.rise] as number),
      };
    }
    const slope = i > 0 && Math.abs(e - lastVoltage) > 1e-15 ? (v - lastSize) / (e - lastVoltage) : 1;
    lastVoltage = e;
    lastSize = v;
    e += slope > 0.5 && slope < 2 ? step / slope : step;
    if (!(e > 0.3)) return undefined;
  }
  return undefined;
}
