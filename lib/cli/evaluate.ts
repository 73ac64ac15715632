import { availableParallelism } from 'node:os';
import { compareNaturally, ENGINE_VERSION, type MotorResult, ranksOf, type UnrankedMotor } from '@/lib/engine';
import { evaluateFleet } from '@/lib/features/evaluation/evaluate-fleet';
import { type EvaluatedText, rankedText } from '@/lib/features/evaluation/result-text';
import type { ParsedFleet } from '@/lib/features/fleet/parse';
import { csvRow } from '@/lib/features/fleet/write-csv';
import { RESULT_COLUMNS } from '@/lib/features/results/columns';
import { settingsToJson } from '@/lib/features/study/settings';
import { type LoadedReference, loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { EXIT } from './exit';
import { openOutput } from './output';
import { Spool } from './spool';
import { readFleetSheet, readStudy } from './study-input';
import { count } from './words';

/** Evaluates a fleet sheet and writes the results, motors in natural order of site and tag, each with its rank. */
export async function evaluate(call: Call): Promise<number> {
  const reference = loadTables();
  const study = await readStudy(call.settings, reference);
  for (const remark of study.remarks) console.error(remark);
  const parsed = await readFleetSheet(call, study.settings.asOf);
  const spool = new Spool();
  const output = openOutput(call.out);
  try {
    const keys: Omit<EvaluatedText, 'tail'>[] = [];
    const jobs = call.jobs ?? Math.min(2, availableParallelism());
    await evaluateFleet(
      parsed.motors.map((entry) => entry.motor),
      { settings: study.settings, prices: study.prices, tables: reference.tables },
      {
        jobs,
        shape: 'text',
        take: (results) => {
          for (const { tail, ...key } of results) {
            keys.push(key);
            spool.add(tail);
          }
        },
      },
    );
    const ranks = ranksOf(keys);
    const order = keys.map((_, index) => index).sort((i, j) => byName(keys[i], keys[j]));
    if (call.format === 'csv')
      writeCsv(output, order, (index) => rankedText(keyAt(keys, index), ranks[index] ?? 0, spool.get(index)));
    else {
      output.write(head(reference, settingsToJson(study.settings)));
      order.forEach((index, place) => {
        output.write(`${place === 0 ? '' : ',\n'}${rankedText(keyAt(keys, index), ranks[index] ?? 0, spool.get(index))}`);
      });
      output.write(tail(parsed));
    }
    output.finish();
  } catch (error) {
    output.abandon();
    throw error;
  } finally {
    spool.close();
  }
  report(parsed);
  return parsed.rejected.length > 0 ? EXIT.rejectedRows : EXIT.done;
}

type Key = Pick<UnrankedMotor, 'site' | 'tag' | 'ranking'>;

function keyAt(keys: readonly Key[], index: number): Key {
  const key = keys[index];
  if (!key) throw new Error(`no motor has number ${index}`);
  return key;
}

function byName(a: Key | undefined, b: Key | undefined): number {
  return compareNaturally(a?.site ?? '', b?.site ?? '') || compareNaturally(a?.tag ?? '', b?.tag ?? '');
}

/** The results up to the first motor. */
function head(reference: LoadedReference, settings: unknown): string {
  const tables = reference.passports.map((passport) => ({ id: passport.id, edition: passport.edition }));
  const inside = JSON.stringify({ schema: 1, engine: ENGINE_VERSION, tables, settings }, undefined, 1);
  return `${inside.slice(0, -2)},\n "motors": [\n`;
}

/** The results after the last motor. */
function tail(parsed: ParsedFleet): string {
  const warnings = parsed.warnings;
  const rejected = parsed.rejected.flatMap((row) => row.issues);
  return `\n ],\n "warnings": ${JSON.stringify(warnings)},\n "rejected": ${JSON.stringify(rejected)}\n}\n`;
}

function writeCsv(output: { write(text: string): void }, order: readonly number[], motorText: (index: number) => string): void {
  output.write(csvRow(RESULT_COLUMNS.map((column) => column.name)));
  for (const index of order) {
    const motor = JSON.parse(motorText(index)) as MotorResult;
    output.write(csvRow(RESULT_COLUMNS.map((column) => column.value(motor))));
  }
}

/** What a person wants to know at once, on standard error. */
function report(parsed: ParsedFleet): void {
  const parts = [`${count(parsed.motors.length, 'motor')} from ${count(parsed.rows, 'row')}`];
  if (parsed.rejected.length > 0) parts.push(`${count(parsed.rejected.length, 'row')} rejected`);
  if (parsed.warnings.length > 0) parts.push(count(parsed.warnings.length, 'warning'));
  if (parsed.ignoredRepeats > 0) parts.push(`${count(parsed.ignoredRepeats, 'repeated row')} ignored`);
  console.error(`${parts.join(', ')}.`);
  for (const row of parsed.rejected.slice(0, 10))
    for (const issue of row.issues)
      console.error(`row ${issue.row}${issue.column && `, ${issue.column}`}: ${issue.text} ${issue.remedy}`);
  if (parsed.rejected.length > 10)
    console.error(`… and ${parsed.rejected.length - 10} more rejected rows: they stand under "rejected" in the results.`);
}
