import { spawn } from 'node:child_process';

/**
 * Runs a command with its output passed through and no input, and gives its exit code: 127 when it could not be started,
 * 128 when a signal ended it.
 */
export function runCommand(
  command: string,
  args: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<number> {
  return new Promise((resolve) => {
    const child = spawn(command, [...args], { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, ...environment } });
    child.on('error', (error) => {
      console.error(error.message);
      resolve(127);
    });
    child.on('close', (code) => resolve(code ?? 128));
  });
}
