import { permittedStarts } from '../condition/indicators/starts';
import { unbalanceDerating } from '../condition/indicators/voltage-unbalance';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import type { DrivenMachine, Plate } from '../motor';
import { NORMAL_FACTOR } from '../quantity/coverage';
import type { Finding } from '../quantity/finding';
import { fixed } from '../quantity/words';
import { SAME_RATING } from '../same-rating';
import type { ReferenceTables, TorqueRow } from '../tables';
import { OPTIONS } from './findings';
import { type LoadPoint, onCurve } from './load-curve';
import { accelerating, type LeastTorques, largestInertia, runUpTime } from './starting';

/** What is to be checked: a motor in place of another. */
interface Change {
  readonly tables: ReferenceTables;
  readonly plate: Plate;
  readonly poles: number;
  readonly synchronousSpeedRpm: number;
  readonly newRatedPowerKw: number;
  readonly highestLoadKw: number;
  readonly exponent: number;
  /** Torque of the load by given points, in per cent of the present motor's rated speed and torque. */
  readonly curve?: readonly LoadPoint[] | undefined;
  /** Load of the new motor at its highest step, and the root mean square over the hours that it runs, over its rating. */
  readonly highestLoad?: number | undefined;
  /** Standard uncertainty of that highest load; absent or 0 where it is taken as stated. */
  readonly highestLoadU?: number | undefined;
  readonly rmsLoad?: number | undefined;
  /** Largest deviation from the mean of the line-to-line voltages, in per cent; highest ambient that was read, °C. */
  readonly unbalancePct?: number | undefined;
  readonly ambientC?: number | undefined;
}

/** Loads whose starting torque depends on what lies in or on them. */
const HARD_TO_START: ReadonlySet<DrivenMachine> = new Set(['conveyor', 'crusher', 'mill', 'hoist', 'compressor']);
/** Loads that are heavy to bring up to speed, themselves or with what they move. */
const HEAVY: ReadonlySet<DrivenMachine> = new Set(['fan', 'blower', 'mixer']);

/** Torque to break a load away over its running torque: loads with the square of speed, and others (common practice). */
const BREAKAWAY = { square: 0.3, other: 1.5 } as const;
/** Voltage during the start over rated voltage (common practice). */
const VOLTAGE_DIP = 0.9;
/** Lowest pull-up torque of any rating of designs A and B, over rated torque: NEMA MG 10, ranges by design letter (from memory). */
const LEAST_PULL_UP = 0.65;
/** An overload relay of the ordinary class trips after so many seconds at starting current (class 10; from memory). */
const RELAY_SECONDS = 10;
/** Altitude and ambient up to which a rating holds: US DOE Motor Systems Tip Sheet 10 (3300 ft, from memory, for the altitude). */
export const RATED_ALTITUDE_M = 1000;
export const RATED_AMBIENT_C = 40;
/** Above this unbalance no motor should run (NEMA MG 1 14.36). */
const MOST_UNBALANCE_PCT = 5;

/**
 * What must be confirmed before a motor is put in place of another; each as a finding `check-before`. A smaller rating has less in hand
 * for heat and for the start, and is checked for both.
 * Source: columns mounting and hazardous_location of the fleet sheet; tables of unbalance derating, starts and least torques; starting duty
 * as in {@link largestInertia} and {@link accelerating}.
 */
export function checksBefore(change: Change): Finding[] {
  const reasons = [...fitReasons(change.plate)];
  if (change.newRatedPowerKw < change.plate.ratedPowerKw * (1 - SAME_RATING))
    reasons.push(...heatReasons(change), ...startsReasons(change), ...startingReasons(change));
  return reasons.map(([check, detail]) => OPTIONS.make('check-before', { check, detail }));
}

type Reason = readonly [check: string, detail: string];

