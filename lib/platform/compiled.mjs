/**
 * Makes one file of JavaScript from a TypeScript program and all that it imports: it starts in a fraction of the time that hundreds of
 * files take. The file is kept under node_modules and made again when a source, a package or the version of Node.js has changed, so
 * nobody has to build anything; so is what Node.js compiled of it while it ran. Plain JavaScript, because it runs before anything else does.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { cachedDataVersionTag, getHeapCodeStatistics } from 'node:v8';
import { Script } from 'node:vm';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..');
const KEPT = path.join(ROOT, 'node_modules', '.cache', 'lossbook');
/** Beside the sources: what decides how names are resolved, and which packages they lead to. */
const SETUP = ['tsconfig.json', 'package-lock.json', 'lib/platform/compiled.mjs'];
/** Packages with parts that are not JavaScript, or that look for files of their own: these are loaded as they are. */
const NOT_TAKEN_IN = ['libsql', '@libsql/*', '@prisma/*', 'highs', '@playwright/*'];
/** Packages of the older kind ask for others by this function, which modules lack. */
const REQUIRE = `const require = process.getBuiltinModule('node:module').createRequire(import.meta.url);`;
/** What is compiled is kept again when a run has left so many times as much as it began with. */
const WORTH_KEEPING = 1.25;
/** How a program is made: Node.js gives back what it compiled of a script, while a module may wait at its top level. */
const FORMS = {
  script: { format: 'cjs', ending: 'cjs', imports: false, before: '(function (module, require) {', after: '})', load: runScript },
  module: {
    format: 'esm',
    ending: 'mjs',
    imports: true,
    before: REQUIRE,
    after: '',
    load: (file) => import(pathToFileURL(file).href),
  },
};

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

async function make(program, form, stampName, before) {
  const { build, stop } = await import('esbuild');
  const marks = new Map(SETUP.map((file) => [file, markOf(file)]));
  const { outputFiles } = await build({
    entryPoints: [path.join(ROOT, program)],
    absWorkingDir: ROOT,
    bundle: true,
    platform: 'node',
    format: form.format,
    target: `node${process.versions.node}`,
    // A script that asks for a module later would need its own loader: packages that are not taken in are asked for by the older way.
    supported: { 'dynamic-import': form.imports },
    external: NOT_TAKEN_IN,
    banner: { js: form.before },
    footer: { js: form.after },
    plugins: [readSources(marks)],
    write: false,
    logLevel: 'silent',
  });
  // The compiler is a process of its own: it need not wait for more.
  await stop();
  // A text of plain characters takes half the memory. The compiler leaves others in comments and regular expressions, where an escape says the
  // same, and in raw templates, where it would not: neither our sources nor the packages taken in have one there.
  const text = outputFiles[0].text.replaceAll(/[^\0-\x7f]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
  const made = `${path.basename(program, '.ts')}-${createHash('sha256').update(text).digest('hex').slice(0, 16)}.${form.ending}`;
  mkdirSync(KEPT, { recursive: true });
  keep(made, text);
  keep(stampName, JSON.stringify({ root: ROOT, node: process.versions.node, made, sources: Object.fromEntries(marks) }));
  if (before !== undefined && before.made !== made) {
    for (const old of readdirSync(KEPT).filter((name) => name.startsWith(before.made)))
      rmSync(path.join(KEPT, old), { force: true });
  }
  return made;
}

/** The file made from a program, which is made now if need be. */
async function compiled(program, form) {
  const stampName = `${program.replaceAll('/', '-')}.json`;
  const stamp = readStamp(path.join(KEPT, stampName));
  return path.join(KEPT, holds(stamp) ? stamp.made : await make(program, form, stampName, stamp));
}

/** The file of what was compiled of a made file: it fits the version of Node.js, the processor and the options it was compiled with. */
const codeOf = (made) => `${made}.${cachedDataVersionTag()}.code`;

/** Runs a script with what was compiled of it in earlier runs, and keeps what this one adds to it. */
function runScript(file) {
  const code = readCode(codeOf(file));
  const script = new Script(readFileSync(file, 'latin1'), {
    filename: file,
    cachedData: code,
  });
  const size = () => getHeapCodeStatistics().bytecode_and_metadata_size;
  const before = code === undefined || script.cachedDataRejected ? 0 : size();
  process.once('exit', () => {
    if (size() < WORTH_KEEPING * before) return;
    try {
      keep(path.basename(codeOf(file)), script.createCachedData());
    } catch (error) {
      // The next run compiles again, and no more is lost.
      if (error?.syscall === undefined) throw error;
    }
  });
  script.runInThisContext()({ exports: {} }, createRequire(file));
}

function readCode(file) {
  try {
    return readFileSync(file);
  } catch {
    return undefined;
  }
}

/**
 * Runs a program of ours.
 * @param {string} program its source, as a path from the root of the project
 * @param {'script' | 'module'} [as] a program that waits at its top level runs as a module, of which nothing compiled is kept
 */
export async function run(program, as = 'script') {
  const form = FORMS[as];
  let file;
  try {
    file = await compiled(program, form);
  } catch (error) {
    // An installation that may not be written to: the sources run as they are, which takes longer to start.
    if (error?.syscall === undefined) throw error;
    const { register } = await import('tsx/esm/api');
    register();
    await import(pathToFileURL(path.join(ROOT, program)).href);
    return;
  }
  await form.load(file);
}
