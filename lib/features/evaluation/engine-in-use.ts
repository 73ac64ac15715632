import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { ENGINE_VERSION } from '@/lib/engine';
import { readEnv } from '@/lib/platform/env';
import { contentHash } from '@/lib/platform/hash';

/** Digits of the mark: enough to tell the states of one program apart. */
const DIGITS = 12;

/**
 * The engine's version with a mark of its sources, `0.1.0+3f9ac01d2b7e`: kept results tell by it whether they were computed as they would be now.
 * A version by itself is typed by hand, and the same for every state between two releases.
 * @param folder where the engine's sources lie
 */
export function engineOf(folder: string): string {
  const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => [file, readFileSync(path.join(folder, file), 'utf8')]);
  return `${ENGINE_VERSION}+${contentHash(Object.fromEntries(sources)).slice(0, DIGITS)}`;
}

let found: string | undefined;

/** The same for the engine of this program, as it was when first asked for. */
export function engineInUse(): string {
  found ??= engineOf(path.join(readEnv().projectFolder, 'lib', 'engine'));
  return found;
}
