import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as $ from '../generated/money';
import type { DutyPoint, Machine, OperatingPoint } from '../machine/model';
import { assumedAmbient, type Conditions } from '../machine/operate';
import type { Motor, Plate, Reading } from '../motor';
import { rewindChange } from '../nameplate/rewind';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import type { Costs, Outlay } from './costs';
import { OPTIONS } from './findings';
import { type LoadLaw, loadLaw } from './load-law';
import {
  meanEfficiency,
  oldSteps,
  peakStep,
  type RunningStep,
  type RunningYear,
  repairedYear,
  runningYear,
  runs,
} from './running';
import { type RunningPrices, runningPrices } from './running-prices';
import type { Worth } from './value';

/** What the step needs of the ones before it. */
export interface WeighInput {
  readonly motor: Motor;
  readonly machine: Machine;
  /** Load and hours of each step; `undefined` when no hours are known. */
  readonly duty: readonly DutyPoint[] | undefined;
  /** The operating point of the latest usable reading. */
  readonly point?: OperatingPoint | undefined;
  /** Terminal over rated voltage of the existing motor; the new one sees the same. */
  readonly voltageRatio: Quantity<'1'>;
  /** True when the load is assumed or may not be used. */
  readonly screeningOnly: boolean;
  readonly callsForRepair: readonly ('rewind' | 'bearing-job')[];
}

/** The existing motor's side of every comparison. */
export interface Present {
  readonly plate: Plate;
  readonly machine: Machine;
  readonly failed: boolean;
  readonly law: LoadLaw;
  readonly conditions: Conditions;
  readonly tariff: RunningPrices;
  readonly steps: readonly RunningStep[];
  readonly peak: number;
  readonly year: RunningYear | undefined;
  readonly repairedYear: RunningYear | undefined;
  readonly rewind: Quantity<'1'>;
  readonly repairKind: 'rewind' | 'bearing-job';
  readonly repairNow: Outlay | undefined;
  readonly repairAtFailure: Outlay | undefined;
  readonly repairLater: Outlay | undefined;
  readonly stop: Worth | undefined;
  readonly stopCostUnknown: boolean;
  readonly highestLoadKw: number;
  /** What was read at it, oldest first. */
  readonly readings: readonly Reading[];
  readonly screening: readonly Finding[];
}

/** Takes together what every option of the motor is compared with. */
export function presentSide(scope: MotorScope, input: WeighInput, costs: Costs): Present {
  const { motor, machine } = input;
  const { plate } = motor;
  const failed = plate.status === 'failed';
  const calls = input.callsForRepair;
  const bearingsOnly = calls.length > 0 && !calls.includes('rewind');
  const repairKind = bearingsOnly ? 'bearing-job' : 'rewind';
  const conditions: Conditions = { voltageRatio: input.voltageRatio, ambient: assumedAmbient(scope) };
  const possible = oldSteps(scope, machine, input.duty, input.point, conditions);
  const steps = possible ?? [];
  const screening =
    input.screeningOnly && !failed ? [OPTIONS.make('screening-only', { assumed_load: scope.settings.assumedLoad })] : [];
  if (!possible) screening.push(OPTIONS.make('duty-beyond-breakdown', { rated_power_kw: plate.ratedPowerKw }));
  const peak = peakStep(steps);
  const tariff = runningPrices(scope, motor, input.duty === undefined || runs(steps));
  const year = runningYear(scope, steps, peak, tariff);
  const rewind = rewindChange(scope, plate.ratedPowerKw, 'rewind-change', 'efficiency lost in the next rewind');
  const efficiency = year && meanEfficiency(scope, steps, year);
  const repairedBy = failed && bearingsOnly ? undefined : rewind;
  const repairAtFailure = costs.repair('rewind', plate.ratedPowerKw, !bearingsOnly);
  const raised = calls.length > 0 && !failed;
  const stopCost = plate.standby === true ? 0 : plate.unplannedStopCost;
  return {
    plate,
    machine,
    failed,
    law: loadLaw(plate, scope.settings.loadCurves, ratedSpeed(machine)),
    conditions,
    tariff,
    steps,
    peak,
    year,
    repairedYear: year && repairedYear(scope, year, efficiency, repairedBy),
    rewind,
    repairKind,
    repairNow:
      failed || calls.length > 0
        ? bearingsOnly
          ? costs.repair('bearing-job', plate.ratedPowerKw, true)
          : repairAtFailure
        : undefined,
    repairAtFailure,
    // A quotation is for the work at hand; later repairs go by the list where it has them.
    repairLater:
      plate.quotedRepair === undefined ? repairAtFailure : (costs.listedRepair('rewind', plate.ratedPowerKw) ?? repairAtFailure),
    stop:
      raised && stopCost !== undefined
        ? {
            quantity: leaf(scope, {
              value: stopCost,
              unit: 'currency',
              label: 'cost of an unplanned stop',
              origin: plate.standby === true ? 'derived' : 'stamped',
              source: plate.standby === true ? 'an installed standby takes over' : 'fleet sheet, unplanned_stop_cost',
            }),
          }
        : undefined,
    stopCostUnknown: raised && stopCost === undefined,
    highestLoadKw: highestLoad(plate, steps, input.point),
    readings: motor.readings,
    screening,
  };
}

function ratedSpeed({ plate }: Machine): number {
  return plate.synchronousSpeed.value * (1 - plate.ratedSlip.value);
}

function highestLoad(plate: Plate, steps: readonly RunningStep[], point: OperatingPoint | undefined): number {
  let highest = Math.max(plate.peakLoadKw ?? 0, point?.shaftPower.value ?? 0);
  for (const step of steps) if (step.hours?.value !== 0) highest = Math.max(highest, step.point.shaftPower.value);
  return highest;
}

/** A year's running as a worth of the cash flow. */
export function runningWorth(year: RunningYear | undefined): Worth | undefined {
  const cost = year?.cost;
  return (
    cost && {
      quantity: cost.total,
      kwh: year.energy?.value,
      energy: cost.energy,
      demand: cost.demand,
      demandCost: cost.demandCost,
      powerFactor: cost.powerFactor,
    }
  );
}

/** Value that the old motor would have at the horizon: by age on the straight line, nothing when its year is not known. */
export function oldWorth(scope: MotorScope, plate: Plate, purchase: Quantity<'currency'> | undefined): Worth | undefined {
  const { settings } = scope;
  if (!purchase || plate.yearBuilt === undefined) return undefined;
  const rate = settings.failureRatePerYear;
  const age = Math.max(0, Number(settings.asOf.slice(0, 4)) - plate.yearBuilt) + settings.horizonYears;
  if (rate <= 0) return { quantity: purchase };
  if (age * rate >= 1) return undefined;
  return {
    quantity: apply(scope, $.straight_line_value, {
      purchase,
      salvage: exact(0, 'currency'),
      age: exact(age, 'a'),
      life: exact(1 / rate, 'a'),
    }),
  };
}
