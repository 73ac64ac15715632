import { chooseSteps } from './checks/choose-steps';
import { prepare } from './checks/prepare';
import { STEPS } from './checks/steps';
import { sum, type Tally } from './checks/tally';

/**
 * `npm test`: every check of the repository, each as a program of its own. A step that fails does not keep the others from running.
 * The last line, `N passed, N failed`, is summed over the programs' exit codes and their own reports; the exit code is 1 if any failed.
 */
async function main(): Promise<number> {
  const choice = chooseSteps(
    process.argv.slice(2),
    STEPS.map((step) => step.name),
  );
  if (!choice.ok) {
    console.error(choice.problem);
    return 2;
  }
  const tallies: Tally[] = [await prepare()];
  for (const step of STEPS) {
    if (!choice.names.includes(step.name)) continue;
    console.log(`\n== ${step.title}`);
    const start = performance.now();
    const tally = await step.run();
    const minutes = ((performance.now() - start) / 60_000).toFixed(1);
    console.log(`== ${step.title}: ${tally.passed} passed, ${tally.failed} failed`);
    console.log(`(${minutes} min)`);
    tallies.push(tally);
  }
  const total = sum(tallies);
  console.log('');
  for (const note of total.notes) console.log(note);
  console.log(`${total.passed} passed, ${total.failed} failed`);
  return total.failed > 0 ? 1 : 0;
}

process.exitCode = await main();
