/**
 * Makes the database client from prisma/schema.prisma when it is missing or older than the schema. Plain JavaScript, because it
 * runs before anything else: at start, before the tests, before the types are checked.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const STAMP = path.join(ROOT, 'lib', 'platform', 'generated', 'client-of');

function wanted() {
  const require = createRequire(import.meta.url);
  const version = JSON.parse(readFileSync(require.resolve('prisma/package.json'), 'utf8')).version;
  return createHash('sha256')
    .update(version)
    .update(readFileSync(path.join(ROOT, 'prisma', 'schema.prisma')))
    .digest('hex');
}

/**
 * @returns {boolean} whether the client had to be made.
 * @throws {Error} with the output of the generator when it fails.
 */
export function prepareClient() {
  const hash = wanted();
  const client = path.join(ROOT, 'lib', 'platform', 'generated', 'prisma', 'client.ts');
  if (existsSync(client) && existsSync(STAMP) && readFileSync(STAMP, 'utf8') === hash) return false;
  const command = path.join(ROOT, 'node_modules', 'prisma', 'build', 'index.js');
  const result = spawnSync(process.execPath, [command, 'generate'], {
    cwd: ROOT,
    encoding: 'utf8',
    // The generator asks for a native engine that it does not use, and would fetch it; any existing program satisfies it.
    env: {
      ...process.env,
      PRISMA_SCHEMA_ENGINE_BINARY: process.execPath,
      CHECKPOINT_DISABLE: '1',
      PRISMA_HIDE_UPDATE_MESSAGE: '1',
    },
  });
  if (result.status !== 0) throw new Error(`The database client could not be made:\n${result.stdout}${result.stderr}`);
  writeFileSync(STAMP, hash);
  return true;
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  console.log(prepareClient() ? 'The database client has been made.' : 'The database client is up to date.');
}
