import { defaultSettings } from '@/lib/features/study/settings';
import { loadTables } from '@/lib/reference/load';
import { evaluateRows, falseAlarms, LOSSES, type Score, scoreMistakes, scoresOf } from '../engine/support/simulated';
import { worldNamed } from '../simulator/beliefs';
import { corruptFleet, MISTAKES } from '../simulator/corrupt';
import { rowsOf, simulateFleet } from '../simulator/fleet';
import { Chance } from '../simulator/random';

/**
 * `npm run perf -- simulated [motors] [seed] [world] [share read before]`: what the engine makes of a simulated fleet whose truth is known, and of sheets with
 * planted mistakes. Prints; it judges nothing.
 */
const motors = Number(process.argv[2] ?? 4000);
const seed = Number(process.argv[3] ?? 1);
const world = worldNamed(process.argv[4]);
const readBefore = Number(process.argv[5] ?? 0);
const reference = loadTables();
const study = { settings: defaultSettings(), tables: reference.tables, prices: reference.prices };

const fixed = (value: number, digits: number, width: number): string =>
  (Number.isFinite(value) ? value.toFixed(digits) : '-').padStart(width);
const percent = (value: number): string => fixed(100 * value, 1, 6);

function line(name: string, score: Score): string {
  return [
    name.padEnd(26),
    String(score.motors).padStart(5),
    String(score.answered).padStart(5),
    percent(score.coverage.power),
    percent(score.coverage.efficiency),
    fixed(score.meanAbsolute.load, 2, 7),
    fixed(score.bias.load, 2, 7),
    fixed(score.width.load, 1, 6),
    fixed(score.meanAbsolute.efficiency, 2, 7),
    fixed(score.bias.efficiency, 2, 7),
    fixed(score.width.efficiency, 1, 6),
    ...LOSSES.map((name) => fixed(score.losses[name], 1, 6)),
  ].join(' ');
}

const fleet = simulateFleet({ seed, motors, world, readBefore });
const results = await evaluateRows(rowsOf(fleet), study);
const scores = scoresOf(fleet, results);
console.log(
  `Simulated fleet of ${motors}, seed ${seed}, ${world} world, ${100 * readBefore} % read before. Coverage of 95 % limits in %, errors and widths in points, losses in % of the true total.`,
);
console.log(
  [
    ''.padEnd(26),
    '    n answ  cov P cov eta  load|e|   bias  width  eta|e|    bias  width',
    ...LOSSES.map((name) => name.slice(0, 6).padStart(6)),
  ].join(' '),
);
console.log(line('all motors', scores.all));
for (const [set, score] of scores.sets) console.log(line(set, score));
for (const { set, band, score } of scores.cells)
  console.log(line(`  ${set} ${100 * band[0]}-${Math.round(100 * band[1])} %`, score));

const alarms = falseAlarms(fleet, results);
console.log(`\nNot sound though nobody could object: ${percent(alarms.share)} % of ${alarms.motors}`);
console.log(
  `  findings there: ${[...alarms.codes]
    .sort((a, b) => b[1] - a[1])
    .map(([code, count]) => `${code} ${count}`)
    .join(', ')}`,
);

const corrupted = corruptFleet(new Chance(seed + 77), fleet, Math.max(20, Math.round(motors / 40)));
const corruptResults = await evaluateRows(
  corrupted.map(({ cells }) => cells),
  study,
);
console.log('\nPlanted mistakes               planted trace  flagged of all  of tracing  named of flagged');
for (const mistake of [undefined, ...MISTAKES]) {
  const score = scoreMistakes(
    corrupted.filter((one) => mistake === undefined || one.mistake === mistake),
    corruptResults,
    results,
  );
  console.log(
    [
      (mistake ?? 'all').padEnd(30),
      String(score.planted).padStart(7),
      String(score.tracing).padStart(5),
      percent(score.flagged / score.planted).padStart(15),
      percent(score.flaggedOfTracing / score.tracing).padStart(11),
      percent(score.named / score.flagged).padStart(17),
    ].join(' '),
  );
}
