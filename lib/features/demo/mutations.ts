import { recordChange } from '@/lib/platform/audit';
import type { Database } from '@/lib/platform/db';
import { ok, type Result } from '@/lib/platform/errors';
import { enqueueEvaluation } from '../evaluation/mutations';
import { addMotors } from '../fleet/mutations';
import { addStudy } from '../study/mutations';
import { generateDemo } from './generate';
import { DEMO_SITE } from './scenario';

const AUTHOR = 'Lossbook';

/**
 * Opens the demonstration: the one in use, or one that was made today and put aside, so that nothing done in it is lost; or else a new one
 * with readings of the months before today. One of an earlier day, whose dates have gone stale, stays put aside and can be brought back.
 */
export async function ensureDemo(
  db: Database,
  at: Date = new Date(),
): Promise<Result<{ readonly id: string; readonly made: boolean }>> {
  return db.write(async (tx) => {
    const asOf = dayOf(at);
    const demos = await tx.study.findMany({
      where: { demo: true },
      select: { id: true, archivedAt: true, createdAt: true },
      orderBy: { createdAt: 'desc' },
    });
    const known = demos.find(({ archivedAt }) => archivedAt === null) ?? demos.find(({ createdAt }) => dayOf(createdAt) === asOf);
    if (known !== undefined) {
      if (known.archivedAt !== null) await tx.study.update({ where: { id: known.id }, data: { archivedAt: null } });
      return ok({ id: known.id, made: false });
    }
    const made = await addStudy(tx, { name: await freeName(), who: AUTHOR, demo: true, settings: { asOf } }, at);
    if (!made.ok) return made;
    const { id } = made.value;
    const motors = generateDemo({ asOf });
    await addMotors(
      tx,
      motors.map(({ motor }) => ({ motor })),
      { studyId: id, currency: 'USD', at },
    );
    await recordChange(
      tx,
      {
        studyId: id,
        who: AUTHOR,
        subject: 'study',
        subjectId: id,
        subjectLabel: DEMO_SITE,
        what: 'filled',
        to: { motors: motors.length },
      },
      at,
    );
    await enqueueEvaluation(tx, id);
    return ok({ id, made: true });

    async function freeName(): Promise<string> {
      const studies = await tx.study.findMany({ where: { name: { startsWith: DEMO_SITE } }, select: { name: true } });
      const taken = new Set(studies.map(({ name }) => name));
      let name = DEMO_SITE;
      for (let number = 1; taken.has(name); number++)
        name = number === 1 ? `${DEMO_SITE} ${asOf}` : `${DEMO_SITE} ${asOf} (${number})`;
      return name;
    }
  });
}

/** The day of an instant, as in the settings. */
function dayOf(at: Date): string {
  return at.toISOString().slice(0, 10);
}
