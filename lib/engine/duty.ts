import type { MotorScope } from './context';
import { apply, leaf } from './formula/apply';
import * as O from './generated/duty';
import type { ReadingEvaluation } from './load/reading';
import type { DutyPoint } from './machine/model';
import type { DutyStep, Motor } from './motor';
import { exact, type Quantity } from './quantity/quantity';

/** Doubt of stated hours, as a share (common practice). */
const HOURS_SPREAD = 0.05;

/** The duty in force; `screening` says that its load is assumed, not measured. */
export interface Duty {
  readonly points: readonly DutyPoint[];
  readonly screening: boolean;
}

/**
 * The duty in force: the profile of the highest row that carries one, else all hours at the load in use. Fractions refer to the shaft
 * load of the reading on the profile's row, or to rated power when that row has none. Without a usable load the study's assumed load
 * serves, with a wide interval, for screening. `undefined` when no hours are known.
 */
export function dutyInForce(
  scope: MotorScope,
  motor: Motor,
  readings: readonly ReadingEvaluation[],
  inUse: ReadingEvaluation | undefined,
): Duty | undefined {
  const profile = latestProfile(motor, readings);
  const load = inUse?.point?.loadFraction;
  if (profile) {
    const reference = profile.ofRated ? exact(1, '1') : (profile.reading?.point?.loadFraction ?? load);
    return {
      points: profile.steps.map((step, index) => ({
        loadFraction: apply(scope, O.load_of_step, {
          fraction: exact(step.fraction, '1'),
          reference: reference ?? assumedLoad(scope),
        }),
        hours: hoursOf(scope, step.hoursPerYear, `step ${index + 1} of the duty profile`),
      })),
      screening: load === undefined && !profile.ofRated,
    };
  }
  if (motor.hoursPerYear === undefined) return undefined;
  return {
    points: [{ loadFraction: load ?? assumedLoad(scope), hours: hoursOf(scope, motor.hoursPerYear, 'hours a year') }],
    screening: load === undefined,
  };
}

interface Profile {
  readonly row: number;
  readonly steps: readonly DutyStep[];
  readonly ofRated: boolean;
  readonly reading?: ReadingEvaluation;
}

function latestProfile(motor: Motor, readings: readonly ReadingEvaluation[]): Profile | undefined {
  let found: Profile | undefined = motor.plateDuty && { row: motor.plateDuty.row, steps: motor.plateDuty.steps, ofRated: true };
  for (const evaluated of readings) {
    const { duty, row } = evaluated.reading;
    if (duty && duty.length > 0 && (!found || row > found.row)) found = { row, steps: duty, ofRated: false, reading: evaluated };
  }
  return found;
}

function hoursOf(scope: MotorScope, value: number, label: string): Quantity<'h/a'> {
  return leaf(scope, {
    value,
    unit: 'h/a',
    label,
    origin: 'stamped',
    source: 'fleet sheet',
    doubts: [{ id: 'hours', label: 'hours of running', u: HOURS_SPREAD * value }],
  });
}

/** The study's assumed load, for motors that were not measured: wide on purpose (field surveys scatter by about 0.2). */
function assumedLoad(scope: MotorScope): Quantity<'1'> {
  return leaf(scope, {
    value: scope.settings.assumedLoad,
    unit: '1',
    label: 'assumed load',
    origin: 'assumed',
    source: 'setting assumed_load',
    doubts: [{ id: 'assumed-load', label: 'load not measured', u: 0.2 }],
  });
}
