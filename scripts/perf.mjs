/** `npm run perf`: all measures; `npm run perf -- joint`: one of `tests/perf`. In the form in which the program itself runs, which is quicker than its sources. */
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { run } from '../lib/platform/compiled.mjs';

const [node, , ...rest] = process.argv;
const name = rest[0]?.startsWith('-') === false ? rest.shift() : 'run';
const program = `tests/perf/${name}.ts`;
// As if the program had been called by itself: some of its parts may be, or are measured with the others.
process.argv = [node, path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', program), ...rest];

await run(program, 'module');
