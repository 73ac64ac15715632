import { MAINS, REWIND, WORLDS, type World, type WorldName } from './beliefs';
import { type Built, drawMachine, type Rating } from './machine';
import { type AtWork, atShaftPower, type Conditions, supplyOf, unbalanceOf } from './operate';
import { type Cells, text, writePlate } from './plate';
import { Chance } from './random';
import { drawInstruments, type Instruments, READING_SETS, type ReadingSet, read } from './readings';

/** A row of the fleet sheet, with the truth beside it. All of it is invented. */
export interface SimulatedMotor {
  readonly cells: Cells;
  /** Rows of earlier readings at other loads, by the same instruments; the truth is that of `cells`, the latest. */
  readonly earlier: readonly Cells[];
  readonly set: ReadingSet;
  readonly rating: Rating;
  readonly built: Built;
  readonly at: AtWork;
  readonly conditions: Conditions;
  readonly instruments: Instruments;
  readonly loadFraction: number;
  readonly unbalance: number;
  /** Mean line voltage over the plate's. */
  readonly voltageRatio: number;
  /** Nothing of the plate or the readings could be objected to: never rewound, calm supply, half to full load, two ways to the load, efficiency known. */
  readonly beyondObjection: boolean;
}

export interface FleetOptions {
  readonly seed: number;
  readonly motors: number;
  /** Weights of the sets of readings; the usual mix when not said. */
  readonly sets?: Readonly<Partial<Record<ReadingSet, number>>>;
  /** Share of motors that were read once or twice before, at other loads; none when not said. */
  readonly readBefore?: number;
  readonly world?: WorldName;
}

/** How often each set of readings stands in a sheet (common practice: an analyser where there is one, else a clamp, seldom a tachometer alone). */
const USUAL_SETS: Readonly<Record<ReadingSet, number>> = {
  all: 0.3,
  'power-volts-amps': 0.25,
  'speed-volts': 0.15,
  'amps-volts': 0.2,
  'power-only': 0.1,
};

/** Ratings and how common they are in a plant (common practice): most between 5 and 300 hp. */
const HORSEPOWER: readonly (readonly [number, number])[] = [
  [1, 1],
  [2, 1.5],
  [3, 2],
  [5, 6],
  [7.5, 6],
  [10, 9],
  [15, 8],
  [20, 8],
  [25, 8],
  [30, 7],
  [40, 7],
  [50, 8],
  [60, 6],
  [75, 7],
  [100, 8],
  [125, 5],
  [150, 5],
  [200, 5],
  [250, 3],
  [300, 3],
  [400, 1.5],
  [500, 1],
  [700, 0.6],
  [1000, 0.4],
];
const KILOWATTS: readonly (readonly [number, number])[] = [
  [1.5, 1],
  [2.2, 1],
  [4, 4],
  [5.5, 5],
  [7.5, 6],
  [11, 7],
  [15, 7],
  [18.5, 6],
  [22, 6],
  [30, 7],
  [37, 6],
  [45, 5],
  [55, 6],
  [75, 6],
  [90, 4],
  [110, 4],
  [132, 3],
  [160, 3],
  [200, 2],
  [315, 1],
  [560, 0.4],
];
/** 1 hp in W, as NEMA and the fleet sheet have it. */
const HP = 745.7;

/** Draws what a plate says first: power, poles, voltage, frequency. */
export function drawRating(chance: Chance): Rating {
  const metric = chance.happens(0.15);
  const poles = chance.weighted([
    [2, 0.18],
    [4, 0.58],
    [6, 0.17],
    [8, 0.07],
  ]);
  if (metric) {
    const kilowatts = chance.weighted(KILOWATTS);
    const lineVolts = kilowatts >= 300 ? 3300 : chance.pick([380, 400, 400, 415, 690]);
    return { hp: (kilowatts * 1000) / HP, watts: kilowatts * 1000, poles, lineVolts, frequency: 50 };
  }
  const hp = chance.weighted(HORSEPOWER);
  const lineVolts =
    hp >= 250 && chance.happens(0.6)
      ? chance.pick([2300, 4000, 4160])
      : chance.weighted([
          [460, 0.72],
          [575, 0.12],
          [230, hp <= 50 ? 0.1 : 0],
          [208, hp <= 50 ? 0.06 : 0],
        ]);
  return { hp, watts: hp * HP, poles, lineVolts, frequency: 60 };
}

