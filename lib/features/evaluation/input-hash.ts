import type { Motor, StudyContext } from '@/lib/engine';
import { contentHash, sha256 } from '@/lib/platform/hash';
import { engineInUse } from './engine-in-use';

/**
 * Hash over what every motor of a study is evaluated with: engine, settings, reference tables and prices. The tables count
 * with all their rows, so that a mended cell is noticed whatever the edition says. Of the budget only its years count, and what the plan aims at not at
 * all: no figure of a single motor rests on them, so that another budget takes a new plan but no new evaluation.
 */
export function contextHash(context: StudyContext): string {
  const { budget, objective: _, ...settings } = context.settings;
  return contentHash({ engine: engineInUse(), ...context, settings: { ...settings, budgetYears: budget.length } });
}

/** Hash over all that goes into one motor's result; while it stays the same, so does the result. */
export function inputHash(context: string, motor: Motor): string {
  return sha256(`${context} ${contentHash(motor)}`);
}

/** Hash over the inputs of a whole run, whatever the order of its motors. */
export function inputsHash(hashes: readonly string[]): string {
  return sha256([...hashes].sort().join('\n'));
}
