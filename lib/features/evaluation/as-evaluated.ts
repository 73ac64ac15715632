import type { Motor } from '@/lib/engine';
import { loadTables } from '@/lib/reference/load';
import { readTests, type StoredTest } from '../bench/data';
import { withTest } from '../bench/tested';
import type { StoredMotor } from '../fleet/data';
import { withInstruments } from '../instruments/with-instruments';
import type { StudyInForce } from '../study/context';
import type { Reader } from '../study/data';

/** A stored motor as it is evaluated: readings with the errors of their meters, and the bench test that counts. */
export async function asEvaluated(db: Reader, force: StudyInForce, stored: Pick<StoredMotor, 'id' | 'motor'>): Promise<Motor> {
  const tests = await readTests(db, { studyId: force.study.id, motorId: stored.id });
  return withTest(withInstruments(stored.motor, force.instruments), tests, loadTables().tables);
}

/** The same for all motors of a study, with one look at its tests. */
export async function fleetAsEvaluated(
  db: Reader,
  force: StudyInForce,
  motors: readonly StoredMotor[],
): Promise<readonly StoredMotor[]> {
  const tests = new Map<string, StoredTest[]>();
  for (const test of await readTests(db, { studyId: force.study.id })) {
    const own = tests.get(test.motorId);
    if (own) own.push(test);
    else tests.set(test.motorId, [test]);
  }
  const { tables } = loadTables();
  return motors.map((stored) => ({
    ...stored,
    motor: withTest(withInstruments(stored.motor, force.instruments), tests.get(stored.id) ?? [], tables),
  }));
}