/** The motor at some load, on the mains of some day. */
function workingDay(chance: Chance, rating: Rating, built: Built, world: World) {
  const loadFraction = chance.normalWithin(...world.load);
  const ratio = 1 + chance.normalWithin(...MAINS.voltage);
  const unbalance = Math.min(MAINS.unbalanceMost, -MAINS.unbalanceMean * Math.log(1 - chance.unit()));
  const supply = supplyOf(
    rating.lineVolts * ratio,
    unbalance,
    chance.between(0, 2 * Math.PI),
    rating.frequency + chance.normalWithin(0, MAINS.frequencySd, -0.06, 0.06),
  );
  const conditions = { supply, ambient: chance.normalWithin(28, 7, 8, 45), warmth: chance.between(...world.warmth) };
  const at = atShaftPower(built.machine, conditions, loadFraction * rating.watts);
  return { loadFraction, ratio, conditions, at };
}

/** Draws a motor, puts it to work and has it read. */
export function simulateMotor(
  chance: Chance,
  tag: string,
  set: ReadingSet,
  options: { readonly world: World; readonly readBefore: number },
): SimulatedMotor {
  const { world } = options;
  const rating = drawRating(chance);
  const built = drawMachine(chance, rating, world);
  const day = workingDay(chance, rating, built, world);
  const plate = writePlate(chance, built, rating, world);
  const instruments = drawInstruments(chance, world);
  const readings = read(chance, set, day.at, day.conditions.supply, instruments, world.breath);
  const told = built.rewound > 0 && chance.happens(REWIND.told);
  const own = { site: 'Invented works', tag, ...plate, ...(told && { rewind_count: text(built.rewound, 0) }) };
  const room = chance.happens(0.25) ? { ambient_c: text(day.conditions.ambient, 0) } : {};
  const before = chance.happens(options.readBefore) ? (chance.happens(0.4) ? 2 : 1) : 0;
  const earlier = Array.from({ length: before }, (_, i): Cells => {
    const then = workingDay(chance, rating, built, world);
    const sets = chance.pick(READING_SETS);
    return {
      ...own,
      taken_at: `2024-0${i + 3}-01`,
      ...read(chance, sets, then.at, then.conditions.supply, instruments, world.breath),
    };
  });
  const twoWays = set === 'all' || set === 'power-volts-amps';
  const efficiencyKnown = plate.nominal_efficiency_pct !== undefined || plate.efficiency_class !== undefined;
  const unbalance = unbalanceOf(day.at.lineVolts);
  return {
    cells: { ...own, taken_at: '2025-06-01', ...readings, ...room },
    earlier,
    set,
    rating,
    built,
    at: day.at,
    conditions: day.conditions,
    instruments,
    loadFraction: day.loadFraction,
    unbalance,
    voltageRatio: day.ratio,
    beyondObjection:
      built.rewound === 0 &&
      unbalance <= 0.01 &&
      Math.abs(day.ratio - 1) <= 0.07 &&
      day.loadFraction >= 0.5 &&
      day.loadFraction <= 1 &&
      twoWays &&
      efficiencyKnown,
  };
}

/** A fleet from a seed; motor number i is the same whatever the size of the fleet. */
export function simulateFleet(options: FleetOptions): SimulatedMotor[] {
  const sets: Readonly<Partial<Record<ReadingSet, number>>> = options.sets ?? USUAL_SETS;
  const weights = READING_SETS.map((set) => [set, sets[set] ?? 0] as const);
  return Array.from({ length: options.motors }, (_, i) => {
    const chance = new Chance(options.seed * 1_000_003 + i);
    return simulateMotor(chance, `M-${i + 1}`, chance.weighted(weights), {
      world: WORLDS[options.world ?? 'usual'],
      readBefore: options.readBefore ?? 0,
    });
  });
}

/** CSV text of rows; a column stands in the header if any row has it. */
export function sheetText(rows: readonly Cells[]): string {
  const names = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  return [names, ...rows.map((row) => names.map((name) => row[name] ?? ''))].map((row) => `${row.join(',')}\n`).join('');
}

/** Rows of a fleet in the order in which they were written down. */
export const rowsOf = (fleet: readonly SimulatedMotor[]): Cells[] => fleet.flatMap(({ earlier, cells }) => [...earlier, cells]);
