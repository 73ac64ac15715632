import { motorKey } from '@/lib/engine';
import { type Change, recordChanges } from '@/lib/platform/audit';
import type { Database, Tx } from '@/lib/platform/db';
import { ok, type Result, refuse } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { readResult } from '../evaluation/data';
import { readStudy } from '../study/data';
import { readPlanProgress, readTerms, readWishes, type StoredWish } from './data';
import type { PlanWish } from './programme';
import type { PlanStage } from './schema';
import type { PlanTerms } from './terms';
import type { PlanFromFile } from './wish-file';
import { nameOf } from './words';

/** What somebody wants of the plan for one motor: all that holds from now on. */
export interface MotorWish {
  readonly studyId: string;
  readonly motorId: string;
  readonly who: string;
  /** What is to be done: something by a year at the latest, or an option, a year, or both. */
  readonly choice:
    | 'free'
    | 'forbidden'
    | 'must'
    | { readonly by: number }
    | { readonly option?: string | undefined; readonly year?: number | undefined };
  /** Empty for none. */
  readonly bundle: string;
  /** Why its figures may be used although they are not usable; absent: they may not. */
  readonly override?: string | undefined;
}

const GONE = refuse('no-motor', 'There is no such motor any more.', 'Go back to the plan.');

/** Writes what is wanted for a motor in place of what was, with a line in the history for each wish that differs. */
export async function setMotorWish(
  db: Database,
  wish: MotorWish,
  at: Date = new Date(),
): Promise<Result<{ readonly changed: number }>> {
  const { studyId, motorId, who } = wish;
  return db.write(async (tx) => {
    const motor = await tx.motor.findFirst({ where: { id: motorId, studyId }, select: { siteName: true, tag: true } });
    if (motor === null) return GONE;
    const refused = await refusedWish(tx, wish);
    if (refused) return refused;
    const label = { site: motor.siteName, tag: motor.tag };
    const before = await readWishes(tx, studyId, motorId);
    const changed = await putWishes(tx, { studyId, motorId, who, before, after: wanted(wish, label) }, at);
    return ok({ changed });
  });
}

/** What is wanted for a motor in place of what was. */
interface WishesOfMotor {
  readonly studyId: string;
  readonly motorId: string;
  /** Who changes it; whose wish it is, the wish says. */
  readonly who: string;
  readonly before: readonly PlanWish[];
  readonly after: readonly PlanWish[];
}

/** Writes the wishes of one motor, with a line in the history for each that differs. @returns how many do. */
async function putWishes(tx: Tx, { studyId, motorId, who, before, after }: WishesOfMotor, at: Date): Promise<number> {
  const changed = (['pinned', 'forbidden', 'must', 'together', 'override'] as const).flatMap((kind) => {
    const [from, to] = [before, after].map((all) => all.find((each) => each.kind === kind));
    return words(from) === words(to) ? [] : [{ kind, from, to }];
  });
  for (const { kind, to } of changed) {
    await tx.planWish.deleteMany({ where: { motorId, kind } });
    if (!to) continue;
    const { option, year, bundle, reason, by } = to;
    await tx.planWish.create({
      data: {
        id: newId(at.getTime()),
        studyId,
        motorId,
        kind,
        option: option ?? null,
        year: year ?? null,
        bundle: bundle ?? null,
        who: by,
        reason: reason ?? null,
        createdAt: at,
      },
    });
  }
  await recordChanges(
    tx,
    changed.map(
      ({ kind, from, to }): Change => ({
        studyId,
        who,
        subject: 'plan',
        subjectId: motorId,
        subjectLabel: nameOf(after[0] ?? before[0] ?? { site: '', tag: '' }),
        what: 'changed',
        field: kind,
        from: words(from),
        to: words(to),
        ...(to?.reason !== undefined && { why: to.reason }),
      }),
    ),
    at,
  );
  return changed.length;
}

function wanted({ choice, bundle, override, who }: MotorWish, motor: { readonly site: string; readonly tag: string }) {
  const wishes: PlanWish[] = [];
  if (choice === 'forbidden') wishes.push({ ...motor, kind: 'forbidden', by: who });
  if (choice === 'must') wishes.push({ ...motor, kind: 'must', by: who });
  if (typeof choice === 'object')
    wishes.push(
      'by' in choice
        ? { ...motor, kind: 'must', year: choice.by, by: who }
        : { ...motor, kind: 'pinned', option: choice.option, year: choice.year, by: who },
    );
  if (bundle !== '') wishes.push({ ...motor, kind: 'together', bundle, by: who });
  if (override !== undefined) wishes.push({ ...motor, kind: 'override', reason: override, by: who });
  return wishes;
}

