import type { StudyContext } from '../context';
import { evaluateMotor } from '../evaluate';
import { KILOWATTS_PER_HORSEPOWER } from '../formula/constants';
import { type BreakEven, breakEven } from '../money/break-even';
import type { EfficiencyClass, Enclosure, Motor } from '../motor';
import { standardRatings } from '../options/ratings';

/** The motors that the curve is for. */
interface RepairOrReplace {
  readonly site: string;
  readonly ratedVoltageV: number;
  readonly poles: number;
  readonly enclosure: Enclosure;
  readonly efficiencyClass: EfficiencyClass;
  /** Load as a share of the rating. */
  readonly load: number;
  readonly fromKw: number;
  readonly toKw: number;
}

/** Hours a year from which a failed motor of a rating had better be replaced than rewound; `always` and `never` say just that. */
interface RepairOrReplacePoint {
  readonly ratedPowerKw: number;
  readonly hours: BreakEven;
}

/** Hours of a common year. */
const YEAR_HOURS = 8760;

/**
 * Repair or replace by rating and hours: for each standard rating the hours a year at which a rewind and a premium motor of the same rating
 * are worth the same over the horizon. A failed motor of the class is evaluated in full, at constant torque, with the prices, tariff, rebates
 * and rules of the study.
 *
 * Units: kW, h/a. `unknown` where a price or the class is missing. Source: net present value of either, see {@link evaluateMotor}.
 */
export function repairOrReplaceCurve(study: StudyContext, given: RepairOrReplace): readonly RepairOrReplacePoint[] {
  const middle = Math.sqrt(given.fromKw * given.toKw);
  return standardRatings(study.tables, study.settings.standards, middle)
    .filter((rating) => rating >= given.fromKw && rating <= given.toKw)
    .map((ratedPowerKw) => ({
      ratedPowerKw,
      hours: breakEven((hours) => replacementLessRepair(study, failedMotor(study, given, ratedPowerKw, hours)), 1, YEAR_HOURS),
    }));
}

function failedMotor(study: StudyContext, given: RepairOrReplace, ratedPowerKw: number, hours: number): Motor {
  const hp = ratedPowerKw / KILOWATTS_PER_HORSEPOWER;
  return {
    site: given.site,
    tag: 'any',
    plate: {
      ratedPowerKw,
      ratedPowerUnit: Math.abs(hp - Math.round(2 * hp) / 2) < 1e-6 ? 'hp' : 'kW',
      status: 'failed',
      ratedVoltageV: given.ratedVoltageV,
      ratedFrequencyHz: study.settings.frequencyHz,
      poles: given.poles,
      enclosure: given.enclosure,
      efficiencyClass: given.efficiencyClass,
      machineKind: 'cage',
    },
    plateDuty: { row: 1, steps: [{ fraction: given.load, hoursPerYear: hours }] },
    readings: [],
  };
}

function replacementLessRepair(study: StudyContext, motor: Motor): number | undefined {
  const { options } = evaluateMotor(motor, study);
  const worth = (action: 'repair' | 'replace') =>
    options.find((option) => option.action === action)?.figures.net_present_value?.value;
  const [replace, repair] = [worth('replace'), worth('repair')];
  return replace === undefined || repair === undefined ? undefined : replace - repair;
}
