import { closeSync, mkdtempSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Up to so many bytes of results stay in memory; what goes beyond is kept in a temporary file. */
const IN_MEMORY = 16 * 1024 * 1024;

/** Texts that arrived together, one after another in UTF-8. */
interface Block {
  readonly ends: readonly number[];
  /** The texts themselves, or where they begin in the file. */
  readonly at: Uint8Array | number;
}

/** Keeps texts in order of arrival and gives each back by its number, in bounded memory. */
export class Spool {
  readonly #blocks: Block[] = [];
  /** Number of the first text of each block. */
  readonly #firsts: number[] = [];
  #count = 0;
  #held = 0;
  #end = 0;
  #file: { fd: number; folder: string } | undefined;

  /** Stores texts that stand end to end in `bytes`; `ends` says where each one ends. */
  add(bytes: Uint8Array, ends: readonly number[]): void {
    this.#firsts.push(this.#count);
    this.#count += ends.length;
    if (this.#held + bytes.length <= IN_MEMORY) {
      this.#blocks.push({ ends, at: bytes });
      this.#held += bytes.length;
      return;
    }
    this.#file ??= openScratch();
    let written = 0;
    while (written < bytes.length)
      written += writeSync(this.#file.fd, bytes, written, bytes.length - written, this.#end + written);
    this.#blocks.push({ ends, at: this.#end });
    this.#end += bytes.length;
  }

  /** The text with this number, in UTF-8. */
  get(number: number): Uint8Array {
    const place = this.#placeOf(number);
    const block = this.#blocks[place];
    const index = number - (this.#firsts[place] ?? 0);
    const end = block?.ends[index];
    if (block === undefined || end === undefined) throw new Error(`nothing is spooled under ${number}`);
    const from = block.ends[index - 1] ?? 0;
    return typeof block.at === 'number' ? this.#read(block.at + from, end - from) : block.at.subarray(from, end);
  }

  /** Removes the temporary file. */
  close(): void {
    if (!this.#file) return;
    closeSync(this.#file.fd);
    rmSync(this.#file.folder, { recursive: true, force: true });
    this.#file = undefined;
  }

  /** The last block that begins at or before a number. */
  #placeOf(number: number): number {
    let low = 0;
    let high = this.#firsts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((this.#firsts[middle] ?? 0) <= number) low = middle;
      else high = middle;
    }
    return low;
  }

  #read(offset: number, length: number): Uint8Array {
    if (!this.#file) throw new Error('the spool is closed');
    const bytes = Buffer.allocUnsafe(length);
    let read = 0;
    while (read < length) read += readSync(this.#file.fd, bytes, read, length - read, offset + read);
    return bytes;
  }
}

function openScratch(): { fd: number; folder: string } {
  const folder = mkdtempSync(path.join(tmpdir(), 'lossbook-'));
  const fd = openSync(path.join(folder, 'results'), 'w+');
  return { fd, folder };
}
