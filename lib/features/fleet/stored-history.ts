import type { Motor } from '@/lib/engine';
import { selectRows } from '@/lib/platform/bulk';
import { contentHash } from '@/lib/platform/hash';
import type { Reader } from '../study/data';
import { HistoryJoiner } from './apply-history';
import { HISTORY_INDICATORS } from './history-columns';
import type { HistoryValue } from './indicator-history';
import { timeKey } from './taken-at';

/** A value of an indicator history as it is kept. */
export interface StoredValue {
  readonly id: string;
  readonly motorId: string;
  /** Word of the history, such as `vibration`. */
  readonly indicator: string;
  readonly value: number;
  readonly unit: string;
  readonly takenAt: string | null;
  readonly instrument: string | null;
  readonly contentHash: string;
  readonly importBatchId: string | null;
  /** Who left it out and why; null while it counts. */
  readonly excludedBy: string | null;
  readonly excludedReason: string | null;
}

/** Hash over what a value says: the same value twice is one. */
export function valueHash({ indicator, value, takenAt, instrument }: Omit<HistoryValue, 'row' | 'site' | 'tag'>): string {
  return contentHash({ indicator: indicator.name, value, takenAt: takenAt && timeKey(takenAt), instrument });
}

/** The values of a study's indicator histories by motor, oldest import first, those left out among them. */
export async function readHistoryValues(
  db: Reader,
  studyId: string,
  ids?: readonly string[],
): Promise<ReadonlyMap<string, readonly StoredValue[]>> {
  const rows = await selectRows<StoredValue>(
    db,
    'IndicatorReading',
    { studyId, ...(ids === undefined ? {} : { motorId: ids }) },
    'id',
  );
  const byMotor = new Map<string, StoredValue[]>();
  for (const row of rows) {
    const known = byMotor.get(row.motorId);
    if (known) known.push(row);
    else byMotor.set(row.motorId, [row]);
  }
  return byMotor;
}

/** Motors with the values of their histories that count among their readings, numbered on from the last stored one. */
export function joinHistories<Stored extends { readonly id: string; readonly motor: Motor }>(
  motors: readonly Stored[],
  histories: ReadonlyMap<string, readonly StoredValue[]>,
): Stored[] {
  return motors.map((stored) => {
    const values = histories.get(stored.id);
    if (values === undefined) return stored;
    const { motor } = stored;
    const last = Math.max(1, motor.plateDuty?.row ?? 0, ...motor.readings.map(({ row }) => row));
    const known = values.flatMap((kept, at): HistoryValue[] => {
      const indicator = HISTORY_INDICATORS.get(kept.indicator);
      // A word that this version no longer knows stays stored and does not count.
      if (indicator === undefined || kept.excludedReason !== null) return [];
      const { site, tag } = motor;
      return [
        {
          row: at + 1,
          site,
          tag,
          indicator,
          value: kept.value,
          takenAt: kept.takenAt ?? undefined,
          instrument: kept.instrument ?? undefined,
        },
      ];
    });
    return { ...stored, motor: new HistoryJoiner(known, last).join(motor) };
  });
}
