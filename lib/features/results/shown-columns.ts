import { type ReaderUnits, shaftScale, shaftUnit } from '../study/reader-units';
import type { FleetColumn } from './fleet-column';
import { FLEET_COLUMNS, fleetColumn } from './fleet-columns';
import type { FleetRow } from './fleet-row';

const AT_SHAFT = new Map(
  FLEET_COLUMNS.filter((column) => column.shaft).map(({ value, doubt, limits, ...column }): [string, FleetColumn] => {
    const scale = (read: (row: FleetRow) => string | number | undefined) => (row: FleetRow) => {
      const kilowatts = read(row);
      return typeof kilowatts === 'number' ? kilowatts * shaftScale('hp') : undefined;
    };
    return [
      column.id,
      {
        ...column,
        unit: shaftUnit('hp'),
        value: scale(value),
        ...(doubt && { doubt: scale(doubt) }),
        ...(limits && { limits: { low: scale(limits.low), high: scale(limits.high) } }),
      },
    ];
  }),
);

/** The column of this name as a reader sees it; filters and files keep to {@link fleetColumn}. */
export function shownColumn(id: string, units: ReaderUnits): FleetColumn | undefined {
  return (units === 'hp' ? AT_SHAFT.get(id) : undefined) ?? fleetColumn(id);
}

/** A limit of a column's numbers, kept in its own unit, as the reader sees it: hp to five digits. */
export function shownLimit(column: FleetColumn, limit: number, units: ReaderUnits): number {
  return column.shaft && units === 'hp' ? Number((limit * shaftScale(units)).toPrecision(5)) : limit;
}

/** A limit that the reader typed, in the column's own unit. */
export function keptLimit(column: FleetColumn, typed: number, units: ReaderUnits): number {
  return column.shaft && units === 'hp' ? Number((typed / shaftScale(units)).toPrecision(8)) : typed;
}

/** A unit as shown: the study's currency in its place. */
export function shownUnit(column: Pick<FleetColumn, 'unit'>, currency: string): string {
  return column.unit.replace('currency', currency);
}