/** A wish as the history has it; two wishes are the same where these words are, whoever had them. */
function words(wish: PlanWish | StoredWish | undefined): string | undefined {
  switch (wish?.kind) {
    case 'pinned':
      return `${wish.option ?? 'any of its options'} in ${wish.year ?? 'any year'}`;
    case 'forbidden':
      return 'left alone';
    case 'must':
      return wish.year === undefined ? 'must be done' : `must be done by ${wish.year}`;
    case 'together':
      return wish.bundle;
    case 'override':
      return `its figures may be used: ${wish.reason}`;
    default:
      return undefined;
  }
}

async function refusedWish(tx: Tx, { studyId, motorId, choice, override }: MotorWish) {
  const study = await readStudy(tx, studyId);
  const result = await readResult(tx, studyId, motorId);
  if (!study || !result) return refuse('not-evaluated', 'The motor is not evaluated.', 'Wait until the evaluation is done.');
  const motor = await tx.motor.findUnique({ where: { id: motorId }, select: { status: true } });
  const exempt = motor?.status === 'failed' || result.trust.level !== 'not-usable';
  if (override !== undefined && exempt) {
    return refuse('no-need', 'Nobody has to answer for its figures: they may be used.', 'Take the reason away.');
  }
  if (choice === 'free' || choice === 'forbidden') return undefined;
  if (!exempt && override === undefined) {
    return refuse(
      'not-usable',
      'Its figures may not be used, so that it cannot be planned.',
      'Have it measured again, or answer for it with a reason.',
    );
  }
  const open = result.options.filter(({ timing, action }) => timing === 'now' && action !== 'keep');
  if (open.length === 0) return refuse('no-option', 'It has no option that could be carried out.', 'Let it be as it is.');
  if (choice === 'must') return undefined;
  const first = Number(study.settings.asOf.slice(0, 4));
  if ('by' in choice) {
    // A year after the last of the budget asks for what the budget allows; one before the first can no longer be kept.
    return choice.by >= first ? undefined : refuse('no-option', `${choice.by} is over.`, `Choose ${first} or later, or no year.`);
  }
  const { option, year } = choice;
  const there = option === undefined ? year !== undefined : open.some(({ id }) => id === option);
  if (!there || (year !== undefined && (year < first || year >= first + study.settings.budget.length))) {
    return refuse('no-option', 'It has no such option in such a year.', 'Load the page again and choose another one.');
  }
  return undefined;
}

/** Keeps the terms of a study's plan in place of what they were, with a line in the history for each member that differs. */
export async function setTerms(
  db: Database,
  change: { readonly studyId: string; readonly who: string; readonly terms: PlanTerms },
  at: Date = new Date(),
): Promise<Result<{ readonly changed: number }>> {
  return db.write(async (tx) => {
    const study = await readStudy(tx, change.studyId);
    if (!study) return refuse('no-study', 'There is no such study any more.', 'Go back to the list of studies.');
    return ok({ changed: await putTerms(tx, change, at) });
  });
}

async function putTerms(
  tx: Tx,
  { studyId, who, terms }: { readonly studyId: string; readonly who: string; readonly terms: PlanTerms },
  at: Date,
): Promise<number> {
  const before = await readTerms(tx, studyId);
  const changed = (Object.keys(terms) as (keyof PlanTerms)[]).filter(
    (key) => JSON.stringify(before[key]) !== JSON.stringify(terms[key]),
  );
  if (changed.length === 0) return 0;
  await tx.study.update({ where: { id: studyId }, data: { planTerms: JSON.stringify(terms) } });
  await recordChanges(
    tx,
    changed.map(
      (key): Change => ({
        studyId,
        who,
        subject: 'plan',
        subjectId: studyId,
        subjectLabel: 'the plan',
        what: 'changed',
        field: key,
        from: JSON.stringify(before[key]),
        to: JSON.stringify(terms[key]),
      }),
    ),
    at,
  );
  return changed.length;
}

/**
 * Keeps the wishes and terms of a file in place of all that were, within a transaction of the caller's, after its settings are in force. Refused where
 * they name what the study does not have; then nothing of the transaction may be kept.
 */
export async function putPlan(
  tx: Tx,
  { studyId, who, plan }: { readonly studyId: string; readonly who: string; readonly plan: PlanFromFile },
  at: Date,
): Promise<Result<{ readonly changed: number }>> {
  const rows = await tx.motor.findMany({ where: { studyId }, select: { id: true, siteName: true, tag: true } });
  const ids = new Map(rows.map(({ id, siteName, tag }) => [motorKey({ site: siteName, tag }), id]));
  const lost = plan.wishes.find((wish) => !ids.has(motorKey(wish)));
  if (lost) return unknownPlace(`The plan of the file names ${nameOf(lost)}, which is not in this study.`);
  const refused = await refusedLimit(tx, studyId, plan.terms);
  if (refused) return refused;
  const now = await readWishes(tx, studyId);
  let changed = 0;
  for (const key of new Set([...now, ...plan.wishes].map(motorKey))) {
    const own = (wish: PlanWish) => motorKey(wish) === key;
    const motorId = ids.get(key) ?? '';
    changed += await putWishes(tx, { studyId, motorId, who, before: now.filter(own), after: plan.wishes.filter(own) }, at);
  }
  return ok({ changed: changed + (await putTerms(tx, { studyId, who, terms: plan.terms }, at)) });
}

