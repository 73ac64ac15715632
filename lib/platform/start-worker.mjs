// Entry of a worker thread: gives the thread the TypeScript loader, then starts the module named in its data. Plain JavaScript, because
// Node 20 does not pass a loader on to worker threads.
import { workerData } from 'node:worker_threads';
import { register } from 'tsx/esm/api';

register();
await import(workerData.module);
