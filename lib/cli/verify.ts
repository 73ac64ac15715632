import { readFileSync } from 'node:fs';
import { ENOUGH_DIGITS, typedHash, verifyFile } from '@/lib/features/sign-off/content';
import type { Call } from './arguments';
import { EXIT, UsageError } from './exit';
import { openOutput } from './output';

/** Says whether an exported plan is the signed version. */
export async function verify(call: Call): Promise<number> {
  const printed = call.hash === undefined ? undefined : typedHash(call.hash);
  if (call.hash !== undefined && printed === undefined)
    throw new UsageError(
      `--hash ${call.hash}: at least the first ${ENOUGH_DIGITS} digits of the printed hash, 0 to 9 and a to f.`,
    );
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(call.fleet);
  } catch (error) {
    throw new UsageError(`${call.fleet} cannot be read: ${(error as Error).message}`);
  }
  const verdict = verifyFile(bytes, printed);
  const output = openOutput(call.out);
  const hash = verdict.hash === undefined ? '' : `hash ${verdict.hash}\n`;
  output.write(
    call.format === 'json'
      ? `${JSON.stringify({ schema: 1, ...verdict }, undefined, 1)}\n`
      : `${verdict.says.join('\n')}\n${hash}`,
  );
  output.finish();
  return verdict.state === 'signed' ? EXIT.done : EXIT.refused;
}
