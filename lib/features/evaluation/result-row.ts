import { gzipSync } from 'node:zlib';
import {
  type Band,
  type Evaluation,
  type Figure,
  type FleetKey,
  fleetKeyOf,
  type MotorResult,
  motorResult,
  movableOf,
  type UnrankedMotor,
} from '@/lib/engine';
import { limitsOf95 } from '@/lib/platform/format';
import { toMinor } from '@/lib/platform/money';
import { openFindingsOf } from './open-findings';

/** What lists sort by, as columns of table MotorEvaluation; without ids, rank and place. Money in minor units. */
interface ResultColumns {
  readonly siteName: string;
  readonly areaName: string | null;
  readonly tag: string;
  readonly ratedPowerKw: number;
  readonly loadFraction: number | null;
  readonly loadFractionU: number | null;
  readonly loadFractionLow: number | null;
  readonly loadFractionHigh: number | null;
  readonly shaftPowerKw: number | null;
  readonly shaftPowerKwU: number | null;
  readonly shaftPowerKwLow: number | null;
  readonly shaftPowerKwHigh: number | null;
  readonly inputPowerKw: number | null;
  readonly inputPowerKwU: number | null;
  readonly inputPowerKwLow: number | null;
  readonly inputPowerKwHigh: number | null;
  readonly efficiency: number | null;
  readonly efficiencyU: number | null;
  readonly efficiencyLow: number | null;
  readonly efficiencyHigh: number | null;
  readonly totalLossKw: number | null;
  readonly totalLossKwU: number | null;
  readonly totalLossKwLow: number | null;
  readonly totalLossKwHigh: number | null;
  readonly trust: string;
  readonly worstBand: string | null;
  readonly action: string;
  readonly timing: string;
  readonly option: string;
  readonly costMinor: number | null;
  readonly moneySavedMinorPerYear: number | null;
  readonly moneySavedMinorPerYearU: number | null;
  readonly energySavedKwhPerYear: number | null;
  readonly energySavedKwhPerYearU: number | null;
  readonly simplePaybackYears: number | null;
  readonly simplePaybackYearsU: number | null;
  readonly netPresentValueMinor: number | null;
  readonly netPresentValueMinorU: number | null;
  readonly internalRateOfReturn: number | null;
  readonly probabilityWithinPolicy: number | null;
  readonly rankGroup: number;
  /** {@link OpenFindings} as JSON. */
  readonly openFindings: string;
}

/** One motor's result, ready for the database. */
export interface EvaluatedRow {
  readonly columns: ResultColumns;
  /** What the steps over the fleet need of it. */
  readonly key: FleetKey;
  /** The result without rank and sisters, with what those go by: JSON, gzip. */
  readonly details: Uint8Array;
  /** What the motor's ranking at other prices needs: JSON, gzip. */
  readonly movable: Uint8Array;
}

/** What the compressed value holds: the result as in the results file, with what the steps over the fleet go by in place of what they give. */
export type StoredResult = UnrankedMotor;

/** An evaluation as columns and compressed wholes. @param currency the study's: money is kept in its minor units. */
export function resultRow(evaluation: Evaluation, currency: string): EvaluatedRow {
  const result = motorResult(evaluation);
  const chosen = result.options.find((option) => option.id === result.decision.option);
  const [energy, money, payback, value] = [
    chosen?.energy_saved,
    chosen?.money_saved,
    chosen?.simple_payback,
    chosen?.net_present_value,
  ];
  const minor = (amount: number | undefined): number | null => (amount === undefined ? null : Number(toMinor(amount, currency)));
  return {
    columns: {
      siteName: result.site,
      areaName: result.area ?? null,
      tag: result.tag,
      ratedPowerKw: result.rated_power_kw,
      ...limited('loadFraction', result.load_fraction),
      ...limited('shaftPowerKw', result.shaft_power),
      ...limited('inputPowerKw', result.input_power),
      ...limited('efficiency', result.efficiency),
      ...limited('totalLossKw', result.losses?.total),
      trust: result.trust.level,
      worstBand: worstBand(result) ?? null,
      action: result.decision.action,
      timing: result.decision.timing,
      option: result.decision.option,
      costMinor: minor(chosen?.cost),
      moneySavedMinorPerYear: minor(money?.value),
      moneySavedMinorPerYearU: minor(money?.u),
      ...pair('energySavedKwhPerYear', energy),
      ...pair('simplePaybackYears', payback),
      netPresentValueMinor: minor(value?.value),
      netPresentValueMinorU: minor(value?.u),
      internalRateOfReturn: chosen?.internal_rate_of_return ?? null,
      probabilityWithinPolicy: chosen?.probability_within_policy ?? null,
      rankGroup: result.ranking.group,
      openFindings: JSON.stringify(openFindingsOf(result)),
    },
    key: fleetKeyOf(result),
    details: gzipSync(JSON.stringify(result), { level: 1 }),
    movable: gzipSync(JSON.stringify(movableOf(evaluation)), { level: 1 }),
  };
}

type Pair<Name extends string> = { readonly [Key in Name | `${Name}U`]: number | null };

function pair<Name extends string>(name: Name, figure: Figure | undefined): Pair<Name> {
  const both: Readonly<Record<string, number | null>> = { [name]: figure?.value ?? null, [`${name}U`]: figure?.u ?? null };
  // A computed key widens to text: the two members are those of the type.
  return both as Pair<Name>;
}

type Limited<Name extends string> = Pair<Name> & { readonly [Key in `${Name}Low` | `${Name}High`]: number | null };

function limited<Name extends string>(name: Name, figure: Figure | undefined): Limited<Name> {
  const limits = figure && limitsOf95(figure);
  const both: Readonly<Record<string, number | null>> = {
    ...pair(name, figure),
    [`${name}Low`]: limits?.low ?? null,
    [`${name}High`]: limits?.high ?? null,
  };
  // As in `pair`.
  return both as Limited<Name>;
}

const BANDS_FROM_WORST: readonly Band[] = ['beyond', 'near', 'within'];

/** The worst band among the indicators that gave a verdict; absent when none did. */
function worstBand(result: Pick<MotorResult, 'condition'>): Band | undefined {
  const found = new Set(result.condition.indicators.map((indicator) => indicator.band));
  return BANDS_FROM_WORST.find((band) => found.has(band));
}
