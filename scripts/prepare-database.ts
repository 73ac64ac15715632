/**
 * Brings the database of the data folder up to this version; called by the start script. A database that is not empty is copied
 * first, and the copy is checked. Prints what it did, one sentence a line; on refusal the reason on standard error, and exit 1.
 */

import { readEnv } from '@/lib/platform/env';
import { messageOf } from '@/lib/platform/errors';
import { prepareDatabase } from '@/lib/platform/prepare-database';

try {
  const done = prepareDatabase(readEnv());
  if (done.ok) for (const line of done.value) console.log(line);
  else {
    console.error(`${done.problem.text}\n${done.problem.remedy}`);
    process.exitCode = 1;
  }
} catch (error) {
  console.error(messageOf(error));
  process.exitCode = 1;
}
