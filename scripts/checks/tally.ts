/** What a step of the test run counted. A skipped test counts as failed: what is not run is not known to work. */
export interface Tally {
  readonly passed: number;
  readonly failed: number;
  /** Sentences for the reader, one a line: why something that no report lists as failed counts as failed. */
  readonly notes: readonly string[];
}

export const NOTHING: Tally = { passed: 0, failed: 0, notes: [] };

/** One failed check with its reason. */
export function failure(note: string): Tally {
  return { passed: 0, failed: 1, notes: [note] };
}

/** A program that is one check: passed when it ended with 0. */
export function tallyOfExit(name: string, exitCode: number): Tally {
  return exitCode === 0 ? { passed: 1, failed: 0, notes: [] } : failure(`${name} ended with ${exitCode}`);
}

/** Sums tallies; notes keep their order. */
export function sum(tallies: readonly Tally[]): Tally {
  return tallies.reduce(
    (total, one) => ({
      passed: total.passed + one.passed,
      failed: total.failed + one.failed,
      notes: [...total.notes, ...one.notes],
    }),
    NOTHING,
  );
}

/**
 * Holds a runner's count against its exit code: a runner that ended badly although its report shows no failure (an error outside
 * any test, a crash at the end), or that ran nothing at all, counts as one failed check.
 */
export function heldAgainstExit(name: string, counted: Tally, exitCode: number): Tally {
  if (counted.failed > 0) return counted;
  if (exitCode !== 0) return sum([counted, failure(`${name} ended with ${exitCode} although its report shows no failed test`)]);
  if (counted.passed === 0) return failure(`${name} ran no test`);
  return counted;
}
