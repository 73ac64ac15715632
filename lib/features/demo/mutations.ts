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
 * Opens the demonstration: the one there is, brought back if it was put aside, so that nothing done in it is lost; or else a new one with
 * readings of the months before today.
 */
export async function ensureDemo(
  db: Database,
  at: Date = new Date(),
): Promise<Result<{ readonly id: string; readonly made: boolean }>> {
  return db.write(async (tx) => {
    const known = await tx.study.findFirst({ where: { demo: true }, select: { id: true, archivedAt: true } });
    if (known !== null) {
      if (known.archivedAt !== null) await tx.study.update({ where: { id: known.id }, data: { archivedAt: null } });
      return ok({ id: known.id, made: false });
    }
    const asOf = at.toISOString().slice(0, 10);
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
      const taken = await tx.study.findUnique({ where: { name: DEMO_SITE }, select: { id: true } });
      return taken === null ? DEMO_SITE : `${DEMO_SITE} ${asOf}`;
    }
  });
}
