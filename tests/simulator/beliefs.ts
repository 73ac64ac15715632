/**
 * What the simulator believes about the world, each with where it comes from. None of it was fitted to an estimator. Where only memory or
 * practice stands behind a figure, it says so.
 */

/** How the eras of motors differ. */
export interface Era {
  readonly name: 'u-frame' | 'early-t-frame' | 'late-t-frame' | 'energy-efficient' | 'premium';
  readonly share: number;
  readonly years: readonly [number, number];
  /** Population mean of the total loss over that of the energy-efficient level of the same rating. */
  readonly lossOverEfficient: readonly [number, number];
  /** True winding rise at rated load, K. From memory: class A 60 K, B 80 K by resistance, makers stay below; recent designs run cooler. */
  readonly rise: readonly [number, number];
  readonly magnetising: number;
}

/**
 * Shares by age: common practice for an old plant. Loss ratios: averages of standard motors in the US DOE fact sheet on motor load
 * (from memory) lie 1.25 to 1.45 times the energy-efficient losses; U frames carry more iron and copper and are the better of the old
 * ones (from memory); premium against energy-efficient by 10 CFR 431.25, tables of 2005 and 2010: 0.75 to 0.85 of the loss.
 */
export const ERAS: readonly Era[] = [
  { name: 'u-frame', share: 0.15, years: [1953, 1965], lossOverEfficient: [1.1, 1.4], rise: [50, 6], magnetising: 0.93 },
  { name: 'early-t-frame', share: 0.3, years: [1965, 1979], lossOverEfficient: [1.2, 1.55], rise: [68, 8], magnetising: 1.05 },
  { name: 'late-t-frame', share: 0.28, years: [1980, 1997], lossOverEfficient: [1.1, 1.45], rise: [70, 8], magnetising: 1.03 },
  { name: 'energy-efficient', share: 0.17, years: [1990, 2010], lossOverEfficient: [0.93, 1], rise: [62, 8], magnetising: 1 },
  { name: 'premium', share: 0.1, years: [2005, 2022], lossOverEfficient: [0.72, 0.84], rise: [55, 8], magnetising: 0.98 },
];

/** Energy-efficient nominal efficiency, 4-pole enclosed, per cent: 10 CFR 431.25 (edition of 2005) to 200 hp, beyond from memory. */
export const EFFICIENT_4_POLE: readonly (readonly [hp: number, percent: number])[] = [
  [1, 82.5],
  [1.5, 84],
  [2, 84],
  [3, 87.5],
  [5, 87.5],
  [7.5, 89.5],
  [10, 89.5],
  [15, 91],
  [20, 91],
  [25, 92.4],
  [30, 92.4],
  [40, 93],
  [50, 93],
  [60, 93.6],
  [75, 94.1],
  [100, 94.5],
  [125, 94.5],
  [150, 95],
  [200, 95],
  [250, 95],
  [300, 95.4],
  [400, 95.4],
  [500, 95.8],
  [1000, 96.2],
];

/** Loss of other pole counts over that of 4 poles; the same law, rounded. */
export const POLE_LOSS: Readonly<Record<number, number>> = { 2: 1.06, 4: 1, 6: 1.06, 8: 1.25 };

/**
 * Loss shares, per cent of the total at rated load, lowest and highest of a published survey of three-phase induction motors: stator 25 to
 * 40, rotor 15 to 25, core 15 to 25, friction and windage 5 to 15, stray 10 to 20 (handbook range, read once; a 75 kW motor of another
 * source has stray 5 to 15, a 100 hp one 27, from memory). Drawn evenly and brought to a sum of one.
 */
export const LOSS_RANGES = { stator: [25, 42], rotor: [15, 26], core: [14, 25], friction: [5, 14], stray: [7, 20] } as const;

/** Friction and windage go with the fan's speed. From memory. */
export const POLE_FRICTION: Readonly<Record<number, number>> = { 2: 1.6, 4: 1, 6: 0.75, 8: 0.6 };

/**
 * Magnetising over rated current, 4 poles: about half at 1 hp, 0.3 at 100 hp. Capacitor tables for old motors, which stay below the no-load
 * demand, give 0.39 at 3 hp, 0.27 at 10 hp and about 0.2 from 25 hp as a floor; 8 poles 1.5 times as much. Spread from memory.
 */
export const magnetisingShare = (hp: number, poles: number): number =>
  (0.49 - 0.095 * Math.log10(hp)) * ({ 2: 0.87, 4: 1, 6: 1.14, 8: 1.33 }[poles] ?? 1);

/**
 * Spread of single motors about their design. NEMA MG 1 12.58.2 lets one motor have 20 % more loss than nominal, 12.46 lets slip differ by
 * 20 %, 12.47 current by 10 %; each taken as two and a half to three standard deviations.
 */
export const SPREAD = { loss: 0.07, slip: 0.075, current: 0.03, magnetising: 0.12 } as const;

/** Locked-rotor over rated current: NEMA design B 6 to 7 (read in two copies of a handbook table), old motors less. */
export const LOCKED_CURRENT = [4.8, 7.2] as const;

