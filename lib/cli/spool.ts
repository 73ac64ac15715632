import { closeSync, mkdtempSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Up to this many characters of results stay in memory; what goes beyond is kept in a temporary file. */
const IN_MEMORY = 64 * 1024 * 1024;

/** Keeps texts in order of arrival and gives each back by its number, in bounded memory. */
export class Spool {
  readonly #texts: (string | undefined)[] = [];
  readonly #offsets: number[] = [];
  readonly #lengths: number[] = [];
  #held = 0;
  #end = 0;
  #file: { fd: number; folder: string } | undefined;

  /** Stores a text; returns its number. */
  add(text: string): number {
    const number = this.#texts.length;
    if (this.#held + text.length <= IN_MEMORY) {
      this.#texts.push(text);
      this.#held += text.length;
      this.#offsets.push(0);
      this.#lengths.push(0);
      return number;
    }
    this.#file ??= openScratch();
    const bytes = Buffer.from(text, 'utf8');
    let written = 0;
    while (written < bytes.length)
      written += writeSync(this.#file.fd, bytes, written, bytes.length - written, this.#end + written);
    this.#texts.push(undefined);
    this.#offsets.push(this.#end);
    this.#lengths.push(bytes.length);
    this.#end += bytes.length;
    return number;
  }

  /** The text with this number. */
  get(number: number): string {
    const held = this.#texts[number];
    if (held !== undefined) return held;
    const length = this.#lengths[number];
    const offset = this.#offsets[number];
    if (!this.#file || length === undefined || offset === undefined) throw new Error(`nothing is spooled under ${number}`);
    const bytes = Buffer.allocUnsafe(length);
    let read = 0;
    while (read < length) read += readSync(this.#file.fd, bytes, read, length - read, offset + read);
    return bytes.toString('utf8');
  }

  /** Removes the temporary file. */
  close(): void {
    if (!this.#file) return;
    closeSync(this.#file.fd);
    rmSync(this.#file.folder, { recursive: true, force: true });
    this.#file = undefined;
  }
}

function openScratch(): { fd: number; folder: string } {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-'));
  const fd = openSync(path.join(folder, 'results'), 'w+');
  return { fd, folder };
}
