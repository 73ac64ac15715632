'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import type { BenchResult } from '@/lib/engine';
import { database } from '@/lib/platform/db';
import type { Problem } from '@/lib/platform/errors';
import { capitalised } from '@/lib/platform/format';
import { loadTables } from '@/lib/reference/load';
import { wakeRunner } from '../evaluation/runner';
import { readMotor } from '../fleet/data';
import type { RowIssue } from '../fleet/issue-codes';
import { issuePlace } from '../fleet/issue-line';
import { findingsInLabels, inLabels } from '../fleet/screen-words';
import { withInstruments } from '../instruments/with-instruments';
import { studyInForce } from '../study/context';
import { typedOf } from '../study/meanwhile';
import { refusedForm } from '../study/schema';
import { rememberWho } from '../study/who';
import { BENCH_COLUMNS } from './columns';
import { findMotors } from './data';
import { foundWords } from './found-words';
import { benchMotor } from './motor-facts';
import { keepTest, withdrawTest } from './mutations';
import { parseBench } from './parse-sheet';
import { keepForm, readForm, type TypedRow, type TypedTest, typedTest, withdrawForm } from './schema';
import { parseTyped, typedRows } from './typed-test';
import { usualMethod, workOut } from './work-out';

/** What reading a sheet gives: rows for the table of entry, or why not. */
export interface ReadState {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  /** Tests of the sheet, in the sheet's order; numbers with a decimal point. */
  readonly tests?: readonly { readonly tag: string; readonly name: string; readonly rows: readonly TypedRow[] }[];
  readonly issues?: readonly RowIssue[];
}

/** Reads a file or pasted rows into the table of entry; nothing is kept. */
export async function readBenchSheet(_: ReadState, form: FormData): Promise<ReadState> {
  const parsed = readForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { problem: refusedForm(parsed.error).problem };
  const { file, pasted, decimal } = parsed.data;
  const source =
    file !== undefined && file.size > 0
      ? { name: file.name, data: new Uint8Array(await file.arrayBuffer()) }
      : { name: 'the pasted rows', text: pasted };
  const first = pasted.split('\n', 1)[0] ?? '';
  const outcome = await parseBench(source, {
    decimal,
    ...('text' in source && first.includes('\t') && { delimiter: '\t' as const }),
  });
  if (!outcome.ok) return { problem: outcome.problem };
  const tests = outcome.tests.map((test) => ({ tag: test.tag, name: test.test, rows: typedRows(test) }));
  if (tests.length === 0) {
    return {
      problem: { text: 'The sheet holds no row that can be read.', remedy: 'See the rows named below.' },
      issues: outcome.rejected,
    };
  }
  return { tests, issues: [...outcome.rejected, ...outcome.warnings] };
}

/** What the table of entry shows while somebody types. */
export interface Preview {
  readonly issues: readonly RowIssue[];
  readonly result?: BenchResult;
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
}

/** Works out what was typed so far; nothing is kept. */
export async function previewTest(typed: TypedTest): Promise<Preview> {
  const parsed = typedTest.safeParse(typed);
  if (!parsed.success) return { issues: [], problem: refusedForm(parsed.error).problem };
  return preview(parsed.data);
}

async function preview(typed: TypedTest): Promise<Preview & { readonly motorId?: string; readonly test?: BenchResultTest }> {
  const outcome = await parseTyped(typed);
  if (!outcome.ok) return { issues: [], problem: outcome.problem };
  const issues = [...outcome.rejected, ...outcome.warnings].map((issue) => ({
    ...issue,
    text: inLabels(issue.text, BENCH_COLUMNS),
    remedy: inLabels(issue.remedy, BENCH_COLUMNS),
  }));
  const [test] = outcome.tests;
  if (!test) return { issues };
  const found = await owner(typed);
  if ('problem' in found) return { issues, problem: found.problem };
  const motor = benchMotor(found.motor, typed.conductor === '' ? undefined : typed.conductor);
  const { result } = workOut(test, motor, typed.method === '' ? undefined : typed.method, loadTables().tables);
  const findings = findingsInLabels(result.findings, BENCH_COLUMNS);
  return { issues, result: { ...result, findings }, motorId: found.motorId, test };
}

type BenchResultTest = Parameters<typeof workOut>[0];

async function owner(typed: TypedTest) {
  const { read } = database();
  const motors = await findMotors(read, typed.study, typed.tag, typed.site);
  const [only] = motors;
  if (!only || motors.length > 1) {
    return {
      problem: only
        ? {
            text: `The tag “${typed.tag}” stands at ${motors.length} sites.`,
            remedy: `Write the site: ${motors.map(({ site }) => site || '(no site)').join(', ')}.`,
          }
        : { text: `The study has no motor with the tag “${typed.tag}”.`, remedy: 'Check the tag, or bring the motor in first.' },
    };
  }
  const stored = await readMotor(read, only.id);
  const force = await studyInForce(read, typed.study);
  if (!stored || !force) return { problem: { text: 'The study has no such motor any more.', remedy: 'Load the page again.' } };
  return { motorId: only.id, motor: withInstruments(stored.motor, force.instruments) };
}

export interface KeepState {
  readonly problem?: Pick<Problem, 'text' | 'remedy'>;
  /** What is wrong with each refused field, by its name. */
  readonly refused?: Readonly<Record<string, string>>;
  /** What was typed of a form that was refused: it is cleared when it is sent. */
  readonly typed?: Readonly<Record<string, string>>;
}

/** Keeps a typed test with its motor and opens its report. */
export async function keepTyped(typed: TypedTest & { readonly who: string }): Promise<KeepState> {
  const parsed = keepForm.safeParse(typed);
  if (!parsed.success) return refusedForm(parsed.error);
  const { who, ...rest } = parsed.data;
  await rememberWho(who);
  const seen = await preview(rest);
  if (seen.problem) return { problem: seen.problem };
  const [wrong] = seen.issues;
  if (wrong)
    return {
      problem: {
        text: `${capitalised(issuePlace({ row: wrong.row, column: inLabels(wrong.column, BENCH_COLUMNS) }))}: ${wrong.text}`,
        remedy: wrong.remedy,
      },
    };
  if (!seen.test || seen.motorId === undefined) {
    return { problem: { text: 'The table is empty.', remedy: 'Type the measured points, or read a sheet.' } };
  }
  const done = await keepTest(database(), {
    studyId: rest.study,
    motorId: seen.motorId,
    who,
    test: seen.test,
    takenAt: rest.takenAt === '' ? undefined : rest.takenAt,
    method: rest.method === '' ? usualMethod(seen.test) : rest.method,
    rotorConductor: rest.conductor === '' ? undefined : rest.conductor,
    found: seen.result && foundWords(seen.result),
  });
  if (!done.ok) return { problem: done.problem };
  wakeRunner();
  revalidatePath(`/${rest.study}`, 'layout');
  redirect(`/${rest.study}/bench/${done.value.id}`);
}

/** Withdraws a test. Form fields `study`, `test`, `who`, `why`. */
export async function withdrawKept(_: KeepState, form: FormData): Promise<KeepState> {
  const typed = typedOf(form);
  const parsed = withdrawForm.safeParse(Object.fromEntries(form));
  if (!parsed.success) return { ...refusedForm(parsed.error), typed };
  const { study, test, who, why } = parsed.data;
  await rememberWho(who);
  const done = await withdrawTest(database(), { studyId: study, id: test, who, why });
  if (!done.ok) return { problem: done.problem, typed };
  wakeRunner();
  revalidatePath(`/${study}`, 'layout');
  return {};
}
