import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { DamagedTable } from '@/lib/reference/damaged-table';
import { type Call, COMMANDS, type CommandName, readCall } from './arguments';
import { EXIT, UsageError } from './exit';

/** Each command loads what it needs when it is called. */
const RUN: Readonly<Record<CommandName, (call: Call) => Promise<number>>> = {
  evaluate: async (call) => (await import('./evaluate')).evaluate(call),
  plan: async (call) => (await import('./evaluate')).evaluate(call),
  check: async (call) => (await import('./check')).check(call),
  bench: async (call) => (await import('./bench')).bench(call),
  explain: async (call) => (await import('./explain')).explain(call),
  measures: async (call) => (await import('./measures')).measures(call),
  lines: async (call) => (await import('./lines')).lines(call),
  verify: async (call) => (await import('./verify')).verify(call),
  settings: async (call) => (await import('./settings')).settings(call),
};

function help(): string {
  const commands = Object.values(COMMANDS).map((command) => `  ${command.call}\n      ${command.says}`);
  return `Usage: npm run -s study -- COMMAND …

${commands.join('\n')}
  --help, --version

Reading a sheet: --decimal . or ,   --delimiter comma, semicolon or tab   --encoding NAME   --empty WORDS (comma between)
A price list, by --prices or the settings: --prices-decimal, --prices-delimiter and --prices-encoding where it is written otherwise
Ends with 0 when done (warnings alone are 0), 1 on an internal error, 2 on wrong usage or an unreadable file, 3 when rows of the sheet or the price list were rejected,
4 when a test does not meet the limits of its standard, or a file is not the signed version.
`;
}

function version(): string {
  const text = readFileSync(fileURLToPath(new URL('../../package.json', import.meta.url)), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

async function main(args: readonly string[]): Promise<number> {
  if (args.includes('--help') || args.includes('-h')) {
    process.stdout.write(help());
    return EXIT.done;
  }
  if (args[0] === '--version') {
    process.stdout.write(`${version()}\n`);
    return EXIT.done;
  }
  try {
    const call = readCall(args);
    return await RUN[call.command](call);
  } catch (error) {
    if (error instanceof UsageError) {
      console.error(error.message);
      return EXIT.usage;
    }
    console.error(error instanceof DamagedTable ? error.message : `Internal error: ${(error as Error).stack ?? String(error)}`);
    return EXIT.internal;
  }
}

// A reader that has seen enough closes the pipe: that is no error of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : EXIT.internal));
void main(process.argv.slice(2)).then((code) => {
  process.exitCode = code;
});
