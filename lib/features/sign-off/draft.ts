import type { MotorResult } from '@/lib/engine';
import { readProgress, readResults, readRunMaking } from '../evaluation/data';
import { readInputsHash, readSolution } from '../plan/data';
import type { PlannedProgramme } from '../plan/programme';
import { studyInForce } from '../study/context';
import { settingsToJson } from '../study/settings';
import type { Reader } from './data';
import type { Drawn } from './report';

/** A plan as it stands, with what its report is drawn from. */
export interface Draft extends Drawn {
  readonly programme: PlannedProgramme;
  readonly plannedAt: Date;
}

/**
 * The plan of a study that nobody has frozen. `stale` unless it was worked out from exactly the results, settings and wishes that hold now: a report
 * never puts figures of one state beside a plan of another. `undefined` when there is no such study.
 */
export async function readDraft(db: Reader, studyId: string): Promise<Draft | 'stale' | undefined> {
  const inForce = await studyInForce(db, studyId);
  if (!inForce) return undefined;
  const { active } = await readProgress(db, studyId);
  const now = await readInputsHash(db, studyId);
  const making = now && (await readRunMaking(db, now.runId));
  const solution = await readSolution(db, studyId);
  if (active !== undefined || !making || solution?.hash !== now?.hash || !solution || 'problems' in solution.outcome)
    return 'stale';
  const results: MotorResult[] = [];
  for await (const { result } of readResults(db, now.runId)) results.push(result);
  const { study, context } = inForce;
  return {
    study: { name: study.name, demo: study.demo },
    engine: making.engineVersion,
    tables: [...making.tableEditions],
    settings: settingsToJson(study.settings, study.pricesFile),
    prices: { invented: context.prices.invented },
    results,
    programme: solution.outcome,
    plannedAt: solution.finishedAt,
  };
}
