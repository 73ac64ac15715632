import { commandLine } from './command-line';
import { evaluationTimes, formulaAgainstHand, type Measure } from './engine';
import { fleetPage } from './fleet-page';
import { importTimes } from './import';
import { planTimes } from './plan';
import { rerankTimes } from './rerank';

/** `npm run perf`: measures and prints; it never fails on a time, since machines are noisy. `-- --large` adds 100,000 motors. */
const large = process.argv.includes('--large');
const parts: readonly (readonly [string, () => Measure[] | Promise<Measure[]>])[] = [
  ['Formulas', formulaAgainstHand],
  ['Engine', evaluationTimes],
  ['What if', rerankTimes],
  ['Command line', () => commandLine(large)],
  ['Import of 10,000 rows', importTimes],
  ['Fleet of 10,000 in the app', fleetPage],
  ['Plan', planTimes],
];

for (const [title, measure] of parts) {
  console.log(title);
  for (const { what, value, unit, bar } of await measure()) {
    console.log(
      `  ${what.padEnd(74)} ${value.toPrecision(3).padStart(8)} ${unit.padEnd(6)}${bar === undefined ? '' : `  bar: ${bar}`}`,
    );
  }
}
