import { minorDigits } from '@/lib/platform/money';
import { type Reader, readShownRunId } from '../evaluation/data';
import { readStudy } from '../study/data';
import { FLEET_FACT_NAMES, type FleetFact, type FleetPack } from './fleet-row';

/** Where each fact of a row comes from: `m` the motor, `d` its driven load, `a` its area, `e` its evaluation. */
const SOURCES: Readonly<Record<FleetFact, string>> = {
  id: 'm."id"',
  version: 'm."version"',
  site: `NULLIF(m."siteName", '')`,
  tag: 'm."tag"',
  area: 'a."name"',
  description: 'm."description"',
  status: 'm."status"',
  rated_power_kw: 'm."ratedPowerKw"',
  rated_voltage_v: 'm."ratedVoltageV"',
  rated_speed_rpm: 'm."ratedSpeedRpm"',
  poles: 'm."poles"',
  efficiency_class: 'm."efficiencyClass"',
  nominal_efficiency_pct: 'm."nominalEfficiencyPct"',
  frame: 'm."frame"',
  year_built: 'm."yearBuilt"',
  driven_machine: 'd."drivenMachine"',
  hours_per_year: 'd."hoursPerYear"',
  readings: '(SELECT COUNT(*) FROM "Reading" AS r WHERE r."motorId" = m."id" AND r."excludedAt" IS NULL)',
  rank: 'e."rank"',
  load_fraction: 'e."loadFraction"',
  load_fraction_u: 'e."loadFractionU"',
  load_fraction_low: 'e."loadFractionLow"',
  load_fraction_high: 'e."loadFractionHigh"',
  shaft_power_kw: 'e."shaftPowerKw"',
  shaft_power_kw_u: 'e."shaftPowerKwU"',
  shaft_power_kw_low: 'e."shaftPowerKwLow"',
  shaft_power_kw_high: 'e."shaftPowerKwHigh"',
  input_power_kw: 'e."inputPowerKw"',
  input_power_kw_u: 'e."inputPowerKwU"',
  input_power_kw_low: 'e."inputPowerKwLow"',
  input_power_kw_high: 'e."inputPowerKwHigh"',
  efficiency: 'e."efficiency"',
  efficiency_u: 'e."efficiencyU"',
  efficiency_low: 'e."efficiencyLow"',
  efficiency_high: 'e."efficiencyHigh"',
  loss_total_kw: 'e."totalLossKw"',
  loss_total_kw_u: 'e."totalLossKwU"',
  loss_total_kw_low: 'e."totalLossKwLow"',
  loss_total_kw_high: 'e."totalLossKwHigh"',
  trust: 'e."trust"',
  band: 'e."worstBand"',
  action: 'e."action"',
  timing: 'e."timing"',
  option: 'e."option"',
  cost: 'e."costMinor"',
  money_saved: 'e."moneySavedMinorPerYear"',
  money_saved_u: 'e."moneySavedMinorPerYearU"',
  energy_saved_kwh_a: 'e."energySavedKwhPerYear"',
  energy_saved_kwh_a_u: 'e."energySavedKwhPerYearU"',
  simple_payback_a: 'e."simplePaybackYears"',
  simple_payback_a_u: 'e."simplePaybackYearsU"',
  net_present_value: 'e."netPresentValueMinor"',
  net_present_value_u: 'e."netPresentValueMinorU"',
  internal_rate_of_return: 'e."internalRateOfReturn"',
  probability_within_policy: 'e."probabilityWithinPolicy"',
  rank_group: 'e."rankGroup"',
};

/**
 * A study's list as JSON text: the database itself writes it, so that ten thousand rows cost no objects here.
 * @returns `undefined` when there is no such study.
 */
export async function readFleetPack(db: Reader, studyId: string): Promise<string | undefined> {
  const study = await readStudy(db, studyId);
  if (study === undefined) return undefined;
  const runId = await readShownRunId(db, studyId);
  const facts = FLEET_FACT_NAMES.map((name) => SOURCES[name]).join(', ');
  const rows = await db.$queryRawUnsafe<{ readonly text: string | null }[]>(
    `SELECT group_concat("row") AS "text" FROM (
       SELECT json_array(${facts}) AS "row" FROM "Motor" AS m
       LEFT JOIN "DrivenLoad" AS d ON d."motorId" = m."id"
       LEFT JOIN "Area" AS a ON a."id" = m."areaId"
       LEFT JOIN "MotorEvaluation" AS e ON e."motorId" = m."id" AND e."runId" = ?
       WHERE m."studyId" = ? ORDER BY m."naturalKey")`,
    runId ?? '',
    studyId,
  );
  const { currency, horizonYears } = study.settings;
  const head: Omit<FleetPack, 'rows'> = {
    currency,
    minorDigits: minorDigits(currency),
    horizonYears,
    ...(runId !== undefined && { runId }),
    names: FLEET_FACT_NAMES,
  };
  return `${JSON.stringify(head).slice(0, -1)},"rows":[${rows[0]?.text ?? ''}]}`;
}
