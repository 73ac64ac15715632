import { compareNaturally, motorKey, type OptionResult, type Settings } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { readProgress, readResult } from '../evaluation/data';
import type { EvaluationProgress } from '../evaluation/schema';
import { readStudy } from '../study/data';
import { type Reader, readInputsHash, readPlanProgress, readSolution, readTerms, readWishes, type StoredWish } from './data';
import type { PlanOutcome } from './programme';
import type { PlanProgress } from './schema';
import type { PlanTerms } from './terms';
import { letIn } from './work-out';

export { motorKey } from '@/lib/engine';
export { beyondPolicy } from './beyond-policy';
export type { StoredWish } from './data';
export type { PlannedProgramme, PlanOutcome, Programme, ProgrammeItem } from './programme';
export type { PlanTerms } from './terms';

/** Where working out a study's plan stands. */
export async function loadPlanProgress(studyId: string): Promise<PlanProgress> {
  return readPlanProgress(database().read, studyId);
}

/** Areas and years on which hours may be limited. */
export async function loadLimitable(
  studyId: string,
): Promise<{ readonly areas: readonly string[]; readonly years: readonly number[] }> {
  const db = database().read;
  const study = await readStudy(db, studyId);
  const first = Number(study?.settings.asOf.slice(0, 4));
  return { areas: await readAreas(db, studyId), years: study?.settings.budget.map((_, at) => first + at) ?? [] };
}

/** Names of a study's areas, in order. */
async function readAreas(db: Reader, studyId: string): Promise<string[]> {
  const rows = await db.area.findMany({ where: { studyId }, select: { name: true } });
  return [...new Set(rows.map(({ name }) => name))].sort(compareNaturally);
}

/** What holds of a study's plan as a whole. */
export async function loadTerms(studyId: string): Promise<PlanTerms> {
  return readTerms(database().read, studyId);
}

/** What the plan screen shows. */
export interface PlanScreen {
  readonly progress: PlanProgress;
  readonly evaluation: EvaluationProgress;
  readonly outcome?: PlanOutcome | undefined;
  readonly finishedAt?: Date | undefined;
  /** False when results, settings or wishes have changed since the plan was worked out. */
  readonly current: boolean;
  readonly wishes: readonly StoredWish[];
  readonly terms: PlanTerms;
  /** Names of areas, in order. */
  readonly areas: readonly string[];
  /** Ids of motors by site and tag. */
  readonly motorIds: ReadonlyMap<string, string>;
}

/** The plan of a study as it stands. */
export async function loadPlan(studyId: string): Promise<PlanScreen> {
  const db = database().read;
  const solution = await readSolution(db, studyId);
  const now = await readInputsHash(db, studyId);
  const evaluation = await readProgress(db, studyId);
  const rows = await db.motor.findMany({ where: { studyId }, select: { id: true, siteName: true, tag: true } });
  return {
    progress: await readPlanProgress(db, studyId),
    evaluation,
    outcome: solution?.outcome,
    finishedAt: solution?.finishedAt,
    current: solution !== undefined && solution.hash === now?.hash && evaluation.active === undefined,
    wishes: await readWishes(db, studyId),
    terms: await readTerms(db, studyId),
    areas: await readAreas(db, studyId),
    motorIds: new Map(rows.map(({ id, siteName, tag }) => [motorKey({ site: siteName, tag }), id])),
  };
}

/** What can be wished of the plan for one motor. */
interface WishScreen {
  readonly site: string;
  readonly tag: string;
  readonly settings: Settings;
  /** Options that could be carried out in a year of the budget. */
  readonly options: readonly OptionResult[];
  /** Years of the budget. */
  readonly years: readonly number[];
  readonly usable: boolean;
  readonly failed: boolean;
  readonly wishes: readonly StoredWish[];
  /** Names of bundles that others stand in. */
  readonly bundles: readonly string[];
  /** Where the plan has it now. */
  readonly planned?: { readonly year: number; readonly option: string } | undefined;
  /** Why the plan has it nowhere. */
  readonly leftOut?: string | undefined;
}

/** The wishes that stand and could stand for one motor; `undefined` when it is not there or not evaluated. */
export async function loadWish(studyId: string, motorId: string): Promise<WishScreen | undefined> {
  const db = database().read;
  const study = await readStudy(db, studyId);
  const result = await readResult(db, studyId, motorId);
  const motor = await db.motor.findFirst({ where: { id: motorId, studyId }, select: { status: true } });
  if (!study || !result || motor === null) return undefined;
  const { settings } = study;
  const first = Number(settings.asOf.slice(0, 4));
  const solution = await readSolution(db, studyId);
  const programme = solution && 'years' in solution.outcome ? solution.outcome : undefined;
  const own = ({ site, tag }: { readonly site: string; readonly tag: string }) => site === result.site && tag === result.tag;
  const planned = programme?.years.flatMap(({ year, items }) => items.filter(own).map(({ option }) => ({ year, option })))[0];
  const all = await readWishes(db, studyId);
  return {
    site: result.site,
    tag: result.tag,
    settings,
    options: result.options
      .map(letIn)
      .filter(
        ({ action, timing, findings }) =>
          action !== 'keep' && timing === 'now' && !findings.some(({ severity }) => severity === 'disqualifies'),
      ),
    years: settings.budget.map((_, at) => first + at),
    usable: result.trust.level !== 'not-usable',
    failed: motor.status === 'failed',
    wishes: all.filter((wish) => wish.motorId === motorId),
    bundles: [...new Set(all.flatMap(({ bundle }) => (bundle === undefined ? [] : [bundle])))].sort(),
    planned,
    leftOut: programme?.left_out.find(own)?.because.text,
  };
}
