/**
 * `npm start`: prepares the database client, brings the database up to date, builds when something changed, and serves until
 * Ctrl+C. `--dev` serves the sources themselves and reloads on changes.
 *
 * The server runs in this very process: whatever ends it ends the server, and none is left behind.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..');
const DEVELOPING = process.argv.includes('--dev');
const OLDEST_NODE = [20, 19];
const PORTS_TO_TRY = 50;
const GRACE_MS = 5_000;

function stop(message) {
  console.error(message);
  process.exit(1);
}

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [wantedMajor, wantedMinor] = OLDEST_NODE;
  if (major < wantedMajor || (major === wantedMajor && minor < wantedMinor)) {
    stop(
      `Node.js ${OLDEST_NODE.join('.')} or later is needed; this is ${process.versions.node}. Install it from https://nodejs.org.`,
    );
  }
  if (!existsSync(path.join(ROOT, 'node_modules', 'next', 'package.json'))) stop('The packages are missing. Run `npm ci` first.');
}

/** Runs one of our TypeScript programs to its end; its output goes to the screen. */
function runScript(name) {
  const result = spawnSync(process.execPath, ['--import', 'tsx', path.join('scripts', name)], {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (result.status !== 0) process.exit(result.status ?? 1);
}

async function build() {
  const { sourcesHash } = await import('./sources-hash.mjs');
  const stamp = path.join(ROOT, '.next', 'built-from');
  const hash = sourcesHash(ROOT);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  console.log('Building; this takes a minute the first time.');
  rmSync(stamp, { force: true });
  const result = spawnSync(process.execPath, [path.join('node_modules', 'next', 'dist', 'bin', 'next'), 'build'], {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
  });
  if (result.status !== 0) stop(`${result.stdout ?? ''}${result.stderr ?? ''}\nThe program could not be built.`);
  writeFileSync(stamp, hash);
}

/** Listens on the wanted port, or on the next one that is free. */
async function listen(server, host, wanted) {
  for (let port = wanted; port < wanted + PORTS_TO_TRY && port <= 65_535; port++) {
    const error = await new Promise((resolve) => {
      server.once('error', resolve);
      server.listen(port, host, () => {
        server.off('error', resolve);
        resolve(undefined);
      });
    });
    if (error === undefined) return server.address().port;
    if (error.code !== 'EADDRINUSE') stop(`Cannot listen on ${host}:${port}: ${error.message}`);
  }
  return stop(`No free port from ${wanted} on. Set PORT to another one.`);
}

function addressOf(host, port) {
  const name = host === '0.0.0.0' || host === '::' ? 'localhost' : host.includes(':') ? `[${host}]` : host;
  return `http://${name}:${port}`;
}

function portFromEnvironment() {
  const text = process.env.PORT ?? '';
  if (text === '') return 3000;
  const port = Number(text);
  return Number.isInteger(port) && port >= 0 && port <= 65_535
    ? port
    : stop(`PORT must be a number from 0 to 65535, not "${text}".`);
}

async function main() {
  checkNode();
  process.chdir(ROOT);
  process.env.NEXT_TELEMETRY_DISABLED = '1';
  process.env.NODE_ENV = DEVELOPING ? 'development' : 'production';
  const host = process.env.LOSSBOOK_HOST || '127.0.0.1';
  const wanted = portFromEnvironment();

  const { prepareClient } = await import('./prepare-client.mjs');
  if (prepareClient()) console.log('The database client was made.');
  runScript('prepare-database.ts');
  if (!DEVELOPING) await build();

  let handle = (_request, response) => {
    response.writeHead(503, { 'content-type': 'text/plain; charset=utf-8', 'retry-after': '1' });
    response.end('Starting.\n');
  };
  const server = createServer((request, response) => handle(request, response));
  const port = await listen(server, host, wanted);

  const { default: next } = await import('next');
  const app = next({ dev: DEVELOPING, dir: ROOT, hostname: host, port, httpServer: server });
  await app.prepare();
  handle = app.getRequestHandler();

  const dataFolder = path.resolve(ROOT, process.env.LOSSBOOK_DATA || 'data');
  // Read by lib/platform/running.ts, so that a restore knows whether anybody has the database open.
  const note = path.join(dataFolder, 'running', String(process.pid));
  mkdirSync(path.dirname(note), { recursive: true });
  writeFileSync(note, '');
  const removeNote = () => rmSync(note, { force: true });
  let ending = false;
  const end = (code) => {
    if (ending) return;
    ending = true;
    removeNote();
    // A request that hangs must not keep the program.
    setTimeout(() => process.exit(code), GRACE_MS).unref();
    server.close(() => process.exit(code));
    server.closeIdleConnections();
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => end(0));
  process.on('exit', removeNote);

  const address = addressOf(host, port);
  if (port !== wanted && wanted !== 0) console.log(`Port ${wanted} is busy; port ${port} is used.`);
  const health = await fetch(`${address}/api/health`)
    .then((response) => response.json())
    .catch((error) => ({ status: 'failed', part: 'server', problem: error.message }));
  if (health.status !== 'ok') console.error(`Not sound: ${health.part}: ${health.problem}`);
  console.log(`Lossbook is at ${address}`);
  console.log(`Its data are in ${dataFolder}`);
  console.log('Ctrl+C ends it.');
}

await main();
