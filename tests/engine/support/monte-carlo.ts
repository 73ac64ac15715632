import {
  evaluateMotor,
  type Figure,
  type Motor,
  type Plate,
  type Quantity,
  type Reading,
  type StudyContext,
  standardUncertainty,
} from '@/lib/engine';
import { figure } from '@/lib/engine/result-figure';
import type { Chance } from '../../simulator/random';

/**
 * Propagation of distributions (JCGM 101) through the whole evaluation: stamps and meter readings are drawn anew within their stated doubts
 * and each draw is evaluated as a sheet of its own. Doubts that no cell holds (typical shares, the spread of a method) enter as their own
 * first-order parts, normal, so that the sum can be compared with the figure's whole interval.
 */

/** A doubt that stands in a cell: how to recognise the engine's source, and how a score changes the motor. */
interface Perturbation {
  readonly source: RegExp;
  readonly shape: 'rectangular' | 'normal';
  /** The motor with the cell moved by so many standard uncertainties; undefined where it has no such cell. */
  readonly moved: (motor: Motor, study: StudyContext, score: number) => Motor | undefined;
}

const ROOT3 = Math.sqrt(3);

function withReading(motor: Motor, change: (reading: Reading) => Partial<Reading> | undefined): Motor | undefined {
  const changes = motor.readings.map(change);
  if (changes.some((one) => one === undefined)) return undefined;
  return { ...motor, readings: motor.readings.map((reading, i) => ({ ...reading, ...changes[i] })) };
}
function withPlate(motor: Motor, change: (plate: Plate) => Partial<Plate> | undefined): Motor | undefined {
  const changed = change(motor.plate);
  return changed && { ...motor, plate: { ...motor.plate, ...changed } };
}
const three = (values: readonly [number, number, number] | undefined, factor: number) =>
  values && ([values[0] * factor, values[1] * factor, values[2] * factor] as const);

const synchronousOf = (plate: Plate): number => {
  const frequency = plate.ratedFrequencyHz ?? 60;
  const poles = plate.poles ?? 2 * Math.floor((60 * frequency) / (plate.ratedSpeedRpm ?? 1750));
  return (120 * frequency) / poles;
};

/**
 * Doubts of cells. Meter errors are rectangular within the class; stamps as the standards' tolerances, 2.5 standard deviations: slip 20 %
 * (NEMA MG 1 12.46), current 10 % (12.47, from memory), rounding of speed to 5 or 1 r/min.
 */
const PERTURBATIONS: readonly Perturbation[] = [
  {
    source: /:power$/,
    shape: 'rectangular',
    moved: (motor, study, score) =>
      withReading(motor, ({ inputPowerKw, powerAccuracyPct }) =>
        inputPowerKw === undefined
          ? undefined
          : { inputPowerKw: inputPowerKw * (1 + (score * (powerAccuracyPct ?? study.settings.accuracy.powerPct)) / 100 / ROOT3) },
      ),
  },
  {
    source: /:current$/,
    shape: 'rectangular',
    moved: (motor, study, score) =>
      withReading(motor, ({ currentA, currentsA, currentAccuracyPct }) => {
        const factor = 1 + (score * (currentAccuracyPct ?? study.settings.accuracy.currentPct)) / 100 / ROOT3;
        return currentA === undefined ? undefined : { currentA: currentA * factor, currentsA: three(currentsA, factor) };
      }),
  },
  {
    source: /:voltage$/,
    shape: 'rectangular',
    moved: (motor, study, score) =>
      withReading(motor, ({ voltageV, voltagesV, voltageAccuracyPct }) => {
        const factor = 1 + (score * (voltageAccuracyPct ?? study.settings.accuracy.voltagePct)) / 100 / ROOT3;
        return voltageV === undefined ? undefined : { voltageV: voltageV * factor, voltagesV: three(voltagesV, factor) };
      }),
  },
  {
    source: /:speed$/,
    shape: 'rectangular',
    moved: (motor, study, score) =>
      withReading(motor, ({ shaftSpeedRpm, speedAccuracyRpm }) =>
        shaftSpeedRpm === undefined
          ? undefined
          : { shaftSpeedRpm: shaftSpeedRpm + (score * (speedAccuracyRpm ?? study.settings.accuracy.speedRpm)) / ROOT3 },
      ),
  },
  {
    source: /^stamp:slip$/,
    shape: 'normal',
    moved: (motor, _, score) =>
      withPlate(motor, (plate) =>
        plate.ratedSpeedRpm === undefined
          ? undefined
          : { ratedSpeedRpm: plate.ratedSpeedRpm - score * (0.2 / 2.5) * (synchronousOf(plate) - plate.ratedSpeedRpm) },
      ),
  },
  {
    source: /^stamp:current$/,
    shape: 'normal',
    moved: (motor, _, score) =>
      withPlate(motor, (plate) =>
        plate.ratedCurrentA === undefined ? undefined : { ratedCurrentA: plate.ratedCurrentA * (1 + score * (0.1 / 2.5)) },
      ),
  },
];

