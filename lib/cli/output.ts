import { closeSync, openSync, realpathSync, renameSync, rmSync, type Stats, statSync, writeSync } from 'node:fs';
import path from 'node:path';
import { UsageError } from './exit';

/** Where a command's result goes: pieces in order, as text or UTF-8, then `finish`; `abandon` leaves no half-written file. */
export interface Output {
  write(piece: string | Uint8Array): void;
  finish(): void;
  abandon(): void;
}

const nothing = (): void => undefined;

/**
 * Writes to standard output, or to a temporary file beside `file` that is renamed at the end, so that no reader sees half a result. A link is
 * followed. What is no plain file, such as a device or a named pipe, is written to as it stands: a rename would put a file in its place.
 */
export function openOutput(file: string | undefined): Output {
  if (file === undefined) return new Buffered(1, nothing, nothing);
  const there = statSync(file, { throwIfNoEntry: false });
  // Found out before an evaluation that may take long.
  if (there?.isDirectory()) throw unwritable(file, { code: 'EISDIR' });
  return there && !there.isFile() ? deviceOutput(file) : fileOutput(file, there);
}

function deviceOutput(file: string): Output {
  const fd = opened(file, file);
  const close = () => closeSync(fd);
  return new Buffered(fd, close, close);
}

function fileOutput(file: string, there: Stats | undefined): Output {
  const target = there ? realpathSync(file) : path.resolve(file);
  const temporary = path.join(path.dirname(target), `.${path.basename(target)}.${process.pid}.part`);
  const fd = opened(temporary, file, there && there.mode & 0o777);
  let open = true;
  const close = () => {
    if (open) closeSync(fd);
    open = false;
  };
  return new Buffered(
    fd,
    () => {
      close();
      try {
        renameSync(temporary, target);
      } catch (error) {
        throw unwritable(file, error);
      }
    },
    () => {
      close();
      rmSync(temporary, { force: true });
    },
  );
}

/** @param named the file as the caller knows it. */
function opened(file: string, named: string, mode?: number): number {
  try {
    return openSync(file, 'w', mode);
  } catch (error) {
    throw unwritable(named, error);
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  ENOTDIR: 'a part of its path is a file',
  EISDIR: 'it is a folder',
  EACCES: 'the right to write there is missing',
  EPERM: 'the right to write there is missing',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
};

function unwritable(file: string, error: unknown): UsageError {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return new UsageError(`--out ${file} cannot be written: ${REASONS[code] ?? `the system says ${code || String(error)}`}.`);
}

const CHUNK = 1 << 18;

class Buffered implements Output {
  readonly #bytes = Buffer.allocUnsafeSlow(CHUNK);
  #size = 0;

  constructor(
    private readonly fd: number,
    private readonly onFinish: () => void,
    private readonly onAbandon: () => void,
  ) {}

  write(piece: string | Uint8Array): void {
    const length = typeof piece === 'string' ? Buffer.byteLength(piece) : piece.length;
    if (this.#size + length > CHUNK) this.#flush();
    if (length > CHUNK) writeAll(this.fd, typeof piece === 'string' ? Buffer.from(piece) : piece);
    else if (typeof piece === 'string') this.#size += this.#bytes.write(piece, this.#size);
    else {
      this.#bytes.set(piece, this.#size);
      this.#size += length;
    }
  }

  finish(): void {
    this.#flush();
    this.onFinish();
  }

  abandon(): void {
    this.onAbandon();
  }

  #flush(): void {
    writeAll(this.fd, this.#bytes.subarray(0, this.#size));
    this.#size = 0;
  }
}

function writeAll(fd: number, bytes: Uint8Array): void {
  let at = 0;
  while (at < bytes.length) at += writeSome(fd, bytes, at);
}

/** One write; waits a moment when a pipe is full. A closed pipe ends the process quietly: the reader has seen enough. */
function writeSome(fd: number, bytes: Uint8Array, at: number): number {
  try {
    return writeSync(fd, bytes, at);
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EPIPE') process.exit(0);
    if (code !== 'EAGAIN') throw error;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    return 0;
  }
}
