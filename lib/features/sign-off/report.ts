import type { Figure, MotorResult, TrustLevel } from '@/lib/engine';
import { fromMinor, toMinor } from '@/lib/platform/money';
import type { ProgrammeItem } from '../plan/programme';
import type { Content } from './content';

/** A figure of the results or of the programme; only what a sum needs. */
type Summand = Pick<Figure, 'value' | 'u'>;

/** A sum over motors with its standard uncertainty, doubts of different motors taken as independent; and over how many. */
export interface Total extends Figure {
  readonly motors: number;
}

/** What a group of funded measures costs and brings once all of it is done. */
export interface MeasureTotal {
  readonly motors: number;
  /** Money of the years in which it is spent. */
  readonly cost: number;
  readonly worth: number;
  readonly energy: Total;
  readonly demand: Total;
  readonly money: Total;
  readonly emissions: Total;
}

/** A funded item with its year. */
export interface FundedItem extends ProgrammeItem {
  readonly year: number;
}

/** How many motors a line of the fleet counts, and what they are rated for. */
export interface Share {
  readonly motors: number;
  readonly ratedKw: number;
}

/** The frozen programme in numbers, for those who were not there when it was made. */
export interface Report {
  readonly fleet: Share;
  readonly byTrust: ReadonlyMap<TrustLevel, Share>;
  /** Motors whose load is usable, by that load. */
  readonly byLoad: readonly (Share & { readonly words: string })[];
  readonly inputPower: Total;
  readonly losses: Total;
  readonly items: readonly FundedItem[];
  readonly all: MeasureTotal;
  readonly byAction: ReadonlyMap<string, MeasureTotal>;
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
 * The report of a frozen version. Amounts are summed in minor units, so that they are those of the review; intervals are root sums of squares over the
 * motors (GUM 5.1.2): what motors share, such as the price of energy, is not in them.
 */
export function reportOf({ programme, results, settings }: Pick<Content, 'programme' | 'results' | 'settings'>): Report {
  const { currency } = settings;
  const motors = results as readonly MotorResult[];
  const items = programme.years.flatMap(({ year, items: each }) => each.map((item): FundedItem => ({ ...item, year })));
  const usable = motors.filter(({ trust, load_fraction }) => trust.level !== 'not-usable' && load_fraction !== undefined);
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
      usable.map(({ input_power }) => input_power),
      'kW',
    ),
    losses: totalOf(
      usable.map(({ losses }) => losses?.total),
      'kW',
    ),
    items,
    all: measureOf(items, currency),
    byAction: new Map(
      [...new Set(items.map(({ action }) => action))].map((action) => [
        action,
        measureOf(
          items.filter((item) => item.action === action),
          currency,
        ),
      ]),
    ),
    waiting: programme.method === 'plan' ? programme.at_failure.length : 0,
    exclusions: [...exclusions].map(([text, count]) => ({ text, motors: count })).sort((a, b) => b.motors - a.motors),
  };
}

function shareOf(motors: readonly MotorResult[]): Share {
  return { motors: motors.length, ratedKw: motors.reduce((sum, { rated_power_kw }) => sum + rated_power_kw, 0) };
}

function totalOf(figures: readonly (Summand | undefined)[], unit: string): Total {
  let value = 0;
  let squares = 0;
  let motors = 0;
  for (const figure of figures) {
    if (!figure) continue;
    value += figure.value;
    squares += figure.u ** 2;
    motors += 1;
  }
  return { value, u: Math.sqrt(squares), unit, motors };
}

function measureOf(items: readonly ProgrammeItem[], currency: string): MeasureTotal {
  const sum = (pick: (item: ProgrammeItem) => number | undefined): number =>
    fromMinor(
      items.reduce((total, item) => total + toMinor(pick(item) ?? 0, currency), 0n),
      currency,
    );
  const total = (unit: string, pick: (item: ProgrammeItem) => Summand | undefined) => totalOf(items.map(pick), unit);
  return {
    motors: items.length,
    cost: sum(({ cost }) => cost),
    worth: sum(({ net_present_value }) => net_present_value),
    energy: total('kWh/a', ({ energy_saved }) => energy_saved),
    demand: total('kW', ({ demand_saved }) => demand_saved),
    money: total(currency, ({ money_saved }) => money_saved),
    emissions: total('kg/a', ({ emissions_saved }) => emissions_saved),
  };
}
