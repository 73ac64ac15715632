'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import type { Settings } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { ok, type Problem, problemOf, type Result, refuse } from '@/lib/platform/errors';
import { wakeRunner } from '../evaluation/runner';
import { readNumber } from '../fleet/number';
import { readStudy } from '../study/data';
import { writeSettings } from '../study/mutations';
import { readSettings, settingsToJson } from '../study/settings';
import { rememberWho } from '../study/who';
import { loadPlanProgress } from './loaders';
import { dropWishes, setMotorWish } from './mutations';
import { startPlan, stopPlan } from './runner';
import { budgetForm, dropForm, type PlanProgress, studyForm, wishForm } from './schema';

export interface PlanState {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  readonly done?: string;
  /** Fields as they were typed, where they could not be taken. */
  readonly typed?: Readonly<Record<string, string>>;
  /** What is wrong with a field, by its name. */
  readonly refused?: Readonly<Record<string, string>>;
}

const UNREADABLE = refuse('form', 'The study is not named.', 'Load the page again.');

function unreadable(error: { readonly issues: readonly { readonly message: string }[] }): PlanState {
  return { problem: { text: error.issues[0]?.message ?? 'The form cannot be read.', remedy: 'Mend it and send it again.' } };
}

async function act(input: unknown, work: (studyId: string) => Promise<void>): Promise<Result<PlanProgress>> {
  const parsed = studyForm.safeParse(input);
  if (!parsed.success) return UNREADABLE;
  try {
    await work(parsed.data.studyId);
    return ok(await loadPlanProgress(parsed.data.studyId));
  } catch (error) {
    console.error(error);
    return { ok: false, problem: problemOf(error) };
  }
}

/** Has a study's plan worked out from what holds now. */
export async function startPlanning(input: unknown): Promise<Result<PlanProgress>> {
  return act(input, startPlan);
}

/** Gives up working a plan out; the one before stays. */
export async function stopPlanning(input: unknown): Promise<Result<PlanProgress>> {
  return act(input, stopPlan);
}

/** Keeps what is wanted for one motor, has the plan worked out anew and goes back to it. Form fields of {@link wishForm}. */
export async function saveWish(_: PlanState, form: FormData): Promise<PlanState> {
  const parsed = wishForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return unreadable(parsed.error);
  const { study, motor, who, choice, bundle, override, reason } = parsed.data;
  await rememberWho(who);
  try {
    const done = await setMotorWish(database(), {
      studyId: study,
      motorId: motor,
      who,
      choice: choiceOf(choice),
      bundle,
      ...(override && { override: reason }),
    });
    if (!done.ok) return { problem: done.problem };
    if (done.value.changed > 0) await startPlan(study);
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error) };
  }
  revalidatePath(`/${study}`, 'layout');
  redirect(`/${study}/plan`);
}

function choiceOf(text: string): 'free' | 'forbidden' | { readonly option: string; readonly year: number } {
  if (text === 'free' || text === 'forbidden') return text;
  const [option = '', year = ''] = text.split(' ');
  return { option, year: Number(year) };
}

/** Takes every wish back and has the plan worked out anew. Form fields `study`, `who`. */
export async function takeWishesBack(_: PlanState, form: FormData): Promise<PlanState> {
  const parsed = dropForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return unreadable(parsed.error);
  const { study, who } = parsed.data;
  await rememberWho(who);
  try {
    const count = await dropWishes(database(), { studyId: study, who });
    if (count > 0) await startPlan(study);
    revalidatePath(`/${study}`, 'layout');
    return { done: count === 1 ? 'One wish was taken back.' : `${count} wishes were taken back.` };
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error) };
  }
}

/**
 * Keeps the budgets and what the plan is best by, and has it worked out anew. Form fields `study`, `who`, `objective`, `money_terms` and the budgets in
 * order as `budget`; empty ones at the end are no years.
 */
export async function saveBudgets(_: PlanState, form: FormData): Promise<PlanState> {
  const cells = form.getAll('budget').map((cell) => String(cell).trim());
  while (cells.at(-1) === '') cells.pop();
  const typed = Object.fromEntries(cells.map((cell, at) => [`budget-${at}`, cell]));
  const parsed = budgetForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...unreadable(parsed.error), typed };
  const { study: id, who, objective, money_terms } = parsed.data;
  await rememberWho(who);
  const read = cells.map((cell) => readNumber(cell, { decimal: '.' }));
  const refused = Object.fromEntries(
    read.flatMap((each, at) => (each.ok ? [] : [[`budget-${at}`, `${each.text} ${each.remedy}`] as const])),
  );
  const problem = {
    text: 'Some budgets cannot be taken as they are; nothing was saved.',
    remedy: 'Mend those that say so and save again.',
  };
  if (Object.keys(refused).length > 0) return { problem, refused, typed };
  const budget = read.flatMap((each) => (each.ok ? [each.value] : []));
  try {
    const study = await readStudy(database().read, id);
    if (!study) return { problem: { text: 'There is no such study any more.', remedy: 'Go back to the first page.' } };
    const file = { ...settingsToJson(study.settings, study.pricesFile), budget, objective, money_terms };
    const checked = readSettings(JSON.stringify(file));
    if (!checked.ok) return { problem: checked.problem, typed };
    const saved = await keep(id, checked.settings, { pricesFile: checked.pricesFile, who });
    return saved.problem ? { ...saved, typed } : saved;
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error), typed };
  }
}

async function keep(
  id: string,
  settings: Settings,
  { pricesFile, who }: { readonly pricesFile: string | undefined; readonly who: string },
): Promise<PlanState> {
  const done = await writeSettings(database(), { id, settings, pricesFile, who });
  if (!done.ok) return { problem: done.problem };
  if (done.value.changed === 0) return { done: 'Nothing was different; nothing was saved.' };
  wakeRunner();
  await startPlan(id);
  revalidatePath(`/${id}`, 'layout');
  return { done: 'Saved; the plan is being worked out anew.' };
}
