import {
  type BenchEvaluation,
  type BenchMethodId,
  type BenchResult,
  type BenchTest,
  benchResult,
  evaluateBench,
  type ReferenceTables,
} from '@/lib/engine';
import type { BenchMotor } from './motor-facts';

/** Where no method is named: by dynamometer if torque was read, else by the input, else the circuit, else the no-load run alone. */
export function usualMethod(test: BenchTest): BenchMethodId {
  const { sections } = test;
  if (sections.load.length > 0) return sections.load.some((point) => point.torqueNm !== undefined) ? 'ieee-112-b' : 'ieee-112-e1';
  return sections['locked-rotor'].length > 0 ? 'ieee-112-f1' : 'no-load-run';
}

/** Evaluates one test of a motor. */
export function workOut(
  test: BenchTest,
  motor: BenchMotor,
  method: BenchMethodId | undefined,
  tables: Pick<ReferenceTables, 'assumedStray'>,
): { evaluation: BenchEvaluation; result: BenchResult } {
  const evaluation = evaluateBench(test, { ...motor, method: method ?? usualMethod(test), assumedStray: tables.assumedStray });
  return { evaluation, result: benchResult(evaluation) };
}
