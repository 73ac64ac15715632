import { evaluateMotor, type Motor, motorResult } from '@/lib/engine';
import * as L from '@/lib/engine/generated/load';
import * as O from '@/lib/engine/generated/nameplate';
import { generateDemo } from '@/lib/features/demo/generate';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';

/** One measured figure of the perf run. */
export interface Measure {
  readonly what: string;
  readonly value: number;
  readonly unit: string;
  readonly bar?: string;
}

/** Median of several timings of a task, in milliseconds. */
export function medianOf(times: number, task: () => void): number {
  const taken: number[] = [];
  for (let i = 0; i < times; i++) {
    const start = performance.now();
    task();
    taken.push(performance.now() - start);
  }
  taken.sort((a, b) => a - b);
  return taken[Math.floor(times / 2)] ?? 0;
}

/** A generated formula beside the same expression written by hand: the ratio of their times. */
export function formulaAgainstHand(): Measure[] {
  const byHand = {
    load: (amps: number, rated: number, volts: number, ratedVolts: number) => (amps / rated) * (volts / ratedVolts),
    current: (p: number, eta: number, pf: number, v: number) => (1000 * p) / (Math.sqrt(3) * v * eta * pf),
  };
  const loops = 4_000_000;
  const time = (f: (...values: number[]) => number) =>
    medianOf(9, () => {
      let sum = 0;
      for (let i = 1; i <= loops; i++) sum += f(0.02 + i * 1e-10, 37, 0.93, 460);
      if (sum === 0) throw new Error('the sum cannot vanish');
    });
  time(byHand.load);
  return [
    {
      what: 'generated load by current over hand-written',
      value: time(L.load_from_current_ratio.f) / time(byHand.load),
      unit: 'ratio',
      bar: 'about 1',
    },
    {
      what: 'generated rated current over hand-written',
      value: time(O.rated_current_from_power.f) / time(byHand.current),
      unit: 'ratio',
      bar: 'about 1',
    },
  ];
}

/** Time of one evaluation, warm, one core, and its flatness over the size of the fleet. */
export function evaluationTimes(): Measure[] {
  const study = { settings: defaultSettings(), ...tablesAndPrices() };
  const motors: Motor[] = [];
  for (let seed = 1; motors.length < 2000; seed++)
    motors.push(...generateDemo({ asOf: '2026-01-01', seed }).map((entry) => entry.motor));
  const run = (count: number) => {
    for (let i = 0; i < count; i++) {
      const motor = motors[i % motors.length];
      if (motor) motorResult(evaluateMotor(motor, study));
    }
  };
  run(2000);
  const perMotor = (count: number) => (1000 * medianOf(5, () => run(count))) / count;
  const thousand = perMotor(2000);
  return [
    {
      what: 'evaluation of one motor with uncertainty and options, warm, one core',
      value: thousand,
      unit: 'µs',
      bar: '400 (2 s for 10,000 on two cores)',
    },
    { what: 'the same in blocks of 100 over blocks of 2,000', value: perMotor(100) / thousand, unit: 'ratio', bar: 'about 1' },
  ];
}

function tablesAndPrices() {
  const reference = loadTables();
  return { tables: reference.tables, prices: reference.prices };
}
