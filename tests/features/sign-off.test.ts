import { spawn } from 'node:child_process';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { enqueueEvaluation } from '@/lib/features/evaluation/mutations';
import { workThroughQueue } from '@/lib/features/evaluation/work-through-queue';
import { parseFleet } from '@/lib/features/fleet/parse';
import { compareVersions } from '@/lib/features/sign-off/compare';
import { verifyFile, versionFile } from '@/lib/features/sign-off/content';
import { readVersion, readVersions } from '@/lib/features/sign-off/data';
import { type EventWish, freezeProgramme, sayOfVersion } from '@/lib/features/sign-off/mutations';
import { agrees, reconcile } from '@/lib/features/sign-off/reconcile';
import { backUp } from '@/lib/platform/backup-file';
import { readMigrations } from '@/lib/platform/migrations';
import { toMinor } from '@/lib/platform/money';
import { restoreBackup } from '@/lib/platform/restore-file';
import { openSqlite } from '@/lib/platform/sqlite';
import { temporaryFolders } from '../platform/temp-folder';
import { DECIDED_FLEET as FLEET } from './support/decided-fleet';
import { keepPlan } from './support/keep-plan';
import { someMotors, studyWith } from './support/study-with-demo';
import { type TemporaryDatabase, temporaryDatabase } from './support/temporary-database';

const COUNT = FLEET.length;
let temporary: TemporaryDatabase;
let study: string;
let hash = '';

const wish = (changes: Partial<EventWish> = {}): EventWish => ({
  studyId: study,
  number: 1,
  kind: 'signed',
  who: 'A. Reviewer',
  comment: '',
  hash,
  ...changes,
});
const version = async (number = 1) => {
  const found = await readVersion(temporary.db.read, study, number);
  if (!found?.sound) throw new Error(`damaged: ${found?.damage}`);
  return found;
};

beforeAll(async () => {
  temporary = temporaryDatabase();
  study = await studyWith(temporary.db, FLEET);
  const early = await freezeProgramme(temporary.db, { studyId: study, who: 'P. Planner' });
  expect(early).toMatchObject({ ok: false, problem: { code: 'not-evaluated' } });
  await temporary.db.write((tx) => enqueueEvaluation(tx, study));
  await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
  const unplanned = await freezeProgramme(temporary.db, { studyId: study, who: 'P. Planner' });
  expect(unplanned).toMatchObject({ ok: false, problem: { code: 'not-planned' } });
  await keepPlan(temporary.db, study);
  const frozen = await freezeProgramme(temporary.db, { studyId: study, who: 'P. Planner' });
  if (!frozen.ok) throw new Error(frozen.problem.text);
  hash = frozen.value.hash;
});
afterAll(() => temporary.remove());

