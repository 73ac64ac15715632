import { availableParallelism } from 'node:os';
import { setFlagsFromString } from 'node:v8';
import {
  compareNaturally,
  compareSisters,
  ENGINE_VERSION,
  type Motor,
  motorKey,
  type Plan,
  ranksOf,
  type Settings,
  type StudyContext,
} from '@/lib/engine';
import { FleetEvaluation } from '@/lib/features/evaluation/evaluate-fleet';
import { rankedHead, type TextKey } from '@/lib/features/evaluation/result-text';
import { HistoryJoiner } from '@/lib/features/fleet/apply-history';
import { issueLine } from '@/lib/features/fleet/issue-line';
import type { RowIssue, StreamedFleet } from '@/lib/features/fleet/parse';
import { csvRow } from '@/lib/features/fleet/write-csv';
import { programmeCsv } from '@/lib/features/plan/programme-csv';
import { RESULT_COLUMNS } from '@/lib/features/results/columns';
import { settingsToJson } from '@/lib/features/study/settings';
import { type LoadedReference, loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { EXIT } from './exit';
import { type Output, openOutput } from './output';
import { type Planning, planOf } from './plan';
import type { Ranked } from './ranked';
import { Spool } from './spool';
import { notingSites, readCallHistory, readFleetSheet, readStudy, signHint, strayTariffs } from './study-input';
import { readCallTests, type TestsByTag } from './tests-by-tag';
import { count } from './words';

/** Threads that a command takes by itself: each compiles the engine anew and holds memory, and beyond these little is gained. */
const MOST_JOBS = 3;

/** A fleet of more motors than these is evaluated with less garbage left lying, which takes some five hundredths more time. */
const LARGE = 20_000;

/** Rows of the history that are named on standard error; all stand in the results. */
const SHOWN = 10;

/** Evaluates a fleet sheet and writes the results, motors in natural order of site and tag, each with its rank. */
export async function evaluate(call: Call): Promise<number> {
  const reference = loadTables();
  const { settings, prices, plan, remarks, rejectedPrices } = await readStudy(call, reference);
  for (const remark of remarks) console.error(remark);
  const jobs = call.jobs ?? Math.min(MOST_JOBS, availableParallelism());
  const study: StudyContext = { settings, prices, tables: reference.tables };
  const evaluation = new FleetEvaluation(study, { jobs, shape: shapeFor(call) });
  try {
    // The formulas of a workbook are written on this thread, so that no helper is wanted.
    const inSight = call.format === 'xlsx' ? undefined : (motors: number): void => evaluation.expect(motors);
    const history = await readCallHistory(call, { asOf: settings.asOf });
    const tests = await readCallTests(call, reference);
    const read = await readFleetSheet(call, { asOf: settings.asOf, inSight });
    if (read.motorCount > LARGE) setFlagsFromString('--heap-growing-percent=50');
    const sites = new Set<string>();
    const sheet = { ...read, motors: notingSites(read.motors, sites) };
    // Rows count as the sheet has them: those above the column names, that of the names, and blank ones too.
    const joiner = new HistoryJoiner(history?.values ?? [], sheet.rowsAbove + 1 + sheet.rows + sheet.blankRows);
    const left = (): readonly RowIssue[] => [...(history?.rejected ?? []), ...joiner.issues];
    const warnings = history?.warnings ?? [];
    if (call.format === 'xlsx') await writeBook(call, motorsOf(sheet, { joiner, tests }), study);
    else {
      const planning: Planning | undefined =
        call.command === 'plan' ? { study, wishes: plan, failed: new Set(), motors: new Map() } : undefined;
      await evaluateTo(call, sheet, evaluation, { reference, settings, joiner, tests, planning, left, warnings });
    }
    report(sheet, call.reading.decimal);
    for (const stray of strayTariffs(call, settings, sites)) console.error(stray);
    for (const found of left().slice(0, SHOWN)) console.error(`history, ${issueLine(found)}`);
    for (const tag of tests.strays) console.error(`bench test of ${tag || '(no tag)'}: the sheet has no such motor.`);
    const leftOut = left().length + tests.rejected.length + tests.strays.length + rejectedPrices;
    return sheet.rejected.length > 0 || leftOut > 0 ? EXIT.rejectedRows : EXIT.done;
  } finally {
    await evaluation.close();
  }
}

/** A plan is drawn up from whole results, whatever it is written as. */
function shapeFor({ command, format }: Call): 'json' | 'lines' {
  return command === 'evaluate' && format === 'csv' ? 'lines' : 'json';
}

/** Writes the options of each motor as a workbook with live formulas, in the order of the sheet. */
async function writeBook(call: Call, motors: Iterable<Motor>, study: StudyContext): Promise<void> {
  // Few calls want a workbook, and what writes it is slow to load.
  const { writeWorkbook } = await import('@/lib/features/workbook/write-workbook');
  const output = openOutput(call.out);
  try {
    const facts = [
      ['As of', study.settings.asOf],
      ['Engine', ENGINE_VERSION],
      ['Prices', study.prices.invented ? 'the shipped list, which is invented' : 'as listed'],
    ] as const;
    for await (const piece of writeWorkbook(motors, study, facts)) output.write(piece as Uint8Array);
    output.finish();
  } catch (error) {
    output.abandon();
    throw error;
  }
}

async function evaluateTo(
  call: Call,
  sheet: StreamedFleet,
  evaluation: FleetEvaluation<'json' | 'lines'>,
  about: {
    readonly reference: LoadedReference;
    readonly settings: Settings;
    readonly joiner: HistoryJoiner;
    readonly tests: TestsByTag;
    /** Present where a plan is asked for. */
    readonly planning: Planning | undefined;
    /** Rows of the history that were left out, known once every motor has been asked for. */
    readonly left: () => readonly RowIssue[];
    readonly warnings: readonly RowIssue[];
  },
): Promise<void> {
  const spool = new Spool();
  const output = openOutput(call.out);
  try {
    const keys: TextKey[] = [];
    await evaluation.run(motorsOf(sheet, about), {
      take: (block) => {
        for (const key of block.keys) keys.push(key);
        spool.add(block.bytes, block.ends);
      },
    });
    const ranked = inOrder(keys);
    const plan = about.planning && (await planOf(ranked, spool, about.planning));
    if (call.format === 'csv' && plan) for (const line of programmeCsv(plan)) output.write(line);
    else if (call.format === 'csv') writeCsv(output, ranked, spool);
    else {
      const wishes = about.planning && { plan: about.planning.wishes };
      output.write(head(about.reference, { ...settingsToJson(about.settings), ...wishes }));
      for (const { key, rank, sisters, number } of ranked) {
        output.write(`${number === ranked[0]?.number ? '' : ',\n'}${rankedHead(key, rank, sisters)}`);
        output.write(spool.get(number));
      }
      output.write(tail(sheet, about.warnings, about.left(), plan));
    }
    output.finish();
  } catch (error) {
    output.abandon();
    throw error;
  } finally {
    spool.close();
  }
}

function* motorsOf(
  sheet: StreamedFleet,
  about: { readonly joiner: HistoryJoiner; readonly tests: TestsByTag; readonly planning?: Planning | undefined },
): Generator<Motor> {
  for (const { motor } of sheet.motors) {
    const joined = about.tests.join(about.joiner.join(motor));
    const { planning } = about;
    if (motor.plate.status === 'failed') planning?.failed.add(motorKey(motor));
    if (planning?.wishes.robust) planning.motors.set(motorKey(motor), joined);
    yield joined;
  }
}

/** Motors in natural order of site and tag. */
function inOrder(keys: readonly TextKey[]): readonly Ranked[] {
  const ranks = ranksOf(keys);
  const sisters = compareSisters(keys.flatMap(({ sisters = [] }) => sisters));
  return keys
    .map((key, number) => ({ key, rank: ranks[number] ?? 0, sisters: sisters[number] ?? [], number }))
    .sort((a, b) => compareNaturally(a.key.site, b.key.site) || compareNaturally(a.key.tag, b.key.tag));
}

/** The results up to the first motor. */
function head(reference: LoadedReference, settings: unknown): string {
  const tables = reference.passports.map((passport) => ({ id: passport.id, edition: passport.edition }));
  const inside = JSON.stringify({ schema: 1, engine: ENGINE_VERSION, tables, settings }, undefined, 1);
  return `${inside.slice(0, -2)},\n "motors": [\n`;
}

/** The results after the last motor. */
function tail(parsed: StreamedFleet, doubts: readonly RowIssue[], left: readonly RowIssue[], plan: Plan | undefined): string {
  const warnings = [...parsed.warnings, ...doubts];
  const rejected = [...parsed.rejected.flatMap((row) => row.issues), ...left];
  return `\n ],\n "warnings": ${JSON.stringify(warnings)},\n "rejected": ${JSON.stringify(rejected)}${plan ? `,\n "plan": ${JSON.stringify(plan, undefined, 1)}` : ''}\n}\n`;
}

function writeCsv(output: Output, ranked: readonly Ranked[], spool: Spool): void {
  output.write(csvRow(RESULT_COLUMNS.map((column) => column.name)));
  for (const { rank, number } of ranked) {
    output.write(`${rank},`);
    output.write(spool.get(number));
  }
}

/** What a person wants to know at once, on standard error. */
function report(parsed: StreamedFleet, decimal: string | undefined): void {
  const parts = [`${count(parsed.motorCount, 'motor')} from ${count(parsed.rows, 'row')}`];
  if (parsed.rejected.length > 0) parts.push(`${count(parsed.rejected.length, 'row')} rejected`);
  if (parsed.warnings.length > 0) parts.push(count(parsed.warnings.length, 'warning'));
  if (parsed.ignoredRepeats > 0) parts.push(`${count(parsed.ignoredRepeats, 'repeated row')} ignored`);
  console.error(`${parts.join(', ')}.`);
  for (const row of parsed.rejected.slice(0, 10)) for (const issue of row.issues) console.error(issueLine(issue));
  if (parsed.rejected.length > 10)
    console.error(`… and ${parsed.rejected.length - 10} more rejected rows: they stand under "rejected" in the results.`);
  const issues = parsed.rejected.flatMap((row) => row.issues);
  for (const hint of signHint(issues, '--decimal', decimal)) console.error(hint);
}
