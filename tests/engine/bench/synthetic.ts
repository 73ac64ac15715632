import type { BenchPlate, BenchPoint, BenchSections, BenchTest } from '@/lib/engine/bench/test';

/**
 * An invented motor whose five losses follow exactly the laws that the segregation of losses rests on, so that a test without meter errors
 * must give them back. Written independently of the engine: no formula of it is used here.
 */
export const TRUTH = {
  ratedPowerKw: 18.65,
  ratedVoltageV: 460,
  frequencyHz: 60,
  poles: 4,
  /** Between terminals at 25 °C. */
  resistance25: 0.52,
  noLoadCurrentA: 11.4,
  ratedRotorCurrentA: 27.2,
  coreKw: 0.295,
  frictionKw: 0.118,
  /** At 89 °C and rated torque. */
  ratedSlip: 0.0172,
  /** W for each (N·m)². */
  straySlope: 0.0236,
  hotC: 94,
  ambientC: 30,
} as const;

const COPPER = 234.5;
const ALUMINIUM = 225;
const SYNCHRONOUS = (120 * TRUTH.frequencyHz) / TRUTH.poles;
const RATED_TORQUE = (TRUTH.ratedPowerKw * 1000) / ((2 * Math.PI * SYNCHRONOUS * (1 - TRUTH.ratedSlip)) / 60);
const resistanceAt = (celsius: number) => (TRUTH.resistance25 * (COPPER + celsius)) / (COPPER + 25);

/** The motor at a shaft torque and a winding temperature: everything in it, without doubt. */
export function trueAt(torqueNm: number, celsius: number) {
  const load = torqueNm / RATED_TORQUE;
  const slip = (TRUTH.ratedSlip * load * (ALUMINIUM + celsius)) / (ALUMINIUM + 89);
  const speedRpm = SYNCHRONOUS * (1 - slip);
  const shaftKw = (2 * Math.PI * torqueNm * speedRpm) / 60_000;
  const currentA = Math.sqrt(TRUTH.noLoadCurrentA ** 2 + (TRUTH.ratedRotorCurrentA * load) ** 2);
  const stator = (1.5 * currentA ** 2 * resistanceAt(celsius)) / 1000;
  const stray = (TRUTH.straySlope * torqueNm ** 2) / 1000;
  const gap = (shaftKw + TRUTH.frictionKw + stray) / (1 - slip);
  const rotor = slip * gap;
  const total = stator + rotor + TRUTH.coreKw + TRUTH.frictionKw + stray;
  return {
    load,
    slip,
    speedRpm,
    shaftKw,
    currentA,
    stator,
    rotor,
    stray,
    total,
    inputKw: shaftKw + total,
    efficiency: shaftKw / (shaftKw + total),
  };
}

/** The same at a shaft power, found by repetition. */
export function trueAtPower(shaftKw: number, celsius: number) {
  let torque = (shaftKw * 60_000) / (2 * Math.PI * SYNCHRONOUS);
  for (let i = 0; i < 60; i++) torque *= shaftKw / trueAt(torque, celsius).shaftKw;
  return trueAt(torque, celsius);
}

/** Errors of the meters: a factor shared by all readings of one meter, and one for each reading; speed and temperature in their units. */
export interface MeterErrors {
  readonly shared: (meter: string) => number;
  readonly own: () => number;
}

export const NO_ERRORS: MeterErrors = { shared: () => 0, own: () => 0 };

/** Errors drawn from the classes that the engine assumes: rectangular, for the meter and again for each reading. */
export function drawnErrors(random: () => number): MeterErrors {
  const drawn = new Map<string, number>();
  const rectangular = () => 2 * random() - 1;
  return {
    shared: (meter) => {
      const known = drawn.get(meter) ?? rectangular();
      drawn.set(meter, known);
      return known;
    },
    own: rectangular,
  };
}

