import {
  type AtTheMargin,
  atTheMargin,
  evaluateMotor,
  type FlowSoFar,
  flowSoFar,
  type Lever,
  type Measures,
  type MeasuresOfWorth,
  MOST_HOURS_PER_YEAR,
  measuresOf,
  measuresOfWorth,
  motorResult,
  type OptionBreakEven,
  type OptionResult,
  optionBreakEven,
  optionCurve,
  optionTornado,
  type Question,
  statedHours,
  type Tornado,
  type Turnings,
  turnings,
} from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { asEvaluated } from '../evaluation/as-evaluated';
import { readMotor } from '../fleet/data';
import { type StudyInForce, studyInForce } from '../study/context';
import { loadUnits } from '../study/loaders';
import { optionTitle, type RatingUnit } from './words';

/** Levers whose break-even is told, in the order of the page. */
const BREAK_EVENS = ['energy-price', 'hours', 'cost'] as const satisfies readonly Lever[];

/** Factors on the price of energy or the hours at which the curve is drawn. */
const FACTORS = [0, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 1.75, 2] as const;

/** Where the curve over hours begins: a motor that never runs has no part in the peak either, which is a jump and no line. */
const LEAST_HOURS = 0.1;

/** The value of an option over one lever. */
export interface ValueCurve {
  readonly lever: 'energy-price' | 'hours';
  /** What factor 1 stands for: the flat price or the hours a year; absent under a tariff. */
  readonly stated: number | undefined;
  readonly points: readonly { readonly at: number; readonly value: number }[];
}

/** What the money of one option hangs on. */
export interface MoneyPage {
  readonly study: StudyInForce['study'];
  readonly site: string;
  readonly tag: string;
  /** Options that have a value, best first, with their titles. */
  readonly options: readonly { readonly option: OptionResult; readonly title: string; readonly decided: boolean }[];
  /** To keep the motor, against which all are counted; absent where it has failed. `decided` where that is the decision. */
  readonly keep: { readonly title: string; readonly decided: boolean } | undefined;
  readonly chosen: OptionResult;
  readonly title: string;
  readonly soFar: readonly FlowSoFar[];
  readonly tornado: Tornado;
  readonly breakEvens: readonly OptionBreakEven[];
  readonly paybackAt: OptionBreakEven;
  readonly curves: readonly ValueCurve[];
  /** The decision’s best rival, and what would turn the decision. */
  readonly turnings: Turnings & { readonly runnerUpTitle: string | undefined; readonly decidedTitle: string };
  /** What a saving is priced with, beside the average of the bill. */
  readonly margin: AtTheMargin;
  /** Every measure of the options, and what each dearer one adds. */
  readonly worth: MeasuresOfWorth;
  /** Titles of all options by id. */
  readonly titles: ReadonlyMap<string, string>;
  /** What else is worth looking into. */
  readonly measures: Measures;
}

/**
 * The money of one option of a stored motor, with what it hangs on: up to some two hundred evaluations of this motor alone. The decided option when
 * none is asked for, else the best. `undefined` when the study has no such motor or none of its options a value.
 */
export async function loadMoney(studyId: string, motorId: string, asked: string | undefined): Promise<MoneyPage | undefined> {
  const { read } = database();
  const [force, stored] = await Promise.all([studyInForce(read, studyId), readMotor(read, motorId, { withHistory: true })]);
  if (!force || !stored || stored.studyId !== studyId) return undefined;
  const motor = await asEvaluated(read, force, stored);
  const question: Question = { motor, study: force.context };
  const evaluation = evaluateMotor(motor, force.context);
  const { options, decision } = motorResult(evaluation);
  const unit: RatingUnit = (await loadUnits()) === 'hp' ? 'hp' : motor.plate.ratedPowerUnit;
  const valued = options
    .filter((option) => option.action !== 'keep' && option.net_present_value !== undefined)
    .sort((a, b) => (b.net_present_value?.value ?? 0) - (a.net_present_value?.value ?? 0));
  const kept = options.find((option) => option.action === 'keep');
  const chosen = valued.find(({ id }) => id === asked) ?? valued.find(({ id }) => id === decision.option) ?? valued[0];
  const whole = evaluation.options.find(({ id }) => id === chosen?.id);
  if (!chosen || !whole) return undefined;
  const { settings } = force.context;
  const flat = Object.hasOwn(settings.tariffs, motor.site) ? undefined : settings.energyPricePerKwh;
  const hours = statedHours(question);
  const most = hours === undefined || hours === 0 ? 2 : MOST_HOURS_PER_YEAR / hours;
  const curve = (lever: ValueCurve['lever'], stated: number | undefined, factors: readonly number[]): ValueCurve => ({
    lever,
    stated,
    points: optionCurve(question, chosen.id, lever, factors).flatMap(({ at, netPresentValue }) =>
      netPresentValue === undefined ? [] : [{ at, value: netPresentValue }],
    ),
  });
  const turned = turnings(question);
  const titleOf = (id: string | undefined) => {
    const option = options.find((each) => each.id === id);
    return option && optionTitle(option, unit);
  };
  return {
    turnings: {
      ...turned,
      runnerUpTitle: titleOf(turned.runnerUp?.option),
      decidedTitle: titleOf(turned.decided) ?? turned.decided,
    },
    margin: atTheMargin(evaluation),
    worth: measuresOfWorth(evaluation.options, settings),
    titles: new Map(options.map((option) => [option.id, optionTitle(option, unit)])),
    measures: measuresOf(evaluation),
    study: force.study,
    site: motor.site,
    tag: motor.tag,
    options: valued.map((option) => ({ option, title: optionTitle(option, unit), decided: option.id === decision.option })),
    keep:
      kept && motor.plate.status !== 'failed'
        ? { title: optionTitle(kept, unit), decided: kept.id === decision.option }
        : undefined,
    chosen,
    title: optionTitle(chosen, unit),
    soFar: flowSoFar(whole, settings),
    tornado: optionTornado(question, chosen.id, 'net-present-value'),
    breakEvens: BREAK_EVENS.map((lever) => optionBreakEven(question, chosen.id, lever, 'worth-nothing')),
    paybackAt: optionBreakEven(question, chosen.id, 'energy-price', 'payback-limit'),
    curves: [
      curve('energy-price', flat, FACTORS),
      curve('hours', hours, [
        LEAST_HOURS,
        ...FACTORS.filter((factor) => factor > 0 && factor < Math.min(most, 2)),
        Math.min(most, 2),
      ]),
    ],
  };
}
