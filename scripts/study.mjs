/** `npm run study`: the command line. */
import { run } from '../lib/platform/compiled.mjs';

await run('lib/cli/main.ts');