/** Loads of a full test as multiples of rated torque, and voltages of its no-load run as multiples of rated. */
export const LOADS = [1.5, 1.25, 1, 0.75, 0.5, 0.25] as const;
export const VOLTAGES = [1.25, 1.1, 1, 0.9, 0.75, 0.6, 0.5, 0.4, 0.3, 0.2] as const;

/** A complete test of the invented motor, by rows as a sheet would hold them. */
export function syntheticTest(
  errors: MeterErrors = NO_ERRORS,
  change: (point: BenchPoint, section: string) => BenchPoint = (p) => p,
  windingAt?: (load: number) => number,
): BenchTest {
  const factor = (meter: string) => 1 + 0.002 * (errors.shared(meter) + errors.own());
  const shift = (meter: string) => errors.shared(meter) + errors.own();
  let row = 1;
  const point = (section: string, given: Omit<BenchPoint, 'row'>): BenchPoint => {
    row += 1;
    return change(
      {
        row,
        ...(given.voltageV !== undefined && { voltageV: given.voltageV * factor('voltage') }),
        ...(given.currentA !== undefined && { currentA: given.currentA * factor('current') }),
        ...(given.inputPowerKw !== undefined && { inputPowerKw: given.inputPowerKw * factor('power') }),
        ...(given.torqueNm !== undefined && { torqueNm: given.torqueNm * factor('torque') }),
        ...(given.speedRpm !== undefined && { speedRpm: given.speedRpm + shift('speed') }),
        ...(given.windingTempC !== undefined && { windingTempC: given.windingTempC + shift('winding') }),
        ...(given.resistanceOhm !== undefined && { resistanceOhm: given.resistanceOhm * factor('resistance') }),
        ...(given.ambientC !== undefined && { ambientC: given.ambientC + shift('ambient') }),
        frequencyHz: TRUTH.frequencyHz,
      },
      section,
    );
  };
  const winding =
    windingAt ?? ((load: number) => TRUTH.ambientC + (TRUTH.hotC - TRUTH.ambientC) * (0.35 + 0.65 * Math.min(load * load, 1.6)));
  const sections: BenchSections = {
    cold: [point('cold', { resistanceOhm: resistanceAt(24), windingTempC: 24 })],
    'rated-load': [
      point('rated-load', { windingTempC: TRUTH.hotC, resistanceOhm: resistanceAt(TRUTH.hotC), ambientC: TRUTH.ambientC }),
    ],
    load: LOADS.map((load) => {
      const celsius = winding(load);
      const truth = trueAt(load * RATED_TORQUE, celsius);
      return point('load', {
        voltageV: TRUTH.ratedVoltageV,
        currentA: truth.currentA,
        inputPowerKw: truth.inputKw,
        torqueNm: load * RATED_TORQUE,
        speedRpm: truth.speedRpm,
        windingTempC: celsius,
      });
    }),
    dynamometer: [],
    'no-load': VOLTAGES.map((ratio) => {
      const currentA = TRUTH.noLoadCurrentA * ratio;
      const power = (1.5 * currentA ** 2 * resistanceAt(50)) / 1000 + TRUTH.coreKw * ratio ** 2 + TRUTH.frictionKw;
      return point('no-load', { voltageV: TRUTH.ratedVoltageV * ratio, currentA, inputPowerKw: power, windingTempC: 50 });
    }),
    'locked-rotor': [],
    'rotor-removed': [],
    'reverse-rotation': [],
  };
  return { tag: 'INVENTED-1', test: 'synthetic', sections };
}

export const PLATE: BenchPlate = {
  ratedPowerKw: TRUTH.ratedPowerKw,
  ratedVoltageV: TRUTH.ratedVoltageV,
  ratedFrequencyHz: TRUTH.frequencyHz,
  poles: TRUTH.poles,
  ratedSpeedRpm: 1769,
};

/** Park and Miller's generator: repeatable, enough for meter errors. */
export function seeded(seed: number): () => number {
  let state = (seed * 48_271) % 2_147_483_647 || 1;
  for (let i = 0; i < 5; i++) state = (state * 48_271) % 2_147_483_647;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
