/** A hash over all that goes into the built program, to tell whether it must be built again. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import path from 'node:path';

const INPUTS = [
  'app',
  'lib',
  'public',
  'proxy.ts',
  'instrumentation.ts',
  'next.config.ts',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
  'prisma/schema.prisma',
];
/** Made from the schema, which is among the inputs; and the command line, which the pages do not contain. */
const LEFT_OUT = ['lib/platform/generated', 'lib/cli'];

function* filesOf(root, relative) {
  const full = path.join(root, relative);
  if (!existsSync(full) || LEFT_OUT.includes(relative)) return;
  if (!statSync(full).isDirectory()) {
    yield relative;
    return;
  }
  for (const name of readdirSync(full).sort()) yield* filesOf(root, `${relative}/${name}`);
}

/**
 * @param {string} root the project folder
 * @returns {string} SHA-256 over names and contents, and the version of Node.js, in hex
 */
export function sourcesHash(root) {
  const hash = createHash('sha256').update(process.versions.node);
  for (const input of INPUTS) {
    for (const file of filesOf(root, input)) hash.update(`\n${file}\n`).update(readFileSync(path.join(root, file)));
  }
  return hash.digest('hex');
}
