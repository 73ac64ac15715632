import { buffer } from 'node:stream/consumers';
import { setTimeout } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bookApart } from '@/lib/features/workbook/book-thread';
import { openWorkbook } from '@/lib/features/workbook/loaders';
import { readStudyBook } from '@/lib/features/workbook/study-book';
import { database } from '@/lib/platform/db';
import { Places } from '@/lib/platform/threads';
import { opened, rowsOf } from './support/recalculate';
import { someMotors, studyWith } from './support/study-with-demo';
import { programDatabase } from './support/temporary-database';

let temporary: ReturnType<typeof programDatabase>;
let study: string;
beforeAll(async () => {
  temporary = programDatabase();
  study = await studyWith(database(), someMotors(40));
});
afterAll(() => temporary.remove());

const bytesOf = async (body: ReadableStream): Promise<Buffer> => Buffer.from(await new Response(body).arrayBuffer());
const SHEETS = ['Options', 'Cash flow', 'Years', 'Working'];

describe('the workbook of a study written in a thread of its own', () => {
  it('is the one that is written here, cell by cell, under the same name', async () => {
    const here = await readStudyBook(database().read, study, undefined);
    const apart = await openWorkbook(study, undefined);
    if (!here || !apart || apart === 'busy') throw new Error('there is no workbook');
    expect(apart.fileName).toBe(here.fileName);
    const [mine, theirs] = [await opened(await buffer(here.write())), await opened(await bytesOf(apart.body))];
    for (const sheet of SHEETS) {
      expect(rowsOf(mine, sheet).length).toBeGreaterThan(1);
      expect(rowsOf(theirs, sheet)).toEqual(rowsOf(mine, sheet));
    }
  });

  it('lets this thread serve others meanwhile: it has many turns before the workbook is whole', async () => {
    let turns = 0;
    const count = () => {
      turns += 1;
      again = setImmediate(count);
    };
    let again = setImmediate(count);
    const apart = await bookApart(study);
    if (!apart || apart === 'busy') throw new Error('there is no workbook');
    await bytesOf(apart.body);
    clearImmediate(again);
    // Written here there are a few for each motor; apart, this thread has nothing else to do.
    expect(turns).toBeGreaterThan(5000);
  });

  it('is whole for a reader who takes his time, long after the last piece was written', async () => {
    const apart = await bookApart(study);
    if (!apart || apart === 'busy') throw new Error('there is no workbook');
    const pieces: Uint8Array[] = [];
    const reader = apart.body.getReader();
    for (let read = await reader.read(); !read.done; read = await reader.read()) {
      pieces.push(read.value);
      await setTimeout(300);
    }
    expect(rowsOf(await opened(Buffer.concat(pieces)), 'Options').length).toBeGreaterThan(1);
  });

  it('is given up when its reader goes away after the first piece, and the next one is whole', async () => {
    const apart = await bookApart(study);
    if (!apart || apart === 'busy') throw new Error('there is no workbook');
    const reader = apart.body.getReader();
    expect((await reader.read())?.done).toBe(false);
    await reader.cancel();
    const next = await bookApart(study);
    if (!next || next === 'busy') throw new Error('there is no workbook');
    expect(rowsOf(await opened(await bytesOf(next.body)), 'Options').length).toBeGreaterThan(1);
  });

  it('is given up when its reader takes nothing for too long, or went away before the first piece, and the place is free', async () => {
    const places = new Places({ atOnce: 1, mayWait: 1 });
    const stalled = await bookApart(study, { places, stallMs: 300 });
    if (!stalled || stalled === 'busy') throw new Error('there is no workbook');
    // The only place is taken, so that this one waits until the reader before it is given up.
    const leaving = new AbortController();
    const gone = await bookApart(study, { places, gone: leaving.signal });
    if (!gone || gone === 'busy') throw new Error('there is no workbook');
    const reader = stalled.body.getReader();
    await expect(reader.read()).rejects.toThrow('took nothing for too long');
    leaving.abort();
    const next = await bookApart(study, { places });
    if (!next || next === 'busy') throw new Error('there is no workbook');
    await expect(bytesOf(gone.body)).rejects.toThrow('ended early');
    expect(rowsOf(await opened(await bytesOf(next.body)), 'Options').length).toBeGreaterThan(1);
    // Everyone has left: the place can be had at once.
    await expect.poll(() => places.enter(), { timeout: 5_000 }).toBeTypeOf('function');
  });

  it('is none for a study that is not there', async () => {
    expect(await openWorkbook('none', undefined)).toBeUndefined();
    expect(await openWorkbook('none', 'none')).toBeUndefined();
  });
});
