import type { MotorScope } from '../context';
import type { Machine, OperatingPoint } from '../machine/model';
import { operatingPoint } from '../machine/operate';
import type { Plate, Reading } from '../motor';
import type { Finding } from '../quantity/finding';
import { type Quantity, standardUncertainty } from '../quantity/quantity';
import type { MethodId } from '../result';
import { type Combination, combineEstimates } from './combine';
import { LOAD } from './findings';
import { type Metered, meterReading } from './metered';
import { LOAD_METHODS } from './registry';

/** One way's answer for one reading, with why it was used or not. */
export interface Estimate {
  readonly method: MethodId;
  readonly loadFraction: Quantity<'1'>;
  readonly used: boolean;
  readonly why: readonly string[];
}

/** A reading with what follows from it. */
export interface ReadingEvaluation {
  readonly reading: Reading;
  readonly metered: Metered;
  readonly estimates: readonly Estimate[];
  readonly combination?: Combination | undefined;
  /** The consistent operating point at the combined load; absent when the reading gives no usable load. */
  readonly point?: OperatingPoint | undefined;
  readonly findings: readonly Finding[];
}

/** Loads outside these are taken for errors, not for loads. */
const LOWEST = 0.005;
const HIGHEST = 1.6;

/** Evaluates one reading: each way to the load, their combination, and the operating point there. */
export function evaluateReading(scope: MotorScope, plate: Plate, machine: Machine, reading: Reading): ReadingEvaluation {
  const metered = meterReading(scope, plate, machine, reading);
  const findings: Finding[] = [...metered.findings];
  if (reading.readingCondition === 'uncoupled') {
    return {
      reading,
      metered,
      estimates: [],
      findings: [
        ...findings.filter((found) => found.severity !== 'disqualifies'),
        LOAD.make('uncoupled-reading', { row: reading.row }),
      ],
    };
  }
  const tried: (Omit<Estimate, 'used'> & { readonly possible: boolean })[] = [];
  const missing = new Set<string>();
  for (const method of LOAD_METHODS) {
    const outcome = method.estimate(scope, { machine, metered });
    findings.push(...outcome.findings);
    for (const name of outcome.missing) missing.add(name);
    const load = outcome.loadFraction;
    if (!load || !Number.isFinite(load.value)) continue;
    const possible = load.value > LOWEST && load.value < HIGHEST;
    if (!possible) findings.push(impossible(reading.row, method.id, machine, metered, load.value));
    tried.push({ method: method.id, loadFraction: load, possible, why: outcome.why });
  }
  // One impossible value makes the whole row doubtful: nothing of it may be used for energy.
  const disqualified = findings.some((found) => found.severity === 'disqualifies');
  const estimates = tried.map(
    ({ method, loadFraction, possible, why }): Estimate => ({
      method,
      loadFraction,
      used: possible && !disqualified,
      why: [
        ...why,
        ...(possible ? [] : ['outside what a motor can carry']),
        ...(disqualified ? ['the reading holds an impossible value'] : []),
      ],
    }),
  );
  const combination = combineEstimates(
    scope,
    estimates.filter((estimate) => estimate.used),
  );
  if (!combination) {
    if (!disqualified)
      findings.push(
        LOAD.make('reading-without-load', { row: reading.row, missing: [...missing].join(', ') || 'nothing usable' }),
      );
    return { reading, metered, estimates, findings };
  }
  if (combination.birgeRatio > 1)
    findings.push(
      LOAD.make('estimates-disagree', { row: reading.row, p: combination.agreement?.p ?? 0, spread: spreadOf(estimates) }),
    );
  const point = operatingPoint(scope, machine, combination.loadFraction, {
    voltageRatio: metered.voltageRatio,
    windingTemperature: metered.windingTemperature,
    ambient: metered.ambient,
  });
  return { reading, metered, estimates, combination, point, findings };
}

/** Input below what the free-running motor takes is impossible; other loads out of range are a way that failed. */
function impossible(row: number, method: MethodId, machine: Machine, metered: Metered, load: number): Finding {
  const noLoad = machine.rated.core.value + machine.rated.frictionWindage.value;
  if (method === 'input-power' && load <= LOWEST && metered.inputPower) {
    return LOAD.make('power-below-no-load', { row, input_power: metered.inputPower.value, no_load: noLoad });
  }
  return LOAD.make('load-impossible', { row, method, load });
}

function spreadOf(estimates: readonly Estimate[]): string {
  return estimates
    .filter((estimate) => estimate.used)
    .map(
      (estimate) =>
        `${estimate.method} ${(estimate.loadFraction.value * 100).toFixed(0)} ± ${(196 * standardUncertainty(estimate.loadFraction)).toFixed(0)} %`,
    )
    .join(', ');
}
