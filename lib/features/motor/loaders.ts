import { cache } from 'react';
import {
  type Contribution,
  type CurvePoint,
  contributions,
  type Derivation,
  derive,
  evaluateMotor,
  type Figure,
  type Finding,
  figuresOf,
  INDICATOR_PATH,
  INDICATOR_TITLES,
  type Model,
  modelOfEvaluation,
  motorResult,
  partLoadCurve,
  type Quantity,
  type SisterResult,
  standardUncertainty,
  type TorqueSpeedOutcome,
  torqueSpeed,
  type UnrankedMotor,
} from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { uncapitalised } from '@/lib/platform/format';
import { asEvaluated } from '../evaluation/as-evaluated';
import { readMotor, type StoredMotor } from '../fleet/data';
import { derivationByDate, type ReadingDates, readingDates, resultByDate } from '../fleet/reading-dates';
import { readHistoryValues } from '../fleet/stored-history';
import { readInstruments } from '../instruments/data';
import { type StudyInForce, studyInForce } from '../study/context';
import { loadUnits } from '../study/loaders';
import type { ReaderUnits } from '../study/reader-units';
import { answerOf, callsOf } from './answer';
import { type AmongFleet, readAmongFleet, readHistory, readTag } from './data';
import { byIndicator, type IndicatorHistory } from './indicator-history';
import { alsoRead, readBy } from './reading-words';
import type { HistoryEntry } from './schema';
import { figureWords, optionTitle, type RatingUnit } from './words';

/** What a motor is called, for the name of a window. */
export const loadTag = cache(
  async (study: string, motor: string): Promise<string | undefined> => readTag(database().read, study, motor),
);

/** Everything that a motor's page shows. */
export interface MotorPage {
  readonly study: StudyInForce['study'];
  readonly stored: StoredMotor;
  readonly result: UnrankedMotor;
  /** How the reader sees power at the shaft, and ratings: in hp, or as the plate has them. */
  readonly units: ReaderUnits;
  readonly ratingUnit: RatingUnit;
  /** What to do, in a sentence or two. */
  readonly answer: string;
  /** Findings that bear on what may be trusted, and those that bear on prices and options. */
  readonly findings: { readonly trust: readonly Finding[]; readonly options: readonly Finding[] };
  /** Titles of the indicators by id. */
  readonly indicatorTitles: ReadonlyMap<string, string>;
  /** How its indicators stand among those of its sisters, by id. */
  readonly sisters: ReadonlyMap<string, SisterResult>;
  /** What each stored reading holds beside its electrical values, and who took it, by its id. */
  readonly readingWords: ReadonlyMap<string, { readonly also: readonly string[]; readonly by: string }>;
  /** Row of the reading at which the figures stand; `undefined` when none gives a usable load. */
  readonly rowInUse: number | undefined;
  readonly curve: readonly CurvePoint[];
  /** Power factor at the operating point, as a fraction. */
  readonly powerFactor: Figure | undefined;
  readonly torque: TorqueSpeedOutcome;
  /** What each stamp and reading does to the load, by weight. */
  readonly contributions: readonly Contribution[];
  /** Values of the indicator history by indicator, newest first. */
  readonly indicatorHistory: readonly IndicatorHistory[];
  readonly rank: AmongFleet | undefined;
  readonly history: readonly HistoryEntry[];
  /** Paths of the figures that can be explained. */
  readonly explained: ReadonlySet<string>;
}

async function inForce(studyId: string, motorId: string): Promise<{ force: StudyInForce; stored: StoredMotor } | undefined> {
  const { read } = database();
  const force = await studyInForce(read, studyId);
  const stored = await readMotor(read, motorId, { withHistory: true });
  if (!force || !stored || stored.studyId !== studyId) return undefined;
  return { force, stored };
}