function* fitReasons(plate: Plate): Generator<Reason> {
  if (plate.mounting !== undefined && plate.mounting !== 'foot')
    yield ['mounting', `the mounting is ${plate.mounting}, not foot; shaft, flange or brake of the new motor must match`];
  if (plate.hazardousLocation === true)
    yield ['hazardous-location', 'the place is hazardous; the new motor needs the certificate for it'];
  if (plate.machineKind !== 'cage')
    yield ['machine-kind', `the motor is ${plate.machineKind}; why it was chosen must be known before a cage motor replaces it`];
  if (plate.designLetter === 'C' || plate.designLetter === 'D' || plate.designLetter === 'H')
    yield ['starting-torque', `design ${plate.designLetter} starts with more torque than an ordinary premium motor`];
}

function* startingReasons(change: Change): Generator<Reason> {
  const { drivenMachine: driven, loadInertiaKgm2: inertia } = change.plate;
  if (driven === undefined || driven === 'other') {
    if (!fromRest(change)) {
      yield ['driven-machine', 'what the motor drives, and so its starting duty, is not known'];
      return;
    }
  } else if (HARD_TO_START.has(driven) && !fromRest(change))
    yield ['starting-duty', `the starting torque of the ${driven} is not known`];
  if (driven === 'pump' && change.exponent < 2 && !fromRest(change))
    yield [
      'starting-duty',
      'whether the pump, whose torque does not go with the square of speed, starts against pressure is not known',
    ];
  // A drive starts its motor at low frequency and full torque: what a start across the line asks for does not apply.
  if (change.plate.driveFed === true) return;
  const largest = largestInertia(change.newRatedPowerKw, change.synchronousSpeedRpm);
  if (inertia === undefined && driven !== undefined && HEAVY.has(driven))
    yield ['inertia', `the inertia of the ${driven}, and so its run-up time, is not known`];
  if (inertia !== undefined && inertia > largest)
    yield [
      'inertia',
      `the load inertia of ${inertia} kg·m² exceeds the ${largest.toPrecision(3)} kg·m² that a motor of this rating must be able to start`,
    ];
  const torques = leastTorques(change.tables, change.newRatedPowerKw, change.poles);
  if (!torques) {
    yield [
      'starting-torque',
      'no table holds the least torques of a motor of this rating and speed, so that its start was not checked',
    ];
    return;
  }
  const { running, breakaway, shape } = loadOverRunUp(change);
  const left = accelerating({ torques, breakaway, running, shape, voltage: VOLTAGE_DIP });
  if (left.least < 0) {
    yield ['starting-torque', shortOfTorque(left.at, torques, breakaway, running * shape(left.at))];
    return;
  }
  if (inertia === undefined || inertia > largest) return;
  const seconds = runUpTime({
    inertiaKgm2: inertia,
    synchronousSpeedRpm: change.synchronousSpeedRpm,
    ratedPowerKw: change.newRatedPowerKw,
    mean: left.mean,
  });
  if (seconds !== undefined && seconds > RELAY_SECONDS)
    yield [
      'run-up-time',
      `at 90 % voltage the load alone may take ${seconds.toFixed(0)} s to come up to speed, longer than the ${RELAY_SECONDS} s of an ordinary overload relay`,
    ];
}

/** True when given points say what torque the load needs at rest. */
function fromRest({ curve }: Change): boolean {
  return curve?.[0]?.speedPct === 0;
}

/**
 * Torque of the load over the run-up, over the new rated torque. Given points hold as they are stated, raised where the highest load known lies
 * above them; where they do not begin at rest, the breakaway torque is that of common practice if this is higher.
 */
function loadOverRunUp(change: Change): { running: number; breakaway: number; shape: (speed: number) => number } {
  const { curve, exponent } = change;
  const running = change.highestLoadKw / change.newRatedPowerKw;
  const usual = (exponent === 2 ? BREAKAWAY.square : BREAKAWAY.other) * running;
  if (!curve) return { running, breakaway: usual, shape: (speed) => speed ** exponent };
  const full = onCurve(curve, 100).torquePct;
  const stated = ((full / 100) * change.plate.ratedPowerKw) / change.newRatedPowerKw;
  const most = Math.max(stated, running);
  const shape = (speed: number) => onCurve(curve, 100 * speed).torquePct / full;
  return { running: most, breakaway: fromRest(change) ? most * shape(0) : Math.max(usual, most * shape(0)), shape };
}