/** Locked-rotor reactance over the running one: the teeth saturate and deep bars crowd the current. From memory: 0.65 to 0.92. */
export const LOCKED_OVER_RUNNING = [0.65, 0.92] as const;

/** Stator's part of the leakage: IEEE 112 takes 0.4 for design B, 0.5 for A and D; machines spread about it (from memory). */
export const STATOR_LEAKAGE = [0.36, 0.54] as const;

/** A knee in the magnetising curve: this part of the current grows with the eighth power of the flux. From memory: 10 % more volts, 20 to 60 % more current. */
export const KNEE = { share: [0.06, 0.4], power: 8 } as const;

/** Core loss with gap voltage (common practice: about the square), friction with speed (between the square and the cube, from memory). */
export const EXPONENTS = { core: [1.8, 2.5], friction: [2, 3] } as const;

/** Rotor resistance at twice line frequency over the running one; deep bars. From memory: 1.5 to 4. */
export const NEGATIVE_RESISTANCE = [1.5, 4] as const;

/** Rewinding: change of efficiency in points. Field surveys and shop studies give −2 to +0.7, mean −0.1 to −0.5; most of it core and stator loss. */
export const REWIND = { probability: 0.22, told: 0.65, mean: -0.35, sd: 0.35, low: -1.6, high: 0.3 } as const;

/** IEC plates before 2007 took 0.5 % stray loss for what measures about 1 to 1.2 points more (survey of 817 tests: 0.8 to 1.0 points of excess on average). */
export const OLD_IEC_EXCESS = [0.3, 1.2] as const;

/** Mains: site voltage against the plate, unbalance (NEMA's figure), frequency. Common practice, the frequency's spread from memory. */
export const MAINS = {
  voltage: [0.012, 0.024, -0.06, 0.06],
  unbalanceMean: 0.007,
  unbalanceMost: 0.03,
  frequencySd: 0.018,
} as const;

/** Load over rating where motors are read: surveys put the mean of industrial motors near 0.6 (from memory). */
export const LOAD = [0.61, 0.22, 0.2, 1.15] as const;

/** A world that differs from the usual one, so that nobody fits an estimator to a single set of beliefs. */
export interface World {
  /** Factor on the spread of loss, slip, current and magnetising current about the design. */
  readonly spread: number;
  /** Factor on the stray-load loss before the shares are brought to a sum of one. */
  readonly stray: number;
  /** Factor on what the process moves while the technician reads. */
  readonly breath: number;
  /** How far the winding has come to its end temperature, from and to. */
  readonly warmth: readonly [number, number];
  /** Factor on the spread of slip about its stamp, beside `spread`. */
  readonly slip: number;
  /** Step in which American plates give the speed where they round it, r/min. */
  readonly speedStep: number;
  /** Least probability that a plate bears efficiency and power factor, whatever its age. */
  readonly stamped: number;
  /** Factor on the probability that a motor was rewound. */
  readonly rewinds: number;
  /** Share of sheets that state the classes of their instruments, and the classes of power meters there, per cent of the reading. */
  readonly instruments: { readonly stated: number; readonly power: readonly number[] };
  /** Load over rating: mean, standard deviation, lowest, highest. */
  readonly load: readonly [number, number, number, number];
}

const USUAL: World = {
  spread: 1,
  stray: 1,
  breath: 1,
  warmth: [0.85, 1],
  slip: 1,
  speedStep: 5,
  stamped: 0,
  rewinds: 1,
  instruments: { stated: 0.5, power: [1, 1.5, 2, 3] },
  load: LOAD,
};

/**
 * `stamped` is a plant that keeps its papers: nearly every plate or data sheet gives efficiency and power factor, few motors were rewound, and
 * single motors stay close to their design, in stray-load loss as well. Its speeds are those of a catalogue, rounded to 10 r/min, and slip
 * differs from them more than elsewhere (still within about twice the 20 % that NEMA MG 1 12.46 allows). Power is read by clamp-on meters of 3 %, and the
 * sheet says so. Common practice and from memory. It was set by the errors of the published hand methods (`tests/perf/hand-methods.py`)
 * alone, before any estimate of ours was tried on it.
 */
export const WORLDS = {
  usual: USUAL,
  calm: { ...USUAL, spread: 0.75, stray: 0.8, breath: 0.5, warmth: [0.95, 1] },
  rough: { ...USUAL, spread: 1.3, stray: 1.4, breath: 2.5, warmth: [0.6, 1] },
  stamped: {
    spread: 0.5,
    stray: 0.7,
    breath: 1,
    warmth: [0.95, 1],
    slip: 3,
    speedStep: 10,
    stamped: 0.95,
    rewinds: 0.2,
    instruments: { stated: 1, power: [3] },
    load: [0.66, 0.17, 0.3, 1.1],
  },
} as const satisfies Readonly<Record<string, World>>;
export type WorldName = keyof typeof WORLDS;

/** The world of that name, the usual one without; an error that names them all for a name that none has. */
export function worldNamed(name = 'usual'): WorldName {
  const found = Object.keys(WORLDS).find((world): world is WorldName => world === name);
  if (found === undefined) throw new Error(`worlds are ${Object.keys(WORLDS).join(', ')}`);
  return found;
}
