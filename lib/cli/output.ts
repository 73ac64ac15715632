import { closeSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import path from 'node:path';

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
  const fd = openSync(temporary, 'w');
  return new Buffered(
    fd,
    () => {
      closeSync(fd);
      renameSync(temporary, file);
    },
    () => {
      closeSync(fd);
      rmSync(temporary, { force: true });
    },
  );
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