describe('a frozen programme', () => {
  it('holds every motor once, keeps each year’s budget, and its sums agree to the cent', async () => {
    const { content } = await version();
    const { programme } = content;
    const { years, left_out, value } = programme;
    const items = years.flatMap((year) => year.items);
    const waiting = programme.method === 'plan' ? programme.at_failure : [];
    const keys = [...items, ...waiting, ...left_out].map(({ site, tag }) => `${site} ${tag}`);
    expect(new Set(keys).size).toBe(COUNT);
    expect(keys.length).toBe(COUNT);
    expect(items.length).toBeGreaterThan(0);
    for (const year of years) {
      expect(year.items.reduce((sum, item) => sum + toMinor(item.cost, 'USD'), 0n)).toBe(toMinor(year.spent, 'USD'));
      expect(year.spent).toBeLessThanOrEqual(year.budget);
    }
    expect(items.reduce((sum, item) => sum + toMinor(item.net_present_value ?? 0, 'USD'), 0n)).toBe(toMinor(value, 'USD'));
  });

  it('comes to the same by four ways, and a single cent is noticed in each of them', async () => {
    const { content } = await version();
    const sums = reconcile(content);
    expect(sums.length).toBe(4);
    expect(agrees(sums)).toBe(true);
    const { currency } = content.settings;
    const spent = content.programme.years.reduce((sum, { spent }) => sum + toMinor(spent, currency), 0n);
    expect(sums.map(({ cost }) => cost)).toEqual([spent, spent, spent, spent]);
    const programme = structuredClone(content.programme);
    const item = programme.years.flatMap(({ items }) => items)[0];
    if (!item) throw new Error('nothing is funded');
    item.cost += 0.01;
    expect(agrees(reconcile({ ...content, programme }))).toBe(false);
    item.cost -= 0.01;
    item.option = 'no-such-option';
    expect(agrees(reconcile({ ...content, programme }))).toBe(false);
    const total = { ...content.programme, value: content.programme.value + 0.01 };
    expect(agrees(reconcile({ ...content, programme: total }))).toBe(false);
    const year = structuredClone(content.programme);
    if (year.years[0]) year.years[0].spent -= 0.01;
    expect(agrees(reconcile({ ...content, programme: year }))).toBe(false);
  });

  it('is compared with another: settings with who and why, motors, and what is planned otherwise', async () => {
    const { content } = await version();
    const same = compareVersions(content, content);
    expect(same).toEqual({
      settings: [],
      tables: [],
      pricesChanged: false,
      motorsAdded: [],
      motorsRemoved: [],
      motorsChanged: [],
      items: [],
      wishesAdded: [],
      wishesDropped: [],
    });
    const after = structuredClone(content);
    after.settings.discount_rate = 0.11;
    after.settings_changes = [{ key: 'discount_rate', by: 'F. Finance', at: '2026-02-01T00:00:00.000Z', why: 'New hurdle.' }];
    after.motors.shift();
    const year = after.programme.years.find(({ items }) => items.length > 0);
    const gone = year?.items.shift();
    if (!gone) throw new Error('nothing is funded');
    after.programme.left_out.push({ site: gone.site, tag: gone.tag, because: { code: 'x', text: 'There is no room.' } });
    const found = compareVersions(content, after);
    expect(found.settings).toEqual([
      {
        key: 'discount_rate',
        from: content.settings.discount_rate,
        to: 0.11,
        by: 'F. Finance',
        at: '2026-02-01T00:00:00.000Z',
        why: 'New hurdle.',
      },
    ]);
    expect(found.motorsRemoved.length).toBe(1);
    expect(found.items).toEqual([
      {
        site: gone.site,
        tag: gone.tag,
        before: { year: year?.year, option: gone.option, cost: gone.cost },
        because: 'There is no room.',
      },
    ]);
  });

  it('holds the fleet as a sheet that gives the motors back', async () => {
    const { content } = await version();
    const parsed = await parseFleet({ name: 'fleet.csv', text: content.fleet }, { decimal: '.' });
    expect(parsed.ok && parsed.motors.length).toBe(COUNT);
    expect(parsed.ok && parsed.rejected).toEqual([]);
    expect(content.results.length).toBe(COUNT);
    expect(content.motors.length).toBe(COUNT);
  });

  it('cannot be rewritten or removed, and goes with its study alone', async () => {
    const db = openSqlite(temporary.env.databaseFile);
    expect(() => db.exec(`UPDATE "PlanVersion" SET "drawnBy" = 'somebody else'`)).toThrow(/never rewritten/);
    expect(() => db.exec('DELETE FROM "PlanVersion"')).toThrow(/stays/);
    db.close();
    const other = await studyWith(temporary.db, someMotors(2), 'Other');
    await temporary.db.write((tx) => enqueueEvaluation(tx, other));
    await workThroughQueue(temporary.db, { otherServers: () => true, jobs: 1 });
    await keepPlan(temporary.db, other);
    expect((await freezeProgramme(temporary.db, { studyId: other, who: 'P. Planner' })).ok).toBe(true);
    await temporary.db.write((tx) => tx.study.delete({ where: { id: other } }));
    expect(await readVersions(temporary.db.read, other)).toEqual([]);
  });

  it('is refused while inputs have changed since the evaluation', async () => {
    const motor = await temporary.db.read.motor.findFirstOrThrow({ where: { studyId: study } });
    const set = (ratedPowerKw: number) =>
      temporary.db.write((tx) => tx.motor.update({ where: { id: motor.id }, data: { ratedPowerKw } }));
    await set(motor.ratedPowerKw + 1);
    const refused = await freezeProgramme(temporary.db, { studyId: study, who: 'P. Planner' });
    expect(refused).toMatchObject({ ok: false, problem: { code: 'not-evaluated' } });
    await set(motor.ratedPowerKw);
  });
});

