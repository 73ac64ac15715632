import { startApart } from '@/lib/platform/threads';
import type { BookNews, BookOrder, BookStart } from './book-worker';

/** A workbook as a download. */
export interface WorkbookDownload {
  readonly fileName: string;
  readonly body: ReadableStream;
}

/**
 * The workbook of a whole study, written in a thread of its own that lives outside the bundle, so that other requests do not wait for it. A piece is
 * asked for when the reader has room for it; a reader who goes away ends the work. `undefined` when there is no such study, `busy` when too many wait.
 */
export async function bookApart(studyId: string): Promise<WorkbookDownload | 'busy' | undefined> {
  const start: BookStart = { studyId };
  const thread = await startApart('lib/features/workbook/book-worker.ts', start);
  if (thread === 'busy') return thread;
  const tell = (order: BookOrder): void => thread.postMessage(order);
  let hear: (news: BookNews | Error) => void = () => undefined;
  const next = (): Promise<BookNews | Error> =>
    new Promise((resolve) => {
      hear = resolve;
    });
  thread.on('message', (news: BookNews) => hear(news));
  thread.on('error', (error) => {
    console.error('The thread that writes a workbook stopped.', error);
    hear(error instanceof Error ? error : new Error(String(error)));
  });
  thread.on('exit', () => hear(new Error('the thread that writes a workbook ended early')));

  const first = await next();
  if (first instanceof Error) throw first;
  if (!('fileName' in first)) return undefined;
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const heard = next();
      tell('more');
      const news = await heard;
      if (news instanceof Error) controller.error(news);
      else if ('piece' in news) controller.enqueue(news.piece);
      else controller.close();
    },
    cancel: () => tell('stop'),
  });
  return { fileName: first.fileName, body };
}
