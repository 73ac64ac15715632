import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { loadSpares } from '@/lib/features/ranking/list-loader';
import { loadFleetPack } from '@/lib/features/results/loaders';
import { closeDatabase } from '@/lib/platform/db';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

let temporary: TemporaryDatabase;
let study: string;
beforeEach(async () => {
  temporary = temporaryDatabase();
  vi.stubEnv('LOSSBOOK_DATA', temporary.env.dataFolder);
  study = await studyWith(temporary.db, someMotors(5));
});
afterEach(async () => {
  await closeDatabase();
  vi.unstubAllEnvs();
  await temporary.remove();
});

test('the fleet’s list is made once, and made anew after any write by anybody', async () => {
  const text = async (id = study) => new TextDecoder().decode(await loadFleetPack(id));
  expect(await loadFleetPack(study)).toBe(await loadFleetPack(study));
  const first = await text();
  expect(JSON.parse(first).rows).toHaveLength(5);

  // Another connection, as that of a worker or of the command that restores: a reading is left out, then a load changed.
  const [reading] = await temporary.db.read.reading.findMany({ take: 1 });
  await temporary.db.read.reading.update({ where: { id: reading?.id ?? '' }, data: { excludedAt: new Date() } });
  const second = await text();
  expect(second).not.toBe(first);
  await temporary.db.write((tx) => tx.drivenLoad.updateMany({ data: { hoursPerYear: 1234 } }));
  const third = await text();
  expect(third).toContain('1234');
  expect(third).not.toBe(second);

  const other = await studyWith(temporary.db, someMotors(2), 'Other');
  expect(JSON.parse(await text(other)).rows).toHaveLength(2);
  expect(JSON.parse(await text()).rows).toHaveLength(5);
  expect(await loadFleetPack('none')).toBeUndefined();
});

test('the spares are worked out once for the same terms, and anew after a change', async () => {
  const spares = async (weeks?: string) => {
    const page = await loadSpares(study, { weeks });
    if (page === undefined || page === 'busy') throw new Error('no page of spares');
    return page;
  };
  const first = await spares();
  expect(await spares()).toBe(first);
  expect((await spares('20')).given.weeks).toBe(20);
  await temporary.db.write((tx) => tx.drivenLoad.updateMany({ data: { hoursPerYear: 1234 } }));
  expect(await spares()).not.toBe(first);
});
