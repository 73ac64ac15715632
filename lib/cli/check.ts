import { csvRow } from '@/lib/features/fleet/write-csv';
import { loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { EXIT } from './exit';
import { openOutput } from './output';
import { readFleetSheet, readStudy, saysOfPrices, signHint } from './study-input';
import { count } from './words';

/** Reads a sheet, with settings and prices where they are named, and lists what is wrong with it. */
export async function check(call: Call): Promise<number> {
  const { settings, prices } = call;
  const wanted = settings !== undefined || prices !== undefined || saysOfPrices(call);
  const study = wanted ? await readStudy(call, loadTables()) : undefined;
  for (const remark of study?.remarks ?? []) console.error(remark);
  const parsed = await readFleetSheet(call, settings === undefined ? {} : { asOf: study?.settings.asOf });
  const errors = parsed.rejected.flatMap((row) => row.issues);
  const output = openOutput(call.out);
  if (call.format === 'json') {
    output.write(
      `${JSON.stringify({ schema: 1, rows: parsed.rows, motors: parsed.motorCount, repeats: parsed.ignoredRepeats, warnings: parsed.warnings, rejected: errors }, undefined, 1)}\n`,
    );
  } else if (call.format === 'csv') {
    output.write(csvRow(['kind', 'row', 'column', 'code', 'text', 'remedy', 'value']));
    for (const [kind, issues] of [
      ['error', errors],
      ['warning', parsed.warnings],
    ] as const) {
      for (const issue of issues)
        output.write(csvRow([kind, issue.row, issue.column, issue.code, issue.text, issue.remedy, issue.value]));
    }
  } else {
    output.write(
      `${count(parsed.rows, 'row')}, ${count(parsed.motorCount, 'motor')}, ${count(parsed.rejected.length, 'row')} rejected, ${count(parsed.warnings.length, 'warning')}\n`,
    );
    for (const issue of errors)
      output.write(`error    row ${issue.row}  ${issue.column || '(row)'}  ${issue.code}: ${issue.text} ${issue.remedy}\n`);
    for (const issue of parsed.warnings)
      output.write(`warning  row ${issue.row}  ${issue.column || '(row)'}  ${issue.code}: ${issue.text} ${issue.remedy}\n`);
  }
  output.finish();
  for (const hint of signHint(errors, '--decimal', call.reading.decimal)) console.error(hint);
  return errors.length > 0 || (study?.rejectedPrices ?? 0) > 0 ? EXIT.rejectedRows : EXIT.done;
}
