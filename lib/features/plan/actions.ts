'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import type { Settings } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import { ok, type Problem, problemOf, type Result, refuse } from '@/lib/platform/errors';
import { wakeRunner } from '../evaluation/runner';
import { readNumber } from '../fleet/number';
import { readStudy } from '../study/data';
import { asWhole, changedMeanwhile, meanwhileProblem, openedOn, typedOf } from '../study/meanwhile';
import { writeSettings } from '../study/mutations';
import { refusedForm } from '../study/schema';
import { readSettings, settingsToJson } from '../study/settings';
import { rememberWho } from '../study/who';
import { loadLimitable, loadPlanProgress, loadTerms } from './loaders';
import { dropWishes, type MotorWish, setMotorWish, setTerms } from './mutations';
import { startPlan, stopPlan } from './runner';
import { budgetForm, dropForm, type PlanProgress, studyForm, wishForm } from './schema';
import { planTermsSchema, termsForm, USUAL_MULTIPLES } from './terms';

export interface PlanState {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  readonly done?: string;
  /** Fields as they were typed, where they could not be taken. */
  readonly typed?: Readonly<Record<string, string>>;
  /** What is wrong with a field, by its name. */
  readonly refused?: Readonly<Record<string, string>>;
  /** What holds now, where somebody else changed it since the form was opened: sent again, the form was opened on this. */
  readonly seen?: Readonly<Record<string, string>>;
}

const UNREADABLE = refuse('form', 'The study is not named.', 'Load the page again.');

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
  const typed = typedOf(form);
  const parsed = wishForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, motor, who, choice, by, bundle, override, reason } = parsed.data;
  await rememberWho(who);
  try {
    const done = await setMotorWish(database(), {
      studyId: study,
      motorId: motor,
      who,
      choice: choiceOf(choice, by),
      bundle,
      ...(override && { override: reason }),
    });
    if (!done.ok) return { problem: done.problem, typed };
    if (done.value.changed > 0) await startPlan(study);
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error), typed };
  }
  revalidatePath(`/${study}`, 'layout');
  redirect(`/${study}/plan`);
}

function choiceOf(text: string, by: string): MotorWish['choice'] {
  if (text === 'must') return by === '' ? 'must' : { by: Number(by) };
  if (text === 'free' || text === 'forbidden') return text;
  const [option, year] = text.split(' ').map((word) => (word === 'any' ? undefined : word));
  return { option, year: year === undefined ? undefined : Number(year) };
}

/** Takes every wish back and has the plan worked out anew. Form fields `study`, `who`. */
export async function takeWishesBack(_: PlanState, form: FormData): Promise<PlanState> {
  const parsed = dropForm.safeParse(Object.fromEntries(form));
  const typed = typedOf(form);
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, who } = parsed.data;
  await rememberWho(who);
  try {
    const count = await dropWishes(database(), { studyId: study, who });
    if (count > 0) await startPlan(study);
    revalidatePath(`/${study}`, 'layout');
    return { done: count === 1 ? 'One wish was taken back.' : `${count} wishes were taken back.` };
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error), typed };
  }
}

/**
 * Keeps the budgets and what the plan is best by, and has it worked out anew. Form fields `study`, `who`, `objective`, `money_terms` and the budgets in
 * order as `budget`; empty ones at the end are no years.
 */
