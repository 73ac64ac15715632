import type { MotorResult, TrustLevel } from '@/lib/engine';
import type { ProgrammeItem } from '../plan/programme';
import type { Content } from './content';
import { emissionsOf, type MeasureTotal, measureOf, ofPoint, type SavedBy, savedBy, type Total, totalOf } from './totals';

/** What a report is drawn from: a frozen version, or a plan that is not frozen yet. */
export type Drawn = Pick<Content, 'study' | 'engine' | 'tables' | 'settings' | 'results' | 'programme'> & {
  readonly prices: Pick<Content['prices'], 'invented'>;
};

/** A funded item with its year. */
export interface FundedItem extends ProgrammeItem {
  readonly year: number;
}

/** How many motors a line of the fleet counts, and what they are rated for. */
export interface Share {
  readonly motors: number;
  readonly ratedKw: number;
}

/** What all that is done by then saves in a year. */
export interface YearSaving {
  readonly year: number;
  /** Present where the line stands for every year from its own to this one. */
  readonly to?: number;
  readonly motors: number;
  readonly energy: Total;
  readonly money: Total;
  /** Absent where the factor of emissions differs from year to year and the line stands for several. */
  readonly emissions?: Total | undefined;
}

/** The frozen programme in numbers, for those who were not there when it was made. */
export interface Report {
  readonly fleet: Share;
  readonly byTrust: ReadonlyMap<TrustLevel, Share>;
  /** Motors whose load is usable, by that load. */
  readonly byLoad: readonly (Share & { readonly words: string })[];
  readonly inputPower: Total;
  readonly losses: Total;
  /** False in versions frozen before results said what their meters contribute: then all doubts count as independent. */
  readonly metersKnown: boolean;
  readonly items: readonly FundedItem[];
  readonly all: MeasureTotal;
  readonly byAction: ReadonlyMap<string, MeasureTotal>;
  readonly byYear: readonly YearSaving[];
  readonly waiting: number;
  /** Why motors are left out, the most frequent reason first. */
  readonly exclusions: readonly { readonly text: string; readonly motors: number }[];
}

/** Lower bounds of the bands of load, as fractions of rated output. */
const LOAD_BANDS = [
  { from: 0, to: 0.4, words: 'below 40 %' },
  { from: 0.4, to: 0.5, words: '40 to 50 %' },
  { from: 0.5, to: 0.75, words: '50 to 75 %' },
  { from: 0.75, to: 1, words: '75 to 100 %' },
  { from: 1, to: Number.POSITIVE_INFINITY, words: '100 % and more' },
] as const;

const TRUST_LEVELS: readonly TrustLevel[] = ['sound', 'provisional', 'not-usable'];

/**
 * The report of a frozen version. Amounts are summed in minor units, so that they are those of the review. Intervals of sums take the error of a meter
 * as common to all motors that were read with it, and all else as independent; the price of energy has no doubt of its own in them.
 */
export function reportOf({ programme, results, settings }: Pick<Content, 'programme' | 'results' | 'settings'>): Report {
  const { currency } = settings;
  const motors = results as readonly MotorResult[];
  const items = programme.years.flatMap(({ year, items: each }) => each.map((item): FundedItem => ({ ...item, year })));
  const usable = motors.filter(({ trust, load_fraction }) => trust.level !== 'not-usable' && load_fraction !== undefined);
  const saved = savedBy(motors);
  const measure = (some: readonly FundedItem[]) => measureOf(some, saved, currency);
  const exclusions = new Map<string, number>();
  for (const { because } of programme.left_out) exclusions.set(because.text, (exclusions.get(because.text) ?? 0) + 1);
  return {
    fleet: shareOf(motors),
    byTrust: new Map(TRUST_LEVELS.map((level) => [level, shareOf(motors.filter(({ trust }) => trust.level === level))])),
    byLoad: LOAD_BANDS.map(({ from, to, words }) => ({
      words,
      ...shareOf(usable.filter(({ load_fraction: load }) => load !== undefined && load.value >= from && load.value < to)),
    })),
    inputPower: totalOf(
      usable.map((motor) => ofPoint(motor, 'input_power')),
      'kW',
    ),
    losses: totalOf(
      usable.map((motor) => ofPoint(motor, 'total_loss')),
      'kW',
    ),
    metersKnown: motors.some(({ meters }) => meters !== undefined),
    items,
    all: measure(items),
    byAction: new Map(
      [...new Set(items.map(({ action }) => action))].map((action) => [
        action,
        measure(items.filter((item) => item.action === action)),
      ]),
    ),
    byYear: savingsByYear(items, saved, { programme, settings }),
    waiting: programme.method === 'plan' ? programme.at_failure.length : 0,
    exclusions: [...exclusions].map(([text, count]) => ({ text, motors: count })).sort((a, b) => b.motors - a.motors),
  };
}

function shareOf(motors: readonly MotorResult[]): Share {
  return { motors: motors.length, ratedKw: motors.reduce((sum, { rated_power_kw }) => sum + rated_power_kw, 0) };
}

/**
 * Savings of each year of the budget, then of the years after it to the horizon: an item is carried out at the start of its year and saves from then on.
 * Energy kWh, money at the prices of the study's day, emissions kg by the factor of the year. @param items with their years.
 */
function savingsByYear(
  items: readonly FundedItem[],
  saved: SavedBy,
  { programme, settings }: Pick<Content, 'programme' | 'settings'>,
): YearSaving[] {
  const first = programme.years[0]?.year;
  const last = programme.years.at(-1)?.year;
  if (first === undefined || last === undefined) return [];
  const differs = items.some((item) => saved.emissionsByYear(item) !== undefined);
  const line = (year: number, to?: number): YearSaving => {
    const done = items.filter((item) => item.year <= year);
    return {
      year,
      ...(to !== undefined && { to }),
      motors: done.length,
      energy: totalOf(
        done.map((item) => saved.of(item, 'energy_saved')),
        'kWh',
      ),
      money: totalOf(
        done.map((item) => saved.of(item, 'money_saved')),
        settings.currency,
      ),
      ...((to === undefined || !differs) && {
        emissions: totalOf(
          done.map((item) => emissionsOf(item, saved, year - first)),
          'kg',
        ),
      }),
    };
  };
  const end = first + settings.horizon_years - 1;
  return [...programme.years.map(({ year }) => line(year)), ...(end > last ? [line(last + 1, end)] : [])];
}
