import { type BenchMethodId, type BenchResult, compareTests, type TestChange, type TestComparison } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { loadTables } from '@/lib/reference/load';
import { readMotor } from '../fleet/data';
import { withInstruments } from '../instruments/with-instruments';
import { studyInForce } from '../study/context';
import { readTest, readTests, type StoredTest } from './data';
import { benchMotor } from './motor-facts';
import { usualMethod, workOut } from './work-out';

export type { StoredTest } from './data';

/** A test with its result. */
export interface WorkedTest {
  readonly stored: StoredTest;
  readonly result: BenchResult;
}

/** A motor as bench tests see it. */
type BenchOwner = NonNullable<Awaited<ReturnType<typeof ownerOf>>>;

async function ownerOf(studyId: string, motorId: string) {
  const { read } = database();
  const force = await studyInForce(read, studyId);
  const stored = await readMotor(read, motorId);
  if (!force || !stored || stored.studyId !== studyId) return undefined;
  return { motor: withInstruments(stored.motor, force.instruments), study: force.study };
}

function worked(stored: StoredTest, owner: BenchOwner, method?: BenchMethodId): WorkedTest {
  const facts = benchMotor(owner.motor, stored.rotorConductor);
  return { stored, result: workOut(stored.test, facts, method ?? stored.method, loadTables().tables).result };
}

/** A test with what moved since the one before it; absent for the first, and for one that was withdrawn. */
export interface MotorTest extends WorkedTest {
  readonly moved: readonly TestChange[] | undefined;
}

/** The tests of one motor with their results, the newest first, each against the one before that counts. */
export async function loadMotorTests(studyId: string, motorId: string): Promise<readonly MotorTest[]> {
  const owner = await ownerOf(studyId, motorId);
  if (!owner) return [];
  const tests = (await readTests(database().read, { studyId, motorId })).map((stored) => worked(stored, owner));
  return tests.map((test, at) => {
    const before = test.stored.withdrawn ? undefined : tests.slice(at + 1).find((each) => !each.stored.withdrawn);
    const moved = before && compareTests(before.result, test.result, loadTables().tables.rewindLimits).changes;
    return { ...test, moved };
  });
}

/** The tests of a study, without results: the list of the screen. */
export async function loadTests(studyId: string): Promise<readonly StoredTest[]> {
  return readTests(database().read, { studyId });
}

/** One test with all that its page shows. */
export interface TestPage extends WorkedTest {
  readonly motor: BenchOwner['motor'];
  /** By which method an unnamed one would be worked out. */
  readonly usual: BenchMethodId;
  /** The motor's other tests that count, the newest first, each by its own method. */
  readonly others: readonly WorkedTest[];
  /** Against another test, the older one first. */
  readonly comparison: { readonly before: WorkedTest; readonly after: WorkedTest; readonly outcome: TestComparison } | undefined;
}

/** A test by its id, worked out by its own method or another, and compared with another test of the motor if one is named. */
export async function loadTest(
  studyId: string,
  id: string,
  ask: { readonly method?: BenchMethodId | undefined; readonly against?: string | undefined } = {},
): Promise<TestPage | undefined> {
  const stored = await readTest(database().read, studyId, id);
  const owner = stored && (await ownerOf(studyId, stored.motorId));
  if (!stored || !owner) return undefined;
  const own = worked(stored, owner, ask.method);
  const siblings = await readTests(database().read, { studyId, motorId: stored.motorId });
  const others = siblings.filter((each) => each.id !== id && !each.withdrawn).map((each) => worked(each, owner));
  const other = others.find((each) => each.stored.id === ask.against);
  const order = siblings.map((each) => each.id);
  const [after, before] = other && order.indexOf(other.stored.id) < order.indexOf(id) ? [other, own] : [own, other];
  return {
    ...own,
    motor: owner.motor,
    usual: usualMethod(stored.test),
    others,
    comparison: before &&
      after && { before, after, outcome: compareTests(before.result, after.result, loadTables().tables.rewindLimits) },
  };
}
