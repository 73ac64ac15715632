import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { DamagedTable } from './damaged-table';

const MARK = join('reference-data', 'README.md');

function searchUpwards(start: string): string | undefined {
  for (let at = start; ; at = dirname(at)) {
    if (existsSync(join(at, MARK))) return join(at, 'reference-data');
    if (dirname(at) === at) return undefined;
  }
}

/**
 * The folder `reference-data` of this program: above this module, or, where a bundler has moved the module, above the working directory.
 * @throws DamagedTable when neither has it.
 */
export function referenceFolder(): string {
  const here = import.meta.url.startsWith('file:') ? searchUpwards(dirname(fileURLToPath(import.meta.url))) : undefined;
  const found = here ?? searchUpwards(process.cwd());
  if (found !== undefined) return found;
  throw new DamagedTable(
    { file: 'README.md' },
    'the folder of reference tables was not found',
    'Run the program from its own folder.',
  );
}
