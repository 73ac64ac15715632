import { evaluateMotor, type Motor, type MotorScope } from '@/lib/engine';
import { evaluateReadings } from '@/lib/engine/load/reading';
import { buildMachine } from '@/lib/engine/machine/build';
import { completePlate } from '@/lib/engine/nameplate/complete';
import { Sources } from '@/lib/engine/quantity/quantity';
import { parseFleet } from '@/lib/features/fleet/parse';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { corruptFleet } from '../simulator/corrupt';
import { sheetText, simulateFleet } from '../simulator/fleet';
import type { Cells } from '../simulator/plate';
import { Chance } from '../simulator/random';
import { byHand, withTruth } from './by-hand';

/**
 * `npm run perf -- joint [motors]`: time a motor of the load step (plate, machine, loads and losses; no options, no JSON) on one
 * core, over a mixed sheet with one misfit in twenty-five, beside the published hand methods in numpy on the same sheet, as a ratio.
 */
const count = Number(process.argv[2] ?? 2000);
const MISFITS = 0.04;
const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };

/** A mixed sheet: honest rows, and among them a few with a planted mistake. */
function mixedSheet(): readonly { readonly cells: Cells; readonly row: Cells }[] {
  const fleet = simulateFleet({ seed: 61, motors: count });
  const planted = corruptFleet(new Chance(62), fleet, Math.max(1, Math.round((MISFITS * count) / 15)));
  const misfits = new Map(planted.slice(0, Math.round(MISFITS * count)).map((one) => [one.motor.cells.tag, one.cells]));
  return fleet.map((motor) => {
    const misfit = misfits.get(motor.cells.tag);
    const cells = { ...(misfit ?? motor.cells), tag: motor.cells.tag ?? '' };
    // A planted mistake would drown the hand methods' own error, so its row carries no truth.
    return { cells, row: misfit ? cells : withTruth(motor) };
  });
}

/** The load step of one motor. */
function loadStep(motor: Motor): number {
  const scope: MotorScope = { ...study, sources: new Sources() };
  const speed = motor.readings.find(({ shaftSpeedRpm }) => shaftSpeedRpm !== undefined)?.shaftSpeedRpm;
  const { plate } = completePlate(scope, motor.plate, '', speed);
  let sum = 0;
  const fromPlate = buildMachine(scope, motor.plate, plate, '');
  for (const { point } of evaluateReadings(scope, motor.plate, plate, fromPlate, motor.readings).readings)
    sum += point?.shaftPower.value ?? 0;
  return sum;
}

const sheet = mixedSheet();
const parsed = await parseFleet(
  { name: 'mixed.csv', text: sheetText(sheet.map(({ cells }) => cells)) },
  { asOf: study.settings.asOf },
);
if (!parsed.ok) throw new Error(parsed.problem.text);
const motors = parsed.motors.map(({ motor }) => motor);
/** Processor time, not that of the clock: others may be using the machine. The median of nine runs after one to warm up. */
const perMotor = (task: (motor: Motor) => unknown): number => {
  const run = () => {
    const before = process.cpuUsage();
    for (const motor of motors) task(motor);
    const { user, system } = process.cpuUsage(before);
    return user + system;
  };
  run();
  const taken = Array.from({ length: 9 }, run).sort((a, b) => a - b);
  return (taken[4] ?? Number.NaN) / motors.length;
};
const engine = perMotor(loadStep);
const hand = byHand(sheet.map(({ row }) => row));
const print = (what: string, value: number, unit: string) =>
  console.log(`  ${what.padEnd(64)} ${value.toPrecision(3).padStart(8)} ${unit}`);
console.log(`Load step on a mixed sheet of ${motors.length} motors, one core`);
print('engine, a motor (bar: 200)', engine, 'µs');
print(
  'whole evaluation with options, a motor',
  perMotor((motor) => evaluateMotor(motor, study)),
  'µs',
);
if (hand === undefined) console.log('  no Python with numpy here: the hand methods were not timed');
else {
  print('hand methods in numpy, a motor', hand.microseconds, 'µs');
  print('engine over hand methods', engine / hand.microseconds, 'ratio');
  for (const [name, value] of Object.entries(hand.errors ?? {}))
    print(`hand methods, mean absolute error on honest rows: ${name}`, value, 'points');
}
