import { z } from 'zod';
import { readReport } from './read-report';
import { failure, heldAgainstExit, type Tally } from './tally';

/** The part of Playwright's JSON report that is counted (its `json` reporter, version 1.65). */
const playwrightReport = z.object({
  stats: z.object({
    expected: z.number().int().nonnegative(),
    unexpected: z.number().int().nonnegative(),
    flaky: z.number().int().nonnegative(),
    skipped: z.number().int().nonnegative(),
  }),
  errors: z.array(z.object({ message: z.string().optional() })),
});

/** Counts Playwright's report. A test that passed only when repeated, or was skipped, counts as failed; so does each error outside the tests. */
export function tallyPlaywright(reportFile: string, exitCode: number): Tally {
  const read = readReport(reportFile, playwrightReport);
  if (!read.ok) return failure(`Playwright ${read.problem} (exit ${exitCode})`);
  const { stats, errors } = read.report;
  const notes = errors.map((error) => `error outside the browser tests: ${error.message?.split('\n')[0] ?? 'no message'}`);
  if (stats.flaky > 0) notes.push(`${stats.flaky} browser tests passed only when repeated, counted as failed`);
  if (stats.skipped > 0) notes.push(`${stats.skipped} browser tests were skipped or did not run, counted as failed`);
  const failed = stats.unexpected + stats.flaky + stats.skipped + errors.length;
  return heldAgainstExit('Playwright', { passed: stats.expected, failed, notes }, exitCode);
}
