import { existsSync } from 'node:fs';
import { runCommand } from './run-command';
import { failure, NOTHING, type Tally } from './tally';

/** Makes what is generated and not committed (the database client): types and tests of the app need it. */
const PREPARATION = 'scripts/prepare-client.mjs';

/** Runs the preparation; it counts only when it fails. */
export async function prepare(): Promise<Tally> {
  if (!existsSync(PREPARATION)) return NOTHING;
  console.log('== preparation');
  const exitCode = await runCommand(process.execPath, [PREPARATION]);
  return exitCode === 0 ? NOTHING : failure(`${PREPARATION} ended with ${exitCode}`);
}
