import type { Database } from '@/lib/platform/db';
import { ok, type Problem, type Result } from '@/lib/platform/errors';
import { putPlan } from '../plan/mutations';
import type { PlanFromFile } from '../plan/wish-file';
import { type SettingsChange, type SettingsWritten, writeSettingsIn } from '../study/mutations';

/** A settings file with what it wants of the plan; without a plan the wishes of the study stay. */
interface SettingsFileChange extends SettingsChange {
  readonly plan?: PlanFromFile | undefined;
}

/** What became of it; how many wishes and terms of the plan differ. */
interface SettingsFileTaken extends SettingsWritten {
  readonly planChanged: number;
}

/** Calls a transaction off, with what is to be said of it. */
class Refused extends Error {
  constructor(readonly problem: Problem) {
    super(problem.text);
  }
}

/** Takes a settings file: settings and plan in one act, or nothing of it where the plan names what the study does not have. */
export async function takeSettings(
  db: Database,
  { plan, ...change }: SettingsFileChange,
  at: Date = new Date(),
): Promise<Result<SettingsFileTaken>> {
  try {
    return await db.write(async (tx) => {
      const written = await writeSettingsIn(tx, change, at);
      if (!written.ok) return written;
      const planned =
        plan === undefined ? ok({ changed: 0 }) : await putPlan(tx, { studyId: change.id, who: change.who, plan }, at);
      if (!planned.ok) throw new Refused(planned.problem);
      return ok({ ...written.value, planChanged: planned.value.changed });
    });
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problem: error.problem };
    throw error;
  }
}
