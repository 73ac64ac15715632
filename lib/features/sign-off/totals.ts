import { type Figure, type MotorResult, meterCause, motorKey, type Sum, type Summand, sumOverMotors } from '@/lib/engine';
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

type Saved = 'energy_saved' | 'demand_saved' | 'money_saved';

/** Makes the totals of items of a programme, with the meters of the results that it rests on. */
export function measureTotals(
  motors: readonly MotorResult[],
  currency: string,
): (items: readonly ProgrammeItem[]) => MeasureTotal {
  const byKey = new Map(motors.map((motor) => [motorKey(motor), motor]));
  const summand = (
    item: ProgrammeItem,
    figure: Pick<Figure, 'value' | 'u'> | undefined,
    saved: Saved,
    scale = 1,
  ): Summand | undefined => {
    if (!figure) return undefined;
    const { options = [], meters = [] } = byKey.get(motorKey(item)) ?? {};
    const place = options.findIndex(({ id }) => id === item.option);
    return { ...figure, shared: meters.map((meter) => [meterCause(item.site, meter), scale * (meter[saved]?.[place] ?? 0)]) };
  };
  return (items) => {
    const sum = (pick: (item: ProgrammeItem) => number | undefined): number =>
      fromMinor(
        items.reduce((total, item) => total + toMinor(pick(item) ?? 0, currency), 0n),
        currency,
      );
    const total = (unit: string, saved: Saved) =>
      totalOf(
        items.map((item) => summand(item, item[saved], saved)),
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
        items.map((item) => summand(item, item.emissions_saved, 'energy_saved', emissionsOverEnergy(item))),
        'kg/a',
      ),
    };
  };
}

/** Emissions go with the energy, so what moves it moves them in proportion. */
function emissionsOverEnergy({ energy_saved: energy, emissions_saved: emissions }: ProgrammeItem): number {
  return energy && emissions && energy.value !== 0 ? emissions.value / energy.value : 0;
}
