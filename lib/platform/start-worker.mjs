// Entry of a worker thread: runs the program named in its data, a path from the root of the project. Plain JavaScript, because a thread
// reads nothing else by itself.
import { workerData } from 'node:worker_threads';
import { run } from './compiled.mjs';

await run(workerData.program);
