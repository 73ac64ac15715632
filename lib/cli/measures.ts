import { motorKey } from '@/lib/engine';
import { fleetMeasures } from '@/lib/features/ranking/fleet-measures';
import { measureRows, measuresCsv } from '@/lib/features/ranking/measures';
import { loadTables } from '@/lib/reference/load';
import type { Call } from './arguments';
import { EXIT } from './exit';
import { openOutput } from './output';
import { readFleetSheet, readStudy, strayTariffs } from './study-input';
import { readCallTests } from './tests-by-tag';
import { count } from './words';

/** Lists what is worth looking into beside new motors, what saves most money first. */
export async function measures(call: Call): Promise<number> {
  const reference = loadTables();
  const { settings, prices, remarks, rejectedPrices } = await readStudy(call, reference);
  for (const remark of remarks) console.error(remark);
  const tests = await readCallTests(call, reference);
  const sheet = await readFleetSheet(call, { asOf: settings.asOf });
  const fleet = [...sheet.motors].map((entry) => ({ id: motorKey(entry.motor), motor: tests.join(entry.motor) }));
  for (const stray of strayTariffs(call, settings, new Set(fleet.map(({ motor }) => motor.site)))) console.error(stray);
  const found = fleetMeasures(fleet, { settings, prices, tables: reference.tables });
  const output = openOutput(call.out);
  if (call.format === 'json')
    output.write(`${JSON.stringify({ schema: 1, measures: [...measureRows(found, settings)] }, undefined, 1)}\n`);
  else for (const line of measuresCsv(found, settings)) output.write(line);
  output.finish();
  console.error(`${count(found.length, 'motor')} with something worth a look; screening estimates, in no plan.`);
  if (sheet.rejected.length > 0) console.error(`${count(sheet.rejected.length, 'row')} rejected; study check says why.`);
  return sheet.rejected.length > 0 || rejectedPrices > 0 ? EXIT.rejectedRows : EXIT.done;
}