/** What the draws say of one figure. */
export interface Comparison {
  readonly figure: Figure;
  /** 2.5, 50 and 97.5 % of the draws. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly sd: number;
  /** Part of the variance that came from drawn cells rather than from the engine's own parts. */
  readonly drawnShare: number;
}

export type Watched = 'shaftPower' | 'efficiency';

/** Draws the cells of a motor and compares with the figures of its one evaluation; undefined where it has no load. */
export function compare(
  motor: Motor,
  study: StudyContext,
  options: { readonly chance: Chance; readonly draws: number; readonly normal?: boolean },
): Readonly<Record<Watched, Comparison>> | undefined {
  const evaluation = evaluateMotor(motor, study);
  const { point } = evaluation;
  if (!point) return undefined;
  const sources = evaluation.scope.sources.list;
  const used = PERTURBATIONS.filter(
    (one) => sources.some(({ id }) => one.source.test(id)) && one.moved(motor, study, 0) !== undefined,
  );
  const drawn = (quantity: Quantity) =>
    quantity.parts.at.map((source) => used.some((one) => one.source.test(sources[source]?.id ?? '')));
  const rest = (quantity: Quantity) => {
    const own = drawn(quantity);
    return standardUncertainty({ parts: { at: [], by: quantity.parts.by.filter((_, i) => !own[i]) } });
  };
  // The parts that no cell holds move power and efficiency each by its own sum: their correlation does not matter to either alone.
  const remainder = { shaftPower: rest(point.shaftPower), efficiency: rest(point.efficiency) };
  const columns = used.map((one) => strata(options.chance, options.draws, options.normal === true ? 'normal' : one.shape));
  const remaining = {
    shaftPower: strata(options.chance, options.draws, 'normal'),
    efficiency: strata(options.chance, options.draws, 'normal'),
  };
  const values: Record<Watched, number[]> = { shaftPower: [], efficiency: [] };
  for (let draw = 0; draw < options.draws; draw++) {
    let moved = motor;
    used.forEach((one, k) => {
      moved = one.moved(moved, study, columns[k]?.[draw] ?? 0) ?? moved;
    });
    const at = evaluateMotor(moved, study).point;
    if (!at) continue;
    for (const watched of ['shaftPower', 'efficiency'] as const) {
      values[watched].push(at[watched].value + remainder[watched] * (remaining[watched][draw] ?? 0));
    }
  }
  const summary = (watched: Watched): Comparison => {
    const sorted = values[watched].sort((a, b) => a - b);
    const mean = sorted.reduce((sum, value) => sum + value, 0) / sorted.length;
    const u = standardUncertainty(point[watched]);
    return {
      figure: figure(point[watched], study.settings.currency),
      low: quantile(sorted, 0.025),
      middle: quantile(sorted, 0.5),
      high: quantile(sorted, 0.975),
      sd: Math.sqrt(sorted.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (sorted.length - 1)),
      drawnShare: 1 - (remainder[watched] / u) ** 2,
    };
  };
  return { shaftPower: summary('shaftPower'), efficiency: summary('efficiency') };
}

/** One score for each of equally likely strata, in mixed order: fewer draws say as much as many by plain chance. Mean 0, standard deviation 1. */
function strata(chance: Chance, count: number, shape: 'rectangular' | 'normal'): number[] {
  const scores =
    shape === 'normal' ? [...normalScores(count)] : Array.from({ length: count }, (_, i) => ((2 * i + 1) / count - 1) * ROOT3);
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(chance.unit() * (i + 1));
    [scores[i], scores[j]] = [scores[j] ?? 0, scores[i] ?? 0];
  }
  return scores;
}

const SCORES = new Map<number, readonly number[]>();

/** Normal quantiles at the middles of equally likely strata. */
function normalScores(count: number): readonly number[] {
  const known = SCORES.get(count);
  if (known) return known;
  const scores = Array.from({ length: count }, (_, i) => normalQuantile((i + 0.5) / count));
  SCORES.set(count, scores);
  return scores;
}

export function quantile(sorted: readonly number[], p: number): number {
  const at = p * (sorted.length - 1);
  const low = sorted[Math.floor(at)] ?? Number.NaN;
  const high = sorted[Math.ceil(at)] ?? Number.NaN;
  return low + (at - Math.floor(at)) * (high - low);
}

/** Normal quantile by halving on the error function's series; slow and plain. */
export function normalQuantile(p: number): number {
  let [low, high] = [-9, 9];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (normalBelow(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Φ(x) by its power series, good to 1e-12 within ±6 (Abramowitz and Stegun 26.2.11). */
function normalBelow(x: number): number {
  if (x < -6) return 0;
  if (x > 6) return 1;
  let term = x;
  let sum = x;
  for (let n = 1; Math.abs(term) > 1e-17; n++) {
    term *= (x * x) / (2 * n + 1);
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
}
