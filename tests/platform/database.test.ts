import path from 'node:path';
import { expect, test } from 'vitest';
import { recordChange } from '@/lib/platform/audit';
import { type Database, openDatabase } from '@/lib/platform/db';
import { problemOf } from '@/lib/platform/errors';
import { newId } from '@/lib/platform/id';
import { applyMigrations, readMigrations } from '@/lib/platform/migrations';
import { naturalKey } from '@/lib/platform/natural-key';
import { OneConnection } from '@/lib/platform/one-connection';
import { temporaryFolders } from './temp-folder';

const folder = temporaryFolders();

async function withDatabase(work: (db: Database, file: string) => Promise<void>): Promise<void> {
  const file = path.join(folder(), 'book.db');
  applyMigrations(file, readMigrations(path.resolve('prisma/migrations')));
  const db = openDatabase(file);
  try {
    await work(db, file);
  } finally {
    await db.close();
  }
}

async function motor(db: Database, tag: string, studyId: string, siteId: string) {
  const facts = { ratedPowerKw: 37, ratedVoltageV: 460, quotedPriceMinor: 12_345_678_901n };
  return db.read.motor.create({
    data: { studyId, siteId, siteName: 'North', tag, naturalKey: naturalKey('North', tag), ...facts },
  });
}

test('a study takes all that belongs to it along', () =>
  withDatabase(async (db) => {
    const study = await db.read.study.create({ data: { name: 'Invented works', settings: '{}' } });
    const site = await db.read.site.create({ data: { studyId: study.id, name: 'North' } });
    const first = await motor(db, 'P-1', study.id, site.id);
    await db.read.reading.create({ data: { studyId: study.id, motorId: first.id, contentHash: 'a', inputPowerKw: 20 } });
    await db.read.drivenLoad.create({ data: { studyId: study.id, motorId: first.id } });
    expect(await db.read.motor.findMany({ select: { quotedPriceMinor: true } })).toEqual([{ quotedPriceMinor: 12_345_678_901n }]);
    await db.read.study.delete({ where: { id: study.id } });
    expect([
      await db.read.site.count(),
      await db.read.motor.count(),
      await db.read.reading.count(),
      await db.read.drivenLoad.count(),
    ]).toEqual([0, 0, 0, 0]);
  }));

test('site and tag name one motor of a study, and the same reading of a motor exists once', () =>
  withDatabase(async (db) => {
    const study = await db.read.study.create({ data: { name: 'Invented works', settings: '{}' } });
    const site = await db.read.site.create({ data: { studyId: study.id, name: 'North' } });
    const first = await motor(db, 'P-1', study.id, site.id);
    await expect(motor(db, 'P-1', study.id, site.id)).rejects.toMatchObject({ code: 'P2002' });
    const reading = { studyId: study.id, motorId: first.id, contentHash: 'a' };
    await db.read.reading.create({ data: reading });
    await expect(db.read.reading.create({ data: reading })).rejects.toMatchObject({ code: 'P2002' });
  }));

test('a transaction that fails leaves neither the change nor its entry in the history', () =>
  withDatabase(async (db) => {
    const attempt = db.write(async (tx) => {
      const study = await tx.study.create({ data: { name: 'Invented works', settings: '{}' } });
      const change = {
        studyId: study.id,
        who: 'A. Nobody',
        subject: 'study',
        subjectId: study.id,
        subjectLabel: study.name,
        what: 'created',
      };
      await recordChange(tx, { ...change, to: { budgetMinor: 5n } });
      expect(await tx.changeEvent.findMany()).toMatchObject([
        { verified: false, toValue: '{"budgetMinor":"5"}', fromValue: null },
      ]);
      throw new Error('the plug was pulled');
    });
    await expect(attempt).rejects.toThrow('the plug was pulled');
    expect([await db.read.study.count(), await db.read.changeEvent.count()]).toEqual([0, 0]);
  }));

test('writers queue up and lose nothing; readers do not wait for them', () =>
  withDatabase(async (db) => {
    const { id } = await db.read.study.create({ data: { name: 'Invented works', settings: '{}' } });
    let release = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      release = resolve;
    });
    const slow = db.write(async (tx) => {
      await tx.study.update({ where: { id }, data: { version: { increment: 1 } } });
      await held;
    });
    const others = Array.from({ length: 5 }, () =>
      db.write(async (tx) => {
        const { version } = await tx.study.findUniqueOrThrow({ where: { id } });
        await tx.study.update({ where: { id }, data: { version: version + 1 } });
      }),
    );
    expect((await db.read.study.findUniqueOrThrow({ where: { id } })).version).toBe(1);
    release();
    await Promise.all([slow, ...others]);
    expect((await db.read.study.findUniqueOrThrow({ where: { id } })).version).toBe(7);
  }));