function shortOfTorque(at: number, torques: LeastTorques, breakaway: number, load: number): string {
  const pct = (share: number) => `${(100 * share).toFixed(0)} %`;
  if (at === 0)
    return `the load may need ${pct(breakaway)} of rated torque to start, and the smaller motor must give only ${pct(torques.locked * VOLTAGE_DIP ** 2)} at 90 % voltage`;
  return `at ${pct(at)} of speed the load may need ${pct(load)} of rated torque, and the smaller motor must give only ${pct(Math.min(torques.locked, torques.pullUp) * VOLTAGE_DIP ** 2)} at 90 % voltage`;
}

/** Heat: what the duty asks of the smaller motor against what the place and the supply leave of its rating. */
function* heatReasons(change: Change): Generator<Reason> {
  const { highestLoad = 0, highestLoadU = 0, rmsLoad = 0, unbalancePct = 0, ambientC } = change;
  const pct = (share: number) => `${(100 * share).toFixed(0)} %`;
  if (highestLoad > 1)
    yield [
      'highest-load',
      `at its own speed the smaller motor would carry ${pct(highestLoad)} of its rating at the highest step`,
    ];
  const upTo = highestLoad + NORMAL_FACTOR * highestLoadU;
  if (highestLoad <= 1 && upTo > 1)
    yield [
      'load-doubt',
      `the highest load asks for ${pct(highestLoad)} of the smaller rating by the estimate, and by its doubt for up to ${pct(upTo)}`,
    ];
  if (unbalancePct > MOST_UNBALANCE_PCT)
    yield [
      'unbalance',
      `the voltages are ${unbalancePct.toFixed(1)} % out of balance, and above ${MOST_UNBALANCE_PCT} % no motor should run`,
    ];
  else {
    const left = unbalanceDerating(change.tables.unbalanceDerating.rows, unbalancePct);
    if (rmsLoad > left)
      yield [
        'heat',
        `its duty asks for ${pct(rmsLoad)} of the smaller rating (root mean square), and a voltage unbalance of ${unbalancePct.toFixed(1)} % leaves ${pct(left)}`,
      ];
  }
  const altitude = change.plate.altitudeM;
  const left = shareLeftByPlace(altitude, ambientC);
  // Without a load at the new motor's own speed the place itself is what there is to check.
  const carries = change.highestLoad !== undefined && Math.max(highestLoad, rmsLoad) <= left;
  const asks = `the place leaves ${pct(left)} of the smaller rating, and the highest step asks for ${pct(highestLoad)}`;
  if (altitude !== undefined && altitude > RATED_ALTITUDE_M && !carries)
    yield ['altitude', `at ${fixed(altitude, 0)} m, above the ${fixed(RATED_ALTITUDE_M, 0)} m up to which ratings hold, ${asks}`];
  const asked = Math.max(highestLoad, rmsLoad);
  if ((altitude === undefined || ambientC === undefined) && asked <= 1 && asked > THIN)
    yield [
      'place',
      `its duty asks for ${pct(asked)} of the smaller rating, which a place above ${fixed(RATED_ALTITUDE_M, 0)} m or ${RATED_AMBIENT_C} °C may not leave, and ${unknownPlace(altitude, ambientC)}`,
    ];
  if (ambientC !== undefined && ambientC > RATED_AMBIENT_C && !carries)
    yield [
      'ambient',
      `at the ambient of ${ambientC.toFixed(0)} °C that was read, above the ${RATED_AMBIENT_C} °C up to which ratings hold, ${asks}`,
    ];
}

/** What of the place is not known, in words. */
export function unknownPlace(altitudeM: number | undefined, ambientC: number | undefined): string {
  if (altitudeM === undefined && ambientC === undefined) return 'neither altitude nor ambient is known';
  return altitudeM === undefined ? 'the altitude is not known' : 'the ambient is not known';
}

