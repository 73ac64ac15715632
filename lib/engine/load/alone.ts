import type { MotorScope } from '../context';
import type { Machine } from '../machine/model';
import type { Plate, Reading } from '../motor';
import type { Finding } from '../quantity/finding';
import type { Quantity } from '../quantity/quantity';
import type { MethodId } from '../result';
import { LOAD } from './findings';
import { speaksOfLoad } from './joint';
import { type Metered, meterReading } from './metered';
import type { MethodOutcome } from './method';
import { LOAD_METHODS } from './registry';

/** One way's answer for one reading, with why it was used or not. */
export interface Estimate {
  readonly method: MethodId;
  readonly loadFraction: Quantity<'1'>;
  readonly used: boolean;
  readonly why: readonly string[];
}

/** Loads outside these are taken for errors, not for loads. */
export const LOWEST = 0.005;
export const HIGHEST = 1.6;

/** A reading on its own, before all are taken together. */
export interface Alone {
  readonly reading: Reading;
  readonly metered: Metered;
  readonly estimates: readonly Estimate[];
  readonly findings: readonly Finding[];
  /** Ways whose load is impossible: what they rest upon is left out. */
  readonly failed: readonly MethodId[];
  readonly missing: readonly string[];
  readonly disqualified: boolean;
}

/** Evaluates one reading by each way to the load, on the machine of the plate alone. */
export function evaluateAlone(scope: MotorScope, plate: Plate, machine: Machine, reading: Reading): Alone {
  const metered = meterReading(scope, plate, machine, reading);
  const findings: Finding[] = [...metered.findings];
  const { row } = reading;
  if (reading.readingCondition === 'uncoupled') {
    return {
      reading,
      metered,
      estimates: [],
      failed: [],
      missing: [],
      disqualified: false,
      findings: [...findings.filter(({ severity }) => severity !== 'disqualifies'), LOAD.make('uncoupled-reading', { row })],
    };
  }
  const estimates: Estimate[] = [];
  const failed: MethodId[] = [];
  const missing = new Set<string>();
  const before = new Map<MethodId, MethodOutcome>();
  for (const method of LOAD_METHODS) {
    const outcome = method.estimate(scope, { machine, metered, plate, before });
    before.set(method.id, outcome);
    findings.push(...outcome.findings);
    for (const name of outcome.missing) missing.add(name);
    const load = outcome.loadFraction;
    const impossible = load ? !(load.value > LOWEST && load.value < HIGHEST) : outcome.outOfRange !== undefined;
    if (impossible) {
      failed.push(method.id);
      const value = load?.value ?? (outcome.outOfRange === 'below' ? 0 : HIGHEST);
      findings.push(
        impossibleLoad(row, method.id, machine, metered, { load: value, found: outcome.outOfRange === 'above' ? 'no' : 'yes' }),
      );
    }
    const why = impossible ? [...outcome.why, 'outside what a motor can carry'] : outcome.why;
    if (load) estimates.push({ method: method.id, loadFraction: load, used: false, why });
  }
  // One impossible value makes the whole row doubtful: nothing of it may be used for energy.
  const disqualified = findings.some(({ severity }) => severity === 'disqualifies');
  return {
    reading,
    metered,
    findings,
    failed,
    missing: [...missing],
    disqualified,
    estimates: disqualified
      ? estimates.map((each) => ({ ...each, why: [...each.why, 'the reading holds an impossible value'] }))
      : estimates,
  };
}

/** Input below what the free-running motor takes is impossible; other loads out of range are a way that failed. */
function impossibleLoad(
  row: number,
  method: MethodId,
  machine: Machine,
  metered: Metered,
  { load, found }: { readonly load: number; readonly found: 'yes' | 'no' },
): Finding {
  const noLoad = machine.rated.core.value + machine.rated.frictionWindage.value;
  if (method === 'input-power' && load <= LOWEST && metered.inputPower) {
    return LOAD.make('power-below-no-load', { row, input_power: metered.inputPower.value, no_load: noLoad });
  }
  return LOAD.make('load-impossible', { row, method, load, found });
}

/** True where a reading may speak of the load. */
export function isUsable(each: Alone): boolean {
  const { reading, disqualified, metered } = each;
  return reading.readingCondition !== 'uncoupled' && !disqualified && speaksOfLoad(metered) && speaksOfLoad(possibleOnly(each));
}

/** The metered values of ways that gave a possible load; the others would only pull the rest along. */
export function possibleOnly({ failed, metered }: Alone): Metered {
  if (failed.length === 0) return metered;
  return {
    ...metered,
    inputPower: failed.includes('input-power') ? undefined : metered.inputPower,
    current: failed.includes('current') ? undefined : metered.current,
    speed: failed.includes('slip') ? undefined : metered.speed,
  };
}
