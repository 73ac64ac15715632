import { PLACE, PLACES, ROW, ROWS, results, search } from '../generated/running-point';
import { COPPER } from './copper';
import { NEGATIVE_ROTOR } from './negative-sequence';
import { type Circuit, RATED_AMBIENT } from './parameters';

/**
 * What a machine is driven with. Hot places name every field in this order: then all have one form, which the search reads several times
 * faster than many forms.
 */
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
export const HOTTEST = 2;

/** The same terminals at another load. */
export function atLoad(at: Terminals, load: number, near: Solution | undefined): Terminals {
  return {
    load,
    voltage: at.voltage,
    frequency: at.frequency,
    ambient: at.ambient,
    winding: at.winding,
    hotter: at.hotter,
    negativeSequence: at.negativeSequence,
    near,
  };
}

const STEPS = 60;

/** Steps this small leave less than the last digit, since each squares what the one before has left. */
const SMALL = 1e-8;

/** Imbalance above which a point is not solved. */
const TOLERATED = 1e-9;

const x = new Float64Array(PLACES);
const values = new Float64Array(ROWS);
const slopes = new Float64Array(9);

/** Puts circuit and terminals into the system's vector. */
export function placeInto(target: Float64Array, c: Circuit, at: Terminals): void {
  target[PLACE.r1] = c.r1;
  target[PLACE.x1] = c.x1;
  target[PLACE.r2] = c.r2;
  target[PLACE.x2] = c.x2;
  target[PLACE.gap_voltage] = c.gapVoltage;
  target[PLACE.magnetising] = c.magnetising;
  target[PLACE.saturation] = c.saturation;
  target[PLACE.core] = c.core;
  target[PLACE.friction] = c.friction;
  target[PLACE.stray_resistance] = c.stray / c.rotorCurrentSquared;
  target[PLACE.slip] = c.slip;
  target[PLACE.rise] = c.rise;
  target[PLACE.load] = at.load;
  target[PLACE.voltage] = at.voltage;
  target[PLACE.hotter] = at.hotter ?? 0;
  target[PLACE.negative] = at.negativeSequence ?? 0;
  target[PLACE.frequency] = at.frequency;
  target[PLACE.core_frequency] = at.frequency === 1 ? 1 : at.frequency ** 1.5;
  target[PLACE.negative_rotor] = NEGATIVE_ROTOR;
  target[PLACE.copper] = COPPER;
  target[PLACE.rated_ambient] = RATED_AMBIENT;
}

/**
 * Solves the circuit at a shaft power.
 *
 * Units: per unit as in {@link Circuit}; temperatures in °C. Valid for: standstill excluded; from free running (load 0) up to the
 * breakdown torque; returns `undefined` beyond it or where the search does not settle, never a half-solved point.
 * Equations: `running-point.system.ts`; air-gap voltage, slip and winding temperature together by Newton steps. From the light side the
 * steps on the slip never pass the load sought, since power grows ever less with slip; where it grows no more the search comes back.
 */
export function solveAtPower(c: Circuit, at: Terminals): Solution | undefined {
  const { near } = at;
  const found = near && newton(c, at, near.gapVoltage, near.slip, at.winding ?? near.winding);
  if (found) return found;
  return newton(
    c,
    at,
    c.gapVoltage * at.voltage + 0.04 * (at.voltage - c.gapVoltage * at.voltage) * (1 - at.load),
    c.slip * at.load,
    at.winding ?? at.ambient + c.rise * (0.35 + 0.65 * at.load * at.load),
  );
}

function newton(c: Circuit, at: Terminals, gapVoltage: number, startSlip: number, startWinding: number): Solution | undefined {
  placeInto(x, c, at);
  const ratedLoss = c.stator + c.rotor + c.core + c.friction + c.stray;
  let e = gapVoltage;
  let slip = startSlip;
  let winding = startWinding;
  let lastSlip = 0;
  let settled = false;
  for (let i = 0; i < STEPS; i++) {
    x[PLACE.e] = e;
    x[PLACE.s] = slip;
    x[PLACE.winding] = winding;
    if (settled) {
      results(x, values);
      const residual = Math.max(Math.abs(values[ROW.voltage_left] as number), Math.abs(values[ROW.power_left] as number));
      if (residual < TOLERATED) return read(e, slip, winding, residual);
    }
    search(x, values, slopes);
    // The winding's temperature by the losses: none where it was measured, no more than the hottest.
    const share = (values[2] as number) / ratedLoss;
    const follows = at.winding === undefined && share < HOTTEST ? c.rise / ratedLoss : 0;
    const left = at.winding === undefined ? winding - at.ambient - c.rise * Math.min(share, HOTTEST) : winding - at.winding;
    // Winding eliminated first: its own slope is near one.
    const own = Math.max(1 - follows * (slopes[8] as number), 0.2);
    const byE = (follows * (slopes[6] as number)) / own;
    const bySlip = (follows * (slopes[7] as number)) / own;
    const rest = -left / own;
    const a = (slopes[0] as number) + (slopes[2] as number) * byE;
    const b = (slopes[1] as number) + (slopes[2] as number) * bySlip;
    const d = (slopes[3] as number) + (slopes[5] as number) * byE;
    const g = (slopes[4] as number) + (slopes[5] as number) * bySlip;
    const voltage = -(values[0] as number) - (slopes[2] as number) * rest;
    const power = -(values[1] as number) - (slopes[5] as number) * rest;
    if (!(a > 0)) return undefined;
    // Power against slip with the terminal voltage held: falls beyond breakdown.
    const steep = g - (d * b) / a;
    if (!(steep > 0)) {
      if (!(slip > lastSlip)) return undefined;
      slip = (slip + lastSlip) / 2;
      continue;
    }
    const bySteep = (power - (d * voltage) / a) / steep;
    // Near breakdown a step may lead far beyond it.
    const ds = Math.min(Math.max(bySteep, -0.1), 0.1);
    const de = (voltage - b * ds) / a;
    const dt = rest + byE * de + bySlip * ds;
    lastSlip = slip;
    e += de;
    slip += ds;
    winding += dt;
    if (!(e > 0.1 && slip < 1)) return undefined;
    settled = Math.abs(de) < SMALL && Math.abs(ds) < SMALL && Math.abs(dt) < 1e-5;
  }
  return undefined;
}

function read(gapVoltage: number, slip: number, winding: number, residual: number): Solution {
  return {
    stator: values[ROW.stator_loss] as number,
    rotor: values[ROW.rotor_loss] as number,
    core: values[ROW.core_loss] as number,
    friction: values[ROW.friction_loss] as number,
    stray: values[ROW.stray_loss] as number,
    input: values[ROW.input] as number,
    current: values[ROW.current] as number,
    powerFactor: values[ROW.power_factor] as number,
    slip,
    winding,
    unbalance: values[ROW.unbalance] as number,
    gapVoltage,
    residual,
  };
}
