import { type BenchMotor, benchMotor } from '@/lib/features/bench/motor-facts';
import { parseBench } from '@/lib/features/bench/parse-sheet';
import { workOut } from '@/lib/features/bench/work-out';
import { benchCsv } from '@/lib/features/bench/write-csv';
import { csvRow } from '@/lib/features/fleet/csv-cell';
import { issueLine } from '@/lib/features/fleet/issue-line';
import { parseFleet, type SheetMotor } from '@/lib/features/fleet/parse';
import { loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { EXIT, UsageError } from './exit';
import { openOutput } from './output';
import { count, faultOf } from './words';

/** Works out the bench tests of a sheet: efficiency by segregated losses at the standard loads. */
export async function bench(call: Call): Promise<number> {
  const { tables } = loadTables();
  const parsed = await parseBench({ path: call.fleet }, call.reading);
  if (!parsed.ok) throw new UsageError(faultOf(call.fleet, parsed.problem));
  for (const issue of [...parsed.rejected, ...parsed.warnings]) console.error(issueLine(issue));
  if (parsed.tests.length === 0) {
    throw new UsageError(`${call.fleet} holds no test${parsed.rejected.length > 0 ? ': each of its rows was rejected' : ''}.`);
  }
  const motors = await motorSource(call);
  const results = parsed.tests.map((test) => workOut(test, motors(test.tag), call.standard, tables).result);
  const issues = { warnings: parsed.warnings, rejected: parsed.rejected };
  const [only] = results;
  const output = openOutput(call.out);
  if (call.format === 'csv') output.write(benchCsv(results));
  else
    output.write(
      `${JSON.stringify(results.length === 1 ? { ...only, ...issues } : { schema: 1, tests: results, ...issues }, undefined, 1)}\n`,
    );
  output.finish();
  for (const result of results) {
    const name = [result.tag, result.test].filter(Boolean).join(', ') || 'the test';
    if (call.standard === undefined) console.error(`${name}: worked out by ${result.method}; name another with --standard.`);
    for (const finding of result.findings) {
      if (finding.severity === 'disqualifies') console.error(`${name}: not accepted. ${finding.text} ${finding.next}`);
    }
  }
  if (results.some((result) => !result.accepted)) return EXIT.refused;
  return parsed.rejected.length > 0 ? EXIT.rejectedRows : EXIT.done;
}

/** Motors by tag: from a fleet sheet, or the one that options named like its columns describe. */
async function motorSource(call: Call): Promise<(tag: string) => BenchMotor> {
  const { plateOptions, rotorConductor } = call;
  if (call.fleetSheet !== undefined) {
    if (plateOptions.size > 0) throw new UsageError('Give the plate by --fleet or by options, not by both.');
    const fleet = await read({ path: call.fleetSheet }, call.fleetSheet, call);
    return (tag) => benchMotor(oneMotor(fleet, tag, call).motor, rotorConductor);
  }
  const names = [...plateOptions.keys()];
  const text = csvRow(['tag', ...names]) + csvRow(['as stated', ...names.map((name) => plateOptions.get(name) ?? '')]);
  const [stated] = await read({ name: 'the options', text }, 'The options', { reading: {} });
  if (!stated) throw new UsageError('The plate is not known: give --fleet, or --rated-power-kw and --rated-voltage-v.');
  const motor = benchMotor(stated.motor, rotorConductor);
  return () => motor;
}

async function read(
  source: Parameters<typeof parseFleet>[0],
  name: string,
  call: Pick<Call, 'reading'>,
): Promise<readonly SheetMotor[]> {
  const outcome = await parseFleet(source, call.reading);
  if (!outcome.ok) throw new UsageError(faultOf(name, outcome.problem));
  const [wrong] = outcome.rejected.flatMap((row) => row.issues);
  if (wrong && outcome.motors.length === 0) throw new UsageError(`${name}: ${wrong.text} ${wrong.remedy}`);
  return outcome.motors;
}

function oneMotor(fleet: readonly SheetMotor[], tag: string, call: Call): SheetMotor {
  const found = fleet.filter(({ motor }) => motor.tag === tag && (call.site === undefined || motor.site === call.site));
  const [only] = found;
  if (found.length === 1 && only) return only;
  throw new UsageError(
    found.length === 0
      ? `No motor has the tag "${tag}" in ${call.fleetSheet} (${count(fleet.length, 'motor')}).`
      : `The tag "${tag}" stands at ${found.length} sites; name one with --site.`,
  );
}
