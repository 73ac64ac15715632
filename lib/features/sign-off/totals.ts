import {
  type MotorResult,
  meterCause,
  motorKey,
  type SavedFigure,
  type Sum,
  type Summand,
  sharedInOption,
  sumOverMotors,
} from '@/lib/engine';
import { fromMinor, toMinor } from '@/lib/platform/money';
import type { ProgrammeItem } from '../plan/programme';

/** A sum over motors with its standard uncertainty, and over how many. */
export interface Total extends Sum {
  readonly unit: string;
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

export function totalOf(summands: readonly (Summand | undefined)[], unit: string): Total {
  const known = summands.filter((summand) => summand !== undefined);
  return { ...sumOverMotors(known), unit, motors: known.length };
}

/** A motor's part in a sum over the points at which motors run; absent where it has none. Results of earlier engines know of no meters. */
export function ofPoint({ site, meters = [], ...motor }: MotorResult, of: 'input_power' | 'total_loss'): Summand | undefined {
  const figure = of === 'input_power' ? motor.input_power : motor.losses?.total;
  return figure && { ...figure, shared: meters.map((meter) => [meterCause(site, meter), meter[of]]) };
}

/** What items of a programme save, with what the meters of the results they rest on do to it. */
export interface SavedBy {
  readonly of: (item: ProgrammeItem, what: SavedFigure) => Summand | undefined;
  /** Kilograms in each year of the horizon; absent where the factor of emissions is the same in all. */
  readonly emissionsByYear: (item: ProgrammeItem) => readonly number[] | undefined;
}

export function savedBy(motors: readonly MotorResult[]): SavedBy {
  const byKey = new Map(motors.map((motor) => [motorKey(motor), motor]));
  return {
    of: (item, what) => {
      const figure = item[what];
      const motor = byKey.get(motorKey(item));
      return figure && { ...figure, shared: motor ? sharedInOption(motor, item.option, what) : [] };
    },
    emissionsByYear: (item) => byKey.get(motorKey(item))?.options.find(({ id }) => id === item.option)?.emissions_saved_by_year,
  };
}

/** What an item saves of emissions in a year of the horizon, or as a rule: they go with the energy, so what moves it moves them in proportion. */
export function emissionsOf(item: ProgrammeItem, saved: SavedBy, year?: number): Summand | undefined {
  const energy = saved.of(item, 'energy_saved');
  const usual = item.emissions_saved;
  if (!energy || !usual) return undefined;
  const listed = year === undefined ? undefined : saved.emissionsByYear(item)?.[year];
  const value = listed ?? usual.value;
  const factor = energy.value === 0 ? 0 : value / energy.value;
  return {
    value,
    u: usual.value === 0 ? usual.u : Math.abs((usual.u * value) / usual.value),
    shared: energy.shared.map(([cause, by]) => [cause, factor * by] as const),
  };
}

export function measureOf(items: readonly ProgrammeItem[], saved: SavedBy, currency: string): MeasureTotal {
  const sum = (pick: (item: ProgrammeItem) => number | undefined): number =>
    fromMinor(
      items.reduce((total, item) => total + toMinor(pick(item) ?? 0, currency), 0n),
      currency,
    );
  const total = (unit: string, what: SavedFigure) =>
    totalOf(
      items.map((item) => saved.of(item, what)),
      unit,
    );
  return {
    motors: items.length,
    cost: sum(({ cost }) => cost),
    worth: sum(({ net_present_value }) => net_present_value),
    energy: total('kWh/a', 'energy_saved'),
    demand: total('kW', 'demand_saved'),
    money: total(currency, 'money_saved'),
    emissions: totalOf(
      items.map((item) => emissionsOf(item, saved)),
      'kg/a',
    ),
  };
}
