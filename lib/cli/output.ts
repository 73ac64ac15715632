import { closeSync, openSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import path from 'node:path';
import { UsageError } from './exit';

/** Where a command's result goes: pieces of text in order, then `finish`; `abandon` leaves no half-written file. */
export interface Output {
  write(text: string): void;
  finish(): void;
  abandon(): void;
}

/** Writes to standard output, or to a temporary file beside `file` that is renamed at the end, so that no reader sees half a result. */
export function openOutput(file: string | undefined): Output {
  return file === undefined
    ? new Buffered(
        1,
        () => {},
        () => {},
      )
    : fileOutput(file);
}

function fileOutput(file: string): Output {
  const temporary = path.join(path.dirname(path.resolve(file)), `.${path.basename(file)}.${process.pid}.part`);
  const fd = opened(temporary, file);
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
        renameSync(temporary, file);
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

function opened(temporary: string, file: string): number {
  // Found out before an evaluation that may take long.
  if (statSync(file, { throwIfNoEntry: false })?.isDirectory()) throw unwritable(file, { code: 'EISDIR' });
  try {
    return openSync(temporary, 'w');
  } catch (error) {
    throw unwritable(file, error);
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
  #pieces: string[] = [];
  #size = 0;

  constructor(
    private readonly fd: number,
    private readonly onFinish: () => void,
    private readonly onAbandon: () => void,
  ) {}

  write(text: string): void {
    this.#pieces.push(text);
    this.#size += text.length;
    if (this.#size >= CHUNK) this.#flush();
  }

  finish(): void {
    this.#flush();
    this.onFinish();
  }

  abandon(): void {
    this.onAbandon();
  }

  #flush(): void {
    const bytes = Buffer.from(this.#pieces.join(''), 'utf8');
    this.#pieces = [];
    this.#size = 0;
    let at = 0;
    while (at < bytes.length) at += writeSome(this.fd, bytes, at);
  }
}

/** One write; waits a moment when a pipe is full. A closed pipe ends the process quietly: the reader has seen enough. */
function writeSome(fd: number, bytes: Buffer, at: number): number {
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
