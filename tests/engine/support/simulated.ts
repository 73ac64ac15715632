import { evaluateMotor, type Figure, motorResult, type StudyContext, type UnrankedMotor } from '@/lib/engine';
import { parseFleet } from '@/lib/features/fleet/parse';
import type { Corrupted, Mistake } from '../../simulator/corrupt';
import { type SimulatedMotor, sheetText } from '../../simulator/fleet';
import type { Cells } from '../../simulator/plate';
import { READING_SETS, type ReadingSet } from '../../simulator/readings';

/** Results by tag of rows that went through the parser and the engine as a sheet would. */
export async function evaluateRows(rows: readonly Cells[], study: StudyContext): Promise<ReadonlyMap<string, UnrankedMotor>> {
  const parsed = await parseFleet({ name: 'simulated.csv', text: sheetText(rows) }, { asOf: study.settings.asOf });
  if (!parsed.ok) throw new Error(parsed.problem.text);
  const [bad] = parsed.rejected;
  if (bad) throw new Error(`row ${bad.row} was rejected: ${bad.issues.map((issue) => issue.text).join(' ')}`);
  return new Map(parsed.motors.map(({ motor }) => [motor.tag, motorResult(evaluateMotor(motor, study))]));
}

export const LOAD_BANDS = [
  [0.2, 0.4],
  [0.4, 0.6],
  [0.6, 0.8],
  [0.8, 1.15],
] as const;

const LOSS_NAMES = {
  stator: 'stator',
  rotor: 'rotor',
  core: 'core',
  friction: 'friction_windage',
  stray: 'stray',
} as const;
type Loss = keyof typeof LOSS_NAMES;
export const LOSSES = Object.keys(LOSS_NAMES) as readonly Loss[];

/** 95 % limits of a figure: its own where it has them, else value ± 1.96 u. */
export const limitsOf = (figure: Figure): readonly [number, number] => [
  figure.low ?? figure.value - 1.96 * figure.u,
  figure.high ?? figure.value + 1.96 * figure.u,
];
const holds = (figure: Figure, truth: number): boolean => {
  const [low, high] = limitsOf(figure);
  return truth >= low && truth <= high;
};

/** How well a group of motors was estimated; errors in points, that is in per cent of rating for load. */
export interface Score {
  readonly motors: number;
  /** Motors for which the engine gave a load. */
  readonly answered: number;
  readonly coverage: { readonly power: number; readonly efficiency: number };
  readonly meanAbsolute: { readonly load: number; readonly efficiency: number };
  readonly bias: { readonly load: number; readonly efficiency: number };
  readonly width: { readonly load: number; readonly efficiency: number };
  /** Mean absolute error of each loss over the true total loss, per cent. */
  readonly losses: Readonly<Record<Loss, number>>;
}

const mean = (values: readonly number[]): number =>
  values.length === 0 ? Number.NaN : values.reduce((sum, value) => sum + value, 0) / values.length;

export function scoreOf(motors: readonly SimulatedMotor[], results: ReadonlyMap<string, UnrankedMotor>): Score {
  const pairs = motors.flatMap((motor) => {
    const result = results.get(motor.cells.tag ?? '');
    // With several readings the figures could be those of an earlier one; the truth at hand is that of the latest.
    return result?.readings.at(-1)?.shaft_power && result.shaft_power && result.efficiency && result.losses
      ? [{ motor, power: result.shaft_power, efficiency: result.efficiency, losses: result.losses }]
      : [];
  });
  const rated = (motor: SimulatedMotor) => motor.rating.watts / 1000;
  const scale = (figure: Figure) => (figure.unit === '%' ? 1 : 100);
  const loadErrors = pairs.map(({ motor, power }) => 100 * (power.value / rated(motor) - motor.loadFraction));
  const efficiencyErrors = pairs.map(({ motor, efficiency }) => scale(efficiency) * efficiency.value - 100 * motor.at.efficiency);
  const lossError = (name: Loss) =>
    mean(
      pairs.map(({ motor, losses }) => {
        const total = motor.at.input - motor.at.shaft;
        return (100 * Math.abs(1000 * losses[LOSS_NAMES[name]].value - motor.at.losses[name])) / total;
      }),
    );
  const width = (figure: Figure) => limitsOf(figure)[1] - limitsOf(figure)[0];
  return {
    motors: motors.length,
    answered: pairs.length,
    coverage: {
      power: mean(pairs.map(({ motor, power }) => Number(holds(power, motor.at.shaft / 1000)))),
      efficiency: mean(
        pairs.map(({ motor, efficiency }) => Number(holds(efficiency, (100 * motor.at.efficiency) / scale(efficiency)))),
      ),
    },
    meanAbsolute: { load: mean(loadErrors.map(Math.abs)), efficiency: mean(efficiencyErrors.map(Math.abs)) },
    bias: { load: mean(loadErrors), efficiency: mean(efficiencyErrors) },
    width: {
      load: mean(pairs.map(({ motor, power }) => (100 * width(power)) / rated(motor))),
      efficiency: mean(pairs.map(({ efficiency }) => scale(efficiency) * width(efficiency))),
    },
    losses: Object.fromEntries(LOSSES.map((name) => [name, lossError(name)])) as Readonly<Record<Loss, number>>,
  };
}

