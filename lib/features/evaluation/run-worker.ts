import { parentPort } from 'node:worker_threads';
import { openDatabase } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { runningServers } from '@/lib/platform/running';
import { workThroughQueue } from './work-through-queue';

/** The runner's thread (see `runner.ts`): each message makes it look into the queue; looks do not overlap. */

const port = parentPort;
if (port) {
  const env = readEnv();
  const db = openDatabase(env.databaseFile);
  const others = () => runningServers(env.dataFolder).some((pid) => pid !== process.pid);
  let looking: Promise<void> = Promise.resolve();
  port.on('message', () => {
    looking = looking
      .then(() => workThroughQueue(db, { otherServers: others }))
      .catch((error) => console.error('The queue of evaluations could not be worked through.', error));
  });
}
