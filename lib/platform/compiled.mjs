/**
 * Makes one file of JavaScript from a TypeScript program and all that it imports: it starts in a fraction of the time that hundreds of
 * files take. The file is kept under node_modules and made again when a source, a package or the version of Node.js has changed, so
 * nobody has to build anything. Plain JavaScript, because it runs before anything else does.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');
const KEPT = path.join(ROOT, 'node_modules', '.cache', 'lossbook');
/** Beside the sources: what decides how names are resolved, and which packages they lead to. */
const SETUP = ['tsconfig.json', 'package-lock.json', 'lib/platform/compiled.mjs'];
/** Packages with parts that are not JavaScript, or that look for files of their own: these are loaded as they are. */
const NOT_TAKEN_IN = ['libsql', '@libsql/*', '@prisma/*', 'highs', '@playwright/*'];
/** Packages of the older kind ask for others by this function, which modules lack. */
const REQUIRE = `const require = process.getBuiltinModule('node:module').createRequire(import.meta.url);`;

/** Tells whether a file is the same as before, without reading it. */
function markOf(file) {
  const found = statSync(path.join(ROOT, file), { throwIfNoEntry: false });
  return found ? `${found.size} ${found.mtimeMs}` : 'none';
}

function readStamp(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return undefined;
  }
}

const holds = (stamp) =>
  stamp?.root === ROOT &&
  stamp.node === process.versions.node &&
  statSync(path.join(KEPT, stamp.made), { throwIfNoEntry: false }) !== undefined &&
  Object.entries(stamp.sources).every(([file, mark]) => markOf(file) === mark);

/** Written whole or not at all, whoever else is at it. */
function keep(name, text) {
  const part = path.join(KEPT, `${name}.${process.pid}.part`);
  writeFileSync(part, text);
  renameSync(part, path.join(KEPT, name));
}

/** Reads our sources, which are those in TypeScript. Each goes on knowing its own place, by which it finds files beside it. */
function readSources(marks) {
  return {
    name: 'sources',
    setup(build) {
      build.onLoad({ filter: /[.]ts$/ }, ({ path: file }) => {
        // Before it is read: a change in between must show.
        marks.set(path.relative(ROOT, file), markOf(path.relative(ROOT, file)));
        const here = JSON.stringify(pathToFileURL(file).href);
        return { contents: readFileSync(file, 'utf8').replaceAll('import.meta.url', here), loader: 'ts' };
      });
    },
  };
}

async function make(program, stampName, before) {
  const { build, stop } = await import('esbuild');
  const marks = new Map(SETUP.map((file) => [file, markOf(file)]));
  const { outputFiles } = await build({
    entryPoints: [path.join(ROOT, program)],
    absWorkingDir: ROOT,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: `node${process.versions.node}`,
    external: NOT_TAKEN_IN,
    banner: { js: REQUIRE },
    plugins: [readSources(marks)],
    write: false,
    logLevel: 'silent',
  });
  // The compiler is a process of its own: it need not wait for more.
  await stop();
  const text = outputFiles[0].text;
  const made = `${path.basename(program, '.ts')}-${createHash('sha256').update(text).digest('hex').slice(0, 16)}.mjs`;
  mkdirSync(KEPT, { recursive: true });
  keep(made, text);
  keep(stampName, JSON.stringify({ root: ROOT, node: process.versions.node, made, sources: Object.fromEntries(marks) }));
  if (before !== undefined && before.made !== made) rmSync(path.join(KEPT, before.made), { force: true });
  return made;
}

/** The file made from a program, which is made now if need be. */
async function compiled(program) {
  const stampName = `${program.replaceAll('/', '-')}.json`;
  const stamp = readStamp(path.join(KEPT, stampName));
  return path.join(KEPT, holds(stamp) ? stamp.made : await make(program, stampName, stamp));
}

/**
 * Runs a program of ours.
 * @param {string} program its source, as a path from the root of the project
 */
export async function run(program) {
  let file;
  try {
    file = await compiled(program);
  } catch (error) {
    // An installation that may not be written to: the sources run as they are, which takes longer to start.
    if (error?.syscall === undefined) throw error;
    const { register } = await import('tsx/esm/api');
    register();
    file = path.join(ROOT, program);
  }
  await import(pathToFileURL(file).href);
}
