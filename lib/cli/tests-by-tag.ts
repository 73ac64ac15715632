import type { Motor } from '@/lib/engine';
import { parseBench } from '@/lib/features/bench/parse-sheet';
import { type CountingTest, withTest } from '@/lib/features/bench/tested';
import type { RowIssue } from '@/lib/features/fleet/issue-codes';
import { issueLine } from '@/lib/features/fleet/issue-line';
import type { LoadedReference } from '@/lib/reference/load';
import type { Call } from './arguments';
import { UsageError } from './exit';
import { faultOf } from './words';

/** Bench tests of a sheet, to be joined with the motors whose tag they carry. */
export class TestsByTag {
  private readonly tests = new Map<string, CountingTest[]>();
  private readonly sites = new Map<string, string>();

  constructor(
    tests: readonly CountingTest[],
    private readonly tables: LoadedReference['tables'],
    /** Rows that could not be read. */
    readonly rejected: readonly RowIssue[],
  ) {
    // A bench sheet carries no dates: the test that stands last is taken for the newest.
    for (const test of [...tests].reverse()) {
      const own = this.tests.get(test.test.tag);
      if (own) own.push(test);
      else this.tests.set(test.test.tag, [test]);
    }
  }

  /** A motor with its test; a tag that stands at two sites leaves open whose test it is. */
  join(motor: Motor): Motor {
    const own = this.tests.get(motor.tag);
    if (!own) return motor;
    const before = this.sites.get(motor.tag);
    if (before !== undefined && before !== motor.site)
      throw new UsageError(
        `The tag "${motor.tag}" stands at several sites (${before || '(no site)'}, ${motor.site || '(no site)'}), so its bench test could be of either. Give each site a sheet of its own.`,
      );
    this.sites.set(motor.tag, motor.site);
    return withTest(motor, own, this.tables);
  }

  /** Tags that no motor had, once every motor has been joined. */
  get strays(): readonly string[] {
    return [...this.tests.keys()].filter((tag) => !this.sites.has(tag));
  }
}

/** The bench tests that a call names; none without the option. An unreadable file ends the command with its remedy. */
export async function readCallTests(call: Call, reference: LoadedReference): Promise<TestsByTag> {
  if (call.bench === undefined) return new TestsByTag([], reference.tables, []);
  const parsed = await parseBench({ path: call.bench }, call.reading);
  if (!parsed.ok) throw new UsageError(faultOf(call.bench, parsed.problem));
  for (const issue of [...parsed.rejected, ...parsed.warnings]) console.error(`${call.bench}, ${issueLine(issue)}`);
  const tests = parsed.tests.map((test) => ({ test, takenAt: undefined, rotorConductor: undefined }));
  return new TestsByTag(tests, reference.tables, parsed.rejected);
}
