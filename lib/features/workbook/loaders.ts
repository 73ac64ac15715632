import { Readable } from 'node:stream';
import { database } from '@/lib/platform/db';
import { type BookWishes, bookApart, type WorkbookDownload } from './book-thread';
import { readStudyBook } from './study-book';

/**
 * The workbook of a study's options with live formulas, or that of one motor, which is small enough to be written here.
 * @returns `undefined` when there is no such study or motor, `busy` when too many workbooks and lists are being made.
 */
export async function openWorkbook(
  studyId: string,
  motorId: string | undefined,
  wishes?: BookWishes,
): Promise<WorkbookDownload | 'busy' | undefined> {
  if (motorId === undefined) return bookApart(studyId, wishes);
  const book = await readStudyBook(database().read, studyId, motorId);
  // The web's stream type of Node and that of the browser's library are declared apart.
  return book && { fileName: book.fileName, body: Readable.toWeb(book.write()) as ReadableStream };
}
