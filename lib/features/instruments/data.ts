import type { Reader } from '../study/data';
import type { Instrument } from './schema';

/** The instruments of a study, by name. */
export async function readInstruments(db: Reader, studyId: string): Promise<Instrument[]> {
  const rows = await db.instrument.findMany({ where: { studyId }, orderBy: { name: 'asc' } });
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    serialNumber: row.serialNumber ?? undefined,
    voltagePct: row.voltageAccuracyPct ?? undefined,
    currentPct: row.currentAccuracyPct ?? undefined,
    powerPct: row.powerAccuracyPct ?? undefined,
    speedRpm: row.speedAccuracyRpm ?? undefined,
    calibratedOn: row.calibratedOn ?? undefined,
    calibrationDueOn: row.calibrationDueOn ?? undefined,
  }));
}

/** How many readings that count were taken with each instrument after its calibration was due, by the instrument's name. */
export async function readTakenAfterDue(
  db: Reader,
  studyId: string,
  instruments: readonly Pick<Instrument, 'name' | 'calibrationDueOn'>[],
): Promise<ReadonlyMap<string, number>> {
  const dueOf = new Map(instruments.flatMap(({ name, calibrationDueOn: due }) => (due === undefined ? [] : [[name, due]])));
  if (dueOf.size === 0) return new Map();
  const rows = await db.reading.findMany({
    where: { studyId, excludedAt: null, instrument: { in: [...dueOf.keys()] }, takenAt: { not: null } },
    select: { instrument: true, takenAt: true },
  });
  const late = new Map<string, number>();
  for (const { instrument, takenAt } of rows) {
    const due = dueOf.get(instrument ?? '');
    if (due !== undefined && (takenAt ?? '').slice(0, 10) > due)
      late.set(instrument ?? '', (late.get(instrument ?? '') ?? 0) + 1);
  }
  return late;
}
