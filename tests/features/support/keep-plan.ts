import { gzipSync } from 'node:zlib';
import { readPlanInputs } from '@/lib/features/plan/data';
import { beginSolution, keepSolution } from '@/lib/features/plan/mutations';
import { workOutPlan } from '@/lib/features/plan/work-out';
import type { Database } from '@/lib/platform/db';

/** Works the plan of a study out in this thread and keeps it. */
export async function keepPlan(db: Database, studyId: string): Promise<void> {
  const inputs = await readPlanInputs(db.read, studyId);
  const outcome = inputs && (await workOutPlan(inputs));
  if (!outcome) throw new Error('there is no plan');
  const id = await beginSolution(db, studyId);
  await keepSolution(db, id, { hash: inputs.hash, result: gzipSync(JSON.stringify(outcome)) });
}
