import { expect, test } from 'vitest';
import { LastAnswer } from '@/lib/platform/last-answer';

/** A database that somebody changes when the test says so. */
function changing(): { version: () => number; change: () => void } {
  let version = 1;
  return { version: () => version, change: () => (version += 1) };
}

test('one question is answered once until the database changes, also for those who ask meanwhile', async () => {
  const [db, other, kept] = [changing(), changing(), new LastAnswer<object>()];
  let times = 0;
  const ask = (question: string, of = db) =>
    kept.ask({ db: of, question }, async () => {
      times += 1;
      return {};
    });
  const [first, meanwhile] = await Promise.all([ask('a'), ask('a')]);
  expect(meanwhile).toBe(first);
  expect(await ask('a')).toBe(first);
  expect(times).toBe(1);
  db.change();
  expect(await ask('a')).not.toBe(first);
  await ask('b');
  await ask('b', other);
  expect(times).toBe(4);
  // Only the last one is kept.
  await ask('b');
  expect(times).toBe(5);
});

test('what failed or is not worth keeping is tried again', async () => {
  const [db, kept] = [changing(), new LastAnswer<string>()];
  const answers = [() => Promise.reject(new Error('no disk')), async () => 'busy', async () => 'done', async () => 'once more'];
  const ask = () =>
    kept.ask(
      { db, question: 'a' },
      () => (answers.shift() ?? (() => Promise.reject(new Error('asked too often'))))(),
      (answer) => answer !== 'busy',
    );
  await expect(ask()).rejects.toThrow('no disk');
  expect(await ask()).toBe('busy');
  expect(await ask()).toBe('done');
  expect(await ask()).toBe('done');
});