/** A motor with its evaluation, made at once from what is stored now; `undefined` when the study has no such motor. */
export const loadMotorPage = cache(async (studyId: string, motorId: string): Promise<MotorPage | undefined> => {
  const found = await inForce(studyId, motorId);
  if (!found) return undefined;
  const { force, stored } = found;
  const { read } = database();
  const evaluation = evaluateMotor(await asEvaluated(read, force, stored), force.context);
  const values = (await readHistoryValues(read, studyId, [motorId])).get(motorId) ?? [];
  const [rank, history] = await Promise.all([
    readAmongFleet(read, studyId, motorId),
    readHistory(
      read,
      motorId,
      [...stored.readings, ...values].map((entry) => entry.id),
    ),
  ]);
  const result = resultByDate(motorResult(evaluation));
  const units = await loadUnits();
  const ratingUnit = units === 'hp' ? 'hp' : stored.motor.plate.ratedPowerUnit;
  return {
    study: force.study,
    stored,
    result,
    units,
    ratingUnit,
    answer: answerOf({
      motor: stored.motor,
      result,
      calls: callsOf(evaluation),
      stored: stored.readings.length,
      currency: force.study.settings.currency,
      horizonYears: force.study.settings.horizonYears,
      ratingUnit,
    }),
    findings: {
      trust: result.trust.findings.filter((finding) => !OF_OPTIONS.has(finding.code)),
      options: result.trust.findings.filter((finding) => OF_OPTIONS.has(finding.code)),
    },
    indicatorTitles: new Map(evaluation.condition.indicators.map(({ id, title }) => [id, title])),
    sisters: new Map(rank?.sisters.map((found) => [found.indicator, found])),
    readingWords: new Map(
      stored.readings.map(({ id, reading }) => [id, { also: alsoRead(stored.motor, reading), by: readBy(reading) }]),
    ),
    rowInUse: evaluation.inUse?.reading.row,
    curve: evaluation.point ? partLoadCurve(evaluation) : [],
    powerFactor: evaluation.point && {
      value: evaluation.point.powerFactor.value,
      u: standardUncertainty(evaluation.point.powerFactor),
      unit: '1',
    },
    torque: torqueSpeed(evaluation),
    contributions: contributions(evaluation),
    indicatorHistory: byIndicator(values),
    rank,
    history,
    explained: new Set(figuresOf(evaluation).keys()),
  };
});

/** Findings of a motor that speak of prices, hours and options; what is said of its plate and readings is the rest. */
const OF_OPTIONS: ReadonlySet<string> = new Set([
  'hours-unknown',
  'failed-at-assumed-load',
  'failed-must-act',
  'not-in-service',
  'invented-price',
  'no-price',
  'no-repair-price',
  'price-incomplete',
  'price-extrapolated',
  'schedule-unknown',
  'schedule-unreadable',
  'hours-beyond-schedule',
  'ratchet-holds-demand',
  'tax-without-depreciation',
  'class-outside-table',
  'class-unknown',
]);

/** How one figure of a motor came about, and the other figures that can be asked for. */
interface WhyPage {
  readonly study: StudyInForce['study'];
  readonly stored: StoredMotor;
  /** Readings stand in it by their dates. */
  readonly derivation: Derivation;
  readonly dates: ReadingDates;
  /** The machine that the figure rests on, and what it was fitted to; absent for figures of money and condition. */
  readonly machine: { readonly model: Model; readonly contributions: readonly Contribution[] } | undefined;
  readonly figures: readonly string[];
  /** A figure by its path, in words: `losses: friction windage`, `net present value of “Replace by 300 hp premium, now”`. */
  readonly nameOf: (path: string) => string;
}

/** Figures of load, losses and plate: what the fitted machine says at once. */
const OF_MACHINE = /^(?!options\.|condition\.|estimates\.)/;

/** The derivation of a figure by its path; `undefined` when there is no such motor or figure. */
export const loadWhy = cache(async (studyId: string, motorId: string, path: string): Promise<WhyPage | undefined> => {
  const found = await inForce(studyId, motorId);
  if (!found) return undefined;
  const evaluation = evaluateMotor(await asEvaluated(database().read, found.force, found.stored), found.force.context, new Map());
  const figures: ReadonlyMap<string, Quantity> = figuresOf(evaluation);
  const quantity = figures.get(path);
  const derivation = quantity && derive(evaluation, path, quantity);
  if (!derivation) return undefined;
  const { stored, force } = found;
  const result = motorResult(evaluation);
  const dates = readingDates(result.readings);
  const unit = (await loadUnits()) === 'hp' ? 'hp' : stored.motor.plate.ratedPowerUnit;
  const titles = new Map(result.options.map((option) => [option.id, optionTitle(option, unit)]));
  const nameOf = (figure: string) => {
    const title = figure.startsWith(INDICATOR_PATH) ? INDICATOR_TITLES.get(figure.slice(INDICATOR_PATH.length)) : undefined;
    return title === undefined ? figureWords(figure, titles) : `condition: ${uncapitalised(title)}`;
  };
  const model = OF_MACHINE.test(path) ? modelOfEvaluation(evaluation) : undefined;
  const machine = model && { model, contributions: contributions(evaluation) };
  return {
    study: force.study,
    stored,
    derivation: derivationByDate(derivation, dates),
    machine,
    dates,
    figures: [...figures.keys()],
    nameOf,
  };
});

/** A motor as it is stored, for its forms; `undefined` when the study has none such. */
export async function loadStored(studyId: string, motorId: string): Promise<StoredMotor | undefined> {
  const stored = await readMotor(database().read, motorId);
  return stored && stored.studyId === studyId ? stored : undefined;
}

/** Names of the study's instruments, for whoever types a reading. */
export async function loadInstrumentNames(studyId: string): Promise<readonly string[]> {
  return (await readInstruments(database().read, studyId)).map(({ name }) => name);
}