export async function saveBudgets(_: PlanState, form: FormData): Promise<PlanState> {
  const cells = form.getAll('budget').map((cell) => String(cell).trim());
  while (cells.at(-1) === '') cells.pop();
  const typed = { ...typedOf(form), ...Object.fromEntries(cells.map((cell, at) => [`budget-${at}`, cell])) };
  const parsed = budgetForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
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
    const now = asWhole([study.settings.budget, study.settings.objective, study.settings.moneyTerms]);
    if (changedMeanwhile(openedOn(form), new Map(Object.entries(now))))
      return { problem: meanwhileProblem('This'), typed, seen: now };
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

/** A limit of hours as it was typed, a line of the form. */
interface TypedLimit {
  readonly at: number;
  /** From a settings file; the form has no field for it. */
  readonly site: string;
  readonly area: string;
  readonly year: string;
  readonly outage: string;
  readonly crew: string;
}

/** Keeps what holds of the plan as a whole and has it worked out anew. Form fields of {@link termsForm}, and `limit-N-area`, `-year`, `-outage`, `-crew`. */
export async function saveTerms(_: PlanState, form: FormData): Promise<PlanState> {
  const parsed = termsForm.safeParse(Object.fromEntries(form));
  const typed = typedOf(form);
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, who, robust, robust_price, robust_hours, frontier } = parsed.data;
  const place = await loadLimitable(study);
  const refused: Record<string, string> = {};
  const number = (name: string, text: string): number | undefined => {
    if (text === '') return undefined;
    const read = readNumber(text, { decimal: '.' });
    if (read.ok) return read.value;
    refused[name] = `${read.text} ${read.remedy}`;
    return undefined;
  };
  const limits = typedLimits(typed).flatMap(({ at, site, area, year, outage, crew }) => {
    const hours = { outage: number(`limit-${at}-outage`, outage), crew: number(`limit-${at}-crew`, crew) };
    const when = number(`limit-${at}-year`, year);
    if (outage === '' && crew === '' && (area !== '' || year !== ''))
      refused[`limit-${at}-outage`] = 'Give hours of outage, of crew, or both.';
    for (const name of ['outage', 'crew'] as const)
      if ((hours[name] ?? 0) < 0) refused[`limit-${at}-${name}`] = 'Hours cannot be below zero.';
    // A limit on what is not there would limit nothing, and nobody would know.
    if (area !== '' && !place.areas.includes(area))
      refused[`limit-${at}-area`] = 'No motor of the study stands in an area of this name.';
    if (when !== undefined && !place.years.includes(when))
      refused[`limit-${at}-year`] = `Give a year of the budget: ${place.years.join(', ')}.`;
    if (outage === '' && crew === '') return [];
    return [
      {
        ...(site !== '' && { site }),
        ...(area !== '' && { area }),
        ...(when !== undefined && { year: when }),
        ...(hours.outage !== undefined && { outage_hours: hours.outage }),
        ...(hours.crew !== undefined && { crew_hours: hours.crew }),
      },
    ];
  });
  const share = (name: 'robust_price' | 'robust_hours', text: string): number => {
    const value = number(name, text);
    if (value !== undefined && value > 0 && value <= 100) return value / 100;
    refused[name] ??= 'Give a share above 0 and up to 100 %.';
    return 1;
  };
  const low = robust && { energy_price: share('robust_price', robust_price), hours: share('robust_hours', robust_hours) };
  const problem = {
    text: 'Some values cannot be taken as they are; nothing was saved.',
    remedy: 'Mend those that say so and save again.',
  };
  if (Object.keys(refused).length > 0) return { problem, refused, typed };
  await rememberWho(who);
  try {
    const before = await loadTerms(study);
    const now = asWhole(before);
    if (changedMeanwhile(openedOn(form), new Map(Object.entries(now))))
      return { problem: meanwhileProblem('This'), typed, seen: now };
    const terms = planTermsSchema.safeParse({
      ...before,
      limits,
      robust: low ?? null,
      frontier: frontier === undefined ? [] : before.frontier.length > 0 ? before.frontier : [...USUAL_MULTIPLES],
    });
    if (!terms.success) return { ...refusedForm(terms.error), typed };
    const done = await setTerms(database(), { studyId: study, who, terms: terms.data });
    if (!done.ok) return { problem: done.problem, typed };
    if (done.value.changed === 0) return { done: 'Nothing was different; nothing was saved.' };
    await startPlan(study);
    revalidatePath(`/${study}`, 'layout');
    return { done: 'Saved; the plan is being worked out anew.' };
  } catch (error) {
    console.error(error);
    return { problem: problemOf(error), typed };
  }
}

function typedLimits(typed: Readonly<Record<string, string>>): TypedLimit[] {
  const lines: TypedLimit[] = [];
  for (let at = 0; `limit-${at}-outage` in typed; at++) {
    const cell = (name: string) => (typed[`limit-${at}-${name}`] ?? '').trim();
    lines.push({ at, site: cell('site'), area: cell('area'), year: cell('year'), outage: cell('outage'), crew: cell('crew') });
  }
  return lines;
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
