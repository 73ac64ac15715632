import { type MessagePort, parentPort, workerData } from 'node:worker_threads';
import { openDatabase } from '@/lib/platform/db';
import { readEnv } from '@/lib/platform/env';
import { readStudyBook } from './study-book';

/**
 * The thread that writes the workbook of a whole study (see `book-thread.ts`): evaluating and zipping take seconds, in which others would wait. It
 * reads with a connection of its own and lets it go before it writes. It is never stopped from outside: in the middle of zipping that would take
 * the process with it.
 */

/** What the thread is started with. */
export interface BookStart {
  readonly studyId: string;
}

/** What it is told: that the reader has room for a piece, or that nobody reads any more. */
export type BookOrder = 'more' | 'stop';

/** What it says: the name of the file, or that there is none; then a piece for each that it was asked for, until the end. */
export type BookNews =
  | { readonly fileName: string }
  | { readonly nothing: true }
  | { readonly piece: Uint8Array }
  | { readonly end: true };

/** Writes the book of a study, a piece at a time as the other side has room. */
async function write(port: MessagePort, { studyId }: BookStart): Promise<void> {
  const say = (news: BookNews, transfer: readonly ArrayBuffer[] = []): void => port.postMessage(news, transfer);
  let wanted = true;
  let room = 0;
  let wake = (): void => undefined;
  port.on('message', (order: BookOrder) => {
    if (order === 'stop') wanted = false;
    else room += 1;
    wake();
  });
  const db = openDatabase(readEnv().databaseFile);
  const book = await readStudyBook(db.read, studyId, undefined).finally(() => db.close());
  if (!book) say({ nothing: true });
  else {
    say({ fileName: book.fileName });
    for await (const bytes of book.write(() => wanted)) {
      while (wanted && room === 0)
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      if (!wanted) break;
      room -= 1;
      // The bytes lie in memory that others share: a copy of their own can be handed over.
      const piece = new Uint8Array(bytes);
      say({ piece }, [piece.buffer]);
    }
    if (wanted) say({ end: true });
  }
  port.close();
}

if (parentPort) void write(parentPort, workerData as BookStart);
