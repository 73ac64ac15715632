import { evaluateMotor, type LineTable, lineTable } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { asEvaluated } from '../evaluation/as-evaluated';
import { readMotor } from '../fleet/data';
import { studyInForce } from '../study/context';

/** The spectral lines to expect of a stored motor, worked out from what is stored now; `undefined` when the study has no such motor. */
export async function loadLines(studyId: string, motorId: string): Promise<{ readonly table: LineTable } | undefined> {
  const { read } = database();
  const [force, stored] = await Promise.all([studyInForce(read, studyId), readMotor(read, motorId, { withHistory: true })]);
  if (!force || !stored || stored.studyId !== studyId) return undefined;
  return { table: lineTable(evaluateMotor(await asEvaluated(read, force, stored), force.context)) };
}
