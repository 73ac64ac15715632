import type { Reader } from '../study/data';
import type { Instrument } from './schema';

/** The instruments of a study, by name. */
export async function readInstruments(db: Reader, studyId: string): Promise<Instrument[]> {
  const rows = await db.instrument.findMany({ where: { studyId }, orderBy: { name: 'asc' } });
  return rows.map((row) => ({
    id: row.id,
    name: row.name,
    voltagePct: row.voltageAccuracyPct ?? undefined,
    currentPct: row.currentAccuracyPct ?? undefined,
    powerPct: row.powerAccuracyPct ?? undefined,
    speedRpm: row.speedAccuracyRpm ?? undefined,
  }));
}
