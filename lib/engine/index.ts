/** The door of the engine: everything outside `lib/engine` imports from here, and what runs in the browser from `client.ts`. */

export { compareTests, type TestChange, type TestComparison } from './bench/compare';
export { type BenchEvaluation, evaluateBench } from './bench/evaluate';
export { BENCH_METHODS, type BenchMethodId } from './bench/method';
export { type BenchPointResult, type BenchResult, benchResult, type RegressionLine } from './bench/result';
export {
  BENCH_SECTIONS,
  type BenchInstruments,
  type BenchPlate,
  type BenchPoint,
  type BenchSections,
  type BenchTest,
  USUAL_INSTRUMENTS,
} from './bench/test';
export type { Tested } from './bench/tested';
export { FEWEST_SISTERS } from './condition/among-sisters';
export { BEARS_ON_SAFETY } from './condition/findings';
export { HYPOTHESIS_IDS, type HypothesisId } from './condition/hypothesis-id';
export type * from './condition/lines/line-result';
export { lineTable } from './condition/lines/line-table';
export { INDICATOR_TITLES, LIMIT_IDS } from './condition/registry';
export { compareSisters } from './condition/sisters';
export { urgencyOf } from './condition/urgency';
export type { MotorScope, StudyContext } from './context';
export { keepsPolicy } from './decide/limits';
export { type Evaluation, evaluateMotor } from './evaluate';
export { type Contribution, contributions } from './explain/contributions';
export { type FlowSoFar, flowSoFar } from './explain/cumulative-flow';
export { type Derivation, type DerivationStep, derive, type Verdict } from './explain/derivation';
export { type ExpectedRange, expectedReadings } from './explain/expected-readings';
export { figuresOf, INDICATOR_PATH } from './explain/figures';
export { type Lever, lowCase, moved, type Question, statedHours } from './explain/lever';
export { type AtTheMargin, atTheMargin } from './explain/margin';
export { type Model, modelOfEvaluation } from './explain/model';
export { type CurvePoint, partLoadCurve } from './explain/part-load';
export { repairOrReplaceCurve } from './explain/repair-or-replace';
export { type OptionBreakEven, optionBreakEven, optionCurve, optionTornado } from './explain/sensitivity';
export { type ShelfOf, shelfMotor, shelvesOf } from './explain/shelves';
export {
  type NoTorqueSpeed,
  type TorquePlace,
  type TorqueSpeed,
  type TorqueSpeedOutcome,
  torqueSpeed,
} from './explain/torque-speed';
export { type Turnings, turnings } from './explain/turning';
export {
  type MotorWorksheet,
  type Mover,
  motorWorksheet,
  type OptionWorksheet,
  type Product,
  type WorkLine,
  type WorthLines,
} from './explain/worksheet';
export { type MeasuresOfWorth, measuresOfWorth } from './explain/worth-measures';
export { type FlatResult, flatResult } from './flat-result';
export { meterCause, type SavedFigure, type Sum, type Summand, sharedInOption, sumOverMotors } from './fleet-sum';
export { KILOWATTS_PER_HORSEPOWER, MOST_HOURS_PER_YEAR } from './formula/constants';
export { FORMULAS } from './generated/catalog';
export { LOAD_METHODS } from './load/registry';
export type { Stated } from './money/appraisal';
export type { BreakEven } from './money/break-even';
export type { Increment } from './money/incremental';
export { fromMoney } from './money/money';
export type { Tornado } from './money/tornado';
export type * from './motor';
export { type FleetKey, fleetKeyOf, motorResult } from './motor-result';
export { type CarriedOut, carriedOut } from './options/carried-out';
export type { Basis, PlanLine } from './options/flow-counts';
export type { FlowPlan, LaterTerm } from './options/flow-plan';
export type { Screened, ScreenedPayback } from './options/measures/cost';
export { MEASURE_IDS, type Measure, type MeasureId } from './options/measures/measure';
export { countsTogether, type Measures, measuresOf } from './options/measures/measures';
export { BOUGHT_CLASSES } from './options/price';
export type { PriceGrowth } from './options/running-prices';
export { frontier, wishCosts } from './plan/alternatives';
export { planFleet } from './plan/plan-fleet';
export { motorKey, type PlanMotor, planMotor } from './plan/plan-motor';
export type { FrontierPoint, NoPlan, Plan, WishCost } from './plan/plan-result';
export { type LowCaseFactors, type MotorRef, type PlanWishes, USUAL_JOBS, USUAL_READINGS } from './plan/wishes';
export type { Finding } from './quantity/finding';
export type { Quantity } from './quantity/quantity';
export { standardUncertainty } from './quantity/quantity';
export { compareNaturally, type RankKey, rankKeyOf, ranksOf } from './rank';
export { movableOf } from './rerank/movable';
export type * from './result';
export { isSameRating, SAME_RATING } from './same-rating';
export type * from './settings';
export { PRICE_ITEMS } from './settings';
export type * from './tables';
export { billFits, yearBill } from './tariff/bill';
export { hiddenPeriods, unpricedHours } from './tariff/compile';
export { fleetSaving, type MotorSaving } from './tariff/fleet-saving';
export { marginalByPeriod, marginalPrices } from './tariff/marginal';
export { readSchedule } from './tariff/schedule';
export type * from './tariff/tariff';
export { needsUsage, ofYear, priceIndex } from './tariff/tariff';
export { usageBeyondPeak } from './tariff/usage-check';
export { ENGINE_VERSION } from './version';
