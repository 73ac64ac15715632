/** The only door of the engine: everything outside `lib/engine` imports from here. */

export type { CircuitOutcome, CircuitTests, FittedCircuit } from './bench/circuit-from-tests';
export { circuitFromTests } from './bench/circuit-from-tests';
export { compareTests, type TestChange, type TestComparison } from './bench/compare';
export { type BenchContext, type BenchEvaluation, evaluateBench } from './bench/evaluate';
export { BENCH_METHODS, type BenchMethodId, benchMethod } from './bench/method';
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
export type { MeasuredLosses, Tested } from './bench/tested';
export { FEWEST_SISTERS } from './condition/among-sisters';
export { BEARS_ON_SAFETY } from './condition/findings';
export { HYPOTHESIS_IDS, type HypothesisId } from './condition/hypothesis-id';
export type * from './condition/lines/line-result';
export { lineTable } from './condition/lines/line-table';
export { INDICATOR_TITLES, LIMIT_IDS } from './condition/registry';
export { compareSisters } from './condition/sisters';
export { type Urgency, urgencyOf } from './condition/urgency';
export type { MotorScope, StudyContext } from './context';
export { keepsPolicy } from './decide/limits';
export { type Evaluation, evaluateMotor } from './evaluate';
export { type Contribution, contributions } from './explain/contributions';
export { type FlowSoFar, flowSoFar } from './explain/cumulative-flow';
export { type Derivation, type DerivationStep, derive, type Verdict } from './explain/derivation';
export { type ExpectedRange, type ExpectedReadings, expectedReadings } from './explain/expected-readings';
export { figuresOf, INDICATOR_PATH } from './explain/figures';
export { LEVERS, type Lever, lowCase, moved, type Question, statedHours } from './explain/lever';
export { type AtTheMargin, atTheMargin } from './explain/margin';
export { type Model, type ModelNumber, type ModelSystem, modelOfEvaluation } from './explain/model';
export { type CurvePoint, partLoadCurve } from './explain/part-load';
export { type RepairOrReplace, type RepairOrReplacePoint, repairOrReplaceCurve } from './explain/repair-or-replace';
export {
  type Asked,
  type OptionBreakEven,
  optionBreakEven,
  optionCurve,
  optionTornado,
  usualRanges,
} from './explain/sensitivity';
export { type ShelfMotor, type ShelfOf, shelfMotor, shelvesOf } from './explain/shelves';
export {
  type NoTorqueSpeed,
  type TorquePlace,
  type TorqueSpeed,
  type TorqueSpeedOutcome,
  torqueSpeed,
} from './explain/torque-speed';
export { type Turning, type TurningLever, type Turnings, turnings } from './explain/turning';
export {
  type MotorWorksheet,
  type Mover,
  motorWorksheet,
  type OptionWorksheet,
  type Product,
  type WorkLine,
  type WorthLines,
} from './explain/worksheet';
export { type BaselineCost, type MeasuresOfWorth, measuresOfWorth, type WorthMeasures } from './explain/worth-measures';
export { type FlatResult, flatResult } from './flat-result';
export { meterCause, type SavedFigure, type Sum, type Summand, sharedInOption, sumOverMotors } from './fleet-sum';
export type { Compiled } from './formula/compiled';
export { KILOWATTS_PER_HORSEPOWER, MOST_HOURS_PER_YEAR } from './formula/constants';
export { FORMULAS } from './generated/catalog';
export { LOAD_METHODS } from './load/registry';
export { type Appraisal, type AppraisalRules, appraise, type Stated } from './money/appraisal';
export { type BreakEven, breakEven } from './money/break-even';
export { writtenOff } from './money/depreciation';
export { type Alternative, type Increment, type IncrementalAnalysis, incrementalAnalysis } from './money/incremental';
export { type LifeCycle, type LifeCycleCost, lifeCycleCost } from './money/life-cycle-cost';
export { modifiedRateOfReturn } from './money/modified-rate';
export { fromMoney, type Money } from './money/money';
export { type Tornado, type TornadoBar, type TornadoInput, tornado } from './money/tornado';
export type * from './motor';
export { type FleetKey, fleetKeyOf, motorResult, rankMotors } from './motor-result';
export { type CarriedOut, carriedOut } from './options/carried-out';
export type { Basis, PlanLine } from './options/flow-counts';
export type { FlowPlan, LaterTerm } from './options/flow-plan';
export type { MeasureCost, Screened, ScreenedPayback } from './options/measure-cost';
export {
  countsTogether,
  MEASURE_IDS,
  type Measure,
  type MeasureId,
  type Measures,
  measuresOf,
} from './options/measures';
export { BOUGHT_CLASSES } from './options/price';
export type { PriceGrowth } from './options/running-prices';
export { bestShelf, type Shelf, type ShelfWorth, shelfWorth } from './options/shelf';
export { type TimeToFailure, timeToFailure } from './options/time-to-failure';
export { frontier, wishCosts } from './plan/alternatives';
export { planFleet } from './plan/plan-fleet';
export { motorKey, type PlanMotor, planMotor } from './plan/plan-motor';
export type { FrontierPoint, MeasureNext, NoPlan, Plan, PlanHours, PlanItem, PlanYear, WishCost } from './plan/plan-result';
export {
  type HoursLimit,
  type Job,
  type LowCaseFactors,
  type MotorRef,
  type PlanRun,
  type PlanWishes,
  type ReadingPrice,
  type Readings,
  USUAL_JOBS,
  USUAL_READINGS,
} from './plan/wishes';
export type { Evidence, Finding, Severity } from './quantity/finding';
export type { Origin, Quantity, Source } from './quantity/quantity';
export { standardUncertainty } from './quantity/quantity';
export type { Unit } from './quantity/unit';
export { compareForRank, compareNaturally, type RankKey, rankKeyOf, ranksOf } from './rank';
export { type MovableMotor, movableOf } from './rerank/movable';
export type * from './result';
export { isSameRating, SAME_RATING } from './same-rating';
export type * from './settings';
export { PRICE_ITEMS } from './settings';
export type * from './tables';
export { type BillLine, billFits, type MonthBill, type YearBill, yearBill } from './tariff/bill';
export { hiddenPeriods, unpricedHours } from './tariff/compile';
export { type FleetSaving, fleetSaving, type MotorSaving } from './tariff/fleet-saving';
export { type MarginalPrices, marginalByPeriod, marginalPrices } from './tariff/marginal';
export { readSchedule, type ScheduleOutcome } from './tariff/schedule';
export type * from './tariff/tariff';
export { needsUsage, ofYear, priceIndex } from './tariff/tariff';
export { usageBeyondPeak } from './tariff/usage-check';
export { ENGINE_VERSION } from './version';
