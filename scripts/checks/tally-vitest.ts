import { z } from 'zod';
import { readReport } from './read-report';
import { failure, heldAgainstExit, type Tally } from './tally';

/** The part of vitest's JSON report that is counted (its `json` reporter, version 4). */
const vitestReport = z.object({
  testResults: z.array(
    z.object({
      name: z.string(),
      status: z.string(),
      assertionResults: z.array(z.object({ status: z.string(), fullName: z.string() })),
    }),
  ),
});

/**
 * Counts vitest's report: each test by its own status, and one failed check for each file that failed outside its tests
 * (a file that could not be loaded lists no test at all).
 */
export function tallyVitest(reportFile: string, exitCode: number): Tally {
  const read = readReport(reportFile, vitestReport);
  if (!read.ok) return failure(`vitest ${read.problem} (exit ${exitCode})`);
  let passed = 0;
  let failed = 0;
  const notes: string[] = [];
  for (const file of read.report.testResults) {
    let failedHere = 0;
    for (const test of file.assertionResults) {
      if (test.status === 'passed') passed += 1;
      else failedHere += 1;
      if (test.status !== 'passed' && test.status !== 'failed')
        notes.push(`not run (${test.status}), counted as failed: ${test.fullName}`);
    }
    if (file.status === 'failed' && failedHere === 0) {
      failedHere = 1;
      notes.push(`failed outside its tests: ${file.name}`);
    }
    failed += failedHere;
  }
  return heldAgainstExit('vitest', { passed, failed, notes }, exitCode);
}
