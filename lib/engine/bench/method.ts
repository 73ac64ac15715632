/** Methods by which a bench test is worked out. */
export const BENCH_METHODS = [
  'ieee-112-b',
  'ieee-112-e',
  'ieee-112-e1',
  'ieee-112-f',
  'ieee-112-f1',
  'iec-2-1-1b',
  'iec-2-1-1c',
  'no-load-run',
] as const;
export type BenchMethodId = (typeof BENCH_METHODS)[number];

/** What a method asks for and how it computes; all of it from memory of the standards, as the methods page says. */
export interface BenchMethod {
  readonly id: BenchMethodId;
  readonly title: string;
  readonly family: 'ieee' | 'iec';
  /** Where the stray-load loss comes from. */
  readonly stray: 'line' | 'reverse-rotation' | 'assumed' | 'none';
  /** Whether the load points are measured, or solved from the circuit of a locked-rotor and a no-load test. */
  readonly load: 'measured' | 'circuit' | 'none';
  /** Least correlation coefficient of the stray-load line. */
  readonly correlation: number;
  /** Least number of load and of no-load points. */
  readonly loadPoints: number;
  readonly noLoadPoints: number;
  /** Load range and no-load voltages that the standard asks for, as fractions of rated. */
  readonly loadTo: number;
  readonly noLoadFrom: number;
  /** No-load points up to this fraction of rated voltage give friction and windage. */
  readonly lowVoltage: number;
  /** Constant of a copper winding in the temperature rule of resistance. */
  readonly copper: number;
  readonly source: string;
}

const IEEE = {
  family: 'ieee',
  correlation: 0.9,
  loadPoints: 6,
  noLoadPoints: 6,
  loadTo: 1.5,
  noLoadFrom: 1.25,
  lowVoltage: 0.52,
  copper: 234.5,
} as const;
const IEC = {
  family: 'iec',
  correlation: 0.95,
  loadPoints: 6,
  noLoadPoints: 6,
  loadTo: 1.25,
  noLoadFrom: 1.1,
  lowVoltage: 0.62,
  copper: 235,
} as const;

const METHODS: Readonly<Record<BenchMethodId, BenchMethod>> = {
  'ieee-112-b': {
    ...IEEE,
    id: 'ieee-112-b',
    title: 'IEEE 112 method B: dynamometer, losses segregated',
    stray: 'line',
    load: 'measured',
    source: 'IEEE 112-2017 clause 6.4 (from memory)',
  },
  'ieee-112-e': {
    ...IEEE,
    id: 'ieee-112-e',
    title: 'IEEE 112 method E: input measured, stray-load loss by reverse rotation',
    stray: 'reverse-rotation',
    load: 'measured',
    source: 'IEEE 112-2017 clauses 5.7.2 and 6.7 (from memory)',
  },
  'ieee-112-e1': {
    ...IEEE,
    id: 'ieee-112-e1',
    title: 'IEEE 112 method E1: input measured, stray-load loss assumed',
    stray: 'assumed',
    load: 'measured',
    source: 'IEEE 112-2017 clause 6.7 (from memory)',
  },
  'ieee-112-f': {
    ...IEEE,
    id: 'ieee-112-f',
    title: 'IEEE 112 method F: equivalent circuit, stray-load loss by reverse rotation',
    stray: 'reverse-rotation',
    load: 'circuit',
    source: 'IEEE 112-2017 clauses 5.9 and 6.8 (from memory)',
  },
  'ieee-112-f1': {
    ...IEEE,
    id: 'ieee-112-f1',
    title: 'IEEE 112 method F1: equivalent circuit, stray-load loss assumed',
    stray: 'assumed',
    load: 'circuit',
    source: 'IEEE 112-2017 clauses 5.9 and 6.8 (from memory)',
  },
  'iec-2-1-1b': {
    ...IEC,
    id: 'iec-2-1-1b',
    title: 'IEC 60034-2-1 method 2-1-1B: dynamometer, summation of losses',
    stray: 'line',
    load: 'measured',
    source: 'IEC 60034-2-1:2014 clause 6.1.3 (from memory)',
  },
  'iec-2-1-1c': {
    ...IEC,
    id: 'iec-2-1-1c',
    title: 'IEC 60034-2-1 method 2-1-1C: summation of losses, stray-load loss assigned',
    stray: 'assumed',
    load: 'measured',
    source: 'IEC 60034-2-1:2014 clause 6.1.4 (from memory)',
  },
  'no-load-run': {
    ...IEEE,
    noLoadPoints: 3,
    noLoadFrom: 1,
    id: 'no-load-run',
    title: 'No-load run: core loss with friction and windage',
    stray: 'none',
    load: 'none',
    source: 'IEEE 112-2017 clause 5.5 (from memory)',
  },
};

/** A method by its name. */
export function benchMethod(id: BenchMethodId): BenchMethod {
  return METHODS[id];
}

/** Constant of the rotor's conductor: 225 for aluminium; the winding's own for copper. */
export function rotorConstant(method: BenchMethod, conductor: 'aluminium' | 'copper' | undefined): number {
  return conductor === 'copper' ? method.copper : 225;
}

/** Exponent of friction and windage over speed in method 2-1-1B (from memory). */
export const WINDAGE_EXPONENT = 2.5;

/** Temperature of the cooling air to which losses are brought, °C (both standards). */
export const REFERENCE_COOLANT = 25;

/** Winding temperature at rated load by class of temperature rise, where no rated-load test was made (IEEE 112, from memory), °C. */
export const CLASS_TEMPERATURE = { A: 75, B: 95, F: 115, H: 130 } as const;