test('a change waits for that of another program without holding up its own thread, and no longer than it should', () =>
  withDatabase(async (db, file) => {
    const patient = openDatabase(file);
    const impatient = openDatabase(file, { waitMs: 50 });
    const add = (to: Database, name: string) => to.write((tx) => tx.study.create({ data: { name, settings: '{}' } }));
    try {
      const waiting: Promise<unknown>[] = [];
      await db.write(async (tx) => {
        waiting.push(add(patient, 'Second'));
        const refused = await add(impatient, 'Never').catch((error: unknown) => error);
        expect(problemOf(refused)).toMatchObject({ code: 'database-busy' });
        // Made on the thread on which the other waits.
        await tx.study.create({ data: { name: 'First', settings: '{}' } });
      });
      await Promise.all(waiting);
      expect((await db.read.study.findMany()).map(({ name }) => name).sort()).toEqual(['First', 'Second']);
      await add(impatient, 'Third');
    } finally {
      await patient.close();
      await impatient.close();
    }
  }));

test('a transaction that cannot be ended well does not stand in the way of the next', () =>
  withDatabase(async (db) => {
    const cutOff = db.write(async (tx) => {
      await tx.study.create({ data: { name: 'Lost', settings: '{}' } });
      // What a full disk does: the database gives up by itself, and there is nothing left to keep.
      await tx.$executeRawUnsafe('ROLLBACK');
    });
    await expect(cutOff).rejects.toThrow();
    await db.write((tx) => tx.study.create({ data: { name: 'Kept', settings: '{}' } }));
    expect(await db.read.study.findMany({ select: { name: true } })).toEqual([{ name: 'Kept' }]);
  }));

test('one transaction after another runs on one connection, so that writing opens no further files', () =>
  withDatabase(async (db) => {
    // Such a table is seen by the connection that made it alone.
    await db.write((tx) => tx.$executeRawUnsafe('CREATE TEMP TABLE "Mark" ("x" INTEGER)'));
    for (let i = 0; i < 3; i++) await db.write((tx) => tx.$executeRawUnsafe('INSERT INTO "Mark" VALUES (1)'));
    expect(await db.write((tx) => tx.$queryRawUnsafe('SELECT count(*) AS "marks" FROM "Mark"'))).toEqual([{ marks: 3 }]);
  }));

test('a statement that comes after the end of its transaction is refused, and nothing of an unfinished one is kept', async () => {
  const client = new OneConnection(path.join(folder(), 'late.db')).createClient();
  await client.execute('CREATE TABLE "Mark" ("x" INTEGER)');
  const ended = await client.transaction('write');
  await ended.execute('INSERT INTO "Mark" VALUES (1)');
  await ended.commit();
  await expect(ended.execute('INSERT INTO "Mark" VALUES (2)')).rejects.toThrow('This transaction has ended.');
  const left = await client.transaction('write');
  await left.execute('INSERT INTO "Mark" VALUES (3)');
  left.close();
  expect((await client.execute('SELECT "x" FROM "Mark"')).rows).toMatchObject([{ x: 1 }]);
  client.close();
});

test('the order of tags in the database is the order in which people count', () =>
  withDatabase(async (db) => {
    const study = await db.read.study.create({ data: { name: 'Invented works', settings: '{}' } });
    const site = await db.read.site.create({ data: { studyId: study.id, name: 'North' } });
    for (const tag of ['A132', 'A14', 'A13', 'A2', 'a3', 'A2 B', 'P-02', 'P-2', 'P-10', 'Ä4'])
      await motor(db, tag, study.id, site.id);
    const sorted = await db.read.motor.findMany({ orderBy: { naturalKey: 'asc' }, select: { tag: true } });
    expect(sorted.map((row) => row.tag)).toEqual(['A2', 'A2 B', 'a3', 'Ä4', 'A13', 'A14', 'A132', 'P-02', 'P-2', 'P-10']);
  }));

test('ids are UUIDs of version 7 (RFC 9562, appendix A.6: its example has this time in front)', () => {
  // RFC 9562, A.6: 2022-02-22T19:22:22Z, unix_ts_ms 0x017F22E279B0.
  const id = newId(Date.parse('2022-02-22T19:22:22Z'));
  expect(id).toMatch(/^017f22e2-79b0-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test('the version stays while nothing is written and is another after every write, whoever made it', () =>
  withDatabase(async (db) => {
    const seen = new Set([db.version()]);
    const moved = (): boolean => {
      const before = seen.size;
      seen.add(db.version());
      return seen.size > before;
    };
    await db.read.study.count();
    expect(moved()).toBe(false);
    await db.read.study.create({ data: { name: 'One', settings: '{}' } });
    expect(moved()).toBe(true);
    expect(moved()).toBe(false);
    await db.write((tx) => tx.study.create({ data: { name: 'Two', settings: '{}' } }));
    expect(moved()).toBe(true);
    const refused = db.write(async (tx) => {
      await tx.study.create({ data: { name: 'Three', settings: '{}' } });
      throw new Error('not after all');
    });
    await expect(refused).rejects.toThrow('not after all');
    expect(await db.read.study.count()).toBe(2);
  }));
