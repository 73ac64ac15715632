import { FleetEvaluation } from '@/lib/features/evaluation/evaluate-fleet';
import { parseFleet } from '@/lib/features/fleet/parse';
import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { worldNamed } from '../simulator/beliefs';
import { rowsOf, sheetText, simulateFleet } from '../simulator/fleet';

/**
 * `npm run perf -- threads [motors] [threads] [passes]`: the whole evaluation of a simulated fleet on worker threads, with its text but without reading and
 * writing files, pass after pass on the same threads: the first compiles what it needs, as a command does, and the last shows the engine alone.
 */
const [motorsAsked, jobsAsked, passesAsked] = process.argv.slice(2);
const jobs = Number(jobsAsked ?? 2);
const passes = Number(passesAsked ?? 6);
const reference = loadTables();
const settings = defaultSettings();
const fleet = simulateFleet({ seed: 71, motors: Number(motorsAsked ?? 10_000), world: worldNamed() });
const parsed = await parseFleet({ name: 'simulated.csv', text: sheetText(rowsOf(fleet)) }, { asOf: settings.asOf });
if (!parsed.ok) throw new Error(parsed.problem.text);
const motors = parsed.motors.map(({ motor }) => motor);
const evaluation = new FleetEvaluation({ settings, tables: reference.tables, prices: reference.prices }, { jobs, shape: 'json' });
evaluation.expect(motors.length);
console.log(`Whole evaluation of ${motors.length} motors on ${jobs} threads, with text (bar: 2 s)`);
for (let pass = 1; pass <= passes; pass++) {
  const [before, cpu] = [performance.now(), process.cpuUsage()];
  let bytes = 0;
  await evaluation.run(motors, {
    take: (block) => {
      bytes += block.bytes.length;
    },
  });
  const seconds = (performance.now() - before) / 1000;
  const { user, system } = process.cpuUsage(cpu);
  console.log(
    `  pass ${pass}: ${seconds.toFixed(2)} s by the clock, ${((user + system) / 1e6).toFixed(2)} s of processor time, ${(bytes / 1e6).toFixed(1)} MB of text`,
  );
}
await evaluation.close();