/** Scores of the whole fleet, of each set of readings, and of each set in each band of load. */
export interface Scores {
  readonly all: Score;
  readonly sets: ReadonlyMap<ReadingSet, Score>;
  readonly cells: readonly { readonly set: ReadingSet; readonly band: readonly [number, number]; readonly score: Score }[];
}

export function scoresOf(fleet: readonly SimulatedMotor[], results: ReadonlyMap<string, UnrankedMotor>): Scores {
  const inSet = (set: ReadingSet) => fleet.filter((motor) => motor.set === set);
  return {
    all: scoreOf(fleet, results),
    sets: new Map(READING_SETS.map((set) => [set, scoreOf(inSet(set), results)])),
    cells: READING_SETS.flatMap((set) =>
      LOAD_BANDS.map((band) => ({
        set,
        band,
        score: scoreOf(
          inSet(set).filter(({ loadFraction }) => loadFraction >= band[0] && loadFraction < band[1] + (band[1] > 1 ? 1e-9 : 0)),
          results,
        ),
      })),
    ),
  };
}

/**
 * Words by which a finding names a cause. A finding that lists several causes names them all; that is lenient, and the count of named
 * causes should be read together with how short the list is.
 */
const CAUSE_WORDS: Readonly<Record<Mistake, RegExp>> = {
  'current-transformer-reversed':
    /(transformer|sensor|clamp)[^.]*(wrong way|revers|turned)|revers[^.]*(transformer|sensor|clamp)/i,
  'current-transformer-missing':
    /(transformer|sensor|clamp|element)[^.]*(missing|left off|dead)|missing[^.]*(transformer|sensor|clamp|element)/i,
  'power-in-horsepower': /horsepower|\bhp\b/i,
  'power-in-watts': /\bwatts?\b/i,
  'phase-voltage-for-line': /(voltage to (neutral|earth))|phase voltage|line.to.neutral/i,
  'current-of-one-conductor': /one (conductor|cable)|one of (several|two|parallel)/i,
  'current-times-root-three': /√3|root three|delta|phase current/i,
  'current-over-root-three': /√3|root three|delta|phase current|inside/i,
  'amps-of-other-plate-voltage': /other (plate )?(voltage|connection)|another voltage/i,
  'speed-digits-swapped': /digits/i,
  'speed-above-synchronous': /strobe|synchronous/i,
  'driven-speed-for-motor': /driven (shaft|speed|machine)|behind a belt/i,
  'wrong-pole-count': /pole/i,
  'plate-of-another-motor': /another motor|other motor/i,
  'motor-uncoupled': /uncoupled|running free|runs? almost free|no load|belt/i,
};

/** Whether any finding that weighs names the cause of a mistake. */
export function namesCause(result: UnrankedMotor, mistake: Mistake): boolean {
  return result.trust.findings.some(
    (found) => found.severity !== 'note' && CAUSE_WORDS[mistake].test(`${found.text} ${found.cause}`),
  );
}

/** A row is flagged when it draws a weighing finding that its honest twin does not, or loses trust against it. */
export function isFlagged(result: UnrankedMotor, twin: UnrankedMotor | undefined): boolean {
  const order = ['sound', 'provisional', 'not-usable'];
  if (order.indexOf(result.trust.level) > order.indexOf(twin?.trust.level ?? 'sound')) return true;
  const had = new Set(twin?.trust.findings.map(({ code }) => code));
  return result.trust.findings.some((found) => found.severity !== 'note' && !had.has(found.code));
}

export interface MistakeScore {
  readonly planted: number;
  readonly tracing: number;
  readonly flagged: number;
  readonly flaggedOfTracing: number;
  readonly named: number;
}

export function scoreMistakes(
  corrupted: readonly Corrupted[],
  results: ReadonlyMap<string, UnrankedMotor>,
  honest: ReadonlyMap<string, UnrankedMotor>,
): MistakeScore {
  const seen = corrupted.flatMap((one) => {
    const result = results.get(one.cells.tag ?? '');
    return result ? [{ one, result, flagged: isFlagged(result, honest.get(one.motor.cells.tag ?? '')) }] : [];
  });
  return {
    planted: seen.length,
    tracing: seen.filter(({ one }) => one.leavesTrace).length,
    flagged: seen.filter(({ flagged }) => flagged).length,
    flaggedOfTracing: seen.filter(({ one, flagged }) => flagged && one.leavesTrace).length,
    named: seen.filter(({ one, result, flagged }) => flagged && namesCause(result, one.mistake)).length,
  };
}

/** Share of motors beyond objection that are not called sound. */
export function falseAlarms(
  fleet: readonly SimulatedMotor[],
  results: ReadonlyMap<string, UnrankedMotor>,
): { readonly motors: number; readonly share: number; readonly codes: ReadonlyMap<string, number> } {
  const calm = fleet.filter(({ beyondObjection }) => beyondObjection);
  const codes = new Map<string, number>();
  let alarms = 0;
  for (const motor of calm) {
    const result = results.get(motor.cells.tag ?? '');
    if (result?.trust.level === 'sound') continue;
    alarms++;
    for (const { code } of result?.trust.findings ?? []) codes.set(code, (codes.get(code) ?? 0) + 1);
  }
  return { motors: calm.length, share: calm.length === 0 ? Number.NaN : alarms / calm.length, codes };
}
