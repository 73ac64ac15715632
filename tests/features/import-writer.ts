/**
 * Imports a sheet and stops dead inside the transaction after so many written statements, saying so: the test that started it then
 * kills it. Arguments: database file, study, sheet, number of statements.
 */
import { commitImport } from '@/lib/features/import/mutations';
import { type Database, openDatabase, type Tx } from '@/lib/platform/db';

const [databaseFile = '', studyId = '', sheet = '', count = '0'] = process.argv.slice(2);
const HOLD_MS = 60_000;

let statements = 0;

function watched(tx: Tx): Tx {
  return new Proxy(tx, {
    get: (target, name) => {
      const member: unknown = Reflect.get(target, name);
      if (name !== '$executeRawUnsafe' || typeof member !== 'function') return member;
      return async (...args: unknown[]) => {
        const result: unknown = await Reflect.apply(member, target, args);
        statements++;
        if (statements === Number(count)) {
          process.stdout.write('holding\n');
          await new Promise((resolve) => setTimeout(resolve, HOLD_MS));
        }
        return result;
      };
    },
  });
}

const real = openDatabase(databaseFile);
const db: Database = { ...real, write: (work) => real.write((tx) => work(watched(tx))) };
const done = await commitImport(db, {
  studyId,
  file: { path: sheet, name: 'sheet.csv', bytes: 0, hash: '' },
  kind: 'csv',
  recipe: { decimal: '.', delimiter: ',', encoding: 'utf-8', emptyWords: [], mapping: {} },
  conflicts: 'sheet',
  who: 'A. Tester',
});
process.stdout.write(done.ok ? 'committed\n' : `${done.problem.text}\n`);
await real.close();
