import type { BenchMethodId, BenchPlate, BenchTest, Motor, ReferenceTables, Tested } from '@/lib/engine';
import { benchMotor } from './motor-facts';
import { workOut } from './work-out';

/** A test as it may count for its motor: the same whether it is stored or stands on a sheet. */
export interface CountingTest {
  readonly test: BenchTest;
  readonly takenAt: string | undefined;
  readonly rotorConductor: BenchPlate['rotorConductor'];
  /** The procedure; the usual one for what was measured where none is named. */
  readonly method?: BenchMethodId | undefined;
  /** Present when somebody withdrew it. */
  readonly withdrawn?: object | undefined;
}

/**
 * The motor with the bench test that counts: the newest that its standard accepts, not withdrawn, and not older than the winding. Tests come the
 * newest first. What is stored and exported of the motor stays as it was written.
 */
export function withTest(motor: Motor, tests: readonly CountingTest[], tables: Pick<ReferenceTables, 'assumedStray'>): Motor {
  const tested = newestThatCounts(motor, tests, tables);
  return tested ? { ...motor, tested } : motor;
}

function newestThatCounts(
  motor: Motor,
  tests: readonly CountingTest[],
  tables: Pick<ReferenceTables, 'assumedStray'>,
): Tested | undefined {
  const { lastRewindYear } = motor.plate;
  for (const { test, takenAt, method, rotorConductor, withdrawn } of tests) {
    if (withdrawn) continue;
    if (takenAt !== undefined && lastRewindYear !== undefined && Number(takenAt.slice(0, 4)) < lastRewindYear) continue;
    const { result, evaluation } = workOut(test, benchMotor(motor, rotorConductor), method, tables);
    if (!result.accepted || !result.measured) continue;
    const name = [test.test, takenAt].filter(Boolean).join(', ') || 'without a name';
    const conflicts = evaluation.conflicts.filter(({ code }) => code !== 'efficiency-off-plate');
    return {
      name,
      measured: result.measured,
      ...(takenAt !== undefined && { takenAt }),
      ...(conflicts.length > 0 && { conflicts }),
    };
  }
  return undefined;
}
