import { HISTORY_INDICATORS } from '../fleet/history-columns';
import type { StoredValue } from '../fleet/stored-history';
import { instantOf } from '../fleet/taken-at';

/** The values of one indicator from imported histories. */
export interface IndicatorHistory {
  readonly name: string;
  readonly unit: string;
  readonly values: readonly {
    readonly id: string;
    readonly value: number;
    readonly takenAt?: string;
    readonly instrument?: string;
    readonly excluded?: { readonly by: string; readonly reason: string };
  }[];
}

/** Values by indicator in the order of the fleet sheet, newest first; undated ones last. */
export function byIndicator(values: readonly StoredValue[]): IndicatorHistory[] {
  const time = ({ takenAt }: StoredValue) => (takenAt === null ? Number.NEGATIVE_INFINITY : instantOf(takenAt));
  return [...HISTORY_INDICATORS.values()].flatMap(({ name, unit }) => {
    const own = values.filter(({ indicator }) => indicator === name).sort((a, b) => time(b) - time(a));
    if (own.length === 0) return [];
    return [
      {
        name: name.replaceAll('_', ' '),
        unit,
        values: own.map(({ id, value, takenAt, instrument, excludedBy, excludedReason }) => ({
          id,
          value,
          ...(takenAt !== null && { takenAt }),
          ...(instrument !== null && { instrument }),
          ...(excludedReason !== null && { excluded: { by: excludedBy ?? '', reason: excludedReason } }),
        })),
      },
    ];
  });
}
