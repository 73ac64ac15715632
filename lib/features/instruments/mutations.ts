import { recordChange } from '@/lib/platform/audit';
import type { Database } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { enqueueEvaluation } from '../evaluation/mutations';
import { readStudy } from '../study/data';
import type { Instrument } from './schema';

/** Adds an instrument, or gives the one of this name other errors and dates; the fleet is evaluated again. */
export async function putInstrument(
  db: Database,
  wish: { readonly studyId: string; readonly who: string; readonly instrument: Omit<Instrument, 'id'> },
): Promise<Result<undefined>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, wish.studyId);
    if (!study) return refuse('no-study', 'There is no such study any more.', 'Go back to the first page.');
    const { name, serialNumber, voltagePct, currentPct, powerPct, speedRpm, calibratedOn, calibrationDueOn } = wish.instrument;
    const facts = {
      serialNumber: serialNumber ?? null,
      voltageAccuracyPct: voltagePct ?? null,
      currentAccuracyPct: currentPct ?? null,
      powerAccuracyPct: powerPct ?? null,
      speedAccuracyRpm: speedRpm ?? null,
      calibratedOn: calibratedOn ?? null,
      calibrationDueOn: calibrationDueOn ?? null,
    };
    const key = { studyId_name: { studyId: wish.studyId, name } };
    const former = await tx.instrument.findUnique({ where: key });
    const stored = await tx.instrument.upsert({ where: key, create: { studyId: wish.studyId, name, ...facts }, update: facts });
    await tx.study.update({ where: { id: wish.studyId }, data: { version: { increment: 1 } } });
    await recordChange(tx, {
      studyId: wish.studyId,
      who: wish.who,
      subject: 'instrument',
      subjectId: stored.id,
      subjectLabel: name,
      what: former ? 'changed' : 'added',
      from: former ? words(former) : undefined,
      to: words(facts),
    });
    await enqueueEvaluation(tx, wish.studyId);
    return ok(undefined);
  });
}

/** Removes an instrument; readings that name it fall back to the study's errors. */
export async function removeInstrument(
  db: Database,
  wish: { readonly studyId: string; readonly who: string; readonly id: string },
): Promise<Result<undefined>> {
  return db.write(async (tx) => {
    const former = await tx.instrument.findFirst({ where: { id: wish.id, studyId: wish.studyId } });
    if (!former) return refuse('no-instrument', 'There is no such instrument any more.', 'Load the page again.');
    await tx.instrument.delete({ where: { id: former.id } });
    await tx.study.update({ where: { id: wish.studyId }, data: { version: { increment: 1 } } });
    await recordChange(tx, {
      studyId: wish.studyId,
      who: wish.who,
      subject: 'instrument',
      subjectId: former.id,
      subjectLabel: former.name,
      what: 'deleted',
      from: words(former),
    });
    await enqueueEvaluation(tx, wish.studyId);
    return ok(undefined);
  });
}

interface Facts {
  readonly serialNumber: string | null;
  readonly voltageAccuracyPct: number | null;
  readonly currentAccuracyPct: number | null;
  readonly powerAccuracyPct: number | null;
  readonly speedAccuracyRpm: number | null;
  readonly calibratedOn: string | null;
  readonly calibrationDueOn: string | null;
}

function words(facts: Facts): string {
  const said = (before: string, value: string | number | null, after = ''): string[] =>
    value === null ? [] : [`${before} ${value}${after}`];
  const parts = [
    ...said('serial number', facts.serialNumber),
    ...said('voltage', facts.voltageAccuracyPct, ' %'),
    ...said('current', facts.currentAccuracyPct, ' %'),
    ...said('power', facts.powerAccuracyPct, ' %'),
    ...said('speed', facts.speedAccuracyRpm, ' r/min'),
    ...said('calibrated', facts.calibratedOn),
    ...said('due', facts.calibrationDueOn),
  ];
  return parts.join(', ') || 'nothing stated';
}
