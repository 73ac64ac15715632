import type { StudyContext } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { readInstruments } from '../instruments/data';
import type { Instrument } from '../instruments/schema';
import { readPriceList } from '../prices/data';
import { type Reader, readStudy, type StoredStudy } from './data';

/** A stored study with all that its motors are evaluated with. */
export interface StudyInForce {
  readonly study: StoredStudy;
  readonly context: StudyContext;
  /** Meters whose errors serve readings that state none. */
  readonly instruments: readonly Instrument[];
}

/** Settings, tables and prices of a study; `undefined` when there is no such study. */
export async function studyInForce(db: Reader, studyId: string): Promise<StudyInForce | undefined> {
  const study = await readStudy(db, studyId);
  if (!study) return undefined;
  const reference = loadTables();
  const prices = (await readPriceList(db, studyId)) ?? reference.prices;
  return {
    study,
    context: { settings: study.settings, tables: reference.tables, prices },
    instruments: await readInstruments(db, studyId),
  };
}