function unknownPlace(text: string) {
  return refuse('plan-unknown', text, 'Mend the key plan of the file, or take it out: the wishes then stay as they are.');
}

/** A limit on what is not there would limit nothing, and nobody would know. */
async function refusedLimit(tx: Tx, studyId: string, { limits }: PlanTerms) {
  const study = await readStudy(tx, studyId);
  const areas = new Set((await tx.area.findMany({ where: { studyId }, select: { name: true } })).map(({ name }) => name));
  const sites = new Set((await tx.site.findMany({ where: { studyId }, select: { name: true } })).map(({ name }) => name));
  const first = Number(study?.settings.asOf.slice(0, 4));
  const last = first + (study?.settings.budget.length ?? 0) - 1;
  for (const { site, area, year } of limits) {
    if (site !== undefined && !sites.has(site))
      return unknownPlace(`A limit of the plan names the site ${site}, which has no motor.`);
    if (area !== undefined && !areas.has(area))
      return unknownPlace(`A limit of the plan names the area ${area}, which has no motor.`);
    if (year !== undefined && (year < first || year > last))
      return unknownPlace(`A limit of the plan names ${year}; the budget runs from ${first} to ${last}.`);
  }
  return undefined;
}

/** Takes every wish of a study back, each with its line in the history. */
export async function dropWishes(
  db: Database,
  { studyId, who }: { readonly studyId: string; readonly who: string },
  at: Date = new Date(),
): Promise<number> {
  return db.write(async (tx) => {
    const wishes = await readWishes(tx, studyId);
    await tx.planWish.deleteMany({ where: { studyId } });
    await recordChanges(
      tx,
      wishes.map((wish) => ({
        studyId,
        who,
        subject: 'plan',
        subjectId: wish.motorId,
        subjectLabel: nameOf(wish),
        what: 'changed',
        field: wish.kind,
        from: words(wish),
      })),
      at,
    );
    return wishes.length;
  });
}

/** Begins an attempt to work a plan out; one that is at work is given up. Returns its id. */
export async function beginSolution(db: Database, studyId: string, at: Date = new Date()): Promise<string> {
  return db.write(async (tx) => {
    await tx.planSolution.updateMany({ where: { studyId, state: 'running' }, data: { state: 'cancelled', finishedAt: at } });
    const id = newId(at.getTime());
    await tx.planSolution.create({ data: { id, studyId, startedAt: at, heartbeatAt: at } });
    return id;
  });
}

/** A sign of life of an attempt. Returns false once somebody has given it up, or it is gone with its study. */
export async function stillWanted(db: Database, id: string, stage: PlanStage): Promise<boolean> {
  return db.write(async (tx) => {
    const kept = await tx.planSolution.updateMany({
      where: { id, state: 'running' },
      data: { stage, heartbeatAt: new Date() },
    });
    return kept.count > 0;
  });
}

/** Keeps what came of an attempt, and lets earlier ones go; what was given up meanwhile stays so. */
export async function keepSolution(
  db: Database,
  id: string,
  found: { readonly hash: string; readonly result: Uint8Array },
): Promise<void> {
  await db.write(async (tx) => {
    const row = await tx.planSolution.findFirst({ where: { id, state: 'running' }, select: { studyId: true } });
    if (row === null) return;
    await tx.planSolution.update({
      where: { id },
      data: { state: 'done', inputsHash: found.hash, result: Uint8Array.from(found.result), finishedAt: new Date() },
    });
    await tx.planSolution.deleteMany({ where: { studyId: row.studyId, id: { not: id }, state: { not: 'running' } } });
  });
}

/** Ends an attempt that came to nothing, with a sentence for people. */
export async function failSolution(db: Database, id: string, problem: string): Promise<void> {
  await db.write(async (tx) => {
    await tx.planSolution.updateMany({
      where: { id, state: 'running' },
      data: { state: 'failed', problem, finishedAt: new Date() },
    });
  });
}

/** Gives up whatever is at work for a study. */
export async function cancelSolutions(db: Database, studyId: string): Promise<void> {
  await db.write(async (tx) => {
    const { active } = await readPlanProgress(tx, studyId);
    if (active === undefined) return;
    await tx.planSolution.updateMany({
      where: { studyId, state: 'running' },
      data: { state: 'cancelled', problem: 'Working the plan out was stopped.', finishedAt: new Date() },
    });
  });
}
