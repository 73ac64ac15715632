import type { MotorScope } from '../context';
import { leaf } from '../formula/apply';
import { buildMachine } from '../machine/build';
import type { Machine } from '../machine/model';
import type { Plate } from '../motor';
import { classEfficiency } from '../nameplate/class-efficiency';
import { completePlate } from '../nameplate/complete';
import type { Quantity } from '../quantity/quantity';
import type { Price } from '../settings';
import type { Outlay } from './costs';
import { OPTIONS } from './findings';
import { keptReplacement } from './kept-machines';
import { type RebatedMotor, rebatePaid } from './moving-money';
import type { Replacement } from './on-offer';
import { shortRating } from './ratings';
import type { RunningStep, RunningYear } from './running';

/** A premium motor in place of the present one, with what it costs and takes. */
export interface Change {
  readonly replacement: Replacement;
  readonly outlay: Outlay;
  readonly steps: readonly RunningStep[];
  readonly year: RunningYear | undefined;
  readonly repairedYear: RunningYear | undefined;
}

/**
 * The premium motor of a rating in place of the existing one: same voltage, frequency, poles and enclosure.
 *
 * Efficiency and full-load speed as its line in the price list says, else the premium class by its table and the slip from the typical
 * share of the rotor loss. A listed speed of another pole count or frequency is passed over. Its tolerance is its own, so that it does not cancel against that of the old stamp.
 * `undefined` when no table holds the class.
 */
export function replacementMachine(
  scope: MotorScope,
  plate: Plate,
  old: Machine,
  ratedPowerKw: number,
  line: Price | undefined,
): Replacement | undefined {
  const newPlate: Plate = {
    ratedPowerKw,
    ratedPowerUnit: plate.ratedPowerUnit,
    status: 'running',
    ratedVoltageV: plate.ratedVoltageV,
    ratedFrequencyHz: plate.ratedFrequencyHz,
    poles: old.plate.poles,
    enclosure: plate.enclosure,
    machineKind: 'cage',
    efficiencyClass: 'premium',
    nominalEfficiencyPct: line?.nominalEfficiencyPct,
    ratedSpeedRpm: speedOf(line, old.plate.synchronousSpeed.value),
  };
  const frequencyHz = old.plate.ratedFrequency.value;
  const mark = [
    ratedPowerKw,
    plate.ratedPowerUnit,
    plate.ratedVoltageV,
    plate.ratedFrequencyHz,
    frequencyHz,
    old.plate.poles,
    plate.enclosure,
    newPlate.nominalEfficiencyPct,
    newPlate.ratedSpeedRpm,
  ].join(' ');
  return keptReplacement(scope, mark, (own) => machineOf(own, newPlate, old.plate.poles, frequencyHz));
}

/** The machine of a premium motor's plate; `frequencyHz` is that of the supply where the plate states none. */
function machineOf(scope: MotorScope, newPlate: Plate, poles: number, frequencyHz: number): Replacement | undefined {
  const { ratedPowerKw, enclosure, nominalEfficiencyPct } = newPlate;
  const prefix = `new ${shortRating(ratedPowerKw)} kW premium: `;
  const found = classEfficiency(scope.tables, {
    ratedPowerKw,
    poles,
    enclosure: enclosure ?? 'enclosed',
    frequencyHz,
    efficiencyClass: 'premium',
    standards: scope.settings.standards,
  });
  if (!found) return undefined;
  const completed = completePlate(scope, newPlate, prefix);
  const built = buildMachine(scope, newPlate, completed.plate, prefix);
  return {
    ratedPowerKw,
    machine: built.machine,
    nominalEfficiencyPct: completed.plate.efficiency.value * 100,
    findings: [
      ...completed.findings,
      ...built.findings,
      ...(found.inside || nominalEfficiencyPct !== undefined
        ? []
        : [OPTIONS.make('class-outside-table', { rated_power_kw: ratedPowerKw, poles })]),
    ],
  };
}

/** The listed full-load speed where it belongs to the synchronous speed; a cage motor's rated slip is below a tenth (NEMA MG 1, design N and B). */
function speedOf(line: Price | undefined, synchronousRpm: number): number | undefined {
  const listed = line?.ratedSpeedRpm;
  return listed !== undefined && listed < synchronousRpm && listed > 0.9 * synchronousRpm ? listed : undefined;
}

/** What the rebates of the study pay for a motor, see {@link rebatePaid}. */
export function rebateOf(scope: MotorScope, action: 'replace' | 'resize', motor: RebatedMotor): Quantity<'currency'> {
  const value = rebatePaid(scope.settings.rebates, action, motor);
  return leaf(scope, { value, unit: 'currency', label: 'rebate', origin: 'setting', source: 'setting rebates' });
}