function killWhileHolding(where: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const args = ['--import', 'tsx', 'tests/features/sign-off-writer.ts', temporary.env.databaseFile, study, hash, where];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      if (said.includes('holding')) child.kill('SIGKILL');
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('exit', (_, signal) => (signal === 'SIGKILL' ? resolve() : reject(new Error(`It ended by itself: ${said}`))));
  });
}

it('comes back from a backup with what was said of it, and its guards stay', async () => {
  const folder = temporaryFolders()();
  const backups = path.join(folder, 'backups');
  const migrations = readMigrations(temporary.env.migrationsFolder);
  const kept = backUp(temporary.env.databaseFile, backups, migrations, 'manual');
  if (!kept.ok) throw new Error(kept.problem.text);
  const target = temporaryDatabase();
  const place = { databaseFile: target.env.databaseFile, backupFolder: backups, migrations, inUse: true };
  expect(restoreBackup(path.join(backups, kept.value.name), place).ok).toBe(true);
  // Over the frozen version that is there by now: the guards must not stand in the way of a whole book.
  expect(restoreBackup(path.join(backups, kept.value.name), place).ok).toBe(true);
  const restored = await readVersion(target.db.read, study, 1);
  expect(restored).toMatchObject({ sound: true, hash });
  const db = openSqlite(target.env.databaseFile);
  expect(() => db.exec('DELETE FROM "PlanVersion"')).toThrow(/stays/);
  db.close();
  await target.remove();
});

describe('signing', () => {
  const lines = () => temporary.db.read.changeEvent.count({ where: { studyId: study, subject: 'programme', what: 'signed' } });

  it.each(['event', 'history'])('killed inside the transaction, after its %s, is not signed at all', async (where) => {
    await killWhileHolding(where);
    expect((await version()).standing).toBe('open');
    expect(await lines()).toBe(0);
  });

  it('killed after it was acknowledged is signed, with its line in the history', async () => {
    await killWhileHolding('after');
    expect((await version()).events).toMatchObject([{ kind: 'signed', who: 'B. Reviewer', verified: false }]);
    expect(await lines()).toBe(1);
  });

  it('only adds: a rejection stands after the signature, which stays', async () => {
    expect(
      await sayOfVersion(temporary.db, wish({ hash: hash.replace(/./, (digit) => (digit === '0' ? '1' : '0')) })),
    ).toMatchObject({ ok: false });
    expect(await sayOfVersion(temporary.db, wish({ who: 'B. Reviewer' }))).toMatchObject({ problem: { code: 'twice' } });
    expect(await sayOfVersion(temporary.db, wish({ kind: 'returned', comment: 'No.' }))).toMatchObject({
      problem: { code: 'signed' },
    });
    expect(await sayOfVersion(temporary.db, wish({ kind: 'rejected' }))).toMatchObject({ problem: { code: 'no-comment' } });
    expect((await sayOfVersion(temporary.db, wish())).ok).toBe(true);
    const before = (await version()).events;
    expect((await sayOfVersion(temporary.db, wish({ kind: 'rejected', comment: 'The tariff is last year’s.' }))).ok).toBe(true);
    const after = await version();
    expect(after.events.slice(0, 2)).toEqual(before);
    expect(after.standing).toBe('rejected');
    expect(await sayOfVersion(temporary.db, wish({ who: 'C. Late' }))).toMatchObject({ problem: { code: 'closed' } });
  });
});