/** Above this share of its rating a motor has not the room for what a place not known may take: 1500 m, or 44 °C (assumed). */
const THIN = 0.95;

/** Rise by resistance of the rating, K: class B, to which ordinary premium motors are rated (common practice; NEMA MG 1 12.43, secondary). */
const RATED_RISE_K = 80;
/** The permitted rise falls by one hundredth for so many metres above the rated altitude: NEMA MG 1 14.4 (from memory). */
const METRES_A_PERCENT = 100;

/**
 * Share of its rating that a place high up or hot leaves to a motor: the share that is left of the permitted rise, by altitude, and by ambient kelvin for
 * kelvin. The load is taken to fall with the rise as it is, not with its root as the losses that vary would allow: constant losses take that room
 * (common practice, on the safe side down to half).
 *
 * Units: m, °C, a share from 0 to 1; nothing is taken off for what is not known. Source: NEMA MG 1 14.4 (from memory);
 * IEC 60034-1 limits of temperature rise (from memory).
 */
export function shareLeftByPlace(altitudeM: number | undefined, ambientC: number | undefined): number {
  const higher = Math.max(0, (altitudeM ?? 0) - RATED_ALTITUDE_M) / METRES_A_PERCENT / 100;
  const hotter = Math.max(0, (ambientC ?? RATED_AMBIENT_C) - RATED_AMBIENT_C) / RATED_RISE_K;
  return Math.max(0, 1 - higher) * Math.max(0, 1 - hotter);
}

function* startsReasons({ tables, plate, newRatedPowerKw, poles }: Change): Generator<Reason> {
  if (plate.driveFed === true) return;
  const starts = plate.startsPerHour;
  if (starts === undefined) {
    if (plate.flowControl === 'on-off')
      yield ['starts', 'the motor is run on and off, and how often it starts in an hour is not known'];
    return;
  }
  const found = permittedStarts(tables.starts.rows, { ratedPowerKw: newRatedPowerKw, poles, inertia: plate.loadInertiaKgm2 });
  if (found && starts > found.permitted)
    yield [
      'starts',
      `it starts ${starts} times an hour, and the smaller motor is permitted ${Number(found.permitted.toPrecision(2))}`,
    ];
}

const torques = new WeakMap<ReferenceTables, Map<number, TorqueRow[]>>();

/**
 * Least torques of design A and B: at a listed rating within a tenth, else the lesser of the listed ratings on both sides. A pull-up torque
 * that is not listed is the lowest of any rating; `undefined` where the table has no other torque of the rating.
 */
function leastTorques(tables: ReferenceTables, ratedPowerKw: number, poles: number): LeastTorques | undefined {
  let byPoles = torques.get(tables);
  if (!byPoles) {
    byPoles = new Map();
    for (const row of tables.torqueMinimums.rows) {
      if (row.design !== 'A_B') continue;
      const list = byPoles.get(row.poles) ?? [];
      list.push(row);
      byPoles.set(row.poles, list);
    }
    torques.set(tables, byPoles);
  }
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  const rows = byPoles.get(poles) ?? [];
  const least = (torque: TorqueRow['torque']) => {
    let [below, above]: (TorqueRow | undefined)[] = [];
    for (const row of rows) {
      if (row.torque !== torque) continue;
      if (Math.abs(row.ratedPowerHp / hp - 1) < 0.1) return row.pctOfRated / 100;
      if (row.ratedPowerHp < hp && row.ratedPowerHp > (below?.ratedPowerHp ?? 0)) below = row;
      if (row.ratedPowerHp > hp && row.ratedPowerHp < (above?.ratedPowerHp ?? Number.POSITIVE_INFINITY)) above = row;
    }
    return below && above && Math.min(below.pctOfRated, above.pctOfRated) / 100;
  };
  const [locked, breakdown] = [least('locked_rotor'), least('breakdown')];
  return locked === undefined || breakdown === undefined
    ? undefined
    : { locked, pullUp: least('pull_up') ?? LEAST_PULL_UP, breakdown };
}
