/** `npm run study`: the command line. */
import { setFlagsFromString } from 'node:v8';
import { run } from '../lib/platform/compiled.mjs';

// A command lives for seconds, in which each thread compiles its hot functions anew: less inlining and more patience before compiling take a
// third off the processor time of a thousand motors and an eighth off that of ten thousand (docs/performance.md).
setFlagsFromString('--max-inlined-bytecode-size-cumulative=200');
setFlagsFromString('--interrupt-budget=264000');

await run('lib/cli/main.ts');