/** A whole-number sequence from a seed (linear congruential, Numerical Recipes' constants), so that a failure can be repeated. */
function* seeded(seed: number): Generator<number> {
  for (let state = seed >>> 0; ; ) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    yield state;
  }
}

describe('tampering', () => {
  it('with any byte of an exported file is found: its first bytes, and a sample of the rest', async () => {
    const { text, events } = await version();
    const bytes = Buffer.from(versionFile(text, hash, events));
    expect(verifyFile(bytes)).toMatchObject({ state: 'signed', hash, version: 1 });
    expect(verifyFile(bytes, hash.slice(0, 12)).state).toBe('signed');
    expect(verifyFile(bytes, '0'.repeat(12)).state).toBe('not-signed');
    const END = 1_200;
    const random = seeded(8);
    const places = new Set(Array.from({ length: 60 }, (_, at) => at));
    for (let at = bytes.length - END; at < bytes.length; at += 7) places.add(at);
    for (let count = 0; count < 60; count += 1) places.add((random.next().value as number) % bytes.length);
    for (const at of places) {
      const changed = Buffer.from(bytes);
      changed[at] = (changed[at] ?? 0) ^ (1 << ((random.next().value as number) % 8));
      expect(verifyFile(changed).state, `byte ${at}`).toBe('altered');
    }
    expect(verifyFile(bytes.subarray(0, -1)).state).toBe('altered');
    expect(verifyFile(Buffer.concat([bytes, Buffer.from(' ')])).state).toBe('altered');
    expect(verifyFile(Buffer.from(versionFile(text, hash, []))).state).toBe('not-signed');
  });

  it('with any stored byte is found, once somebody has gone round the guards', async () => {
    const db = openSqlite(temporary.env.databaseFile);
    for (const name of ['PlanVersion_keep', 'PlanEvent_keep']) db.exec(`DROP TRIGGER "${name}"`);
    const random = seeded(9);
    const damage = async () => {
      const found = await readVersion(temporary.db.read, study, 1);
      return found && !found.sound ? found.damage : undefined;
    };
    const row = await temporary.db.read.planVersion.findFirstOrThrow({ where: { studyId: study } });
    const places = [
      0,
      4,
      8,
      9,
      row.content.length - 1,
      ...Array.from({ length: 40 }, () => (random.next().value as number) % row.content.length),
    ];
    for (const at of places) {
      const content = Buffer.from(row.content);
      content[at] = (content[at] ?? 0) ^ (1 << ((random.next().value as number) % 8));
      db.run('UPDATE "PlanVersion" SET "content" = unhex(?) WHERE "id" = ?', content.toString('hex'), row.id);
      expect(await damage(), `byte ${at}`).toBeDefined();
    }
    db.run('UPDATE "PlanVersion" SET "content" = unhex(?) WHERE "id" = ?', Buffer.from(row.content).toString('hex'), row.id);
    expect(await damage()).toBeUndefined();
    const event = await temporary.db.read.planEvent.findFirstOrThrow({ where: { versionId: row.id, position: 2 } });
    for (const [table, id, column, value] of [
      ['PlanVersion', row.id, 'contentHash', row.bytesHash],
      ['PlanVersion', row.id, 'bytesHash', row.contentHash],
      ['PlanVersion', row.id, 'drawnBy', 'P. Planner '],
      ['PlanEvent', event.id, 'who', 'A. Reviewes'],
      ['PlanEvent', event.id, 'comment', '.'],
      ['PlanEvent', event.id, 'kind', 'signex'],
      ['PlanEvent', event.id, 'verified', 1],
      ['PlanEvent', event.id, 'hash', row.bytesHash],
    ] as const) {
      const before = db.all(`SELECT "${column}" AS value FROM "${table}" WHERE "id" = ?`, id)[0]?.value;
      db.run(`UPDATE "${table}" SET "${column}" = ? WHERE "id" = ?`, value, id);
      expect(await damage(), column).toBeDefined();
      db.run(`UPDATE "${table}" SET "${column}" = ? WHERE "id" = ?`, before as string, id);
      expect(await damage(), column).toBeUndefined();
    }
    db.close();
  });
});
