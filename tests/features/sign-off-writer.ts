/** Signs version 1 and stops dead inside the transaction, between the event and its line in the history, saying so: the test that started it kills it. */
import { sayOfVersion } from '@/lib/features/sign-off/mutations';
import { type Database, openDatabase, type Tx } from '@/lib/platform/db';

const [databaseFile = '', studyId = '', hash = '', where = ''] = process.argv.slice(2);
const HOLD_MS = 60_000;
const hold = async () => {
  process.stdout.write('holding\n');
  await new Promise((resolve) => setTimeout(resolve, HOLD_MS));
};

/** Holds after the event was written, or after its line in the history was. */
function watched(tx: Tx): Tx {
  return new Proxy(tx, {
    get: (target, name) => {
      const member: unknown = Reflect.get(target, name);
      if (where === 'event' && name === '$executeRawUnsafe') return hold;
      if (where === 'history' && name === '$executeRawUnsafe' && typeof member === 'function') {
        return async (...args: unknown[]) => {
          await Reflect.apply(member, target, args);
          await hold();
        };
      }
      return member;
    },
  });
}

const real = openDatabase(databaseFile);
const db: Database = { ...real, write: (work) => real.write((tx) => work(watched(tx))) };
const done = await sayOfVersion(db, { studyId, number: 1, kind: 'signed', who: 'B. Reviewer', comment: '', hash });
process.stdout.write(done.ok ? 'committed\n' : `${done.problem.text}\n`);
if (where === 'after') await hold();
await real.close();
